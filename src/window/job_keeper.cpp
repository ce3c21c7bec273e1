#include "window/job_keeper.h"

#include <algorithm>

#include "file/shop_file.h"
#include "session/asked_on.h"
#include "window/platform.h"

namespace kw::window {
namespace {

// What the longer log has that the shorter has not: "lock at S29". Anything else is a change of the job.
std::string difference(const Json& shorter, const Json& longer) {
    const auto entries = [](const Json& document) {
        return document.contains("log") && document["log"].is_array() ? document["log"].size() : 0;
    };
    if (entries(longer) <= entries(shorter)) return "a change of the job";
    std::size_t last = longer["log"].size() - 1;  // what was lost by a lock is logged behind it
    while (last > entries(shorter) && longer["log"][last].value("kind", "") == "lost") --last;
    const Json& entry = longer["log"][last];
    const std::string kind = entry.value("kind", "");
    const std::string setup = entry.value("setup", "");
    return (kind == "test" ? "test cut at " : kind == "lock" ? "lock at " : "parts run at ") + setup;
}

void note_refusal(const Session& session, Answer& answer) {
    if (!session.refused.empty()) answer.said.push_back({session.refused, Tone::wrong, true});
}

}  // namespace

JobKeeper::JobKeeper(KeptJob kept, bool in_a_thread, std::function<void()> wake)
    : kept_(std::move(kept)), wake_(std::move(wake)), aside_(in_a_thread) {}

void JobKeeper::begin() {
    aside_.post([this] {
        kept_.session = worked_out(std::move(kept_.session), watch());
        give({0, kept_.session, {}});
    });
}

void JobKeeper::ask(AskedAction asked) {
    {
        const std::lock_guard lock(mutex_);
        asked_.push_back(std::move(asked));
        ++asked_for_;
    }
    aside_.post([this] { take_next(); });
}

std::optional<Answer> JobKeeper::answer() {
    const std::lock_guard lock(mutex_);
    if (answers_.empty()) return std::nullopt;
    Answer first = std::move(answers_.front());
    answers_.erase(answers_.begin());
    return first;
}

std::optional<SearchNews> JobKeeper::search_news() const {
    const std::lock_guard lock(mutex_);
    return news_;
}

void JobKeeper::forget(Session session) {
    auto held = std::make_shared<Session>(std::move(session));
    aside_.post([held]() mutable { held.reset(); });
}

Watch JobKeeper::watch() {
    return [this](std::int64_t best_s, std::int64_t bound_s) {
        {
            const std::lock_guard lock(mutex_);
            news_ = SearchNews{best_s, bound_s, has_enough()};
        }
        const SearchMore more = other_ ? other_(best_s, bound_s) : SearchMore::yes;
        const std::lock_guard lock(mutex_);
        return has_enough() ? SearchMore::no : more;
    };
}

void JobKeeper::stop_searching() {
    const std::lock_guard lock(mutex_);
    enough_ = asked_for_;
    if (news_) news_->is_ending = true;
}

// Edits that have come in together are worked out once; any other action needs the plan that is newest then.
std::vector<AskedAction> JobKeeper::next_asked() {
    const std::lock_guard lock(mutex_);
    const auto other = std::find_if(asked_.begin(), asked_.end(),
                                    [](const AskedAction& asked) { return !is_edit(asked.action); });
    const auto end = other == asked_.begin() && other != asked_.end() ? other + 1 : other;
    std::vector<AskedAction> next(std::make_move_iterator(asked_.begin()), std::make_move_iterator(end));
    asked_.erase(asked_.begin(), end);
    taken_ += next.size();
    return next;
}

void JobKeeper::take_next() {
    const std::vector<AskedAction> next = next_asked();
    if (next.empty()) return;  // taken together with an earlier one
    Answer answer = is_edit(next.front().action) ? take_edits(next) : take(next.front());
    answer.actions = next.size();
    answer.session = kept_.session;
    give(std::move(answer));
}

void JobKeeper::give(Answer answer) {
    {
        const std::lock_guard lock(mutex_);
        answers_.push_back(std::move(answer));
        news_.reset();
    }
    wake_();
}

Answer JobKeeper::take_edits(const std::vector<AskedAction>& edits) {
    Answer answer;
    std::vector<Session> steps;
    Session now = kept_.session;
    for (const AskedAction& edit : edits) {
        now = edited(std::move(now), edit.action, edit.time);
        if (now.refused.empty()) steps.push_back(now);
        note_refusal(now, answer);
    }
    const bool changed = now.document != kept_.session.document;
    kept_.session = std::move(now);
    if (changed) save(answer);
    if (steps.empty()) return answer;
    kept_.session = worked_out(std::move(kept_.session), watch());
    // Where the last can't be made, what is shown is the last that could.
    for (std::size_t i = steps.size() - 1; !kept_.session.problems.empty() && i-- > 0;) {
        const Session tried = worked_out(std::move(steps[i]), watch());
        if (!tried.problems.empty()) continue;
        kept_.session.work = tried.work;
        break;
    }
    return answer;
}

Answer JobKeeper::take(const AskedAction& asked) {
    Answer answer;
    const Session before = std::move(kept_.session);
    std::optional<Action> action = asked.action;
    if (asked.seen && before.work && asked.seen != before.work)
        action = asked_on(asked.action, asked.seen->plan, before.work->plan);
    if (!action) {
        kept_.session = before;
        answer.said.push_back(
            {"Not taken: the order was made anew meanwhile, and this is no longer in it; look again",
             Tone::wrong, true});
        return answer;
    }
    kept_.session = apply(before, *action, asked.time, watch());
    const Session& after = kept_.session;
    note_refusal(after, answer);
    if (!after.refused.empty()) return answer;
    const bool changed = after.document != before.document;
    if (std::holds_alternative<Undo>(asked.action) && changed)
        answer.said.push_back({"Undone: " + difference(after.document, before.document)});
    if (std::holds_alternative<Redo>(asked.action) && changed)
        answer.said.push_back({"Done again: " + difference(before.document, after.document)});
    answer.test_taken = std::holds_alternative<SaveTest>(asked.action);
    if (after.memory != before.memory) keep_memory(before.memory, answer);
    if (changed) save(answer);
    return answer;
}

void JobKeeper::save(Answer& answer) {
    if (const auto saved = save_file(kept_.path, to_text(kept_.session.document)); !saved)
        answer.said.push_back(
            {"Not saved: " + saved.error().why.text(Locale(Graduation::mm_0_1, kept_.session.language)),
             Tone::wrong});
    platform::commit_data();
}

// The file may have been changed by someone else meanwhile: that stays. Where it can't be read now, why: then it is not written either.
std::string JobKeeper::read_shop_again() {
    const std::string name = kept_.shop_path.string();
    std::error_code error;
    if (!std::filesystem::exists(kept_.shop_path, error)) return {};
    const auto text = read_file(kept_.shop_path);
    if (!text) return name + ": " + text.error().why.text(Locale(Graduation::mm_0_1, kept_.session.language));
    auto json = parse_json(*text);
    if (!json) return report(name, *text, json.error(), Locale(Graduation::mm_0_1, kept_.session.language));
    if (const auto memory = read_memory(*json); !memory) {
        const Problem& problem = memory.error().front();
        return name + ": " + problem.pointer + ": " +
               problem.why.text({Graduation::mm_0_01, kept_.session.language});
    }
    kept_.shop = std::move(*json);
    return {};
}

void JobKeeper::keep(const Preferences& before, const Preferences& now) {
    aside_.post([this, before, now] {
        if (kept_.shop_path.empty()) return;
        std::string why = read_shop_again();
        if (why.empty()) {
            kept_.shop = with_preferences(kept_.shop, changed_in(read_preferences(kept_.shop), before, now));
            const auto saved = save_file(kept_.shop_path, to_text(kept_.shop));
            platform::commit_data();
            if (saved) return;
            why = saved.error().why.text(Locale(Graduation::mm_0_1, kept_.session.language));
        }
        Answer answer;
        answer.session = kept_.session;
        answer.said.push_back({"The preferences are not saved: " + why, Tone::wrong});
        give(std::move(answer));
    });
}

void JobKeeper::keep_memory(const Memory& before, Answer& answer) {
    if (kept_.shop_path.empty()) return;
    Memory memory = kept_.session.memory;
    if (const std::string why = read_shop_again(); !why.empty()) {
        answer.said.push_back({"What was learned is not saved: " + why, Tone::wrong});
        return;
    }
    const auto there = read_memory(kept_.shop);
    for (const Lesson& lesson : there ? there->lessons : std::vector<Lesson>{}) {
        const auto holds = [&](const Memory& all) {
            return std::find(all.lessons.begin(), all.lessons.end(), lesson) != all.lessons.end();
        };
        if (!holds(before) && !holds(memory)) memory.lessons.push_back(lesson);
    }
    kept_.shop = with_memory(std::move(kept_.shop), memory);
    if (const auto saved = save_file(kept_.shop_path, to_text(kept_.shop)); !saved)
        answer.said.push_back({"What was learned is not saved: " +
                                   saved.error().why.text(Locale(Graduation::mm_0_1, kept_.session.language)),
                               Tone::wrong});
    platform::commit_data();
}

}  // namespace kw::window
