#include "window/job_keeper.h"

#include <algorithm>

#include "file/shop_file.h"
#include "session/asked_on.h"
#include "session/merged.h"
#include "window/platform.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

// What the longer log has that the shorter has not: "lock at step 12". Anything else is a change of the job.
std::string difference(const Words& words, const Json& shorter, const Json& longer, const Work* work) {
    const auto log_of = [](const Json& document) {
        return document.contains("log") && document["log"].is_array() ? document["log"] : Json::array();
    };
    Json more = log_of(longer);
    if (more.size() <= log_of(shorter).size()) return words("undo.job");
    for (const Json& entry : log_of(shorter))
        if (const auto found = std::find(more.begin(), more.end(), entry); found != more.end())
            more.erase(found);
    if (more.empty() || !work) return words("undo.job");
    const Json& entry = more[0];  // what was lost by a lock is logged behind it
    const std::string kind = entry.value("kind", "");
    if (kind == "lost") return words("undo.lost", part_words(words, work->plan, entry.value("part", "")));
    const std::string setup = entry.value("setup", "");
    return words(key_of("undo.", kind), step_name(words, work->plan, setup.substr(0, setup.find('#'))));
}

void note_refusal(const Session& session, Answer& answer) {
    if (!session.refused.empty()) answer.said.push_back({session.refused, Tone::wrong, true});
}

}  // namespace

JobKeeper::JobKeeper(KeptJob kept, bool in_a_thread, std::function<void()> wake)
    : kept_(std::move(kept)), in_shop_(kept_.session.memory), wake_(std::move(wake)), aside_(in_a_thread) {}

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
        take_work_of(kept_.session, tried);
        break;
    }
    return answer;
}

Answer JobKeeper::take(const AskedAction& asked) {
    Answer answer;
    const Words& words = words_in(kept_.session.language);
    if (!take_up_file(answer)) answer.said.clear();  // it is said when that is to be saved
    if (answer.file_taken) kept_.session = worked_out(std::move(kept_.session), watch());
    const Session before = std::move(kept_.session);
    std::optional<Action> action = asked.action;
    if (asked.seen && before.work && asked.seen != before.work)
        action = asked_on(asked.action, asked.seen->plan, before.work->plan);
    if (!action) {
        kept_.session = before;
        answer.said.push_back({words("keep.other_order"), Tone::wrong, true});
        return answer;
    }
    kept_.session = apply(before, *action, asked.time, watch());
    const Session& after = kept_.session;
    note_refusal(after, answer);
    if (!after.refused.empty()) return answer;
    const bool changed = after.document != before.document;
    if (std::holds_alternative<Undo>(asked.action) && changed)
        answer.said.push_back(
            {words("undo.undone", difference(words, after.document, before.document, before.work.get()))});
    if (std::holds_alternative<Redo>(asked.action) && changed)
        answer.said.push_back(
            {words("undo.redone", difference(words, before.document, after.document, after.work.get()))});
    answer.test_taken = std::holds_alternative<SaveTest>(asked.action);
    // What a lock teaches is kept once the lock itself is.
    if (!changed || save_worked_out(answer)) keep_memory(answer);
    return answer;
}

// How what is wrong with a file is told.
Locale JobKeeper::locale() const { return {Graduation::mm_0_01, kept_.session.language}; }

// What others have written into the file comes into the session; where that can't be, it is said, and the file is not to be written.
// The work is to be worked out anew then (`file_taken`).
bool JobKeeper::take_up_file(Answer& answer) {
    const Words& words = locale().words();
    const auto wrong = [&](const std::string& why) {
        last_wrong_ = why;
        answer.said.push_back({why, Tone::wrong});
        return false;
    };
    auto news = kept_.file.news(kept_.shop.json);
    if (!news) return wrong(words("keep.unreadable", news.error().text(locale())));
    last_wrong_.clear();
    if (!*news) return true;
    auto taken = taken_up(kept_.session, kept_.file.document(), **news);
    if (!taken) return wrong(words("keep.both_changed", taken.error()));
    kept_.session = std::move(*taken);
    kept_.file.take_up(std::move(**news));
    // A lock that was told elsewhere has taught the shop something too.
    if (!kept_.shop_path.empty() && read_shop_again().empty())
        if (auto memory = read_memory(kept_.shop.json)) {
            kept_.session.memory = with_others(std::move(kept_.session.memory), in_shop_, *memory);
            in_shop_ = std::move(*memory);
        }
    answer.file_taken = true;
    answer.said.push_back({words("keep.taken_up"), Tone::caution});
    return true;
}

void JobKeeper::look_at_file() {
    aside_.post([this] {
        Answer answer;
        const std::string said_before = last_wrong_;
        take_up_file(answer);
        const bool is_new = answer.file_taken || (!last_wrong_.empty() && last_wrong_ != said_before);
        if (!is_new) return;
        if (answer.file_taken) {
            kept_.session.refused.clear();
            kept_.session = worked_out(std::move(kept_.session), watch());
            if (kept_.session.document != kept_.file.document()) save_worked_out(answer);
        }
        answer.session = kept_.session;
        give(std::move(answer));
    });
}

std::string JobKeeper::end(const std::filesystem::path& other_folder) {
    stop_searching();
    std::string said;
    aside_.post([&] {
        Answer answer;
        if (kept_.session.document == kept_.file.document() || save(answer)) return keep_memory(answer);
        const std::string why = answer.said.empty() ? std::string() : answer.said.back().text;
        const auto beside = kept_.file.write_beside(kept_.session.document, other_folder);
        const Words& words = locale().words();
        said = why + "\n" +
               (beside ? words("keep.written_beside", beside->string())
                       : words("keep.not_saved", beside.error().text(locale())));
    });
    aside_.finish();
    return said;
}

// The session is worked out; where something came into it from the file it is so again.
bool JobKeeper::save_worked_out(Answer& answer) {
    const bool was_taken = std::exchange(answer.file_taken, false);
    const bool is_saved = save(answer);
    if (answer.file_taken) kept_.session = worked_out(std::move(kept_.session), watch());
    answer.file_taken |= was_taken;
    return is_saved;
}

bool JobKeeper::save(Answer& answer) {
    if (!take_up_file(answer)) return false;
    const auto saved = kept_.file.write(kept_.session.document);
    if (!saved)
        answer.said.push_back(
            {locale().words()("keep.not_saved", saved.error().text(locale())), Tone::wrong});
    return saved.has_value();
}

// The file may have been changed by someone else meanwhile: that stays. Where it can't be read now, why: then it is not written either.
std::string JobKeeper::read_shop_again() {
    const std::string name = kept_.shop_path.string();
    auto shop = read_shop_file(kept_.shop_path);
    if (!shop) return report(name, {}, shop.error(), locale());
    if (const auto memory = read_memory(shop->json); !memory) {
        const Problem& problem = memory.error().front();
        return name + ": " + problem.pointer + ": " + problem.why.text(locale());
    }
    kept_.shop = std::move(*shop);
    return {};
}

std::string JobKeeper::change_shop(const std::function<Json(const Json& shop)>& change) {
    constexpr int tries = 3;  // another may write just then
    std::string why;
    for (int i = 0; i < tries; ++i) {
        if (why = read_shop_again(); !why.empty()) continue;
        Json changed = change(kept_.shop.json);
        const auto saved = save_shop_file(kept_.shop_path, kept_.shop, changed);
        platform::commit_data();
        if (saved) {
            kept_.shop = {to_text(changed), std::move(changed)};
            return {};
        }
        why = saved.error().why.text(locale());
    }
    return why;
}

void JobKeeper::keep(const Preferences& before, const Preferences& now) {
    aside_.post([this, before, now] {
        if (kept_.shop_path.empty()) return;
        const std::string why = change_shop([&](const Json& shop) {
            return with_preferences(shop, changed_in(read_preferences(shop), before, now));
        });
        if (why.empty()) return;
        Answer answer;
        answer.session = kept_.session;
        answer.said.push_back({words_in(kept_.session.language)("keep.options_not_saved", why), Tone::wrong});
        give(std::move(answer));
    });
}

void JobKeeper::keep_memory(Answer& answer) {
    if (kept_.shop_path.empty() || kept_.session.memory == in_shop_) return;
    Memory kept;
    const std::string why = change_shop([&](const Json& shop) {
        const auto there = read_memory(shop);
        kept = there ? with_others(kept_.session.memory, in_shop_, *there) : kept_.session.memory;
        return with_memory(shop, kept);
    });
    if (why.empty()) in_shop_ = kept_.session.memory = std::move(kept);
    else answer.said.push_back({locale().words()("keep.learned_not_saved", why), Tone::wrong});
}

}  // namespace kw::window
