#pragma once
// Boards and sheets once some have been broken down: what is on hand, and which parts lie by themselves already.

#include "job/lay_out.h"

namespace kw {

// This stock broken down as it is laid out: `laid` is one of this job's, and nothing stands against it.
BrokenDown broken_down_of(const Job& job, const LaidStock& laid);

// The job's stock as its log has left it. What is counted has become less by what was used; the offcuts that were kept follow as sizes of
// their own, behind those of the job. What was used of a size that is no longer among the job's changes nothing.
std::vector<Stock> stock_on_hand(const Job& job);

// Whether any of its sizes has a width; else it is in boards as wide as their parts.
bool is_in_sheets(const Stock& stock);

// Whether the part can be made of what was freed for it: it is of that stock, and its finished size lies within. What it was cut larger by is
// there to be taken off, so that a joint which asks for a longer part is not cut anew for it.
bool is_enough(const Job& job, const Part& part, const Freed& freed);

}  // namespace kw
