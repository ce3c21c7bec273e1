#include "session/say_log.h"

#include <algorithm>

#include "session/test_cut.h"
#include "session/words.h"

namespace kw {
namespace {

constexpr std::size_t most_named = 4;

std::string joined(const std::vector<std::string>& words, const char* between = ", ") {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
    return out;
}

std::string say_named(const Job& job, const std::vector<NamedLength>& values) {
    std::vector<std::string> words;
    for (const NamedLength& value : values)
        words.push_back(plain_name(value.name) + " " + show_with_unit(value.value, caliper_locale(job)));
    return joined(words);
}

std::string say_setup(const Setup& setup) { return setup.id + " (" + setup.work + ")"; }

// As the plan calls it now; as it was called then where it is no longer planned.
std::string say_setup(const Work& work, const LogEntry& entry) {
    for (const Setup& setup : work.plan.setups) {
        if (work_key(setup, work.design) != without_pass_count(entry.key)) continue;
        const bool its_part =
            entry.part.empty() || std::any_of(setup.passes.begin(), setup.passes.end(),
                                              [&](const Pass& pass) { return pass.part == entry.part; });
        if (its_part) return say_setup(setup);
    }
    return entry.setup + " (no longer planned)";
}

std::string say_ends(const std::vector<const LogEntry*>& entries) {
    std::vector<std::string> words;
    for (const LogEntry* entry : entries)
        if (words.size() < most_named) words.push_back("`" + entry->part + "` " + entry->reference);
    const std::size_t more = entries.size() - words.size();
    return joined(words) + (more > 0 ? " and " + std::to_string(more) + " more" : "");
}

}  // namespace

std::string say_told(const Job& job, const LogEntry& entry) {
    std::vector<std::string> words;
    if (entry.moved_given)
        words.push_back(entry.moved.empty() ? "nothing moved" : "moved " + say_named(job, entry.moved));
    if (entry.fresh_end) words.emplace_back("fresh end");
    if (!entry.readings.empty()) words.push_back(say_named(job, entry.readings));
    if (!entry.felt.empty()) words.push_back("felt: " + entry.felt);
    for (const std::string& word : entry.seen) words.push_back(word);
    return joined(words);
}

std::size_t last_told(const std::vector<LogEntry>& log) {
    std::size_t count = log.empty() ? 0 : 1;
    while (count > 0 && count < log.size() && log[log.size() - count].together) ++count;
    return count;
}

std::string say_last(const Work& work, std::size_t count) {
    const auto& log = work.job.log;
    std::vector<const LogEntry*> ran;
    std::vector<std::string> words, lost;
    for (std::size_t i = log.size() - count; i < log.size(); ++i) {
        const LogEntry& entry = log[i];
        switch (entry.kind) {
            case LogKind::test:
                words.push_back("test cut at " + say_setup(work, entry) + ": " + say_told(work.job, entry));
                break;
            case LogKind::lock: words.push_back("locked " + say_setup(work, entry)); break;
            case LogKind::ran: ran.push_back(&entry); break;
            case LogKind::lost: lost.push_back("`" + entry.part + "`"); break;
        }
    }
    if (!ran.empty()) words.push_back("ran through " + say_setup(work, *ran.front()) + ": " + say_ends(ran));
    if (!lost.empty()) words.push_back((words.empty() ? "lost: " : "lost with it: ") + joined(lost));
    return joined(words, "; ");
}

Refusal too_early(const Setup& setup, const ComesFirst& first) {
    const std::string what = "`" + first.part + "` can't have gone through " + say_setup(setup) + " yet";
    const std::string before = say_setup(*first.setup);
    if (first.torn_down)
        return {"setup", Message::of(what, ": it was locked, then torn down"),
                Message::of("set it again as it was locked, test and lock ", setup.id,
                            " first; or tell that it ran before it was torn down")};
    if (first.lock && first.setup == &setup)
        return {"setup", Message::of(what, ": it is not locked"),
                Message::of("cut the joint in scrap, test and lock ", setup.id, " first")};
    if (first.lock)
        return {"setup", Message::of(what, ": its size follows from ", before, ", which is not locked"),
                Message::of("test and lock ", first.setup->id, " first")};
    if (first.through != first.part)
        return {"setup",
                Message::of(what, ": a bottom is cut after the dry fit, and `", first.through,
                            "` has not gone through ", before),
                Message::of("run it through ", first.setup->id, " first")};
    return {"setup", Message::of(what, ": first comes ", before),
            Message::of("run it through ", first.setup->id, " first")};
}

}  // namespace kw
