#pragma once
// What really comes off the machine: the joint as cut, from where the controls really stand.

#include <map>
#include <string>

#include "setup/group.h"

namespace shop {

struct Controls {
    double fence = 0.0, height = 0.0, spacer = 0.0, kerf = 0.0, shift = 0.0;
    double& named(const std::string& control);
};

// The slot of a joint whose tongue is cut with settings of its own.
struct TrueSlot {
    double width = 0.0, depth = 0.0, lip = 0.0;
};

// Every reading that can be taken of the joint, by the names that job files use. `thickness`: of the board that enters.
std::map<std::string, double> joint_as_cut(const kw::Group& group, const Controls& at, const TrueSlot& slot,
                                           double thickness);

struct Limits {
    double fit, shoulder_gap, step, depth, place;
};

// Whether a joint so cut is what was asked for: clearance, gap and step (or the slot's depth and place) within their limits.
bool is_good(const kw::Group& group, const Limits& limits, const std::map<std::string, double>& joint);

// Whether the same test ends can be cut again: the new cuts take all that the old ones took.
bool takes_all(const kw::Group& group, const Controls& old, const Controls& next);

}  // namespace shop
