#include "session/words.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>

#include "session/say_ways.h"
#include "session/test_cut.h"
#include "setup/shims.h"

namespace kw {
namespace {

// Turns of the handwheel to the sixteenth, where the maker has measured what a turn does.
std::string say_turns(const Machine& machine, Length by) {
    if (!machine.height_per_turn || *machine.height_per_turn <= Length{}) return {};
    const double turns = abs(by).mm() / machine.height_per_turn->mm();
    const auto sixteenths = static_cast<std::int64_t>(std::lround(turns * 16.0));
    if (sixteenths == 0) return ", less than 1/16 turn";
    return ", about " + show(Length::inches(sixteenths, 16), Graduation::in_64) +
           (sixteenths <= 16 ? " turn" : " turns");
}

const std::string no_shims = "none";

// The shims that bring the stack to this kerf: "0.3 mm + 0.1 mm", or "none"; empty where no listed ones do.
std::string say_shims_of(const Job& job, const Group& group, Length kerf) {
    const Cutter& cutter = group.work.chosen.cutter;
    const Length total = shims_in(cutter) + kerf - group.designed.kerf;
    if (total == Length{}) return no_shims;
    std::string all;
    for (const Length shim : shims_for(cutter, total))
        all += (all.empty() ? "" : " + ") + say_piece(job, cutter, shim);
    return all;
}

}  // namespace

std::string minutes(std::int64_t seconds) {
    const std::int64_t whole = (seconds + 30) / 60;
    return whole < 60 ? std::to_string(whole) + " min"
                      : std::to_string(whole / 60) + " h " + std::to_string(whole % 60) + " min";
}

std::string say_move(const Job& job, const Group& group, const std::string& control, Length by,
                     const Settings& after) {
    const std::string amount = show_with_unit(abs(by), caliper_locale(job));
    const bool more = by > Length{};
    const bool bit = group.work.chosen.cutter.kind == CutterKind::bit;
    if (control == "height")
        return (more ? "raise the " : "lower the ") + std::string(bit ? "bit " : "blade ") + amount +
               say_turns(group.work.chosen.machine, by);
    if (control == "fence")
        return "move the fence " + amount + (more ? " away from the cutter" : " toward the cutter");
    if (control == "spacer") return "make the spacer " + amount + (more ? " thicker" : " thinner");
    if (control == "shift" && after.shift == by)
        return "after this pass move the fence " + amount +
               " away from the cutter, and run every piece a second time";
    if (control == "shift" && after.shift == Length{}) return "leave out the second pass";
    if (control == "shift")
        return "move the fence " + amount + (more ? " farther" : " less far") + " for the last pass";
    const std::string change = (more ? "add " : "take out ") + amount + " of shims in the stack";
    if (!lists_shims(group.work.chosen.cutter)) return change;
    const std::string left = say_shims_of(job, group, after.kerf);
    return left.empty() ? change : change + ": " + left + " in it then";
}

namespace {

std::string percent(double chance) { return std::to_string(std::lround(chance * 100.0)) + " %"; }

}  // namespace

std::string without_mark(std::string text) {
    for (const char* mark : {" +", " \u2212"})
        if (text.ends_with(mark)) text.resize(text.size() - std::string(mark).size());
    return text;
}

std::string say_beyond(const Work& work, Length beyond) {
    constexpr Length step = Length::micrometres(30);
    if (abs(beyond) <= step) return {};
    return caliper_text(work.job, abs(beyond)) + (beyond > Length{} ? " more" : " less") +
           " than planned, to make up for the cutter";
}

std::string say_shims(const Work& work, const Setup& setup, Length shims) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return {};
    const bool are_changed =
        std::any_of(work.rest.steps.begin(), work.rest.steps.end(), [&](const RestStep& step) {
            return step.setup == setup.id && !step.changes.empty() && step.changes.front().what == "shims";
        });
    if (shims == Length{} && !are_changed) return {};
    if (lists_shims(group->work.chosen.cutter)) {
        const std::string all = say_shims_of(work.job, *group, group->designed.kerf + shims);
        if (!all.empty()) return all == no_shims ? "put on without its shims" : "put on with shims of " + all;
    }
    return "put on with " + caliper_text(work.job, abs(shims)) + " of shims " +
           (shims > Length{} ? "more" : "less") + " than its make-up";
}

std::string say_changes(const Work& work, const RestStep& step) {
    const Setup& setup = *work.plan.setup_with_id(step.setup);
    // What is put on, where the cutter's name alone does not say it.
    const auto made_up = [&](const RestChange& change) {
        const std::string put_on = say_put_on(work, setup);
        if (change.what == "cutter" && put_on != setup.cutter) return " to " + put_on;
        const std::string shims = say_shims(work, setup, dial_of(work, setup).shims);
        return change.what == "shims" && !shims.empty() ? " (" + shims + ")" : std::string();
    };
    std::string what;
    for (const RestChange& change : step.changes)
        what += (what.empty() ? "the " : ", the ") + change.what + made_up(change);
    const std::string test = step.set_again && step.test_s > 0 ? ", then a test cut" : "";
    if (what.empty()) return (step.still_set ? "still set" : "nothing to change") + test;
    return (step.set_again ? "set again as it was locked: " : "change ") + what + test;
}

std::string say_belief(const Believed& belief, const Locale& locale) {
    // Without the mark of what rounding left: these are estimates.
    const auto length = [&](double mm) {
        const Length exact = Length::nearest_mm(std::abs(mm));
        return without_mark(show_with_unit(exact, locale));
    };
    const bool none = length(belief.value) == length(0.0);
    const bool more = belief.value > 0.0;
    const std::string sure = ", \u00b1 " + length(2.0 * belief.spread);
    const auto hundredths = [](double share) {
        char text[32];
        std::snprintf(text, sizeof text, "%.1f %%", 100.0 * std::abs(share));
        return std::string(text);
    };
    const auto moves = [&](const char* control) {
        return belief.machine + ": moves of the " + control + " come out " + hundredths(belief.value) +
               (more ? " long" : " short") + ", \u00b1 " + hundredths(2.0 * belief.spread);
    };
    std::string text;
    switch (belief.what) {
        case Taught::fence:
            text = belief.machine + ", " + belief.cutter + ": the fence stands " +
                   (none ? "where its scale says"
                         : length(belief.value) + (more ? " farther out" : " farther in") +
                               " than its scale says") +
                   sure;
            break;
        case Taught::height:
            text = belief.machine + ", " + belief.cutter + ": the height comes out " +
                   (none ? "as its scale says"
                         : length(belief.value) + (more ? " more" : " less") + " than its scale says") +
                   sure;
            break;
        case Taught::kerf:
            text = belief.cutter + ": cuts " +
                   (none ? "its " : length(belief.value) + (more ? " wider" : " narrower") + " than its ") +
                   show_with_unit(belief.kerf, locale) + sure;
            break;
        case Taught::fence_gain: text = moves("fence"); break;
        case Taught::height_gain: text = moves("height"); break;
    }
    if (belief.by_hand) text += ", as you said";
    if (belief.tests > 0)
        text += ", from " + std::to_string(belief.tests) + (belief.tests == 1 ? " test cut" : " test cuts") +
                (belief.since.empty() ? "" : " since " + belief.since);
    return text;
}

std::string say_guide(const Work& work, const Setup& setup) {
    const Machine* machine = work.job.shop.machine_named(setup.machine);
    const bool on_a_saw = setup.guide == "stop" && machine && machine->kind == MachineKind::table_saw;
    return on_a_saw ? "miter gauge or sled, with a stop on it" : setup.guide;
}

std::string caliper_text(const Job& job, Length length) {
    return without_mark(show_with_unit(length, caliper_locale(job)));
}

FenceReading fence_reading(const Work& work, const Setup& setup, CutterSide measured_to) {
    if (measured_to == CutterSide::near) return {setup.fence, "near"};
    return {setup.fence + kerf_as_put_on(work, setup), "far"};
}

std::string say_from_pass_before(const Work& work, const Setup& setup) {
    if (setup.group.empty() || setup.spacer > Length{}) return {};
    const Setup* before = nullptr;
    for (const Setup& other : work.plan.setups) {
        if (other.id == setup.id) break;
        if (other.group == setup.group && other.spacer == Length{}) before = &other;
    }
    return before ? caliper_text(work.job, setup.fence - before->fence) + " out from the pass before"
                  : std::string();
}

namespace {

// By the rule, and as a caliper reads it where a rule can't show it.
std::string rule_and_caliper(const Job& job, Length length) {
    const std::string by_rule = show_with_unit(length, job.locale);
    const auto shown = read_length(without_mark(by_rule), unit_of(job.locale));
    return shown && *shown == length ? by_rule : by_rule + " (" + caliper_text(job, length) + ")";
}

// What is set for a cut, as the page at the saw has it.
std::string say_set(const Work& work, const Setup& setup, CutterSide measured_to) {
    const Job& job = work.job;
    const SetTo set = set_to(work, setup);
    const ControlAt fence = set.fence_to(measured_to);
    std::string out = fence.by_scale ? "fence scale at " + caliper_text(job, fence.scale)
                                     : "fence at " + rule_and_caliper(job, fence.truly) + " to the " +
                                           fence_reading(work, setup, measured_to).side + " side";
    if (set.height)
        out += set.height->by_scale ? ", height scale at " + caliper_text(job, set.height->scale)
                                    : ", height " + rule_and_caliper(job, set.height->truly);
    if (setup.spacer > Length{})
        out += ", a spacer of " + rule_and_caliper(job, setup.spacer) + " on the fence";
    if (const std::string shims = say_shims(work, setup, set.dial.shims); !shims.empty())
        out += ", the stack " + shims;
    return out;
}

}  // namespace

std::vector<std::string> say_test(const Work& work, const std::string& id, CutterSide measured_to) {
    const Setup* tested = work.plan.setup_with_id(id);
    const Group* group = tested ? work.plan.group_with_id(tested->group) : nullptr;
    std::vector<std::string> steps;
    if (!group) return steps;
    for (const Setup& setup : work.plan.setups) {
        if (setup.group != group->id) continue;
        std::string step = cut_of(setup.work);
        step[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(step[0])));
        step += ": " + std::string(name_of(setup.passes.front().down)) + " face down, " +
                say_set(work, setup, measured_to);
        steps.push_back(step);
    }
    const JointDesign& joint = group->work.chosen.joint;
    const bool fitted = group->cuts_end || (!joint.insert_cut() && joint.seat == Seat::near_wall);
    steps.emplace_back(fitted ? "Push the joint together: read what it tells, and measure" : "Measure it");
    return steps;
}

std::string say_unread(const FitReport& report) {
    std::string moves;
    for (const SaidMove& move : report.unread) moves += (moves.empty() ? "" : ", and ") + move.say;
    return moves.empty() ? moves
                         : "If you can't: " + moves + " (" + percent(report.chance_after_move) + " then)";
}

std::string say_torn_down(const Work& work, const FitReport& report) {
    if (!report.locked || report.torn_down) return {};
    for (const RestStep& step : work.rest.steps)
        if (step.set_again && work.plan.setup_with_id(step.setup)->group == report.group)
            return "Some of its parts must first be cut to size on this machine: for them it will have to be "
                   "set again, with a "
                   "test cut.";
    return {};
}

std::string say_advice(const FitReport& report) {
    if (report.torn_down) return "Was locked, then torn down: set it again as it was locked, and test first.";
    if (report.locked)
        return report.test == 0 ? "Locked untested." : "Locked: leave it set until all its parts have run.";
    if (report.test == 0) return "Not tested yet. Cut the joint in scrap of the same stock, and measure it.";
    switch (report.advice) {
        case AdviceKind::lock:
            if (!report.is_good())
                return percent(report.chance_in_tolerance) +
                       " likely to be in tolerance as it stands, and no move brings it nearer that is worth "
                       "its time. Lock it all the same, take another cutter or other stock, or list the "
                       "stack's shims.";
            return "Lock it: " + percent(report.chance_in_tolerance) +
                   " likely that all of it is in tolerance.";
        case AdviceKind::measure:
            return "Measure the " + plain_name(report.measure) +
                   (report.measure_again
                        ? " once more before you move anything: two readings are surer than one."
                        : " before you move anything: it would tell most.") +
                   " As it stands, " + percent(report.chance_in_tolerance) + " likely to be in tolerance.";
        case AdviceKind::move: break;
    }
    return "Make the moves, then " +
           std::string(report.retry == Retry::same_ends ? "cut the same test ends again"
                                                        : "cut a fresh end") +
           ": " + percent(report.chance_after_move) + " likely to be in tolerance then.";
}

}  // namespace kw
