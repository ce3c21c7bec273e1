#include "session/words.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>

#include "session/say_ways.h"
#include "session/test_cut.h"
#include "setup/shims.h"
#include "testcut/joint_model.h"
#include "words/names.h"

namespace kw {
namespace {

// A move with the turns of the handwheel to the sixteenth, where the maker has measured what a turn does.
std::string with_turns(const Words& words, std::string move, const Machine& machine, Length by) {
    if (!machine.height_per_turn || *machine.height_per_turn <= Length{}) return move;
    const double turns = abs(by).mm() / machine.height_per_turn->mm();
    const auto sixteenths = static_cast<std::int64_t>(std::lround(turns * 16.0));
    if (sixteenths == 0) return words("move.less_than_a_turn", move);
    const std::string count = show(Length::inches(sixteenths, 16), Graduation::in_64);
    return sixteenths <= 16 ? words("move.about_a_turn", move, count)
                            : words("move.about_turns", move, count);
}

std::string say_height_move(const Words& words, bool bit, bool more, const std::string& amount) {
    if (bit) return more ? words("move.raise_bit", amount) : words("move.lower_bit", amount);
    return more ? words("move.raise_blade", amount) : words("move.lower_blade", amount);
}

// Of the last pass's place, that was to stand `shift` out from the first.
std::string say_shift(const Words& words, Length by, Length shift, const std::string& amount) {
    if (shift == by) return words("move.second_pass", amount);
    if (shift == Length{}) return words("move.no_second_pass");
    return by > Length{} ? words("move.last_pass_farther", amount) : words("move.last_pass_nearer", amount);
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

std::string_view control_at_setup(const Setup& setup, std::string_view control) {
    if (control != "fence") return control;
    return setup.index ? "pin" : setup.guide == "stop" ? "stop" : control;
}

std::string minutes(std::int64_t seconds) {
    const std::int64_t whole = (seconds + 30) / 60;
    return whole < 60 ? std::to_string(whole) + " min"
                      : std::to_string(whole / 60) + " h " + std::to_string(whole % 60) + " min";
}

std::string say_move(const Job& job, const Group& group, const std::string& control, Length by,
                     const Settings& after) {
    const Words& words = job.locale.words();
    const std::string amount = show_with_unit(abs(by), caliper_locale(job));
    const bool more = by > Length{};
    const bool bit = group.work.chosen.cutter.kind == CutterKind::bit;
    if (control == "height")
        return with_turns(words, say_height_move(words, bit, more, amount), group.work.chosen.machine, by);
    if (control == "fence" && has_fingers(group.work.chosen.joint))
        return more ? words("move.pin_out", amount) : words("move.pin_in", amount);
    if (control == "fence") return more ? words("move.fence_out", amount) : words("move.fence_in", amount);
    if (control == "spacer")
        return more ? words("move.spacer_thicker", amount) : words("move.spacer_thinner", amount);
    if (control == "shift") return say_shift(words, by, after.shift, amount);
    const std::string change = more ? words("move.add_shims", amount) : words("move.take_out_shims", amount);
    if (!lists_shims(group.work.chosen.cutter)) return change;
    const std::string left = say_shims_of(job, group, after.kerf);
    if (left.empty()) return change;
    return left == no_shims ? words("move.no_shims_then", change) : words("move.shims_then", change, left);
}

namespace {

std::string percent(double chance) { return std::to_string(std::lround(chance * 100.0)) + " %"; }

}  // namespace

std::string say_beyond(const Work& work, Length beyond) {
    constexpr Length step = Length::micrometres(30);
    if (abs(beyond) <= step) return {};
    const Words& words = work.job.locale.words();
    const std::string by = caliper_text(work.job, abs(beyond));
    return beyond > Length{} ? words("dial.more_than_planned", by) : words("dial.less_than_planned", by);
}

std::string say_shims(const Work& work, const Setup& setup, Length shims) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return {};
    const bool are_changed =
        std::any_of(work.rest.steps.begin(), work.rest.steps.end(), [&](const RestStep& step) {
            return step.setup == setup.id && !step.changes.empty() && step.changes.front().what == "shims";
        });
    if (shims == Length{} && !are_changed) return {};
    const Words& words = work.job.locale.words();
    if (lists_shims(group->work.chosen.cutter)) {
        const std::string all = say_shims_of(work.job, *group, group->designed.kerf + shims);
        if (!all.empty()) return all == no_shims ? words("put_on.no_shims") : words("put_on.shims", all);
    }
    const std::string by = caliper_text(work.job, abs(shims));
    return shims > Length{} ? words("put_on.more_shims", by) : words("put_on.less_shims", by);
}

namespace {

std::string tenths_of_percent(double share, const Words& words) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f %%", 100.0 * std::abs(share));
    std::string out(text);
    if (const std::size_t point = out.find('.'); point != std::string::npos)
        out.replace(point, 1, words.text("decimal.mark"));
    return out;
}

std::string say_moves(const Believed& belief, const char* control, const Words& words) {
    const std::string by = tenths_of_percent(belief.value, words),
                      sure = tenths_of_percent(2.0 * belief.spread, words),
                      name = control_word(words, control);
    return belief.value > 0.0 ? words("belief.moves_long", belief.machine, name, by, sure)
                              : words("belief.moves_short", belief.machine, name, by, sure);
}

// How far a scale is off.
std::string say_scale(const Believed& belief, const Locale& locale) {
    const Words& words = locale.words();
    // Without the mark of what rounding left: these are estimates.
    const auto length = [&](double mm) {
        return without_mark(show_with_unit(Length::nearest_mm(std::abs(mm)), locale));
    };
    const std::string by = length(belief.value), sure = length(2.0 * belief.spread);
    const std::string &machine = belief.machine, kerf = show_with_unit(belief.kerf, locale);
    // By its width too: a stack is made up to several.
    const std::string cutter =
        belief.what == Taught::kerf ? belief.cutter : words("belief.cutter_of", belief.cutter, kerf);
    const bool none = by == length(0.0), more = belief.value > 0.0;
    if (belief.what == Taught::fence) {
        if (none) return words("belief.fence_as_scale", machine, cutter, sure);
        return more ? words("belief.fence_out", machine, cutter, by, sure)
                    : words("belief.fence_in", machine, cutter, by, sure);
    }
    if (belief.what == Taught::height) {
        if (none) return words("belief.height_as_scale", machine, cutter, sure);
        return more ? words("belief.height_more", machine, cutter, by, sure)
                    : words("belief.height_less", machine, cutter, by, sure);
    }
    if (none) return words("belief.kerf_as_said", cutter, kerf, sure);
    return more ? words("belief.kerf_wider", cutter, by, kerf, sure)
                : words("belief.kerf_narrower", cutter, by, kerf, sure);
}

}  // namespace

std::string say_belief(const Believed& belief, const Locale& locale) {
    const Words& words = locale.words();
    std::string text = belief.what == Taught::fence_gain    ? say_moves(belief, "fence", words)
                       : belief.what == Taught::height_gain ? say_moves(belief, "height", words)
                                                            : say_scale(belief, locale);
    if (belief.by_hand) text = words("belief.as_told", text);
    if (belief.tests > 0)
        text = belief.since.empty()
                   ? words.counted("belief.from_tests", belief.tests, text)
                   : words.counted("belief.from_tests_since", belief.tests, text, belief.since);
    return text;
}

std::string say_guide(const Work& work, const Setup& setup) {
    const Machine* machine = work.job.shop.machine_named(setup.machine);
    const bool on_a_saw = setup.guide == "stop" && machine && machine->kind == MachineKind::table_saw;
    const Words& words = work.job.locale.words();
    return on_a_saw ? words("guide.stop_on_a_saw") : guide_word(words, setup.guide);
}

std::string caliper_text(const Job& job, Length length) {
    return without_mark(show_with_unit(length, caliper_locale(job)));
}

FenceReading fence_reading(const Work& work, const Setup& setup, CutterSide measured_to) {
    if (measured_to == CutterSide::near || setup.index) return {setup.fence, "near"};
    return {setup.fence + kerf_as_put_on(work, setup), "far"};
}

std::string say_from_pass_before(const Work& work, const Setup& setup) {
    if (setup.group.empty() || setup.spacer > Length{}) return {};
    const Setup* before = nullptr;
    for (const Setup& other : work.plan.setups) {
        if (other.id == setup.id) break;
        if (other.group == setup.group && other.spacer == Length{}) before = &other;
    }
    if (!before) return {};
    return work.job.locale.words()("pass.out_from_before",
                                   caliper_text(work.job, setup.fence - before->fence));
}

namespace {

// By the rule, and as a caliper reads it where a rule can't show it.
std::string rule_and_caliper(const Job& job, Length length) {
    const std::string by_rule = show_with_unit(length, job.locale);
    const auto shown = read_length(without_mark(by_rule), unit_of(job.locale));
    return shown && *shown == length ? by_rule : by_rule + " (" + caliper_text(job, length) + ")";
}

std::string say_fence_set(const Job& job, const ControlAt& fence, CutterSide measured_to) {
    const Words& words = job.locale.words();
    if (fence.by_scale) return words("set.fence_scale", caliper_text(job, fence.scale));
    const std::string truly = rule_and_caliper(job, fence.truly);
    return measured_to == CutterSide::far ? words("set.fence_far", truly) : words("set.fence_near", truly);
}

// What is set for a cut, as the page at the saw has it.
std::string say_set(const Work& work, const Setup& setup, CutterSide measured_to) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const SetTo set = set_to(work, setup);
    const ControlAt fence = set.fence_to(measured_to);
    std::vector<std::string> all{setup.index ? words("set.pin", rule_and_caliper(job, fence.truly))
                                             : say_fence_set(job, fence, measured_to)};
    if (set.height)
        all.push_back(set.height->by_scale ? words("set.height_scale", caliper_text(job, set.height->scale))
                                           : words("set.height", rule_and_caliper(job, set.height->truly)));
    if (setup.index) {
        all.push_back(words("set.index", rule_and_caliper(job, *setup.index)));
        if (const Group* group = work.plan.group_with_id(setup.group))
            all.push_back(words("set.sockets", row_to(*group, start_of(work, *group))));
    }
    if (setup.spacer > Length{})
        all.push_back(
            words(setup.index ? "set.spacer_on_pin" : "set.spacer", rule_and_caliper(job, setup.spacer)));
    if (const std::string shims = say_shims(work, setup, set.dial.shims); !shims.empty())
        all.push_back(words("set.stack", shims));
    return words.list(all, "list.comma");
}

// Wide enough for as many sockets as the readings are of.
std::string say_scrap(const Work& work, const Group& group) {
    const int sockets = row_to(group, start_of(work, group));
    return work.job.locale.words()("test.scrap_for_row",
                                   without_mark(show_with_unit(sockets * group.pitch(), work.job.locale)),
                                   sockets);
}

}  // namespace

std::vector<std::string> say_jig(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    std::vector<std::string> all;
    if (!setup.index || !group) return all;
    const Words& words = work.job.locale.words();
    if (group->cuts_end) all.push_back(words("test.spacer_off_pin"));
    if (group->cuts_slot) all.push_back(words("test.spacer_follows_pin"));
    if (group->cuts_slot) all.push_back(words("test.row_is_read"));
    return all;
}

std::vector<std::string> say_test(const Work& work, const std::string& id, CutterSide measured_to) {
    const Setup* tested = work.plan.setup_with_id(id);
    const Group* group = tested ? work.plan.group_with_id(tested->group) : nullptr;
    std::vector<std::string> steps;
    if (!group) return steps;
    const Words& words = work.job.locale.words();
    if (tested->index && row_to(*group, start_of(work, *group)) > 0) steps.push_back(say_scrap(work, *group));
    bool is_first = true;
    for (const Setup& setup : work.plan.setups) {
        if (setup.group != group->id) continue;
        // A stack that is made up for the joint: with what.
        const std::string put_on = say_put_on(work, setup);
        if (is_first && put_on != setup.cutter) steps.push_back(words("test.put_on", put_on));
        is_first = false;
        std::string cut = work_word(words, cut_of(setup.work));
        cut[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(cut[0])));
        const std::string lies =
            setup.index ? words(setup.spacer > Length{} ? "test.in_jig_at_spacer" : "test.in_jig")
                        : face_down_words(words, name_of(setup.passes.front().down));
        steps.push_back(words("test.cut", cut, lies, say_set(work, setup, measured_to)));
    }
    const JointDesign& joint = group->work.chosen.joint;
    const bool fitted = group->cuts_end || (!joint.insert_cut() && joint.seat == Seat::near_wall);
    for (std::string& line : say_jig(work, *tested)) steps.push_back(std::move(line));
    const std::string aimed = say_aimed(work.job, *fit_report(work, id));
    steps.push_back(!fitted         ? words("test.measure")
                    : aimed.empty() ? words("test.push_together")
                                    : words("test.push_together_fit", aimed));
    return steps;
}

std::string say_aimed(const Job& job, const FitReport& report) {
    return report.fit_aimed_mm ? caliper_text(job, Length::nearest_mm(*report.fit_aimed_mm)) : std::string();
}

std::string say_unread(const FitReport& report, const Words& words) {
    std::string moves;
    for (const SaidMove& move : report.unread)
        moves = moves.empty() ? move.say : words("advice.and_move", moves, move.say);
    return moves.empty() ? moves : words("advice.if_not_read", moves, percent(report.chance_after_move));
}

std::string say_torn_down(const Work& work, const FitReport& report) {
    if (!report.locked || report.torn_down) return {};
    for (const RestStep& step : work.rest.steps)
        if (step.set_again && work.plan.setup_with_id(step.setup)->group == report.group)
            return work.job.locale.words()("advice.will_be_torn_down");
    return {};
}

std::string say_part(const Words& words, const Plan& plan, const std::string& id) {
    const Part* part = plan.part_with_id(id);
    if (!part) return id;
    return copy_name(part->drawer, part->copy) + ", " + role_word(words, name_of(part->size.role));
}

std::string say_advice(const FitReport& report, const Words& words) {
    if (report.torn_down) return words("advice.torn_down");
    if (report.locked) return words(report.test == 0 ? "advice.locked_untested" : "advice.locked");
    if (report.test == 0) return words("advice.not_tested");
    const std::string chance = percent(report.chance_in_tolerance);
    switch (report.advice) {
        case AdviceKind::lock:
            return report.is_good() ? words("advice.lock", chance)
                                    : words("advice.lock_all_the_same", chance);
        case AdviceKind::measure: {
            const std::string reading = reading_word(words, report.measure);
            return report.measure_again ? words("advice.measure_again", reading, chance)
                                        : words("advice.measure", reading, chance);
        }
        case AdviceKind::move: break;
    }
    const std::string then = percent(report.chance_after_move);
    return report.retry == Retry::same_ends ? words("advice.move_same_ends", then)
                                            : words("advice.move_fresh_end", then);
}

}  // namespace kw
