#pragma once
// A length in the making on the keypad: whole, decimals, or a fraction whose numerator and denominator are put in in
// either order. Pure: a key press makes the next entry from this one. Reading the finished text is the length
// library's work.

#include <string>
#include <string_view>

#include "length/text.h"

namespace kw::window {

enum class Slot { whole, decimals, numerator, denominator };

struct LengthEntry {
    bool negative = false;
    std::string whole;
    std::string decimals;
    std::string numerator;
    std::string denominator;
    Slot slot = Slot::whole;
    std::string unit;
    std::string
        terms;  // of a sum, before the one that is being put in: "13 1/2 in - "; '+' and '-' stand between spaces
    bool fresh = true;  // a value to be replaced: the first digit takes its place
    // The term before is a whole number and was ended by a hyphen without a space: a fraction joins it, as in "10-1/16".
    bool joins = false;
    bool operator==(const LengthEntry&) const = default;
};

// From a text such as "10 1/16 in", "12.7 mm" or "-1/4"; what does not look like one length gives an empty entry.
// `unit` where the text names none.
LengthEntry entry_of(std::string_view text, std::string_view unit);

LengthEntry digit(const LengthEntry& entry, char digit);
LengthEntry point(const LengthEntry& entry);
// To the numerator; from there to the denominator; from there to the whole.
LengthEntry next_slot(const LengthEntry& entry);
// "1/16": the denominator, whether the numerator is in already or comes next. Digits just put in without a
// denominator stay what they are: 10, then 1/16, then 3 is 10 3/16. As long as none comes next, see with_numerator().
LengthEntry denominator(const LengthEntry& entry, int value);
LengthEntry erased(const LengthEntry& entry);
LengthEntry change_sign(const LengthEntry& entry);
// The next term of a sum, '+' or '-'. Where nothing was put in yet, '-' is a sign; behind another, it takes its place.
LengthEntry next_term(const LengthEntry& entry, char sign);
// Where a denominator has no numerator: with that from the end of the whole, where only one is a line of that rule ("163", then "/8" is
// 16 3/8; "113", then "/16" may be 11 3/16 or 1 13/16, and stays as it is).
LengthEntry with_numerator(const LengthEntry& entry);
// Digits that were just put in are of the unit that is chosen; a value that stood there before stays as long as it is, to a caliper's step.
LengthEntry with_unit(const LengthEntry& entry, std::string_view unit);
// What a hardware keyboard types: digits, point or comma, space, slash, plus, minus; others change nothing. A hyphen without spaces
// between a whole number and a fraction joins them (10-1/16 is ten and a sixteenth, as in a job's file); any other is a minus.
LengthEntry typed(const LengthEntry& entry, char key);

// "10 3/16 in"; empty if nothing was put in. A denominator without a numerator is left out, and so is a numerator
// without a denominator.
std::string text_of(const LengthEntry& entry);
bool is_complete(const LengthEntry& entry);  // nothing half put in

// What a step more or less changes: a line of the rule for a fraction, its last decimal for a decimal. `rule`: how finely the maker reads.
Graduation step_of(const LengthEntry& entry, Graduation rule);
// So many steps more; the sum worked out, if it is one. As it was where it can't be read.
LengthEntry nudged(const LengthEntry& entry, int steps, Graduation rule);
// The text to keep: a sum worked out, all else as it was put in.
std::string worked_text(const LengthEntry& entry);

}  // namespace kw::window
