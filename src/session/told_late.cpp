#include "session/told_late.h"

#include "file/read_log.h"
#include "job/parts_of.h"
#include "job/standing.h"

namespace kw {
namespace {

// Where the entries behind the last lock of the group begin.
std::size_t behind_lock(const Json& log, const std::string& key) {
    const auto is_its_lock = [&](const Json& entry) {
        const std::string its = entry.value("key", "");
        return entry.value("kind", "") == "lock" && (its == key || its.rfind(key + " | ", 0) == 0);
    };
    std::size_t at = log.size();
    while (at > 0 && !is_its_lock(log[at - 1])) --at;
    return at;
}

}  // namespace

std::string lost_since_lock(const Json& log, const std::string& key, const std::vector<LogEntry>& ran) {
    for (std::size_t at = behind_lock(log, key); at < log.size(); ++at)
        for (const LogEntry& entry : ran)
            if (log[at].value("kind", "") == "lost" && log[at].value("part", "") == entry.part)
                return entry.part;
    return {};
}

void tell_behind_lock(Json& log, const std::string& key, const std::vector<LogEntry>& ran, Unit unit) {
    std::size_t at = behind_lock(log, key);
    while (at < log.size() && log[at].value("together", false)) ++at;
    for (std::size_t i = 0; i < ran.size(); ++i) {
        LogEntry entry = ran[i];
        entry.together = i > 0;
        log.insert(log.begin() + static_cast<std::ptrdiff_t>(at + i), log_entry_json(entry, unit));
    }
}

void take_back_run(Json& log, const LogEntry& ran) {
    for (std::size_t i = log.size(); i-- > 0;) {
        const Json& other = log[i];
        if (other.value("kind", "") != "ran" || without_pass_count(other.value("key", "")) != ran.key ||
            other.value("part", "") != ran.part || other.value("reference", "") != ran.reference)
            continue;
        // What was told with it is now told with what follows.
        if (!other.value("together", false) && i + 1 < log.size()) log[i + 1].erase("together");
        log.erase(i);
        return;
    }
}

}  // namespace kw
