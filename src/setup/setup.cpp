#include "setup/setup.h"

#include <algorithm>

#include "joint/fingers.h"
#include "setup/shims.h"

namespace kw {
namespace {

Setup bare_setup(const Group& group) {
    Setup setup;
    setup.group = group.id;
    setup.machine = group.work.chosen.machine.name;
    setup.cutter = group.work.chosen.cutter.name;
    setup.make_up = group.work.chosen.cutter.kerf;
    if (lists_shims(group.work.chosen.cutter)) setup.shims = shims_in(group.work.chosen.cutter);
    setup.kerf = group.stands.kerf;
    setup.height = group.stands.height;
    setup.guide = group.work.guide;
    if (has_fingers(group.work.chosen.joint)) setup.index = group.pitch();
    return setup;
}

std::string work_name(const Group& group, const Cut& cut, int pass, int passes) {
    std::string name = cut.name == group.work.label ? cut.name : group.work.label + ": " + cut.name;
    if (passes > 1) name += ", pass " + std::to_string(pass + 1) + " of " + std::to_string(passes);
    return name;
}

int cuts_of(const Setup& setup, const PartEnd& end) {
    return setup.index ? std::max(1, sockets_up(setup.fence - setup.spacer, *setup.index, end.up)) : 1;
}

void add_passes(Setup& setup, const std::vector<PartEnd>& ends, BoardFace down, bool nibble) {
    for (const PartEnd& end : ends)
        setup.passes.push_back({end.part, end.reference, down, nibble, cuts_of(setup, end)});
}

Setup slot_pass(const Group& group, int pass, int passes) {
    const Settings& stands = group.stands;
    Setup setup = bare_setup(group);
    setup.work = work_name(group, group.slot(), pass, passes);
    setup.fence = fence_of_pass(stands, pass, passes);
    bool nibble = false;
    if (group.slot_is_open()) {
        setup.spacer = stands.spacer;
        setup.sacrificial = is_sacrificial(stands);
        nibble = needs_nibble(stands);
    }
    add_passes(setup, group.work.receivers, group.slot().down, nibble);
    return setup;
}

Setup end_pass(const Group& group) {
    const Settings& stands = group.stands;
    const Cut& cut = *group.work.chosen.joint.insert_cut();
    Setup setup = bare_setup(group);
    setup.work = work_name(group, cut, 0, 1);
    setup.fence = stands.fence;
    setup.spacer = stands.spacer;
    setup.sacrificial = is_sacrificial(stands);
    add_passes(setup, group.work.inserts, cut.down, needs_nibble(stands));
    return setup;
}

}  // namespace

std::vector<Setup> setups_of(const Group& group) { return setups_of(group, group.slot_passes()); }

std::vector<Setup> setups_of(const Group& group, int passes) {
    std::vector<Setup> setups;
    if (group.cuts_slot) setups.push_back(slot_pass(group, 0, passes));
    if (group.cuts_end) setups.push_back(end_pass(group));
    if (group.cuts_slot)
        for (int pass = 1; pass < passes; ++pass) setups.push_back(slot_pass(group, pass, passes));
    setups.front().test_cut = true;
    return setups;
}

}  // namespace kw
