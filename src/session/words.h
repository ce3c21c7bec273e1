#pragma once
// Corrections and advice in the maker's words.

#include <cstdint>
#include <string>

#include "job/work.h"

namespace kw {

struct FitReport;

// "3 h 16 min", to the nearest minute.
std::string minutes(std::int64_t seconds);

// "raise the blade 0.012 in, about 1/8 turn". `by` is + for fence out, blade up, thicker spacer, wider stack.
std::string say_move(const Job& job, const Group& group, const std::string& control, Length by);

// "If you can't: raise the blade 0.004 in (71 % then)", where the advice is to measure; empty where no move would help.
std::string say_unread(const FitReport& report);

// "Lock it: 94 % likely that all of it is in tolerance."
std::string say_advice(const FitReport& report);

}  // namespace kw
