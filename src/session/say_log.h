#pragma once
// What stands in the log, and what stands in the way of a tick, in the maker's words.

#include <string>
#include <vector>

#include "job/comes_first.h"

namespace kw {

// "moved fence 0.006 in, fresh end, fit 0.004 in": what was told with a test cut.
std::string say_told(const Work& work, const LogEntry& entry);

// "broke down ply 12 (2 pieces): 12 parts freed; kept 30 × 20 in"; empty of other entries.
std::string say_broken_down(const Job& job, const LogEntry& entry);

// The setup of the plan as it is now that an entry tells of; nullptr where that is no longer planned.
const Setup* setup_of_entry(const Work& work, const LogEntry& entry);

// How many entries at the end of the log were told at once.
std::size_t last_told(const std::vector<LogEntry>& log);

// The last so many entries: "locked S16 (locking rabbet: side dado); lost with it: `twine.1.front`".
std::string say_last(const Work& work, std::size_t count);

// What a setup is called: by the plan's ids ("S16"), as the command line takes them, or by where it stands in the order ("step 12").
enum class SetupNames { ids, steps };

// Why a part has not gone through the setup yet, and what comes first.
Refusal too_early(const Plan& plan, const Setup& setup, const ComesFirst& first, SetupNames names,
                  const Words& words);

}  // namespace kw
