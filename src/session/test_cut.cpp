#include "session/test_cut.h"
#include "setup/shims.h"
#include "testcut/chance.h"

#include <algorithm>
#include <cmath>

#include "session/ask_again.h"
#include "session/words.h"
#include "testcut/doubt.h"
#include "testcut/observe.h"
#include "testcut/set_again.h"
#include "words/names.h"

namespace kw {
namespace {

struct Found {
    const Setup* setup;
    const Group* group;  // as it stands
    const Group* designed;
    const GroupStanding* standing;
    Start start;
    Model model;
};

tl::expected<Found, Refusal> find_group(const Work& work, const std::string& id) {
    const Setup* setup = work.plan.setup_with_id(id.substr(0, id.find('#')));
    if (!setup)
        return tl::unexpected(Refusal{"setup", Message::say("testing.no_setup", id),
                                      work.plan.setups.empty()
                                          ? Message::say("testing.none_planned")
                                          : Message::say("testing.planned", work.plan.setups.back().id)});
    const Group* group = work.plan.group_with_id(setup->group);
    if (!group)
        return tl::unexpected(
            Refusal{"setup",
                    Message::say("testing.not_a_joints", id, work_word(work.job.locale.words(), setup->work)),
                    Message::say("testing.name_another")});
    const auto standing = work.standing.groups.find(group->key);
    Found found{setup,
                group,
                work.design.group_with_key(group->key),
                standing == work.standing.groups.end() ? nullptr : &standing->second,
                {},
                {}};
    found.start = start_of(work, *group);
    found.model = found.standing ? found.standing->model
                                 : model_of(*group, tolerances_of(work.job),
                                            partner_of(work.standing_design, *group), found.start);
    return found;
}

// "it has `fence`, `height`"
Message it_has(const std::vector<Message>& names) {
    Message all;
    for (const Message& name : names) {
        const Message quoted = Message::say("testing.name", name);
        all = all.empty() ? quoted : Message::say("testing.names", all, quoted);
    }
    return Message::say("testing.it_has", all);
}

// As they are told, which is by their names.
std::vector<Message> as_told(const std::vector<std::string>& names) {
    std::vector<Message> out;
    for (const std::string& name : names) out.push_back(Message::of(name));
    return out;
}

std::vector<Message> words_to_see(const Model& model) {
    std::vector<Message> words;
    for (const Sight& sight : sight_table())
        if (reading_named(model, sight.reading)) words.push_back(sight_message(sight.word));
    return words;
}

std::vector<std::string> names_of_readings(const Model& model) {
    std::vector<std::string> names;
    for (const Reading& reading : model.readings) names.push_back(reading.form.name);
    return names;
}

// As the controls are believed to stand when the readings are taken: after the moves that were made.
Belief before_reading(const Found& found, const TestCut& cut) {
    if (!found.standing)
        return predict_moves(found.model, belief_from_priors(found.model),
                             cut.moved ? moves_told(found.model, *cut.moved) : std::vector<Move>{});
    const Belief moved = after_moves(*found.standing, cut.moved);
    return cut.fresh_end ? predict_fresh_ends(found.model, moved) : moved;
}

// The fence of a jig is its pin, and by that name the maker knows it.
TestCut by_own_names(const Found& found, TestCut cut) {
    if (found.setup->index && cut.moved)
        for (NamedLength& move : *cut.moved)
            if (move.name == "pin") move.name = "fence";
    return cut;
}

// A name that stands there twice; nullptr where none does.
const std::string* told_twice(const std::vector<NamedLength>& told) {
    for (const NamedLength& one : told)
        if (std::count_if(told.begin(), told.end(),
                          [&](const NamedLength& other) { return other.name == one.name; }) > 1)
            return &one.name;
    return nullptr;
}

std::optional<Refusal> check_names(const Found& found, const TestCut& cut) {
    if (const std::string* twice = told_twice(cut.readings))
        return Refusal{"readings", Message::say("testing.told_twice", *twice),
                       Message::say("testing.tell_once")};
    for (const NamedLength& reading : cut.readings) {
        if (!reading_named(found.model, reading.name))
            return Refusal{"readings", Message::say("testing.no_reading", reading.name),
                           it_has(as_told(names_of_readings(found.model)))};
        const bool may_be_negative = reading.name == "fit" || reading.name == "face_step";
        if (reading.value < Length{} && !may_be_negative)
            return Refusal{"readings", Message::say("testing.less_than_nothing", reading.name),
                           Message::say("testing.measure_again")};
    }
    if (!cut.felt.empty() && (!feel_of_word(cut.felt) || !reading_named(found.model, "fit")))
        return Refusal{
            "felt",
            feel_of_word(cut.felt) ? Message::say("testing.nothing_fitted")
                                   : Message::say("testing.no_feel", cut.felt),
            Message::say("testing.feels", feel_message("will not enter"), feel_message("mallet"),
                         feel_message("hand tight"), feel_message("slides"), feel_message("rattles"))};
    std::vector<std::string_view> told;
    for (const std::string& word : cut.seen) {
        const Sight* sight = sight_of_word(word);
        if (sight && std::find(told.begin(), told.end(), sight->reading) != told.end())
            return Refusal{"seen", Message::say("testing.two_sights", sight_message(word)),
                           Message::say("testing.say_the_better")};
        if (sight) told.push_back(sight->reading);
        if (!sight || !reading_named(found.model, sight->reading))
            return Refusal{"seen",
                           sight ? Message::say("testing.not_seen_here", sight_message(word))
                                 : Message::say("testing.no_sight", word),
                           it_has(words_to_see(found.model))};
    }
    return std::nullopt;
}

// What was moved since the cut before. Of a first cut: from the planned number to what its scale was to be set to, which may not
// have been done. What is set by hand again is in doubt as a first setting is.
std::vector<Move> moves_made(const Found& found, const TestCut& cut) {
    if (found.standing && found.standing->torn_down) return {};
    if (cut.moved) return moves_told(found.model, *cut.moved);
    if (found.standing) return found.standing->advice.moves;
    std::vector<Move> moves;
    Settings dial = found.start.dial, planned = found.group->stands;
    for (const char* control : {"fence", "height"}) {
        const Length by = *setting_named(dial, control) - *setting_named(planned, control);
        if (by != Length{}) moves.push_back({*control_named(found.model, control), by.mm()});
    }
    return moves;
}

// The moves that the belief takes as made, by name: what is told with others takes their place.
std::vector<NamedLength> moves_assumed(const Found& found, const TestCut& cut) {
    if (cut.moved) return *cut.moved;
    std::vector<NamedLength> assumed;
    if (found.standing)
        for (const Move& move : found.standing->advice.moves)
            assumed.push_back({found.model.controls[move.control].name, Length::nearest_mm(move.by_mm)});
    return assumed;
}

// Farther than this from what all the rest says, nobody can be sure of it.
constexpr double most_sigmas = 8.0;

std::optional<Refusal> check_doubt(const Found& found, const TestCut& cut, const LogEntry& entry) {
    Belief before = before_reading(found, cut);
    const bool set_again = found.standing && found.standing->torn_down;
    if (set_again) before = predict_first_setting(found.model, before, found.standing->set_again);
    const auto observations = observations_of(found.model, entry);
    const auto doubt = find_doubt(found.model, before, moves_made(found, cut), observations);
    if (!doubt) return std::nullopt;
    const bool of_words = doubt->about == Doubt::About::reading && doubt->which >= entry.readings.size();
    const bool may_insist = of_words || std::abs(doubt->sigmas) <= most_sigmas;
    if (cut.sure && may_insist) return std::nullopt;
    const std::vector<NamedLength> assumed = moves_assumed(found, cut);
    Refusal refusal =
        ask_again(*found.setup, found.model, found.standing != nullptr, entry, *doubt, may_insist, assumed);
    // What nobody can be sure of may be so where the control was set so: to the mark of another pass, by another scale.
    const bool of_setting = doubt->about == Doubt::About::reading && doubt->looks_like == Slip::none &&
                            (set_again || !found.standing);
    if (may_insist || !of_setting) return refusal;
    const auto by_hand = set_again ? found.standing->set_again : std::vector<std::string>{};
    if (const auto setting = otherwise_set(found.model, before, observations, by_hand))
        refusal.remedy = or_tell_the_setting(*found.setup, found.model, refusal.remedy, *setting, assumed);
    return refusal;
}

std::optional<Refusal> check_moved(const Found& found, const TestCut& cut) {
    if (!cut.moved) return std::nullopt;
    if (const std::string* twice = told_twice(*cut.moved))
        return Refusal{"moved", Message::say("testing.told_twice", *twice),
                       Message::say("testing.tell_all_in_all")};
    for (const NamedLength& move : *cut.moved) {
        Settings settable;
        if (control_named(found.model, move.name) && setting_named(settable, move.name)) {
            const Settings& stood = found.standing ? found.standing->stood : found.start.dial;
            const Cutter& cutter = found.group->work.chosen.cutter;
            const Length in_it = shims_in(cutter) + stood.kerf - found.designed->designed.kerf;
            if (move.name == "kerf" && lists_shims(cutter) && in_it + move.value < Length{})
                return Refusal{"moved", Message::say("testing.too_few_shims", in_it),
                               Message::say("testing.tell_taken_out")};
            if (move.name != "shift" || stood.shift + move.value >= Length{}) continue;
            return Refusal{"moved", Message::say("testing.pass_too_near", move.value, stood.shift),
                           Message::say("testing.tell_last_pass")};
        }
        std::vector<std::string> names;
        for (const Control& control : found.model.controls)
            if (control.movable) names.emplace_back(control_at_setup(*found.setup, control.name));
        return Refusal{"moved", Message::say("testing.no_control", move.name), it_has(as_told(names))};
    }
    return std::nullopt;
}

// Where the new cut does not take all that the old one took, the old test ends still show the old one.
std::optional<Refusal> check_ends(const Found& found, const TestCut& cut) {
    if (!found.standing || found.standing->tests == 0 || cut.fresh_end) return std::nullopt;
    const Settings after =
        settings_by(found.model, found.designed->designed, after_moves(*found.standing, cut.moved));
    if (same_ends_will_do(*found.designed, found.standing->at_test, after)) return std::nullopt;
    return Refusal{"fresh_end", Message::say("testing.old_ends"), Message::say("testing.fresh_ends")};
}

LogEntry entry_for(const Work& work, const Found& found, const TestCut& cut, LogKind kind,
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

// `dial`: what the scales show when the moves are made.
std::vector<SaidMove> said(const Work& work, const Found& found, const std::vector<Move>& moves,
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
void add_row(FitReport& report, const Found& found) {
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
    if (auto refusal = check_ends(*found, cut)) return tl::unexpected(*refusal);
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
    const Group* slot = partner_of(work.standing_design, *found->group);
    const auto settings = [&](const Belief& belief) {
        return in_row(settings_by(found->model, found->designed->designed, belief), *found->group, slot);
    };
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
