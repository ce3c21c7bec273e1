#include "session/entries.h"

#include <utility>

#include "words/near_name.h"

namespace kw {
namespace {

LogEntry entry_of(LogKind kind, const std::string& time) {
    LogEntry entry;
    entry.kind = kind;
    entry.time = time;
    return entry;
}

bool is_told(const Work& work, const BrokenDown& down, const FreedPart& part) {
    const auto found = work.standing.freed.find(part.part);
    return found != work.standing.freed.end() && found->second.stock == down.stock &&
           found->second.length == part.length && found->second.width == part.width;
}

std::optional<Refusal> fault_of(const Work& work, const BrokenDown& down) {
    const auto refusal = [&](Message why, Message remedy) {
        return Refusal{"stock", std::move(why), std::move(remedy)};
    };
    if (!work.job.stock_named(down.stock)) {
        std::vector<std::string> names;
        for (const Stock& stock : work.job.stock) names.push_back(stock.name);
        const std::string near = near_name(down.stock, names);
        return refusal(Message::say("refused.no_stock", down.stock),
                       near.empty() ? Message::say("file.write", either_of({names.begin(), names.end()}))
                                    : Message::say("file.did_you_mean", in_quotes(near)));
    }
    if (down.freed.empty())
        return refusal(Message::say("refused.none_to_break_down", down.stock),
                       Message::say("refused.see_layout"));
    for (const FreedPart& part : down.freed) {
        if (!work.plan.part_with_id(part.part))
            return refusal(Message::say("refused.no_part_to_free", part.part),
                           Message::say("refused.see_layout"));
        if (is_told(work, down, part))
            return refusal(Message::say("refused.freed_already", part.part),
                           Message::say("refused.tell_lost", part.part));
    }
    return std::nullopt;
}

}  // namespace

LogEntry ran_entry(const Work& work, const Setup& setup, const Pass& pass, const std::string& time) {
    LogEntry entry = entry_of(LogKind::ran, time);
    entry.setup = setup.id;
    entry.key = work_key(setup, work.design);
    entry.machine = setup.machine;
    entry.part = pass.part;
    entry.reference = std::string(name_of(pass.reference));
    if (!setup.height) entry.readings.push_back({"size", setup.fence});
    return entry;
}

LogEntry lost_entry(const std::string& part, const std::string& time) {
    LogEntry entry = entry_of(LogKind::lost, time);
    entry.part = part;
    return entry;
}

tl::expected<LogEntry, Refusal> broken_down_entry(const Work& work, BrokenDown down,
                                                  const std::string& time) {
    if (auto fault = fault_of(work, down)) return tl::unexpected(std::move(*fault));
    LogEntry entry = entry_of(LogKind::broken_down, time);
    entry.broken_down = std::move(down);
    return entry;
}

}  // namespace kw
