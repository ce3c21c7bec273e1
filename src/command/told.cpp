#include "command/told.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "job/comes_first.h"
#include "session/say_log.h"

namespace kw {

std::optional<std::string> out_of_tolerance(const Work& work, const TestCut& lock) {
    const auto chance = chance_when_locked(work, lock);
    constexpr double even = 0.5;
    const auto report = fit_report(work, lock.setup);
    if (report && report->torn_down)
        return "not locked: " + report->setup +
               " was torn down since it was locked; set it again as it was, cut its joint in scrap and "
               "tell `kerfwright fit`, --anyway locks it all the same";
    if (report && report->test == 0)
        return "not locked: " + report->setup +
               " was never tested; cut its joint in scrap and tell `kerfwright fit`, --anyway locks it "
               "all the same";
    if (!chance || *chance >= even) return std::nullopt;
    return "not locked: as tested, the joint is " + std::to_string(std::lround(100 * *chance)) +
           " % likely to be in tolerance; `kerfwright fit` says what to do, --anyway locks it all the "
           "same";
}

std::string unlikely_words(const Work& work, const TestCut& lock) {
    const auto chance = chance_when_locked(work, lock);
    if (!chance || *chance >= work.job.fit.wanted_chance) return {};
    return "Locked, though as tested the joint is only " + std::to_string(std::lround(100 * *chance)) +
           " % likely to be in tolerance.\n";
}

bool is_locked_so(const Work& work, const TestCut& lock) {
    const auto report = fit_report(work, lock.setup);
    return report && report->locked && !report->torn_down && (!lock.moved || lock.moved->empty());
}

bool some_may(const Work& work, const Setup& setup, const std::vector<std::size_t>& passes) {
    return std::any_of(passes.begin(), passes.end(), [&](std::size_t i) {
        std::vector<std::size_t> its;
        std::copy_if(passes.begin(), passes.end(), std::back_inserter(its),
                     [&](std::size_t other) { return setup.passes[other].part == setup.passes[i].part; });
        return !what_comes_first(work, setup, its);
    });
}

std::string torn_down_words(const Work& before, const Work& after) {
    std::string all;
    for (const Setup& setup : after.plan.setups) {
        const Group* group = after.plan.group_with_id(setup.group);
        const auto left = std::count_if(setup.passes.begin(), setup.passes.end(),
                                        [&](const Pass& pass) { return !has_run(after, setup, pass); });
        if (!group || left == 0) continue;
        const auto was = before.standing.groups.find(group->key), is = after.standing.groups.find(group->key);
        if (was == before.standing.groups.end() || is == after.standing.groups.end()) continue;
        if (!was->second.locked || was->second.torn_down || !is->second.torn_down) continue;
        all += "The " + setup.machine + " no longer stands as locked for " + setup.id + " (" + setup.work +
               "), with " + std::to_string(left) + (left == 1 ? " end" : " ends") +
               " still to run: it will have to be set again, and tested.\n";
    }
    return all;
}

std::string lost_words(const Work& after, const std::vector<std::string>& parts) {
    std::string all, again;
    for (const std::string& part : parts) {
        all += (all.empty() ? "" : ", ") + part;
        std::vector<std::string> setups;
        for (const RestStep& step : after.rest.steps)
            if (std::find(step.parts.begin(), step.parts.end(), part) != step.parts.end())
                setups.push_back(step.step);
        again += "  " + part + " goes through " + after.job.locale.words().list(setups) + " again.\n";
    }
    return "Marked as spoilt: " + all + "; another piece of " + (parts.size() == 1 ? "it" : "each") +
           " begins at the board.\n" + again;
}

std::string ran_words(const Work& after, const Setup& setup, std::size_t marked, bool is_late) {
    const auto left = std::count_if(setup.passes.begin(), setup.passes.end(),
                                    [&](const Pass& pass) { return !has_run(after, setup, pass); });
    const std::string rest = left == 0 ? "none is left there" : std::to_string(left) + " left there";
    if (marked == 0)
        return "Nothing to mark: these have run through " + setup.id + " (" + setup.work + "); " + rest +
               ".\n";
    if (is_late)
        return "Marked " + std::to_string(marked) + (marked == 1 ? " end" : " ends") + " as run before " +
               setup.id + " was torn down; " + rest + ".\n";
    return "Marked " + std::to_string(marked) + (marked == 1 ? " end: " : " ends: ") +
           say_last(after, marked) + "; " + rest + ".\n";
}

}  // namespace kw
