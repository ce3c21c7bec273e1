#include "testcut/recut.h"

#include "testcut/joint_model.h"

namespace kw {
namespace {

Removal removal_of(const Group& group, Member member, const Settings& settings) {
    if (member == Member::insert) return end_removal(settings, group.work.chosen.joint.insert_cut()->down);
    return group.slot_is_open() ? end_removal(settings, group.slot().down)
                                : slot_removal(settings, group.slot().down);
}

// `grown` by what two cuts may differ and still be the same.
Region removed(const Group& group, Member member, const Settings& settings, Length grown) {
    const Removal cut = removal_of(group, member, settings);
    return to_region(Rect{cut.near - grown, Length{}, cut.far + grown, cut.depth + grown});
}

bool alike_to(const Removal& a, const Removal& b, Length alike) {
    return abs(a.near - b.near) <= alike && abs(a.far - b.far) <= alike && abs(a.depth - b.depth) <= alike;
}

// A row that begins or repeats elsewhere leaves nothing to cut again: the pin takes sockets that are there already. What it repeats by is
// off once more with each socket, and counts at the top of the highest board.
Fate fate_of_row(const Group& group, const Settings& old, const Settings& wanted, Length alike) {
    const Length repeats = abs(old.fence + old.kerf - wanted.fence - wanted.kerf);
    const bool is_elsewhere = abs(old.fence - wanted.fence) > alike || abs(old.kerf - wanted.kerf) > alike ||
                              most_sockets(group) * repeats > alike;
    if (is_elsewhere || old.height - wanted.height > alike) return Fate::lost;
    return wanted.height - old.height > alike ? Fate::recut : Fate::fine;
}

}  // namespace

Fate fate_of(const Group& group, Member member, const Settings& old, const Settings& wanted, Length alike) {
    if (has_fingers(group.work.chosen.joint)) return fate_of_row(group, old, wanted, alike);
    if (alike_to(removal_of(group, member, old), removal_of(group, member, wanted), alike)) return Fate::fine;
    const Region gone_for_nothing =
        subtract(removed(group, member, old, Length{}), removed(group, member, wanted, alike));
    return is_empty(gone_for_nothing) ? Fate::recut : Fate::lost;
}

bool same_ends_will_do(const Group& group, const Settings& old, const Settings& wanted) {
    // No wood is as thin as what rounding an estimate to ticks can leave.
    constexpr Length rounding = Length::micrometres(1);
    const auto can = [&](Member member) {
        return fate_of(group, member, old, wanted, rounding) != Fate::lost;
    };
    return (!group.cuts_slot || can(Member::receiver)) && (!group.cuts_end || can(Member::insert));
}

}  // namespace kw
