#include "window/screen_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "draw/part_view.h"
#include "session/words.h"
#include "words/names.h"

namespace kw::window {
namespace {

template <class WordsOf>
std::string each_once(const Words& words, const Setup& setup, WordsOf words_of) {
    std::vector<std::string> all;
    for (const Pass& pass : setup.passes) {
        const std::string word = words_of(pass);
        if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
    }
    return joined(all, std::string(words.text("list.and")).c_str());
}

// Rounded up, so that no more is to be had.
std::string at_most_better(const Words& words, std::int64_t seconds) {
    return words.counted("order.at_most_better", (std::max<std::int64_t>(seconds, 0) + 59) / 60);
}

}  // namespace

std::string capital(std::string words) {
    if (!words.empty()) words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
    return words;
}

std::string hundredths(double chance) { return std::to_string(std::lround(chance * 100)); }
std::string percent(double chance) { return hundredths(chance) + " %"; }

std::string value_of(const Job& job, Length length) { return show(length, job.locale); }

std::string unit_words(const Job& job) {
    return std::string(job.locale.words().text(unit_of(job.locale) == Unit::inch ? "unit.in" : "unit.mm"));
}

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

std::string role_words(const Words& words, Role role) { return role_word(words, name_of(role)); }

std::string setup_words(const Words& words, const Setup& setup) { return work_word(words, setup.work); }

std::string part_words(const Words& words, const Plan& plan, const std::string& id) {
    return capital(say_part(words, plan, id));
}

void say_affected(Screen& screen, const Work& work, const Affected& affected) {
    const bool lost = affected.fate == Fate::lost;
    notice(screen.ui, lost ? Tone::wrong : Tone::caution,
           screen.text(lost ? "order.part_lost" : "order.part_again",
                       part_words(screen.ui.words(), work.plan, affected.part)),
           capital(affected.what.text(work.job.locale)));
}

std::string references_of(const Words& words, const Setup& setup) {
    return each_once(words, setup,
                     [&](const Pass& pass) { return end_word(words, name_of(pass.reference)); });
}

std::string faces_down(const Words& words, const Setup& setup) {
    return each_once(words, setup,
                     [&](const Pass& pass) { return words(key_of("board_face.", name_of(pass.down))); });
}

std::string about_words(const Words& words, const Plan& plan, const std::string& about) {
    const Setup* setup = plan.setup_with_id(about);
    if (!setup) return capital(about);
    return words("order.step_of_work", step_of(plan, about) + 1, setup_words(words, *setup));
}

const Setup* setup_of_step(const Plan& plan, const std::string& step) {
    return plan.setup_with_id(step.substr(0, step.find('#')));
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

std::string drawer_words(const Words& words, const Plan& plan, const Setup& setup) {
    return words("saw.drawer", drawers_of(plan, setup));
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

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
    return out;
}

}  // namespace kw::window
