#pragma once
// The standard normal distribution, and what is left of it when only an interval is possible.

#include <limits>

namespace kw {

// The end of an interval that is open there.
inline constexpr double infinity = std::numeric_limits<double>::infinity();

double normal_density(double z);
double normal_below(double z);  // chance of less than z; z may be infinite

// Chance of lying in [low, high], without cancellation in either tail. 0 where high < low.
double normal_between(double low, double high);

// The z that the chance lies below, 0 < chance < 1, to 1e-12.
double normal_quantile(double chance);

struct TruncatedMoments {
    double mean;
    double variance;
};

// Mean and variance of a standard normal that is known to lie in [low, high], where low <= high and at most
// one end is infinite on its own side or both are. Integrated numerically around the interval's likeliest
// point, so that the variance keeps its digits where the closed form (1 + (a phi(a) - b phi(b)) / Z - mean^2)
// loses all of them: a thousand sigmas out, or in an interval of a millionth.
TruncatedMoments truncated_moments(double low, double high);

}  // namespace kw
