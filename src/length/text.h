#pragma once
// Lengths as people write them, and as they read them.

#include <cstddef>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "length/length.h"

namespace kw {

enum class Unit { inch, millimetre, centimetre };

// What was wrong, and at which character (counted from 0, in bytes of the text given).
struct ReadError {
    std::size_t column = 0;
    std::string message;
};

// Reads what a maker writes: `10 1/16`, `10-1/16 in`, `10 1/16"`, `1' 2 1/2"`, `0.492in`, `12.7 mm`, `12,7 mm`,
// and sums and differences such as `13 1/2 - 1/4`. A hyphen without spaces between a whole number and a
// fraction joins them (10-1/16 is ten and a sixteenth); anywhere else it subtracts.
// A term without a unit takes the first unit to its right; where there is none, `bare`. A bare term behind one
// with a unit other than `bare` is refused, since nobody can tell which was meant.
tl::expected<Length, ReadError> read_length(std::string_view text, Unit bare);

// How finely a maker reads: the step of the rule or caliper, and the unit that it is in.
enum class Graduation { in_64, in_32, in_16, in_001, mm_0_01, mm_0_1, mm_0_5 };

Unit unit_of(Graduation graduation);

// Rounded to the reading, fraction reduced, with ` +` or ` −` where rounding moved the value by more than a
// quarter of the step (+: the true length is more than what is shown). Without a unit; see show_with_unit.
std::string show(Length length, Graduation graduation);
std::string show_with_unit(Length length, Graduation graduation);

// The shortest text in `unit` that reads back as exactly this length, with the unit: `10 1/16 in`, `12.1 mm`.
// Falls back to millimetres with up to eight decimals (a tick is 0.00000125 mm) where `unit` can't hold it.
std::string exact_text(Length length, Unit unit);

}  // namespace kw
