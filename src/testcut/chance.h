#pragma once
// The chance that everything a joint must come to is within its tolerance at once.

#include <vector>

#include "testcut/model.h"

namespace kw {

inline constexpr double chance_accuracy = 1e-4;

struct ToleranceBox {
    std::vector<double> low;   // may be -infinity
    std::vector<double> high;  // may be +infinity
};

// The chance that a normal vector (mean m, covariance m x m row after row, of any rank) lies in the box,
// edges included, for up to most_outcomes dimensions. Right to `accuracy`, and the same on every run: nested
// quadrature over the covariance's triangular factor, the most restrictive side first (Genz, J. Comp. Graph.
// Stat. 1, 1992; the order after Gibson, Glasbey and Elston, 1994; both from memory), rows that depend on
// others joined to the last variable that they hang on (Genz and Kwong, 2000; from memory).
double box_chance(const std::vector<double>& mean, const std::vector<double>& covariance,
                  const ToleranceBox& box, double accuracy = chance_accuracy);

// Of the outcomes, in the order of the model.
std::vector<double> outcome_mean(const Model& model, const Belief& belief);
std::vector<double> outcome_covariance(const Model& model, const Belief& belief);
ToleranceBox outcome_box(const Model& model);

double chance_in_tolerance(const Model& model, const Belief& belief);

}  // namespace kw
