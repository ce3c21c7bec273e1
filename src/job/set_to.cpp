#include "job/set_to.h"

namespace kw {

bool is_off(Length truly, Length scale) {
    constexpr Length told_apart = Length::micrometres(10);
    return abs(truly - scale) > told_apart;
}

ControlAt control_at(Length truly, Length scale) { return {truly, scale, is_off(truly, scale)}; }

ControlMove move_of(const ControlAt& before, const ControlAt& now) {
    return {now.by_scale ? before.scale : before.truly, now.set(), now.by_scale};
}

ControlAt SetTo::fence_to(CutterSide side) const {
    ControlAt to = fence;
    // A cut to size is measured to the side of the blade that the part stays on.
    if (side == CutterSide::far && height && !on_jig) to.truly += kerf;
    return to;
}

SetTo set_to(const Work& work, const Setup& setup) {
    const Dial dial = dial_of(work, setup);
    SetTo to{dial,
             kerf_as_put_on(work, setup),
             control_at(setup.fence + dial.fence_beyond, dial.fence),
             {},
             setup.spacer,
             setup.index.has_value()};
    if (to.on_jig) to.fence = control_at(to.fence.truly, to.fence.truly);
    if (setup.height) to.height = control_at(*setup.height + dial.height_beyond, dial.height);
    return to;
}

}  // namespace kw
