#include "session/told_late.h"

#include <algorithm>

#include "job/standing.h"
#include "job/work_order.h"

namespace kw {

std::string lost_since_lock(const std::vector<LogEntry>& log, const std::string& key,
                            const std::vector<LogEntry>& ran) {
    const auto lock = std::find_if(log.rbegin(), log.rend(), [&](const LogEntry& entry) {
        return entry.kind == LogKind::lock && group_in_key(entry.key) == key;
    });
    const auto is_lost = [&](const LogEntry& one) {
        return std::any_of(lock.base(), log.end(), [&](const LogEntry& since) {
            return since.kind == LogKind::lost && since.part == one.part;
        });
    };
    const auto lost = std::find_if(ran.begin(), ran.end(), is_lost);
    return lost == ran.end() ? std::string() : lost->part;
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
