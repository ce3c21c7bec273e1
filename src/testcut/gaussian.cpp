#include "testcut/gaussian.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace kw {

namespace {

double dot(const std::vector<double>& a, const std::vector<double>& b) {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

// covariance x weights. A form weighs a few of the controls; the covariance is symmetric, so its rows will do for columns.
std::vector<double> spread_along(const Belief& belief, const Form& form) {
    const std::size_t n = belief.size();
    assert(form.weights.size() == n && belief.covariance.size() == n * n);
    std::vector<double> along(n, 0.0);
    for (std::size_t j = 0; j < n; ++j) {
        const double weight = form.weights[j];
        if (weight == 0.0) continue;
        const double* row = &belief.covariance[j * n];
        for (std::size_t i = 0; i < n; ++i) along[i] += weight * row[i];
    }
    return along;
}

// (I - gain w') P (I - gain w')' + noise gain gain', multiplied out from the left and then from the right:
// the second factor works on the rounded result of the first, which is what keeps the result from going
// negative.
void joseph_update(Belief& belief, const Form& form, const std::vector<double>& along,
                   const std::vector<double>& gain, double noise) {
    const std::size_t n = belief.size();
    std::vector<double>& p = belief.covariance;
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) p[i * n + j] -= gain[i] * along[j];
    // Halfway the matrix is not symmetric: its rows are weighed, not its columns.
    std::vector<double> left(n, 0.0);
    for (std::size_t j = 0; j < n; ++j) {
        if (form.weights[j] == 0.0) continue;
        for (std::size_t i = 0; i < n; ++i) left[i] += form.weights[j] * p[i * n + j];
    }
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) p[i * n + j] += (noise * gain[i] - left[i]) * gain[j];
    for (std::size_t i = 0; i < n; ++i) {
        p[i * n + i] = std::max(0.0, p[i * n + i]);
        for (std::size_t j = 0; j < i; ++j) p[i * n + j] = p[j * n + i] = 0.5 * (p[i * n + j] + p[j * n + i]);
    }
}

}  // namespace

double value_at(const Form& form, const std::vector<double>& controls_mm) {
    assert(form.weights.size() == controls_mm.size());
    return dot(form.weights, controls_mm) + form.constant;
}

double covariance(const Belief& belief, const Form& a, const Form& b) {
    const std::size_t n = belief.size();
    assert(a.weights.size() == n && b.weights.size() == n);
    double sum = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        if (a.weights[i] == 0.0) continue;
        double along = 0.0;
        for (std::size_t j = 0; j < n; ++j) along += belief.covariance[i * n + j] * b.weights[j];
        sum += a.weights[i] * along;
    }
    return sum;
}

Marginal marginal(const Belief& belief, const Form& form) {
    return {value_at(form, belief.mean), std::sqrt(std::max(0.0, covariance(belief, form, form)))};
}

Belief observe(const Belief& belief, const Form& form, double value_mm, double spread_mm) {
    assert(std::isfinite(value_mm) && spread_mm >= 0.0);
    if (std::isinf(spread_mm)) return belief;
    const std::vector<double> along = spread_along(belief, form);
    const double expected = std::max(0.0, dot(form.weights, along));
    const double noise = spread_mm * spread_mm;
    if (expected + noise < known_variance_mm2) return belief;

    std::vector<double> gain = along;
    for (double& g : gain) g /= expected + noise;
    Belief next = belief;
    const double off = value_mm - value_at(form, belief.mean);
    for (std::size_t i = 0; i < next.size(); ++i) next.mean[i] += gain[i] * off;
    joseph_update(next, form, along, gain, noise);
    return next;
}

}  // namespace kw
