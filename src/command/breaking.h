#pragma once
// The breaking-down of boards and sheets, as `plan` has it. Private to this folder.

#include <string>

#include "file/document.h"
#include "job/lay_out.h"
#include "job/work.h"

namespace kw {

// The part of the plan before the setups; what to give where nothing can be laid out.
std::string breaking_text(const Work& work, const LayOut& layout);
// "With the breaking-down about 3 h 20 min."; empty where nothing is laid out.
std::string breaking_total_text(const Work& work, const LayOut& layout);
// What it takes, a line for each stock; empty where nothing is laid out.
std::string breaking_cost_text(const Work& work, const LayOut& layout);
Json breaking_json(const Work& work, const LayOut& layout);

// Cuts by the places of the sheet and of the cut in their lists.
Json cut_places_json(const LaidSetting& setting);
// "rip", "crosscut".
const char* word_of(cutting::CutDirection direction);

// Parts with the stock and the size of which they were freed.
Json freed_json(const std::vector<FreedOf>& freed);

// "15:20", minutes and seconds.
std::string clock_text(std::int64_t seconds);

}  // namespace kw
