#include "session/session.h"

#include <algorithm>
#include <utility>

#include "file/read_log.h"
#include "job/comes_first.h"
#include "job/cut_again.h"
#include "job/pins.h"
#include "session/drawer_edits.h"
#include "session/entries.h"
#include "session/say_log.h"
#include "session/settled.h"
#include "session/told_late.h"
#include "session/with_field.h"

namespace kw {
namespace {

void work_it_out(Session& session, const Watch& watch) {
    auto job = read_job(session.document);
    if (!job) {
        session.problems = std::move(job.error());
        return;
    }
    job->locale.language = session.language;
    auto work = work_out(std::move(*job), session.memory, session.day, watch, settled_in(session));
    if (!work) {
        session.problems = std::move(work.error());
        return;
    }
    session.problems.clear();
    session.work = std::move(*work);
    note_settled(session);
}

Session refuse(Session session, std::string field, const Message& why) {
    Locale locale = session.work ? caliper_locale(session.work->job) : Locale(Graduation::in_001);
    locale.language = session.language;
    session.refused_field = std::move(field);
    session.refused = why.text(locale);
    return session;
}

Session refuse(Session session, const Refusal& refusal) {
    session = refuse(std::move(session), refusal.field,
                     Message::say("refused.with_remedy", refusal.why, refusal.remedy));
    session.refused_first = refusal.first;
    return session;
}

class Applier {
public:
    // Takes the session over: copying a document of a thousand drawers takes milliseconds. Without `works_out` the work stays as it was.
    Applier(Session& session, const std::string& time, bool works_out, const Watch& watch)
        : session_(session), time_(time), works_out_(works_out), watch_(watch) {}

    Session operator()(const SetField& set) const {
        try {
            const Json::json_pointer pointer(set.pointer);
            Json document = with_field(session_.document, pointer, set.value);
            if (pointer.parent_pointer().parent_pointer().to_string() == "/drawers" &&
                pointer.back() == "name")
                follow_name(document, session_.document.value(pointer, Json()), set.value);
            if (pointer.back() == "count")
                follow_count(document, session_.document, pointer.parent_pointer(), set.value);
            return with_document(session_, std::move(document));
        } catch (const Json::exception&) {
            return refuse(session_, set.pointer, Message::say("refused.no_such_field"));
        }
    }

    Session operator()(const AddDrawer& add) const {
        Json document = session_.document;
        Json& drawers = document["drawers"];
        if (!drawers.is_array() || add.like >= drawers.size() || !drawers[add.like].is_object())
            return refuse(session_, "/drawers", Message::say("refused.no_drawer_to_start_from"));
        Json drawer = drawers[add.like];
        forget_readings(drawer, session_.work && add.like < session_.work->job.drawers.size()
                                    ? session_.work->job.drawers[add.like].opening
                                    : std::nullopt);
        drawer["name"] = free_name(drawers, drawer.value("name", "drawer"));
        drawers.push_back(std::move(drawer));
        return with_document(session_, std::move(document));
    }

    Session operator()(const RemoveDrawer& remove) const {
        Json document = session_.document;
        Json& drawers = document["drawers"];
        if (remove.index >= drawers.size() || drawers.size() < 2)
            return refuse(session_, "/drawers", Message::say("refused.last_drawer"));
        leave_banks(document, remove.index);
        document["drawers"].erase(remove.index);
        return with_document(session_, std::move(document));
    }

    Session operator()(const GatherBank&) const {
        Json document = session_.document;
        std::vector<Problem> problems;
        const Job job = read_job(document, problems, nullptr);
        if (!problems.empty() || !gather_bank(document, job, words_in(session_.language)("bank.new_name")))
            return refuse(session_, "/banks", Message::say("refused.none_to_gather"));
        return with_document(session_, std::move(document));
    }

    Session operator()(const SaveTest& save) const {
        if (!session_.work) return nothing_planned();
        const auto entry = test_entry(*session_.work, save.cut, time_);
        return entry ? with_log_entry(session_, *entry) : refuse(session_, entry.error());
    }

    Session operator()(const LockGroup& lock) const {
        if (!session_.work) return nothing_planned();
        const auto entry = lock_entry(*session_.work, lock.cut, time_);
        if (!entry) return refuse(session_, entry.error());
        const Plan& plan = session_.work->plan;
        const Setup* setup = plan.setup_with_id(entry->setup.substr(0, entry->setup.find('#')));
        const std::string key = plan.group_with_id(setup->group)->key;
        return with_losses(with_log_entry(session_, *entry), key);
    }

    Session operator()(const MarkRun& mark) const {
        const Setup* setup = session_.work ? session_.work->plan.setup_with_id(mark.setup) : nullptr;
        if (!setup) return nothing_planned();
        const bool is_late = mark.before_torn_down && is_torn_down(*session_.work, *setup);
        if (mark.done)
            if (const auto first = what_comes_first(*session_.work, *setup, mark.passes);
                first && !(is_late && first->torn_down && first->setup == setup))
                return refuse(session_, too_early(session_.work->plan, *setup, *first, session_.names,
                                                  words_in(session_.language)));
        if (mark.done && !is_late)
            if (const Affected* part = too_small(*session_.work, *setup, mark.passes)) {
                Session out = refuse(session_, "part", Message::say("refused.too_small", part->said()));
                out.refused_part = part->part;
                return out;
            }
        std::vector<LogEntry> entries;
        for (const std::size_t index : mark.passes)
            entries.push_back(ran_entry(*session_.work, *setup, setup->passes.at(index), time_));
        return mark.done && is_late ? told_late(*setup, std::move(entries)) : told_now(entries, mark.done);
    }

    Session operator()(const MarkLost& lost) const {
        if (!session_.work) return nothing_planned();
        if (!session_.work->plan.part_with_id(lost.part))
            return refuse(session_, "part", Message::say("refused.no_part", lost.part));
        LogEntry entry = lost_entry(lost.part, time_);
        entry.together = lost.together;
        return with_log_entry(session_, entry);
    }

    Session operator()(const MarkBrokenDown& mark) const {
        if (!session_.work) return nothing_planned();
        auto entry = broken_down_entry(*session_.work, mark.what, time_);
        if (!entry) return refuse(session_, entry.error());
        entry->together = mark.together;
        return with_log_entry(session_, *entry);
    }

    Session operator()(const PinSetup& pin) const {
        const Setup* setup = session_.work ? session_.work->plan.setup_with_id(pin.setup) : nullptr;
        if (!setup) return nothing_planned();
        const std::string name = pin_name(*setup, session_.work->design);
        Json document = session_.document;
        Json& pins = document["pins"];
        if (!pins.is_object()) pins = Json::object();
        for (const char* list : {"first", "last"}) {
            Json kept = Json::array();
            for (const Json& one : pins.value(list, Json::array()))
                if (one != name) kept.push_back(one);
            if (pin.where == (list == std::string("first") ? Pinned::first : Pinned::last))
                kept.push_back(name);
            if (kept.empty()) pins.erase(list);
            else pins[list] = std::move(kept);
        }
        if (pins.empty()) document.erase("pins");
        return with_document(session_, std::move(document));
    }

    Session operator()(const TakeBack&) const {
        if (!session_.work) return nothing_planned();
        Json document = session_.document;
        const std::size_t count = last_told(session_.work->job.log);
        if (count == 0) return refuse(session_, "log", Message::say("refused.empty_log"));
        Json& log = document["log"];
        log.erase(log.end() - static_cast<std::ptrdiff_t>(count), log.end());
        return with_document(session_, std::move(document));
    }

    // What the shop believes is no part of the job: it is not undone with it.
    Session operator()(const ForgetBelief& belief) const {
        return with_memory(forget(session_.memory, belief.what));
    }
    Session operator()(const CorrectBelief& belief) const {
        return with_memory(correct(session_.memory, belief.what, belief.value, time_));
    }

    Session operator()(const SpeakIn& speak) const {
        Session after = std::move(session_);
        after.language = speak.language;
        work_it_out(after);
        return after;
    }

    Session operator()(const Undo&) const {
        return step(&Session::undo, &Session::redo, "refused.nothing_to_take_back");
    }
    Session operator()(const Redo&) const {
        return step(&Session::redo, &Session::undo, "refused.nothing_to_do_again");
    }

private:
    void work_it_out(Session& session) const {
        if (works_out_) kw::work_it_out(session, watch_);
    }

    Session with_document(Session& before, Json document) const {
        constexpr std::size_t most_undo = 200;
        Session after = std::move(before);
        after.undo.push_back(std::make_shared<const Json>(std::move(after.document)));
        if (after.undo.size() > most_undo) after.undo.erase(after.undo.begin());
        after.redo.clear();
        after.document = std::move(document);
        work_it_out(after);
        return after;
    }

    Session with_log_entry(Session& session, const LogEntry& entry) const {
        Json document = session.document;
        document["log"].push_back(log_entry_json(entry, session.work->job.unit));
        return with_document(session, std::move(document));
    }

    // Once a joint is locked, a part that it was cut wrong for before is lost for good: it is logged, in the same step, and is a part
    // to make again. Not the parts of a joint that is being tested still, nor sizes while some joint is.
    Session with_losses(Session after, const std::string& locked) const {
        if (!after.work) return after;
        const auto& groups = after.work->standing.groups;
        const bool all_locked =
            std::all_of(groups.begin(), groups.end(), [](const auto& group) { return group.second.locked; });
        std::vector<std::string> lost;
        for (const Affected& affected : after.work->affected)
            if (affected.fate == Fate::lost && !affected.is_logged &&
                (affected.group_key.empty() ? all_locked : affected.group_key == locked) &&
                std::find(lost.begin(), lost.end(), affected.part) == lost.end())
                lost.push_back(affected.part);
        if (lost.empty()) return after;
        for (const std::string& part : lost) {
            LogEntry entry = lost_entry(part, time_);
            entry.together = true;
            after.document["log"].push_back(log_entry_json(entry, after.work->job.unit));
        }
        work_it_out(after);
        return after;
    }

    Session with_memory(Memory memory) const {
        Session after = std::move(session_);
        after.memory = std::move(memory);
        work_it_out(after);
        return after;
    }

    Session nothing_planned() const {
        return refuse(session_, "setup", Message::say("refused.no_such_setup"));
    }

    using Documents = std::vector<std::shared_ptr<const Json>>;
    Session step(Documents Session::*source, Documents Session::*target, const char* why_not) const {
        if ((session_.*source).empty()) return refuse(session_, "", Message::say(why_not));
        Session after = std::move(session_);
        (after.*target).push_back(std::make_shared<const Json>(std::move(after.document)));
        after.document = *(after.*source).back();
        (after.*source).pop_back();
        work_it_out(after);
        return after;
    }

    // That these have run, or have not after all.
    Session told_now(const std::vector<LogEntry>& entries, bool done) const {
        Json document = session_.document;
        Json& log = document["log"];
        bool together = false;
        for (LogEntry entry : entries) {
            entry.together = std::exchange(together, true);
            if (done) log.push_back(log_entry_json(entry, session_.work->job.unit));
            else take_back_run(log, entry);
        }
        return with_document(session_, std::move(document));
    }

    // That these ran before the setup was torn down.
    Session told_late(const Setup& setup, std::vector<LogEntry> entries) const {
        const std::string& key = session_.work->plan.group_with_id(setup.group)->key;
        if (const std::string part = lost_since_lock(session_.work->job.log, key, entries); !part.empty())
            return refuse(session_, "part", Message::say("refused.lost_since", part));
        const std::string& lock = session_.work->standing.groups.at(key).locked_at;
        for (LogEntry& entry : entries) entry.late = lock;
        return told_now(entries, true);
    }

    Session& session_;
    const std::string& time_;
    bool works_out_;
    const Watch& watch_;
};

// As an action finds it.
Session made_ready(Session session, const std::string& time) {
    session.refused.clear();
    session.refused_field.clear();
    session.refused_first.clear();
    session.refused_part.clear();
    session.day = time.substr(0, std::string("2026-01-31").size());
    return session;
}

// A document that others write into may have anything anywhere: what can't be done with it is refused.
Session carried_out(Session& before, const Action& action, const std::string& time, bool works_out,
                    const Watch& watch) {
    try {
        return std::visit(Applier(before, time, works_out, watch), action);
    } catch (const Json::exception&) { return refuse(before, "", Message::say("refused.broken_document")); }
}

}  // namespace

Session unworked_session(Json document, Memory memory, std::string day, Language language) {
    Session session;
    session.document = std::move(document);
    session.memory = std::move(memory);
    session.day = std::move(day);
    session.language = language;
    return session;
}

Session open_session(Json document, Memory memory, std::string day) {
    return worked_out(unworked_session(std::move(document), std::move(memory), std::move(day)));
}

bool is_edit(const Action& action) {
    return std::holds_alternative<SetField>(action) || std::holds_alternative<AddDrawer>(action) ||
           std::holds_alternative<RemoveDrawer>(action) || std::holds_alternative<GatherBank>(action) ||
           std::holds_alternative<SpeakIn>(action);
}

bool can_be_shown(const Action& action) {
    return is_edit(action) || std::holds_alternative<Undo>(action) || std::holds_alternative<Redo>(action);
}

Session edited(Session session, const Action& action, const std::string& time) {
    if (!can_be_shown(action)) return session;
    Session before = made_ready(std::move(session), time);
    return carried_out(before, action, time, false, {});
}

Session worked_out(Session session, const Watch& watch) {
    work_it_out(session, watch);
    return session;
}

Session apply(const Session& session, const Action& action, const std::string& time, const Watch& watch) {
    Session before = made_ready(session, time);
    Session after = carried_out(before, action, time, true, watch);
    const bool of_locks = std::holds_alternative<LockGroup>(action) ||
                          std::holds_alternative<TakeBack>(action) || std::holds_alternative<Undo>(action) ||
                          std::holds_alternative<Redo>(action);
    if (of_locks && session.work && after.work && after.work != session.work) {
        after.memory = relearn(std::move(after.memory), lessons_of(*session.work), lessons_of(*after.work));
        if (after.memory != session.memory) work_it_out(after, watch);
    }
    return after;
}

Pinned pinned(const Work& work, const Setup& setup) {
    return pinned_as(work.job.pins, pin_name(setup, work.design));
}

std::vector<Problem> problems_at(const Session& session, const std::string& pointer) {
    std::vector<Problem> out;
    for (const Problem& problem : session.problems)
        if (problem.pointer == pointer || problem.pointer.rfind(pointer + "/", 0) == 0)
            out.push_back(problem);
    return out;
}

}  // namespace kw
