#pragma once
// The log in the order in which the work was done, which is not always that in which it was told.

#include <vector>

#include "job/job.h"

namespace kw {

// What was told late stands behind the lock by which it ran, or else the last of its setup that was told before, with what was told at
// once with that lock and what else was told late of it. Where there is none: where it was told. Points into `log`.
std::vector<const LogEntry*> in_order_of_work(const std::vector<LogEntry>& log);

// The machine that it says; of one that says none those that its key names, and all where it names none.
std::vector<std::string> may_have_been_done_on(const LogEntry& entry, const Shop& shop);

// The part of an entry's key that is its group's; all of it for a rip or a crosscut.
std::string_view group_in_key(std::string_view key);

// The groups of which the log tells a test cut or a lock, by their keys, each once, as they were begun.
std::vector<std::string> keys_begun(const std::vector<LogEntry>& log);

}  // namespace kw
