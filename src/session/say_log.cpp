#include "session/say_log.h"

#include <algorithm>

#include "session/words.h"
#include "words/names.h"

namespace kw {
namespace {

constexpr std::size_t most_named = 4;

std::string say_readings(const Job& job, const std::vector<NamedLength>& readings) {
    const Words& words = job.locale.words();
    std::vector<std::string> texts;
    for (const NamedLength& reading : readings)
        texts.push_back(words("told.length", reading_word(words, reading.name),
                              show_with_unit(reading.value, caliper_locale(job))));
    return words.list(texts, "list.comma");
}

std::string say_moved(const Work& work, const LogEntry& entry) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const Setup* setup = setup_of_entry(work, entry);
    const std::vector<NamedLength>& moves = entry.moved;
    if (moves.empty()) return words("told.nothing_moved");
    std::vector<std::string> texts;
    for (const NamedLength& move : moves)
        texts.push_back(words("told.length",
                              control_word(words, setup ? control_at_setup(*setup, move.name) : move.name),
                              show_with_unit(move.value, caliper_locale(job))));
    return words("told.moved", words.list(texts, "list.comma"));
}

std::string say_setup(const Words& words, const Setup& setup) {
    return words("entry.setup", setup.id, work_word(words, setup.work));
}

// As the plan calls it now; as it was called then where it is no longer planned.
std::string say_setup_of(const Work& work, const LogEntry& entry) {
    const Words& words = work.job.locale.words();
    const Setup* setup = setup_of_entry(work, entry);
    return setup ? say_setup(words, *setup) : words("entry.setup_no_longer_planned", entry.setup);
}

std::string say_ends(const Words& words, const std::vector<const LogEntry*>& entries) {
    std::vector<std::string> texts;
    for (const LogEntry* entry : entries)
        if (texts.size() < most_named)
            texts.push_back(words("entry.end", entry->part, end_word(words, entry->reference)));
    const std::size_t more = entries.size() - texts.size();
    const std::string all = words.list(texts, "list.comma");
    return more > 0 ? words("entry.and_more", all, more) : all;
}

}  // namespace

const Setup* setup_of_entry(const Work& work, const LogEntry& entry) {
    for (const Setup& setup : work.plan.setups) {
        if (work_key(setup, work.design) != without_pass_count(entry.key)) continue;
        const bool its_part =
            entry.part.empty() || std::any_of(setup.passes.begin(), setup.passes.end(),
                                              [&](const Pass& pass) { return pass.part == entry.part; });
        if (its_part) return &setup;
    }
    return nullptr;
}

std::string say_told(const Work& work, const LogEntry& entry) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    std::vector<std::string> texts;
    if (entry.moved_given) texts.push_back(say_moved(work, entry));
    if (entry.fresh_end) texts.push_back(words("told.fresh_end"));
    if (!entry.readings.empty()) texts.push_back(say_readings(job, entry.readings));
    if (!entry.felt.empty()) texts.push_back(words("told.felt", feel_word(words, entry.felt)));
    for (const std::string& seen : entry.seen) texts.push_back(sight_word(words, seen));
    return words.list(texts, "list.comma");
}

std::string say_broken_down(const Job& job, const LogEntry& entry) {
    const Words& words = job.locale.words();
    if (!entry.broken_down) return {};
    const BrokenDown& down = *entry.broken_down;
    std::int64_t used = 0;
    for (const UsedPieces& pieces : down.used) used += pieces.count;
    const auto parts = static_cast<long long>(down.freed.size());
    std::string said =
        words.counted("entry.broken_down", parts, down.stock, words.counted("layout.pieces", used));
    std::vector<std::string> kept;
    for (const KeptOffcut& offcut : down.kept)
        kept.push_back(
            words("layout.size", show(offcut.length, job.locale), show_with_unit(offcut.width, job.locale)));
    return kept.empty() ? said : words("entry.kept", said, words.list(kept, "list.comma"));
}

std::size_t last_told(const std::vector<LogEntry>& log) {
    std::size_t count = log.empty() ? 0 : 1;
    while (count > 0 && count < log.size() && log[log.size() - count].together) ++count;
    return count;
}

std::string say_last(const Work& work, std::size_t count) {
    const Words& words = work.job.locale.words();
    const auto& log = work.job.log;
    std::vector<const LogEntry*> ran;
    std::vector<std::string> texts, lost;
    for (std::size_t i = log.size() - count; i < log.size(); ++i) {
        const LogEntry& entry = log[i];
        switch (entry.kind) {
            case LogKind::test:
                texts.push_back(words("entry.test", say_setup_of(work, entry), say_told(work, entry)));
                break;
            case LogKind::lock: texts.push_back(words("entry.locked", say_setup_of(work, entry))); break;
            case LogKind::ran: ran.push_back(&entry); break;
            case LogKind::lost: lost.push_back(words("entry.part", entry.part)); break;
            case LogKind::broken_down: texts.push_back(say_broken_down(work.job, entry)); break;
        }
    }
    if (!ran.empty())
        texts.push_back(words("entry.ran", say_setup_of(work, *ran.front()), say_ends(words, ran)));
    if (!lost.empty())
        texts.push_back(
            words(texts.empty() ? "entry.lost" : "entry.lost_with_it", words.list(lost, "list.comma")));
    std::string all;
    for (const std::string& text : texts) all = all.empty() ? text : words("entry.and_then", all, text);
    return all;
}

Refusal too_early(const Plan& plan, const Setup& setup, const ComesFirst& first, SetupNames names,
                  const Words& words) {
    const auto name = [&](const Setup& one) {
        return names == SetupNames::ids ? one.id : words("entry.step", step_of(plan, one.id) + 1);
    };
    const auto said = [&](const Setup& one) {
        return words("entry.setup", name(one), work_word(words, one.work));
    };
    const std::string here = said(setup), before = said(*first.setup);
    const auto part = [&](const std::string& id) {
        return names == SetupNames::ids ? part_message(id) : Message::of(say_part(words, plan, id));
    };
    const Message which = part(first.part);
    const auto refusal = [&](Message why, const char* remedy) {
        return Refusal{"setup", std::move(why), Message::say(remedy, name(*first.setup)), first.setup->id};
    };
    if (first.torn_down) return refusal(Message::say("early.torn_down", which, here), "early.set_again");
    if (first.lock && first.setup == &setup)
        return refusal(Message::say("early.not_locked", which, here), "early.test_in_scrap");
    if (first.lock)
        return refusal(Message::say("early.size_follows", which, here, before), "early.test_first");
    if (first.through != first.part)
        return refusal(Message::say("early.bottom", which, here, part(first.through), before),
                       "early.run_first");
    return refusal(Message::say("early.comes_first", which, here, before), "early.run_first");
}

}  // namespace kw
