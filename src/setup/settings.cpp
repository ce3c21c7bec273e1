#include "setup/settings.h"

namespace kw {

int passes_for(Length width, Length kerf) {
    if (width <= kerf) return 1;
    return static_cast<int>((width.ticks() + kerf.ticks() - 1) / kerf.ticks());
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
