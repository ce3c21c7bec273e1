#pragma once
// The log in a job file: read, and written one entry at a time.

#include "file/fields.h"

namespace kw {

std::vector<LogEntry> read_log(Fields& job_fields);
Json log_entry_json(const LogEntry& entry, Unit unit);

}  // namespace kw
