#pragma once
// Entries of the log that are told late, and entries of the document's log that are taken out of its middle.

#include <vector>

#include "file/document.h"
#include "job/job.h"

namespace kw {

// The first of these entries' parts that was lost since the group with this key was locked last: what ran before then was another
// piece. Empty: none.
std::string lost_since_lock(const std::vector<LogEntry>& log, const std::string& key,
                            const std::vector<LogEntry>& ran);

// The last entry that tells that this has run is taken out.
void take_back_run(Json& log, const LogEntry& ran);

}  // namespace kw
