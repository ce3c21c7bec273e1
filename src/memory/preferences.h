#pragma once
// How the maker likes to read and to work. The shop's, for all jobs.

#include <optional>

#include "length/locale.h"

namespace kw {

enum class CutterSide { near, far };  // of the cutter, as seen from the fence
enum class Hand { left, right };

// The sizes on offer, per cent of what the screen says.
inline constexpr int least_size = 75, most_size = 200, size_step = 25;

struct Preferences {
    Language language = Language::english;
    std::optional<Graduation> reading;       // of jobs that say none
    CutterSide fence_to = CutterSide::near;  // where the distance of the fence is measured to
    Hand fence_stands = Hand::right;         // of the cutter, as the maker sees it
    Hand works_with = Hand::right;           // what is pressed most stands on that side
    bool is_dark = false;
    int size_percent = 100;
    bool sounds = false;  // at another step

    bool operator==(const Preferences&) const = default;
};

// What was changed from `before` to `now` in those of `there`, which may be another window's.
Preferences changed_in(Preferences there, const Preferences& before, const Preferences& now);

}  // namespace kw
