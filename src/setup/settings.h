#pragma once
// Where the controls of a machine must stand for a joint's cuts, and what cuts then come of it.

#include <optional>

#include "joint/closed.h"
#include "setup/shop.h"

namespace kw {

// The settings that the cuts of one setup group share. A pass removes [fence - spacer, fence - spacer + kerf], counted from
// the end or edge that touches the fence or the spacer.
struct Settings {
    Length fence;  // to the near side of the cutter, without the spacer
    Length height;
    Length kerf;
    Length
        shift;  // how far the fence goes out from the first pass to the last, of a slot wider than the cutter
    Length spacer;  // on the fence for the cut at an end; 0 where there is none

    bool operator==(const Settings&) const = default;
};

// How many passes a slot of this width takes with this kerf. At least 1.
int passes_for(Length width, Length kerf);

// A ridge between two passes that is thinner than this does not stand; common practice, no source.
inline constexpr Length ridge = Length::micrometres(50);

// How many passes a slot of this width is planned with: by what the cutter is called, or where it is known to cut wider or narrower,
// by that, so that no ridge is left. What takes several by the name and one as known takes one; what takes one by its name takes
// one, since a second is for a slot that was found too narrow.
int planned_passes(Length width, const Cutter& cutter);

// A slot between two walls, [near, near + width]: near side first, then the fence goes out by width - kerf.
Settings settings_for_slot(const Cut& cut, Length kerf);

// A cut at the end itself, [0, width]. From a fence that already stands: with a spacer, so that the far side comes to the
// cut's width. Where that spacer would be less than nothing, the fence itself moves in.
Settings settings_for_end(const Cut& cut, Length kerf, std::optional<Length> fence);

// The fence for pass `index` of `passes`.
Length fence_of_pass(const Settings& settings, int index, int passes);

// From the end to the cutter's near and far side, with the spacer on.
inline Length near_at_end(const Settings& settings) { return settings.fence - settings.spacer; }
inline Length far_at_end(const Settings& settings) { return near_at_end(settings) + settings.kerf; }

// Whether the strip between the end and the cutter is still there, and is cleared by sliding the part along the gauge.
inline bool needs_nibble(const Settings& settings) { return near_at_end(settings) > Length{}; }

// Whether the cutter runs in the spacer: then it must be one that may be cut into.
inline bool is_sacrificial(const Settings& settings) { return settings.spacer > settings.fence; }

// The slot as these settings cut it, all passes together.
Removal slot_removal(const Settings& settings, BoardFace down);
// The cut at the end, nibbled clean.
Removal end_removal(const Settings& settings, BoardFace down);

}  // namespace kw
