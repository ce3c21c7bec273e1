#pragma once
// What is answered to who tells what was done at the machines.

#include <optional>
#include <string>
#include <vector>

#include "session/session.h"

namespace kw {

// Why a joint had better not be locked; nothing where it was tested and is more likely in tolerance than out.
std::optional<std::string> out_of_tolerance(const Work& work, const TestCut& lock);

// What is said of a lock that is less likely in tolerance than the job asks for; empty: nothing.
std::string unlikely_words(const Work& work, const TestCut& lock);
// Whether it stands locked as it would be, with nothing moved since.
bool is_locked_so(const Work& work, const TestCut& lock);

// Whether there is a part of which all of these passes may have gone through the setup.
bool some_may(const Work& work, const Setup& setup, const std::vector<std::size_t>& passes);

// What was marked, and how much of the setup is left; `setup`: as it was before.
std::string ran_words(const Work& after, const Setup& setup, std::size_t marked, bool is_late);

// Which locked setups what was told has torn down before all of their parts had run, a line each.
std::string torn_down_words(const Work& before, const Work& after);

std::string lost_words(const Work& after, const std::vector<std::string>& parts);

}  // namespace kw
