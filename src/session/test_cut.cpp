#include "session/test_cut.h"
#include "testcut/chance.h"

#include <algorithm>
#include <cmath>

#include "session/words.h"
#include "testcut/observe.h"

namespace kw {
namespace {

// A reading farther from what was expected than this is a slip of the pen or the wrong scale.
constexpr double most_sigmas = 8.0;

struct Found {
    const Setup* setup;
    const Group* group;  // as it stands
    const Group* designed;
    const GroupStanding* standing;
    Model model;
};

tl::expected<Found, Refusal> find_group(const Work& work, const std::string& id) {
    const Setup* setup = work.plan.setup_with_id(id);
    if (!setup)
        return tl::unexpected(Refusal{
            "setup", Message::of("there is no setup `", id, "`"),
            Message::of("the plan has ", work.plan.setups.empty() ? std::string("none")
                                                                  : "S1 to " + work.plan.setups.back().id)});
    const Group* group = work.plan.group_with_id(setup->group);
    if (!group)
        return tl::unexpected(Refusal{
            "setup", Message::of("`", id, "` (", setup->work, ") is not a joint's: nothing is tested there"),
            Message::of("name a setup with a test cut")});
    const auto standing = work.standing.groups.find(group->key);
    Found found{setup,
                group,
                work.design.group_with_key(group->key),
                standing == work.standing.groups.end() ? nullptr : &standing->second,
                {}};
    found.model = found.standing
                      ? found.standing->model
                      : model_of(*group, tolerances_of(work.job), partner_of(work.standing_design, *group), {group->stands, usual_scales()});
    return found;
}

std::string list(const std::vector<std::string>& names) {
    std::string out;
    for (const std::string& name : names) out += (out.empty() ? "`" : ", `") + name + "`";
    return out;
}

std::vector<std::string> names_of_readings(const Model& model) {
    std::vector<std::string> names;
    for (const Reading& reading : model.readings) names.push_back(reading.form.name);
    return names;
}

// As the controls are believed to stand when the readings are taken: after the moves that were made.
Belief before_reading(const Found& found, const TestCut& cut) {
    return found.standing ? after_moves(*found.standing, cut.moved) : belief_from_priors(found.model);
}

std::optional<Refusal> check_readings(const Found& found, const TestCut& cut) {
    const Belief before = before_reading(found, cut);
    for (const NamedLength& reading : cut.readings) {
        const Reading* known = reading_named(found.model, reading.name);
        if (!known)
            return Refusal{"readings", Message::of("there is no reading `", reading.name, "` at this joint"),
                           Message::of("it has ", list(names_of_readings(found.model)))};
        const bool may_be_negative = reading.name == "fit" || reading.name == "face_step";
        if (reading.value < Length{} && !may_be_negative)
            return Refusal{"readings", Message::of("`", reading.name, "` can't be less than nothing"),
                           Message::of("measure it again")};
        const Innovation surprise = innovation(before, taken(*known, reading.value.mm()));
        if (std::abs(surprise.sigmas) <= most_sigmas) continue;
        return Refusal{
            "readings",
            Message::of("`", reading.name, "` ",
                        reading.name == "stock_thickness" ? "(of the board that enters) " : "", "of ",
                        reading.value, " is out of reason: about ", Length::nearest_mm(surprise.expected_mm),
                        " was expected"),
            Message::of("measure it again, and mind the unit; or the setup was not made as planned")};
    }
    return std::nullopt;
}

std::optional<Refusal> check_moved(const Found& found, const TestCut& cut) {
    if (!cut.moved) return std::nullopt;
    for (const NamedLength& move : *cut.moved) {
        if (control_named(found.model, move.name)) continue;
        std::vector<std::string> names;
        for (const Control& control : found.model.controls)
            if (control.movable) names.push_back(control.name);
        return Refusal{"moved", Message::of("there is no control `", move.name, "` at this setup"),
                       Message::of("it has ", list(names))};
    }
    return std::nullopt;
}

LogEntry entry_for(const Work& work, const Found& found, const TestCut& cut, LogKind kind,
                   const std::string& time) {
    LogEntry entry;
    entry.kind = kind;
    entry.time = time;
    entry.setup = cut.setup;
    entry.key = work_key(*found.setup, work.design);
    entry.readings = cut.readings;
    entry.felt = cut.felt;
    entry.moved_given = cut.moved.has_value();
    if (cut.moved) entry.moved = *cut.moved;
    entry.fresh_end = cut.fresh_end;
    entry.by = cut.by;
    return entry;
}

std::vector<SaidMove> said(const Work& work, const Found& found, const std::vector<Move>& moves) {
    std::vector<SaidMove> out;
    for (const Move& move : moves) {
        const std::string& control = found.model.controls[move.control].name;
        const Length by = Length::nearest_mm(move.by_mm);
        out.push_back({control, by, say_move(work.job, *found.group, control, by)});
    }
    return out;
}

std::optional<double> expected(const Model& model, const Belief& belief, const char* name) {
    const Reading* reading = reading_named(model, name);
    if (!reading) return std::nullopt;
    const double mean = marginal(belief, reading->form).mean_mm;
    return reading->kind == ReadingKind::at_least_zero ? std::max(0.0, mean) : mean;
}

}  // namespace

tl::expected<LogEntry, Refusal> test_entry(const Work& work, const TestCut& cut, const std::string& time) {
    const auto found = find_group(work, cut.setup);
    if (!found) return tl::unexpected(found.error());
    if (cut.readings.empty() && cut.felt.empty())
        return tl::unexpected(Refusal{"readings", Message::of("nothing was read and nothing was felt"),
                                      Message::of("give a reading or a feel")});
    if (!cut.felt.empty() && (!feel_of_word(cut.felt) || !reading_named(found->model, "fit")))
        return tl::unexpected(Refusal{"felt",
                                      feel_of_word(cut.felt)
                                          ? Message::of("nothing is fitted at this setup")
                                          : Message::of("there is no feel `", cut.felt, "`"),
                                      Message::of("`will not enter`, `mallet`, `hand tight`, `slides` or "
                                                  "`rattles`, where something is fitted")});
    if (auto refusal = check_readings(*found, cut)) return tl::unexpected(*refusal);
    if (auto refusal = check_moved(*found, cut)) return tl::unexpected(*refusal);
    return entry_for(work, *found, cut, LogKind::test, time);
}

tl::expected<LogEntry, Refusal> lock_entry(const Work& work, const TestCut& cut, const std::string& time) {
    const auto found = find_group(work, cut.setup);
    if (!found) return tl::unexpected(found.error());
    if (auto refusal = check_moved(*found, cut)) return tl::unexpected(*refusal);
    return entry_for(work, *found, cut, LogKind::lock, time);
}

std::optional<double> chance_when_locked(const Work& work, const TestCut& lock) {
    const auto found = find_group(work, lock.setup);
    if (!found || !found->standing || found->standing->tests == 0) return std::nullopt;
    return chance_in_tolerance(found->model, before_reading(*found, lock));
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
    report.now = settings_by(found->model, found->designed->designed, now);
    report.next =
        standing ? settings_by(found->model, found->designed->designed, standing->next) : report.now;
    const auto stock = control_named(found->model, "stock");
    report.stock = stock ? Length::nearest_mm(now.mean[*stock]) : found->group->work.insert_thickness;
    for (const char* control : {"fence", "height", "spacer", "kerf", "shift"})
        report.spread_mm.emplace_back(control, spread_of(found->model, now, control));
    const bool tested = report.test > 0;
    const Advice advice = tested ? standing->advice : advise(found->model, now);
    report.chance_in_tolerance = advice.chance_in_tolerance;
    report.chance_after_move = advice.chance_after_move;
    report.advice = tested ? advice.kind : AdviceKind::measure;
    report.measure = advice.reading;
    if (tested && !report.locked) report.moves = said(work, *found, advice.moves);
    if (tested && !report.locked) report.unread = said(work, *found, advice.unread);
    if (standing && standing->tests > 0)
        report.retry = same_ends_will_do(*found->group, standing->at_test, report.next) ? Retry::same_ends
                                                                                        : Retry::fresh_end;
    const Belief after = standing ? standing->next : now;
    report.fit_mm = expected(found->model, after, "fit");
    report.shoulder_gap_mm = expected(found->model, after, "shoulder_gap");
    report.face_step_mm = expected(found->model, after, "face_step");
    return report;
}

std::vector<std::string> reading_names(const Work& work, const std::string& setup) {
    const auto found = find_group(work, setup);
    return found ? names_of_readings(found->model) : std::vector<std::string>{};
}

std::string plain_name(const std::string& reading) {
    std::string out = reading;
    std::replace(out.begin(), out.end(), '_', ' ');
    return out;
}

}  // namespace kw
