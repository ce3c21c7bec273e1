#pragma once
// Lengths as people write them, and as they read them.

#include <cstddef>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "length/length.h"
#include "length/locale.h"
#include "length/message.h"

namespace kw {

// What was wrong, and at which character (counted from 0, in bytes of the text given).
struct ReadError {
    std::size_t column = 0;
    Message message;
};

// Reads what a maker writes: `10 1/16`, `10-1/16 in`, `10 1/16"`, `10½`, `1' 2 1/2"`, `0.492in`, `12.7 mm`,
// `12,7 mm`, `1.2 m`, and sums and differences such as `13 1/2 - 1/4`. Point and comma are both decimal
// marks. A hyphen (or en dash) without spaces between a whole number and a fraction joins them (10-1/16 is
// ten and a sixteenth), and so it does between feet and inches (1'-2" is fourteen inches, as on drawings);
// anywhere else it subtracts, and a proper minus sign always does. A term without a unit takes the first unit
// to its right; where there is none, `bare`. Refused, since nobody can tell which was meant, is a bare term
// behind one with a unit other than `bare`, before feet and inches, or before an inch where `bare` is metric
// and the other way round (`11 1/16 + 3 mm` in inches). The sum is exact; only what is not
// a whole count of ticks is rounded, to the nearest, at the end. Refuses what passes a kilometre. Messages
// quote the text: "`12 1/0`: a fraction over zero".
tl::expected<Length, ReadError> read_length(std::string_view text, Unit bare);

// Rounded to the graduation (halves away from zero), fractions reduced, decimals with all their digits, zero
// as `0`, and a proper minus sign: `10 1/16`, `−3/8`, `0.500`, `12.7`. Behind it ` +` or ` −` where rounding
// moved the value by more than a quarter of the step (+: the true length is more than what is shown). Decimals
// stand behind the language's own mark. Without a unit.
std::string show(Length length, const Locale& locale);

// From one line of this graduation to the next: 1/64 in, 0.1 mm.
Length graduation_step(Graduation graduation);

// As `show`, with the unit before the mark, so that the mark can't be taken for a sum: `15/32 in +`.
std::string show_with_unit(Length length, const Locale& locale);

// Either of them without the mark.
std::string without_mark(std::string text);

// The plainest text in `unit` that reads back as exactly this length, with the unit: `10 1/16 in`, `12.1 mm`.
// Inches are fractions down to 1/256 and decimals otherwise, both with up to eight decimals. Falls back to
// millimetres (a tick is 0.00000125 mm) where inches can't hold it. Negative lengths get a hyphen.
std::string exact_text(Length length, Unit unit);

}  // namespace kw
