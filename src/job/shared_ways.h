#pragma once
// A joint's ways where they share setups with other joints, so that they are no options of one problem. Private to this folder.

#include "job/ways.h"

namespace kw {

// `proved_with`: no order of the work with that way takes less; `proved_without`: nor of the work without the joint.
Surety surety_of(bool proved_with, bool proved_without);

// The one that was picked first, then the least.
void sort_ways(WayReason& reason);

// Each way with all else as in `picks`, in a search of so many looks, which `watch` may end; `picks` gets the best. Nothing where a way can't be had so, or what
// the joint adds can't be told from what another joint of the same drawer does.
std::optional<WayReason> compare_alone(const Job& job, const Alternative& of, Picks& picks,
                                       std::int64_t looks, const Watch& watch);

}  // namespace kw
