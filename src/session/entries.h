#pragma once
// What was told, as it goes into the log. Private to this folder.

#include "job/work.h"

namespace kw {

// `time`: ISO 8601, UTC. A size that was cut goes with it.
LogEntry ran_entry(const Work& work, const Setup& setup, const Pass& pass, const std::string& time);

// Another piece of that part begins at the board.
LogEntry lost_entry(const std::string& part, const std::string& time);

// Boards or sheets of a stock that were broken down. Refused where the job has no such stock or part, where nothing was freed, or where one of
// its parts lies by itself at this size already.
tl::expected<LogEntry, Refusal> broken_down_entry(const Work& work, BrokenDown down, const std::string& time);

}  // namespace kw
