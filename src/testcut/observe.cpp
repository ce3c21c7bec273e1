#include "testcut/observe.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <tuple>

#include "testcut/normal.h"

namespace kw {

namespace {

// An interval that takes less than this part off the variance has said nothing: what is left is rounding.
constexpr double least_learned = 1e-12;

// The plain reading that would teach a belief the same as an interval does: same mean, same covariance after
// it.
struct Site {
    double value_mm = 0.0;
    double spread_mm = infinity;
};

// With u = form + error, u ~ N(m, S), cut off to the interval: gain K = P w / S moves the mean by K (m_u - m)
// and the covariance by -K K' (S - V_u). A plain reading of total variance S^2 / (S - V_u) does just that.
Site site_of(const Belief& cavity, const Observation& observation) {
    const Marginal form = marginal(cavity, observation.form);
    const double form_variance = form.sd_mm * form.sd_mm;
    const double total = form_variance + observation.spread_mm * observation.spread_mm;
    if (std::isinf(total) || form_variance < known_variance_mm2) return {};
    const double sd = std::sqrt(total);
    const TruncatedMoments cut = truncated_moments((observation.low_mm - form.mean_mm) / sd,
                                                   (observation.high_mm - form.mean_mm) / sd);
    const double learned = 1.0 - cut.variance;
    if (learned < least_learned) return {};
    const double noise = std::max(0.0, total / learned - form_variance);
    return {form.mean_mm + sd * cut.mean / learned, std::sqrt(noise)};
}

Belief observe_site(const Belief& belief, const Form& form, const Site& site) {
    return observe(belief, form, site.value_mm, site.spread_mm);
}

Belief observe_sites(Belief belief, const std::vector<Observation>& intervals, const std::vector<Site>& sites,
                     std::size_t but) {
    for (std::size_t i = 0; i < sites.size(); ++i)
        if (i != but) belief = observe_site(belief, intervals[i].form, sites[i]);
    return belief;
}

double furthest_apart(const Belief& a, const Belief& b) {
    double furthest = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) furthest = std::max(furthest, std::abs(a.mean[i] - b.mean[i]));
    return furthest;
}

// A millionth of a millimetre, and far more rounds than intervals that agree ever need.
constexpr double settled_mm = 1e-6;
constexpr int most_rounds = 40;

Belief settle_intervals(const Belief& belief, const std::vector<Observation>& intervals) {
    std::vector<Site> sites(intervals.size());
    Belief last = belief;
    for (int round = 0; round < most_rounds; ++round) {
        for (std::size_t i = 0; i < sites.size(); ++i)
            sites[i] = site_of(observe_sites(belief, intervals, sites, i), intervals[i]);
        Belief next = observe_sites(belief, intervals, sites, sites.size());
        if (sites.size() == 1 || furthest_apart(next, last) < settled_mm) return next;
        last = std::move(next);
    }
    return last;
}

auto sort_key(const Observation& o) {
    return std::tie(o.form.weights, o.form.constant, o.low_mm, o.high_mm, o.spread_mm);
}

}  // namespace

bool Observation::operator==(const Observation& other) const { return sort_key(*this) == sort_key(other); }

Observation taken(const Reading& reading, double value_mm, double spread_mm) {
    const bool one_sided = reading.kind == ReadingKind::at_least_zero && value_mm <= 0.0;
    if (one_sided) return {reading.form, -infinity, 0.0, spread_mm};
    return {reading.form, value_mm, value_mm, spread_mm};
}

Observation taken(const Reading& reading, double value_mm) {
    return taken(reading, value_mm, reading.spread_mm);
}

Observation felt(const Form& fit, Feel feel) {
    const FeelMeaning& row = meaning(feel);
    return {fit, row.low_mm, row.high_mm, feel_spread_mm};
}

Observation seen(const Form& form, const Sight& sight) {
    return {form, sight.low_mm, sight.high_mm, sight_spread_mm};
}

Belief observe_interval(const Belief& belief, const Form& form, double low_mm, double high_mm,
                        double spread_mm) {
    return observe_all(belief, {{form, low_mm, high_mm, spread_mm}});
}

Belief observe_all(const Belief& belief, const std::vector<Observation>& observations) {
    std::vector<Observation> sorted = observations;
    std::sort(sorted.begin(), sorted.end(),
              [](const Observation& a, const Observation& b) { return sort_key(a) < sort_key(b); });
    Belief next = belief;
    std::vector<Observation> intervals;
    for (const Observation& observation : sorted) {
        assert(observation.low_mm <= observation.high_mm && observation.spread_mm >= 0.0);
        if (observation.is_plain())
            next = observe(next, observation.form, observation.low_mm, observation.spread_mm);
        else intervals.push_back(observation);
    }
    return intervals.empty() ? next : settle_intervals(next, intervals);
}

Innovation innovation(const Belief& belief, const Observation& observation) {
    const Marginal form = marginal(belief, observation.form);
    const double sd = std::hypot(form.sd_mm, observation.spread_mm);
    const double nearest = std::clamp(form.mean_mm, observation.low_mm, observation.high_mm);
    const double off = nearest - form.mean_mm;
    return {form.mean_mm, sd, off == 0.0 ? 0.0 : off / sd};
}

}  // namespace kw
