#include "window/screen_words.h"

#include <algorithm>
#include <cmath>

#include "session/words.h"
#include "words/names.h"

namespace kw::window {
namespace {

// Rounded up, so that no more is to be had.
std::string at_most_better(const Words& words, std::int64_t seconds) {
    return words.counted("order.at_most_better", (std::max<std::int64_t>(seconds, 0) + 59) / 60);
}

}  // namespace

std::string hundredths(double chance) { return std::to_string(std::lround(chance * 100)); }
std::string percent(double chance) { return hundredths(chance) + " %"; }

void say_affected(Screen& screen, const Work& work, const Affected& affected) {
    const bool lost = affected.fate == Fate::lost;
    notice(screen.ui, lost ? Tone::wrong : Tone::caution,
           screen.text(lost ? "order.part_lost" : "order.part_again",
                       part_words(screen.ui.words(), work.plan, affected.part)),
           capital(affected.what.text(work.job.locale)));
}

std::string about_words(const Words& words, const Plan& plan, const std::string& about) {
    const Setup* setup = plan.setup_with_id(about);
    if (!setup) return capital(about);
    return words("order.step_of_work", step_of(plan, about) + 1, setup_words(words, *setup));
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

std::string proof_words(const Words& words, const Plan& plan) {
    const std::string all = minutes(plan.seconds);
    if (plan.proved) return words("order.proved", all);
    if (plan.lower_bound_seconds <= 0) return words("order.best_found", all);
    return words("order.best_found_within", all,
                 at_most_better(words, plan.seconds - plan.lower_bound_seconds));
}

std::string proof_words(const Words& words, const Rest& rest) {
    const std::string left = minutes(rest.seconds);
    if (rest.proved) return words("order.from_here_proved", left);
    if (rest.lower_bound_seconds <= 0) return words("order.from_here_found", left);
    return words("order.from_here_found_within", left,
                 at_most_better(words, rest.seconds - rest.lower_bound_seconds));
}

std::string search_words(const Words& words, std::optional<std::int64_t> at_most_better_s) {
    if (!at_most_better_s) return words("order.searching");
    return words("order.searching_better", at_most_better(words, *at_most_better_s));
}

std::string pin_news(const Words& words, const Work& before, const Work& after, const PinSetup& pin) {
    const Setup* setup = before.plan.setup_with_id(pin.setup);
    if (!setup) return {};
    const std::int64_t more = after.rest.seconds - before.rest.seconds, most = std::abs(more);
    const char* where = pin.where == Pinned::first  ? "order.pinned_first"
                        : pin.where == Pinned::last ? "order.pinned_last"
                                                    : "order.pinned_nowhere";
    const auto& notes = after.plan.notes;
    const bool not_kept = std::any_of(notes.begin(), notes.end(), [](const Note& note) {
        return note.level == Level::warning && note.about == "order";
    });
    const auto news = [&](const std::string& what) {
        return words(where, capital(setup_words(words, *setup)), what);
    };
    if (not_kept) return news(words("order.pin_not_kept"));
    if (more == 0) return news(words("order.pin_as_long"));
    const std::string amount = most < 60 ? words("order.seconds", most) : minutes(most);
    return news(words(more > 0 ? "order.pin_more" : "order.pin_less", amount));
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

}  // namespace kw::window
