#pragma once
// How the screens say things of the plan.

#include <optional>
#include <string>
#include <vector>

#include "job/work.h"
#include "session/session.h"

namespace kw::window {

std::string capital(std::string words);
std::string percent(double chance);     // "87 %"
std::string hundredths(double chance);  // "87"

// How the maker reads the job: values without a unit, and the unit.
std::string value_of(const Job& job, Length length);
std::string unit_words(const Job& job);
// As value_of, but to a caliper's step.
std::string fine_words(const Job& job, Length length);

// "10 1/16 \u00d7 4+ \u00d7 18 in": the remainder mark stands at its number.
std::string size_words(const Job& job, Length a, Length b, Length c);

// "Cutlery 1, left side".
std::string part_words(const Words& words, const Plan& plan, const std::string& part);
std::string role_words(const Words& words, Role role);
// "groove", "locking rabbet: side dado": what a setup cuts.
std::string setup_words(const Words& words, const Setup& setup);

// "front end and rear end", each once.
// A part that must be made or cut again, and why.
void say_affected(Screen& screen, const Work& work, const Affected& affected);
std::string references_of(const Words& words, const Setup& setup);
std::string faces_down(const Words& words, const Setup& setup);

// "twine, seed trays": whose parts go through.
std::string drawers_of(const Plan& plan, const Setup& setup);
// "drawer twine": a name alone may read as a part of the sentence.
std::string drawer_words(const Words& words, const Plan& plan, const Setup& setup);

// What a note is about, in words: "Step 12, groove".
std::string about_words(const Words& words, const Plan& plan, const std::string& about);

// The step of the work: its setup, or nullptr. A step of a setup that is set again carries a suffix behind '#'.
const Setup* setup_of_step(const Plan& plan, const std::string& step);

// The setup that the machine of this step was set for last; nullptr where it was not used before.
const Setup* before_at_machine(const Work& work, std::size_t step);

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
// While a newer document is being worked out. `at_most_better_s`: what another order could save at most of the best found so far, in seconds,
// where that is known.
std::string search_words(const Words& words, std::optional<std::int64_t> at_most_better_s);
// What a pin takes, when the order has been made anew: "Groove is wanted first: 6 min more than before"; or that it can't be.
std::string pin_news(const Words& words, const Work& before, const Work& after, const PinSetup& pin);

// The first step with passes left to run; the last one if nothing is left.
std::string next_step(const Work& work);

std::string joined(const std::vector<std::string>& words, const char* between = ", ");

}  // namespace kw::window
