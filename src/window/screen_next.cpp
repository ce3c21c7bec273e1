#include "window/screen_next.h"

#include <algorithm>
#include <set>

#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::int64_t seconds_of(const RestStep& step) {
    std::int64_t seconds = step.walk_s + step.test_s + step.cuts_s;
    for (const RestChange& change : step.changes) seconds += change.seconds;
    return seconds;
}

Role role_of(const Plan& plan, const Pass& pass) { return plan.part_with_id(pass.part)->size.role; }

// A bottom is cut to its size after the dry fit, when what it goes into can be measured.
bool is_bottom_size(const Plan& plan, const Setup& setup) {
    return setup.stage != Stage::joint &&
           std::all_of(setup.passes.begin(), setup.passes.end(),
                       [&](const Pass& pass) { return role_of(plan, pass) == Role::bottom; });
}

template <class Belongs>
JobStage stage_of(const Work& work, std::string name, Belongs belongs) {
    JobStage stage{std::move(name), "job.cuts_done"};
    for (const Setup& setup : work.plan.setups) {
        if (!belongs(setup)) continue;
        const Progress progress = progress_of(work, setup);
        stage.done += progress.done;
        stage.of += progress.of;
    }
    for (const RestStep& step : work.rest.steps) {
        const Setup* setup = work.plan.setup_with_id(step.setup);
        if (!setup || !belongs(*setup)) continue;
        stage.left_s += seconds_of(step);
        if (stage.next.empty()) stage.next = step.step;
    }
    return stage;
}

// One drawer of a kind: all that is left to run of its parts keeps it from being put together.
using DrawerCopy = std::pair<std::string, int>;

template <class Counts>
JobStage drawers_ready(const Work& work, std::string name, Counts counts) {
    std::set<DrawerCopy> all, waiting;
    const auto copy_of = [&](const std::string& id) {
        const Part* part = work.plan.part_with_id(id);
        return DrawerCopy{part->drawer, part->copy};
    };
    for (const Part& part : work.plan.parts) all.insert({part.drawer, part.copy});
    for (const RestStep& step : work.rest.steps) {
        const Setup& setup = *work.plan.setup_with_id(step.setup);
        for (const std::size_t i : step.open)
            if (counts(setup.passes[i])) waiting.insert(copy_of(setup.passes[i].part));
    }
    JobStage stage{std::move(name), "job.drawers_ready", static_cast<int>(all.size() - waiting.size()),
                   static_cast<int>(all.size())};
    stage.place = Where::order;
    return stage;
}

JobStage measured(const Screen& screen) {
    JobStage stage{screen.text("job.measure"), "job.drawers_done"};
    stage.place = Where::drawers;
    stage.of = static_cast<int>(names_in(screen.session, "drawers").size());
    std::set<std::string> wrong;
    bool all_wrong = false;
    for (const Problem& problem : screen.session.problems) {
        const std::string list = "/drawers/";
        if (problem.pointer.rfind(list, 0) != 0) all_wrong = true;
        else wrong.insert(problem.pointer.substr(0, problem.pointer.find('/', list.size())));
    }
    stage.done = all_wrong ? 0 : std::max(0, stage.of - static_cast<int>(wrong.size()));
    return stage;
}

// Tested, and as good as it was asked to be.
bool is_good_to_lock(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    const auto standing = group ? work.standing.groups.find(group->key) : work.standing.groups.end();
    return standing != work.standing.groups.end() && standing->second.tests > 0 &&
           !standing->second.torn_down && standing->second.advice.kind == AdviceKind::lock;
}

}  // namespace

std::string step_name(const Words& words, const Plan& plan, const std::string& step) {
    return words("order.step", step_of(plan, step) + 1);
}

NextThing next_thing(const Words& words, const Work& work) {
    if (work.rest.steps.empty()) return {};
    const RestStep& rest = work.rest.steps.front();
    const Setup& setup = *work.plan.setup_with_id(rest.setup);
    NextThing next{rest.step, SawTab::picture, step_of(work.plan, rest.step) + 1, {}};
    if (is_torn_down(work, setup) || (setup.test_cut && !is_locked(work, setup))) {
        next.tab = SawTab::test;
        next.what =
            words(is_good_to_lock(work, setup) ? "next.lock" : "next.test_cut", setup_words(words, setup));
    } else {
        next.what = words("next.to_run", rest.ends, setup_words(words, setup));
    }
    return next;
}

void open_step(Screen& screen, const std::string& step, SawTab tab) {
    UiState& state = screen.state;
    state.place = Where::saw;
    state.setup = step;
    state.saw_tab = tab;
    state.filling.clear();
    state.spoilt_at.clear();
    state.late_at.clear();
    state.why_at.clear();
    state.refused_at.clear();
    state.over = Over::none;
    state.picture = state.closed = state.magnified = {};
}

void go_to_next(Screen& screen) {
    const NextThing next = next_thing(screen.ui.words(), *screen.work());
    screen.state.over = Over::none;
    if (next.step.empty()) screen.state.place = Where::job;
    else open_step(screen, next.step, next.tab);
}

bool is_at_next(const Screen& screen, const NextThing& next) {
    const UiState& state = screen.state;
    if (state.over != Over::none) return false;
    if (next.step.empty()) return state.place == Where::job;
    // The numbers come before the test cut: who looks at them is there already.
    return state.place == Where::saw && state.setup == next.step &&
           (state.saw_tab == next.tab || (next.tab == SawTab::test && state.saw_tab == SawTab::picture));
}

std::vector<JobStage> job_stages(const Screen& screen) {
    const Work& work = *screen.work();
    const Plan& plan = work.plan;
    std::vector<JobStage> stages{measured(screen)};
    const auto add = [&](JobStage stage) {
        if (stage.of > 0) stages.push_back(std::move(stage));
    };
    add(stage_of(work, screen.text("job.rip"), [&](const Setup& setup) {
        return setup.stage == Stage::rip && !is_bottom_size(plan, setup);
    }));
    add(stage_of(work, screen.text("job.crosscut"), [&](const Setup& setup) {
        return setup.stage == Stage::crosscut && !is_bottom_size(plan, setup);
    }));
    std::vector<std::string> machines;
    for (const Setup& setup : plan.setups)
        if (setup.stage == Stage::joint &&
            std::find(machines.begin(), machines.end(), setup.machine) == machines.end())
            machines.push_back(setup.machine);
    for (const std::string& machine : machines)
        add(stage_of(work, screen.text("job.joints", machine), [&](const Setup& setup) {
            return setup.stage == Stage::joint && setup.machine == machine;
        }));
    const auto is_box_part = [&](const Pass& pass) {
        const Role role = role_of(plan, pass);
        return role != Role::bottom && role != Role::face;
    };
    add(drawers_ready(work, screen.text("job.dry_fit"), is_box_part));
    add(stage_of(work, screen.text("job.bottoms"),
                 [&](const Setup& setup) { return is_bottom_size(plan, setup); }));
    add(drawers_ready(work, screen.text("job.assemble"), [](const Pass&) { return true; }));
    return stages;
}

}  // namespace kw::window
