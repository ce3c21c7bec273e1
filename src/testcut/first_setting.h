#pragma once
// Where to set the scales before the first test cut.

#include "setup/group.h"
#include "testcut/correct.h"
#include "testcut/start.h"

namespace kw {

// The moves from the designed settings that the first cut is best made with, each a whole number of the control's steps. `model`: of the
// group with its scales at the designed settings. What is known of the scales is taken off; and the setting is biased
// to the side from which the correction can be cut over the old cut, by as much as lowers the expected cost: a chance of fit
// given up costs another test cut, a failure on the wrong side costs fresh ends besides.
std::vector<Move> first_moves(const Model& model, const AdviceCosts& costs = {});

// What the scales are to be set to for the first cut.
Settings first_dial(const Model& model, const Settings& designed, const AdviceCosts& costs = {});

}  // namespace kw
