#pragma once
// A group as the estimator sees it: which controls it has, what each reading says of them, and what the joint
// must come to. Signs: fence out, blade up, thicker spacer, wider stack are +.
//
// Readings of a joint with a tongue (T stock of the insert, f fence, h height, k kerf, m shift of the fence between
// passes, s spacer):
//   dado_width k + m, dado_depth h, lip f, tongue_thickness T - h, tongue_length f + k - s,
//   fit k + m + h - T, shoulder_gap max(0, f + k - s - h), face_step f - h
// Where slot and tongue have heights of their own, h is the height that makes each.
// Of a half lap, whose rabbets are both at an end: width f + k - s of the receiver's and depth h, lap_thickness T - h, lap_length
//   f + k - s, shoulder_gap max(0, lap length - depth), face_step width - lap thickness
// Of fingers (f the gap between pin and cutter, n from row_to()): socket_width k, finger_width f, depth h,
//   fit k - f, row n (f + k) (bottom edge to the far wall of socket n: what a finger is off by adds up in it; of an insert's own row, which begins with
//   a socket, less f), face_step h - T
// Of a dado or a groove: width k + m, depth h, near f, fit k + m - T. Of a rabbet that takes a whole
// board: width f + k - s, depth h, face_step f + k - s - T.

#include "setup/setup.h"
#include "testcut/model.h"
#include "testcut/start.h"

namespace kw {

struct GroupTolerances {
    Length fit, shoulder_gap, step, depth, place;
};

// The socket to whose far wall the reading `row` goes: as the group's start says, else the last whole one up the least board.
int row_to(const Group& group, const Start& start);

// The sockets of a row up the highest board.
int most_sockets(const Group& group);

// What is known of a group's scales, from what is known of its machine's.
Scales scales_of(const Group& group, Scales machine);

// T is the batch's thickness and what the tested piece differs by from it; the outcomes ask that any other piece of the batch
// fits too.
//
// `partner`: the group that cuts the slot, where this one cuts the tongue alone; else nullptr.
Model model_of(const Group& group, const GroupTolerances& tolerances, const Group* partner,
               const Start& start);

// The model with its controls movable from where the scales stand now: with the shims that are owned, and a second pass only
// farther out than the first.
Model movable_from(Model model, const Group& group, const Settings& dial);

// The setting that a control of that name is; nothing for what is no setting ("stock").
Length* setting_named(Settings& settings, std::string_view control);

// What the scales show after these moves.
Settings turned(Settings dial, const Model& model, const std::vector<Move>& moves);

// Where the controls stand by a belief about them; what the model has no control for keeps its designed value.
Settings settings_by(const Model& model, const Settings& designed, const Belief& belief);

// One sigma of one control, in mm; 0 for one that the model does not have.
double spread_of(const Model& model, const Belief& belief, std::string_view control);

std::optional<std::size_t> control_named(const Model& model, std::string_view name);
const Reading* reading_named(const Model& model, std::string_view name);

}  // namespace kw
