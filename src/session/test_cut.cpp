#include "session/test_cut.h"

#include <algorithm>
#include <cmath>

#include "session/test_checks.h"
#include "session/words.h"
#include "testcut/chance.h"
#include "words/names.h"

namespace kw {
namespace {

LogEntry entry_for(const Work& work, const TestedGroup& found, const TestCut& cut, LogKind kind,
                   const std::string& time) {
    LogEntry entry;
    entry.kind = kind;
    entry.time = time;
    entry.setup = cut.setup;
    entry.key = work_key(*found.setup, work.design);
    entry.machine = found.setup->machine;
    entry.readings = cut.readings;
    entry.felt = cut.felt;
    entry.moved_given = cut.moved.has_value();
    if (cut.moved) entry.moved = *cut.moved;
    entry.fresh_end = cut.fresh_end;
    entry.by = cut.by;
    entry.seen = cut.seen;
    if (!cut.readings.empty()) entry.tool = cut.tool.value_or(work.job.tool);
    if (!found.standing) entry.start = found.start;
    return entry;
}

// The fence of a jig is its pin, and by that name the maker knows it.
TestCut by_own_names(const TestedGroup& found, TestCut cut) {
    if (found.setup->index && cut.moved)
        for (NamedLength& move : *cut.moved)
            if (move.name == "pin") move.name = "fence";
    return cut;
}

// `dial`: what the scales show when the moves are made.
std::vector<SaidMove> said(const Work& work, const TestedGroup& found, const std::vector<Move>& moves,
                           const Settings& dial) {
    std::vector<SaidMove> out;
    for (const Move& move : moves) {
        const std::string& control = found.model.controls[move.control].name;
        const Length by = Length::nearest_mm(move.by_mm);
        out.push_back({control, by, say_move(work.job, *found.designed, control, by, dial)});
    }
    return out;
}

std::optional<double> expected(const Model& model, const Belief& belief, const char* name) {
    const Reading* reading = reading_named(model, name);
    if (!reading) return std::nullopt;
    const double mean = marginal(belief, reading->form).mean_mm;
    return reading->kind == ReadingKind::at_least_zero ? std::max(0.0, mean) : mean;
}

// What each finger and socket is off by adds up over the height.
void add_row(FitReport& report, const TestedGroup& found) {
    if (!found.setup->index || !found.group->cuts_slot) return;
    for (const Pass& pass : found.setup->passes) report.sockets = std::max(report.sockets, pass.cuts);
    const Settings& planned = found.designed->designed;
    const Length off = report.next.fence + report.next.kerf - planned.fence - planned.kerf;
    report.row_mm = report.sockets * off.mm();
}

}  // namespace

tl::expected<LogEntry, Refusal> test_entry(const Work& work, const TestCut& told, const std::string& time) {
    const auto found = find_group(work, told.setup);
    if (!found) return tl::unexpected(found.error());
    const TestCut cut = by_own_names(*found, told);
    if (cut.readings.empty() && cut.felt.empty() && cut.seen.empty())
        return tl::unexpected(Refusal{"readings", Message::say("testing.nothing_told"),
                                      Message::say("testing.give_a_reading")});
    if (auto refusal = check_names(*found, cut)) return tl::unexpected(*refusal);
    if (auto refusal = check_moved(*found, cut)) return tl::unexpected(*refusal);
    if (auto refusal = check_ends(work, *found, cut)) return tl::unexpected(*refusal);
    LogEntry entry = entry_for(work, *found, cut, LogKind::test, time);
    if (auto refusal = check_doubt(*found, cut, entry)) return tl::unexpected(*refusal);
    return entry;
}

tl::expected<LogEntry, Refusal> lock_entry(const Work& work, const TestCut& told, const std::string& time) {
    const auto found = find_group(work, told.setup);
    if (!found) return tl::unexpected(found.error());
    const TestCut cut = by_own_names(*found, told);
    if (auto refusal = check_moved(*found, cut)) return tl::unexpected(*refusal);
    return entry_for(work, *found, cut, LogKind::lock, time);
}

std::optional<double> chance_when_locked(const Work& work, const TestCut& lock) {
    const auto found = find_group(work, lock.setup);
    if (!found || !found->standing || found->standing->tests == 0) return std::nullopt;
    return chance_in_tolerance(found->model, before_reading(*found, by_own_names(*found, lock)));
}

std::optional<FitReport> fit_report(const Work& work, const std::string& setup) {
    const auto found = find_group(work, setup);
    if (!found) return std::nullopt;
    const GroupStanding* standing = found->standing;
    const Belief now = standing ? standing->now : belief_from_priors(found->model);
    FitReport report;
    report.setup = setup;
    report.group = found->group->id;
    report.test = standing ? standing->tests : 0;
    report.locked = standing && standing->locked;
    report.torn_down = std::any_of(work.plan.setups.begin(), work.plan.setups.end(), [&](const Setup& one) {
        return one.group == found->setup->group && is_torn_down(work, one);
    });
    const auto settings = [&](const Belief& belief) { return settings_of(work, *found, belief); };
    report.now = settings(now);
    report.next = standing ? settings(standing->next) : report.now;
    const auto stock = control_named(found->model, "stock");
    report.stock = stock ? Length::nearest_mm(now.mean[*stock]) : found->group->work.insert_thickness;
    for (const char* control : {"fence", "height", "spacer", "kerf", "shift"})
        report.spread_mm.emplace_back(control, spread_of(found->model, now, control));
    const bool tested = report.test > 0;
    const Advice advice = tested ? standing->advice : advise(found->model, now, advice_options(work.job, {}));
    report.chance_in_tolerance = advice.chance_in_tolerance;
    report.chance_after_move = advice.chance_after_move;
    report.wanted_chance = work.job.fit.wanted_chance;
    report.advice = tested ? advice.kind : AdviceKind::measure;
    report.measure = advice.reading;
    report.measure_again = standing && std::find(standing->read.begin(), standing->read.end(),
                                                 advice.reading) != standing->read.end();
    if (tested && !report.locked) {
        report.moves = said(work, *found, advice.moves, standing->dial);
        report.unread =
            said(work, *found, advice.unread, turned(standing->dial, found->model, advice.unread));
        const Settings after = settings(planned(*standing));
        if (!same_ends_will_do(*found->group, standing->at_test, after))
            report.unread_retry = Retry::fresh_end;
    }
    // What is set again is tested in new scrap.
    if (report.torn_down) report.retry = Retry::fresh_end;
    else if (standing && standing->tests > 0)
        report.retry = same_ends_will_do(*found->group, standing->at_test, report.next) ? Retry::same_ends
                                                                                        : Retry::fresh_end;
    const Belief after = standing ? standing->next : now;
    report.fit_mm = expected(found->model, after, "fit");
    report.shoulder_gap_mm = expected(found->model, after, "shoulder_gap");
    report.face_step_mm = expected(found->model, after, "face_step");
    add_row(report, *found);
    for (const Outcome& outcome : found->model.outcomes)
        if (outcome.form.name == "fit") report.fit_aimed_mm = outcome.target_mm;
    return report;
}

std::vector<NamedLength> as_moved(const std::vector<SaidMove>& moves) {
    std::vector<NamedLength> moved;
    for (const SaidMove& move : moves) moved.push_back({move.control, move.by});
    return moved;
}

std::vector<std::string> reading_names(const Work& work, const std::string& setup) {
    const auto found = find_group(work, setup);
    return found ? names_of_readings(found->model) : std::vector<std::string>{};
}

std::vector<std::string> names_to_move(const Work& work, const std::string& setup) {
    const auto found = find_group(work, setup);
    std::vector<std::string> names;
    for (const Control& control : found ? found->model.controls : std::vector<Control>{})
        if (control.movable) names.push_back(control.name);
    return names;
}

std::vector<std::string> sight_words(const Work& work, const std::string& setup, std::string_view reading) {
    const auto found = find_group(work, setup);
    std::vector<std::string> words;
    for (const Sight& sight : sight_table())
        if (found && sight.reading == reading && reading_named(found->model, reading))
            words.emplace_back(sight.word);
    return words;
}

std::string plain_name(const std::string& reading) {
    std::string out = reading;
    std::replace(out.begin(), out.end(), '_', ' ');
    return out;
}

}  // namespace kw
