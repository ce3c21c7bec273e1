#pragma once
// What the shop has learned from all its locks, and what that makes likely of the next setting. A value: lessons in, beliefs
// out, nothing else is kept.
//
// A scale's offset is the machine's own part, which stays when the cutter is changed, and a part of each cutter on it (its
// near side, its diameter), which does not carry over to another. Both wander with time. The lessons are joined as a
// linear Gaussian over those parts.

#include "memory/lesson.h"

namespace kw {

struct Memory {
    std::vector<Lesson> lessons;  // in the order in which they were learned
    bool operator==(const Memory&) const = default;
};

// What is to be expected of this cutter on this machine. `day`: ISO 8601, the date first; lessons of later days count as of that
// day.
Scales scales_for(const Memory& memory, const Machine& machine, const Cutter& cutter, std::string_view day);

// One thing that is believed, and why.
struct Believed {
    Taught what = Taught::fence;
    std::string machine;
    std::string cutter;
    Length kerf;
    double value = 0.0;
    double spread = 0.0;
    int tests = 0;
    std::string since;  // the day of the oldest lesson
    bool by_hand = false;
};
std::vector<Believed> believed(const Memory& memory, std::string_view day);

// Without what was learned of it; or with the maker's own word in place of it.
Memory forget(Memory memory, const Believed& what);
Memory correct(Memory memory, const Believed& what, double value, std::string_view time);

// After a job's locks have changed from `before` to `after`: what is no longer locked is unlearned, what is new is learned, and what
// was locked again replaces what it taught before.
Memory relearn(Memory memory, const std::vector<Lesson>& before, const std::vector<Lesson>& after);

// With what others have made of `there` since it was `before`: what they have added, and without what they have taken out.
Memory with_others(Memory memory, const Memory& before, const Memory& there);

}  // namespace kw
