#include "job/work_order.h"

#include <algorithm>

namespace kw {

std::string_view group_in_key(std::string_view key) { return key.substr(0, key.find(" | ")); }

namespace {

using Entries = std::vector<const LogEntry*>;

// Behind the lock by which it ran, where that is still there; else behind the last of its setup; the end where there is none.
Entries::iterator place_of(const LogEntry& late, Entries& order) {
    const auto last_lock = [&](const auto& is_it) {
        return std::find_if(order.rbegin(), order.rend(), [&](const LogEntry* other) {
            return other->kind == LogKind::lock && group_in_key(other->key) == group_in_key(late.key) &&
                   is_it(*other);
        });
    };
    auto lock = last_lock([&](const LogEntry& other) { return other.time == late.late; });
    if (lock == order.rend()) lock = last_lock([](const LogEntry&) { return true; });
    if (lock == order.rend()) return order.end();
    return std::find_if(lock.base(), order.end(),
                        [](const LogEntry* other) { return !other->together && other->late.empty(); });
}

}  // namespace

std::vector<const LogEntry*> in_order_of_work(const std::vector<LogEntry>& log) {
    Entries order;
    for (const LogEntry& entry : log)
        order.insert(entry.late.empty() ? order.end() : place_of(entry, order), &entry);
    return order;
}

std::vector<std::string> keys_begun(const std::vector<LogEntry>& log) {
    std::vector<std::string> keys;
    for (const LogEntry* entry : in_order_of_work(log)) {
        std::string key(group_in_key(entry->key));
        const bool is_set = entry->kind == LogKind::test || entry->kind == LogKind::lock;
        if (is_set && !key.empty() && std::find(keys.begin(), keys.end(), key) == keys.end())
            keys.push_back(std::move(key));
    }
    return keys;
}

std::vector<std::string> may_have_been_done_on(const LogEntry& entry, const Shop& shop) {
    if (!entry.machine.empty()) return {entry.machine};
    std::vector<std::string> named, all;
    for (const Machine& machine : shop.machines) {
        all.push_back(machine.name);
        if (entry.key.find("; " + machine.name + ", ") != std::string::npos) named.push_back(machine.name);
    }
    return named.empty() ? all : named;
}

}  // namespace kw
