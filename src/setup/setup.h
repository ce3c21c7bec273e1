#pragma once
// A setup: one machine with its controls set, and the parts that go through.

#include "setup/group.h"

namespace kw {

struct Pass {
    std::string part;
    Reference reference = Reference::left_end;
    BoardFace down = BoardFace::inside;
    bool nibble = false;
    int cuts = 1;  // of a row of sockets: how many
    bool operator==(const Pass&) const = default;
};

// In the order in which a part meets them.
enum class Stage { rip, crosscut, joint };

// A pass removes, measured from its reference, [fence - spacer, fence - spacer + kerf] (with nibble, from 0) over the whole
// end or edge, from the face that lies down to `height`. Rips and crosscuts have no height and go through; their
// fence is the finished size. On an indexing jig the board stands on the end that `reference` names, its bottom edge against the pin:
// the fence is the gap between pin and cutter, the spans run up from the bottom edge, through the whole thickness, and after each
// cut the board is set over by `index`.
struct Setup {
    std::string id;     // "S1"
    std::string group;  // "G1"; empty for rips and crosscuts
    Stage stage = Stage::joint;
    std::string work;  // "locking rabbet: side dado"
    std::string machine;
    std::string cutter;
    Length
        make_up;  // the cutter's kerf as it is put on for this work, without what its shims were changed by since
    std::optional<Length> shims;  // in that, where the maker has listed the stack's
    Length kerf;
    Length fence;
    std::optional<Length> height;
    Length spacer;
    bool sacrificial = false;
    std::string guide;
    std::optional<Length> index = std::nullopt;
    bool test_cut = false;
    std::vector<Pass> passes;
};

// The setups of a group as its controls stand, in the order in which they are run: the first pass of the slot, the cut on the
// insert's ends (before the fence moves), the further passes of the slot.
std::vector<Setup> setups_of(const Group& group);
// The same setups where the settings are others than the plan's, as those that the scales show: with the plan's passes.
std::vector<Setup> setups_of(const Group& group, int passes);

// A part to be brought to size.
struct SizeCut {
    PartEnd from;
    Length size;
    Length edge;              // what would lie along a rip fence: the part's other size
    bool lengthwise = false;  // along the grain: to width
    std::string what;         // "fronts", for the setup's `work`
    std::string waits_for;    // the key of the group whose joint sets this size; empty where none does
};

// One setup for all parts of equal size that wait for the same group. Long panels and widths go along the rip fence; lengths against a stop, on the
// miter saw where there is one.
tl::expected<std::vector<Setup>, Refusal> sizing_setups(const Shop& shop, const std::vector<SizeCut>& cuts);

// The machine that cuts to length; nullptr where there is none.
const Machine* crosscut_machine(const Shop& shop);

}  // namespace kw
