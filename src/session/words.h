#pragma once
// Corrections and advice in the maker's words.

#include "job/work.h"

namespace kw {

struct FitReport;

// "raise the blade 0.012 in, about 1/8 turn". `by` is + for fence out, blade up, thicker spacer, wider stack.
std::string say_move(const Job& job, const Group& group, const std::string& control, Length by);

// "Lock it: 94 % likely that all of it is in tolerance."
std::string say_advice(const FitReport& report);

}  // namespace kw
