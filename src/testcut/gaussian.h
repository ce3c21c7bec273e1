#pragma once
// What is believed of a setup's controls (fence, height, kerf, spacer, stock ...): a joint normal
// distribution, in mm, and its exact update by readings that are linear in the controls.
//
// Formulas: the Kalman measurement update in Joseph's form (textbook, e.g. Bierman, Factorization Methods for
// Discrete Sequential Estimation, 1977; from memory), which keeps the covariance symmetric and non-negative.
// The spread of a linear form is the law of propagation of uncertainty, JCGM 100 (GUM) 5.1.2 and 5.2.2,
// correlations included.

#include <cstddef>
#include <string>
#include <vector>

namespace kw {

// weights . controls + constant: a reading or an outcome, in mm. One weight for each control of the model.
struct Form {
    std::string name;
    std::vector<double> weights;
    double constant = 0.0;
};

struct Belief {
    std::vector<double> mean;        // n, mm
    std::vector<double> covariance;  // n x n, row after row, mm^2

    std::size_t size() const { return mean.size(); }
    bool operator==(const Belief&) const = default;
};

struct Marginal {
    double mean_mm;
    double sd_mm;
};

// A variance below this (a nanometre, squared: less than one tick) counts as known: it is only rounding.
inline constexpr double known_variance_mm2 = 1e-12;

double value_at(const Form& form, const std::vector<double>& controls_mm);
Marginal marginal(const Belief& belief, const Form& form);
double covariance(const Belief& belief, const Form& a, const Form& b);  // mm^2

// The belief after reading `value_mm` of the form with a normal error of one sigma `spread_mm`.
// spread 0: an exact reading. spread infinite: nothing was learned. A form that is already known takes no
// exact reading: the belief stays as it is.
Belief observe(const Belief& belief, const Form& form, double value_mm, double spread_mm);

}  // namespace kw
