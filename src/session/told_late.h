#pragma once
// Entries of the document's log that are told late, or taken out of its middle.

#include <vector>

#include "file/document.h"
#include "job/job.h"

namespace kw {

// The first of these entries' parts that was lost since the group with this key was locked last: what ran before then was another
// piece. Empty: none.
std::string lost_since_lock(const Json& log, const std::string& key, const std::vector<LogEntry>& ran);

// What ran while the group stood locked goes behind its last lock, with what was told at once with that in front of it. All of it is told at once.
void tell_behind_lock(Json& log, const std::string& key, const std::vector<LogEntry>& ran, Unit unit);

// The last entry that tells that this has run is taken out.
void take_back_run(Json& log, const LogEntry& ran);

}  // namespace kw
