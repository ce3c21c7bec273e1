#pragma once
// Which cutter makes a joint.

#include <functional>
#include <string>
#include <vector>

#include "setup/settings.h"

namespace kw {

struct CutterAsk {
    std::string named;                // the maker's choice; empty: choose
    std::vector<std::string> in_use;  // cutters that are set up for this job anyway: taken before others
    int ends = 1;    // how many ends or edges go through, for weighing passes against a change
    Length up = {};  // how high they are, where a row of sockets runs up them
};

struct ChosenJoint {
    JointDesign joint;
    Machine machine;
    Cutter cutter;
};

// All that could make a joint, in the shop's order; a stack that can be made up to the slot's width comes a second time, as that.
struct WaysToCut {
    std::vector<ChosenJoint> all;
    std::size_t usual = 0;  // the one that choose_cutter takes
};

// `design` makes the joint for a cutter of this kerf. A cutter is out where it is wider than the machine's arbor takes, wider than
// the slot, or where the machine can't raise it that far; a miter saw cuts no joints. Of the others, each as it stands, the one with
// the least time is taken: changing to it, and its passes. Refuses with the reason of each cutter that was tried.
tl::expected<WaysToCut, Refusal> ways_to_cut(const Shop& shop, const CutterAsk& ask,
                                             const std::function<JointResult(Length kerf)>& design);

tl::expected<ChosenJoint, Refusal> choose_cutter(const Shop& shop, const CutterAsk& ask,
                                                 const std::function<JointResult(Length kerf)>& design);

}  // namespace kw
