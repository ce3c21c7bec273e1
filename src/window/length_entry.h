#pragma once
// A length in the making on the keypad: whole, decimals, or a fraction whose numerator and denominator are put in in
// either order. Pure: a key press makes the next entry from this one. Reading the finished text is the length
// library's work.

#include <string>
#include <string_view>

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
    bool fresh = true;  // a value to be replaced: the first digit takes its place
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
// denominator stay what they are: 10, then 1/16, then 3 is 10 3/16.
LengthEntry denominator(const LengthEntry& entry, int value);
LengthEntry erased(const LengthEntry& entry);
LengthEntry change_sign(const LengthEntry& entry);
LengthEntry with_unit(const LengthEntry& entry, std::string_view unit);
// What a hardware keyboard types: digits, point or comma, space, slash, minus; others change nothing.
LengthEntry typed(const LengthEntry& entry, char key);

// "10 3/16 in"; empty if nothing was put in. A denominator without a numerator is left out, and so is a numerator
// without a denominator.
std::string text_of(const LengthEntry& entry);
bool is_complete(const LengthEntry& entry);  // nothing half put in

}  // namespace kw::window
