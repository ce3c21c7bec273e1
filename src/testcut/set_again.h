#pragma once
// A machine that was used for something else, and is set by hand again to where it stood: what is still known of its controls.
//
// What was learned of the scales stays. But each control that was set again has another setting's error: that of a setting as good as
// any, or, once in ten times, of one that is no better than a first setting by a scale that nobody knows. The two are a mixture
// of two normals, weighed by what the readings say of each (Bayes), and brought to the one normal of the same mean and
// covariance.

#include "testcut/observe.h"

namespace kw {

// `controls`: the names of those that were set again; what the model does not have is left out. With no observations: what
// is believed before any.
Belief observe_set_again(const Model& model, const Belief& belief, const std::vector<std::string>& controls,
                         const std::vector<Observation>& observations);

// As unsure as a first setting would be: what readings are held against, before one of them is called a slip.
Belief predict_first_setting(const Model& model, const Belief& belief,
                             const std::vector<std::string>& controls);

}  // namespace kw
