#include "job/work_order.h"

#include <algorithm>

namespace kw {

std::string_view group_in_key(std::string_view key) { return key.substr(0, key.find(" | ")); }

std::vector<const LogEntry*> in_order_of_work(const std::vector<LogEntry>& log) {
    std::vector<const LogEntry*> order;
    for (const LogEntry& entry : log) {
        auto place = order.end();
        if (entry.late) {
            const auto lock = std::find_if(order.rbegin(), order.rend(), [&](const LogEntry* other) {
                return other->kind == LogKind::lock && group_in_key(other->key) == group_in_key(entry.key);
            });
            if (lock != order.rend())
                place = std::find_if(lock.base(), order.end(),
                                     [](const LogEntry* other) { return !other->together && !other->late; });
        }
        order.insert(place, &entry);
    }
    return order;
}

}  // namespace kw
