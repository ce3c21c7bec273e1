#include "setup/settings.h"

#include <algorithm>

namespace kw {

int passes_for(Length width, Length kerf) {
    if (width <= kerf) return 1;
    return static_cast<int>((width.ticks() + kerf.ticks() - 1) / kerf.ticks());
}

int planned_passes(Length width, const Cutter& cutter) {
    const int called = passes_for(width, cutter.kerf);
    const Length known = cutter.kerf + cutter.known_wider;
    // Half as wide as it is called is another cutter, or a slip.
    if (called == 1 || cutter.known_wider == Length{} || 2 * known < cutter.kerf) return called;
    // As called, unless that leaves a ridge, or is more than touch each other. Half of the ridge is left to the fence's own steps.
    const Length half = ridge.scaled(1, 2);
    return std::clamp(called, passes_for(width + half, known + half), passes_for(width, known));
}

Settings settings_for_slot(const Cut& cut, Length kerf) {
    return {cut.near, cut.depth, kerf, max(cut.width - kerf, Length{}), Length{}};
}

Settings settings_for_end(const Cut& cut, Length kerf, std::optional<Length> fence) {
    // Without a fence that stands already: close to the end, the cutter's far side at the cut's width.
    const Length stands = fence.value_or(max(cut.width - kerf, Length{}));
    const Length spacer = stands + kerf - cut.width;
    if (spacer >= Length{}) return {stands, cut.depth, kerf, Length{}, spacer};
    return {cut.width - kerf, cut.depth, kerf, Length{}, Length{}};
}

Length fence_of_pass(const Settings& settings, int index, int passes) {
    return passes < 2 ? settings.fence : settings.fence + settings.shift.scaled(index, passes - 1);
}

Removal slot_removal(const Settings& settings, BoardFace down) {
    return {down, settings.fence, settings.fence + settings.kerf + settings.shift, settings.height};
}

Removal end_removal(const Settings& settings, BoardFace down) {
    return {down, Length{}, far_at_end(settings), settings.height};
}

}  // namespace kw
