#pragma once
// Readings and feels, as observations of linear forms, and what a set of them says together.

#include <vector>

#include "testcut/feel.h"
#include "testcut/model.h"

namespace kw {

// form + error is known to lie in [low, high]; low = high is a plain reading. error is normal, one sigma
// `spread_mm`.
struct Observation {
    Form form;
    double low_mm;   // may be -infinity
    double high_mm;  // may be +infinity
    double spread_mm;

    bool is_plain() const { return low_mm == high_mm; }
    bool operator==(const Observation& other) const;
};

// A reading as the maker gave it. Of a reading that is at least zero, zero (and below, which the caller has
// better refused) is one-sided: form + error <= 0.
Observation taken(const Reading& reading, double value_mm, double spread_mm);
Observation taken(const Reading& reading, double value_mm);  // with the spread of the usual tool
Observation felt(const Form& fit, Feel feel);                // fit: clearance, + loose
Observation seen(const Form& form, const Sight& sight);      // form: of the reading that the sight stands for

// The normal belief with the mean and covariance of the true one after form + error was found in [low, high]
// (moment matching; exact moments, whatever the error's spread, 0 included). Infinite ends say nothing.
Belief observe_interval(const Belief& belief, const Form& form, double low_mm, double high_mm,
                        double spread_mm);

// All observations made of one cut. Plain ones are exact and in any order the same; intervals are matched
// against each other until they agree (expectation propagation, Minka 2001; from memory), so that their order
// doesn't matter either: permutations give the same bits.
Belief observe_all(const Belief& belief, const std::vector<Observation>& observations);

// How far an observation lies from what was expected, before it is believed.
struct Innovation {
    double expected_mm;
    double sd_mm;   // of the form and the reading's error together
    double sigmas;  // signed; of an interval, to its nearer end, and 0 inside it
};
Innovation innovation(const Belief& belief, const Observation& observation);

}  // namespace kw
