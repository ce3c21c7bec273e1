#include "draw/finger_cuts.h"

#include "draw/joint_cuts.h"

namespace kw::draw {
namespace {

// Readings that are nonsense must not make a row of countless sockets.

// The first end that goes by the board's height; where none was asked for, some fingers.
Length height_of(const Group& group, const Settings& settings) {
    for (const auto* ends : {&group.work.receivers, &group.work.inserts})
        for (const PartEnd& end : *ends)
            if (end.up > Length{}) return end.up;
    return 4 * max(settings.fence + settings.kerf, least_pitch);
}

}  // namespace

FingerCuts finger_cuts(const Work& work, const Group& group, const Settings& settings) {
    const Group* slot_group = slot_of(work.standing_design, group);
    const Group* end_group = group.cuts_end ? nullptr : end_group_of(work, group);
    const Settings here = in_row(settings, group, leading_row(work.standing_design, work.standing, group));
    const Length pitch = max(here.fence + here.kerf, least_pitch);
    const SocketRow receiver{here.fence, here.kerf, pitch,
                             slot_group ? slot_group->stands.height : here.height};
    const SocketRow insert{Length{}, here.kerf, pitch, end_group ? end_group->stands.height : here.height};
    const bool insert_seen = !group.cuts_slot;
    return {insert_seen ? insert : receiver,
            insert_seen ? receiver : insert,
            height_of(group, here),
            insert_seen ? group.work.receiver_thickness : group.work.insert_thickness,
            group.work.chosen.joint.step,
            insert_seen};
}

ClosedFingers closed(const FingerCuts& cuts, Length shown) {
    return close_fingers(fingered_end(cuts.seen, cuts.height, shown),
                         fingered_end(cuts.entering, cuts.height, shown), cuts.entering_thickness);
}

Length fit_of(const FingerCuts& cuts) { return cuts.seen.width + cuts.entering.width - cuts.seen.pitch; }

FingerCuts exaggerated(const FingerCuts& cuts, int times) {
    FingerCuts large = cuts;
    const Length wider = ((times - 1) * fit_of(cuts)).scaled(1, 2);
    for (SocketRow* row : {&large.seen, &large.entering}) {
        // A row that begins with a finger keeps the far walls of its sockets in their place, and so do the fingers that fill them.
        row->width += wider;
        if (row->near > Length{}) row->near -= wider;
    }
    large.seen.depth += (times - 1) * (proud_of(cuts) - cuts.step);
    return large;
}

int fitting_exaggeration(const FingerCuts& cuts) {
    return fitting_times(max(abs(fit_of(cuts)), abs(proud_of(cuts) - cuts.step)),
                         min(cuts.seen.width, cuts.seen.depth).scaled(1, 5));
}

}  // namespace kw::draw
