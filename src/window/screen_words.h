#pragma once
// How the screens say things of the plan.

#include <optional>
#include <string>
#include <vector>

#include "job/work.h"
#include "session/session.h"
#include "session/setup_said.h"
#include "window/screen.h"

namespace kw::window {

std::string percent(double chance);     // "87 %"
std::string hundredths(double chance);  // "87"

// A part that must be made or cut again, and why.
void say_affected(Screen& screen, const Work& work, const Affected& affected);
// What a note is about, in words: "Step 12, groove".
std::string about_words(const Words& words, const Plan& plan, const std::string& about);

// What is changed at the machine from one setup to the next: "cutter", "fence" and so on. Everything, if there was none before.
std::vector<std::string> changes(const Setup* before, const Setup& now);

struct Progress {
    int done = 0;
    int of = 0;
};
Progress progress_of(const Work& work, const Setup& setup);
Progress progress_of(const Work& work);
// How good the order is: "2 h 56 min in all, proved to be the least with the machines as assigned".
std::string proof_words(const Words& words, const Plan& plan);
// The same of what is left, once the work is begun.
std::string proof_words(const Words& words, const Rest& rest);
// While a newer document is being worked out. `at_most_better_s`: what another order could save at most of the best found so far, in seconds,
// where that is known.
std::string search_words(const Words& words, std::optional<std::int64_t> at_most_better_s);
// What a pin takes, when the order has been made anew: "Groove is wanted first: 6 min more than before"; or that it can't be.
std::string pin_news(const Words& words, const Work& before, const Work& after, const PinSetup& pin);

// The first step with passes left to run; the last one if nothing is left.
std::string next_step(const Work& work);

}  // namespace kw::window
