// What changes on a machine for the next step, in a line.

#include <algorithm>

#include "session/say_ways.h"
#include "session/setup_said.h"
#include "session/words.h"
#include "words/names.h"

namespace kw {
namespace {

// What a caliper can't tell apart is no change; and a cut through the board is at another height than one into it.
std::vector<RestChange> changes_to_tell(const Work& work, const RestStep& step, const Setup& setup) {
    const auto& sequence = work.plan.sequence;
    const auto at = std::find(sequence.begin(), sequence.end(), step.step);
    const Setup* before =
        at == sequence.end() ? nullptr : before_at_machine(work, std::size_t(at - sequence.begin()));
    if (!before) return step.changes;
    const auto same = [&](Length a, Length b) {
        return caliper_text(work.job, a) == caliper_text(work.job, b);
    };
    std::vector<RestChange> changes;
    bool is_set_high = false;
    for (const RestChange& change : step.changes) {
        is_set_high = is_set_high || change.what == "height" || change.what == "cutter";
        const bool is_height_kept =
            change.what == "height" && before->height && setup.height && same(*before->height, *setup.height);
        const bool is_fence_kept = change.what == "fence" && before->guide == setup.guide &&
                                   before->index.has_value() == setup.index.has_value() &&
                                   same(before->fence, setup.fence) &&
                                   !work.rest.sized_to.contains(setup.machine);
        if (!is_height_kept && !is_fence_kept) changes.push_back(change);
    }
    if (!is_set_high && before->height.has_value() != setup.height.has_value())
        changes.push_back({"height", 0});
    return changes;
}

// Told once, with the first step of the joint that is left.
bool has_moves_to_make(const Work& work, const Setup& setup) {
    for (const RestStep& step : work.rest.steps) {
        const Setup& first = *work.plan.setup_with_id(step.setup);
        if (first.group != setup.group) continue;
        if (first.id != setup.id) return false;
        break;
    }
    const Group* group = work.plan.group_with_id(setup.group);
    const auto found = group ? work.standing.groups.find(group->key) : work.standing.groups.end();
    return found != work.standing.groups.end() && !found->second.locked &&
           !found->second.advice.moves.empty();
}

}  // namespace

std::string say_changes(const Work& work, const RestStep& step) {
    const Setup& setup = *work.plan.setup_with_id(step.setup);
    const Words& words = work.job.locale.words();
    // With what is put on, where the cutter's name alone does not say it.
    const auto say = [&](const RestChange& change) {
        const std::string control = control_word(words, control_at_setup(setup, change.what)),
                          put_on = say_put_on(work, setup);
        if (change.what == "cutter" && put_on != setup.cutter)
            return words("changes.cutter_to", control, put_on);
        const std::string shims = say_shims(work, setup, dial_of(work, setup).shims);
        if (change.what == "shims" && !shims.empty()) return words("changes.shims", control, shims);
        return words("changes.control", control);
    };
    std::vector<std::string> changes;
    for (const RestChange& change : changes_to_tell(work, step, setup)) changes.push_back(say(change));
    const std::string all = words.list(changes, "list.comma");
    std::string what = all.empty()      ? words(step.still_set ? "changes.still_set" : "changes.nothing")
                       : step.set_again ? words("changes.set_again", all)
                                        : words("changes.change", all);
    if (has_moves_to_make(work, setup)) what = words("changes.as_advised", what);
    if (step.spacer_left) what = words("changes.spacer_off", what);
    return step.set_again && step.test_s > 0 ? words("changes.then_test", what) : what;
}

}  // namespace kw
