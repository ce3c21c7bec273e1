#include "window/screen_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "draw/part_view.h"
#include "session/words.h"

namespace kw::window {
namespace {

template <class Words>
std::string each_once(const Setup& setup, Words words_of) {
    std::vector<std::string> words;
    for (const Pass& pass : setup.passes) {
        const std::string word(words_of(pass));
        if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
    }
    return joined(words, " and ");
}

// Rounded up, so that no more is to be had.
std::string at_most_better(std::int64_t seconds) {
    const std::int64_t most = (std::max<std::int64_t>(seconds, 0) + 59) / 60;
    return "at most " + std::to_string(most) + (most == 1 ? " minute" : " minutes") + " better";
}

}  // namespace

std::string capital(std::string words) {
    if (!words.empty()) words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
    return words;
}

std::string hundredths(double chance) { return std::to_string(std::lround(chance * 100)); }
std::string percent(double chance) { return hundredths(chance) + " %"; }

std::string value_of(const Job& job, Length length) { return show(length, job.locale); }

std::string unit_words(const Job& job) { return unit_of(job.locale) == Unit::inch ? "in" : "mm"; }

std::string fine_words(const Job& job, Length length) { return show_with_unit(length, caliper_locale(job)); }

std::string size_words(const Job& job, Length a, Length b, Length c) {
    const auto tight = [&](Length length) {
        std::string value = value_of(job, length);
        if (const std::size_t mark = value.rfind(' ');
            mark != std::string::npos && value.find('/', mark) == std::string::npos)
            value.erase(mark, 1);
        return value;
    };
    return tight(a) + " \u00d7 " + tight(b) + " \u00d7 " + tight(c) + " " + unit_words(job);
}

std::string role_words(Role role) { return std::string(draw::words_for(role)); }

std::string part_words(const Plan& plan, const std::string& id) {
    const Part* part = plan.part_with_id(id);
    if (!part) return id;
    return capital(part->drawer) + " " + std::to_string(part->copy) + ", " + role_words(part->size.role);
}

std::string references_of(const Setup& setup) {
    return each_once(setup, [](const Pass& pass) { return name_of(pass.reference); });
}

std::string faces_down(const Setup& setup) {
    return each_once(setup, [](const Pass& pass) { return name_of(pass.down); });
}

std::string about_words(const Plan& plan, const std::string& about) {
    const Setup* setup = plan.setup_with_id(about);
    return setup ? "Step " + std::to_string(step_of(plan, about) + 1) + ", " + setup->work : capital(about);
}

const Setup* setup_of_step(const Plan& plan, const std::string& step) {
    return plan.setup_with_id(step.substr(0, step.find('#')));
}

std::size_t step_of(const Plan& plan, const std::string& setup) {
    const auto found = std::find(plan.sequence.begin(), plan.sequence.end(), setup);
    return static_cast<std::size_t>(found - plan.sequence.begin());
}

const Setup* before_at_machine(const Work& work, std::size_t step) {
    const Plan& plan = work.plan;
    const Setup& setup = *setup_of_step(plan, plan.sequence[step]);
    const bool is_left = step >= work.rest.done.size();
    while (step-- > 0) {
        if (is_left && step < work.rest.done.size()) break;
        const Setup* before = setup_of_step(plan, plan.sequence[step]);
        if (before->machine == setup.machine) return before;
    }
    // Before the first of what is left the machine stands as it was used last, which need not be the end of what is done.
    const auto stands = work.rest.stands.find(setup.machine);
    return is_left && stands != work.rest.stands.end() ? plan.setup_with_id(stands->second) : nullptr;
}

std::string drawers_of(const Plan& plan, const Setup& setup) {
    std::vector<std::string> names;
    for (const Pass& pass : setup.passes) {
        const std::string& name = plan.part_with_id(pass.part)->drawer;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return joined(names);
}

std::vector<std::string> changes(const Setup* before, const Setup& now) {
    if (!before || before->machine != now.machine) return {"machine", "cutter", "fence"};
    std::vector<std::string> out;
    if (before->cutter != now.cutter) out.emplace_back("cutter");
    if (before->fence != now.fence) out.emplace_back("fence");
    if (before->height != now.height) out.emplace_back("height");
    if (before->spacer != now.spacer) out.emplace_back("spacer");
    return out;
}

Progress progress_of(const Work& work, const Setup& setup) {
    Progress out;
    out.of = out.done = static_cast<int>(setup.passes.size());
    for (const RestStep& step : work.rest.steps)
        if (step.setup == setup.id) out.done -= step.ends;
    return out;
}

Progress progress_of(const Work& work) {
    Progress out;
    for (const Setup& setup : work.plan.setups) out.of += static_cast<int>(setup.passes.size());
    out.done = out.of;
    for (const RestStep& step : work.rest.steps) out.done -= step.ends;
    return out;
}

std::string proof_words(const Plan& plan) {
    const std::string all = minutes(plan.seconds) + " in all";
    if (plan.proved) return all + ", proved to be the least with the machines as assigned";
    if (plan.lower_bound_seconds <= 0) return all + ", the best order that was found";
    return all + ", the best order that was found: another is " +
           at_most_better(plan.seconds - plan.lower_bound_seconds);
}

std::string search_words(std::optional<std::int64_t> at_most_better_s) {
    const std::string begin = "The order is still being searched";
    if (!at_most_better_s) return begin + ": this is the last one";
    return begin + ": " + at_most_better(*at_most_better_s) + " than what is found";
}

std::string pin_news(const Work& before, const Work& after, const PinSetup& pin) {
    const Setup* setup = before.plan.setup_with_id(pin.setup);
    if (!setup) return {};
    const std::int64_t more = after.rest.seconds - before.rest.seconds, most = std::abs(more);
    const std::string where = pin.where == Pinned::first  ? " is wanted first: "
                              : pin.where == Pinned::last ? " is wanted last: "
                                                          : " is done where it fits best: ";
    const auto& notes = after.plan.notes;
    const bool not_kept = std::any_of(notes.begin(), notes.end(), [](const Note& note) {
        return note.level == Level::warning && note.about == "order";
    });
    if (not_kept)
        return capital(setup->work) + where + "that can't be kept with what else is wanted first and last";
    if (more == 0) return capital(setup->work) + where + "as long as before";
    const std::string amount = most < 60 ? std::to_string(most) + " s" : minutes(most);
    return capital(setup->work) + where + amount + (more > 0 ? " more" : " less") + " than before";
}

std::string next_step(const Work& work) {
    const auto has_work_left = [&](const std::string& step) {
        const Setup* setup = setup_of_step(work.plan, step);
        if (!setup) return false;
        const Progress progress = progress_of(work, *setup);
        return progress.done < progress.of;
    };
    const auto& sequence = work.plan.sequence;
    const auto found = std::find_if(sequence.begin(), sequence.end(), has_work_left);
    if (found != sequence.end()) return *found;
    return sequence.empty() ? std::string() : sequence.back();
}

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
    return out;
}

}  // namespace kw::window
