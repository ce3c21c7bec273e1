#include "draw/line_breaks.h"

#include <algorithm>

#include "draw/fraction_text.h"

namespace kw::draw {
namespace {

constexpr std::string_view units[] = {"in", "mm", "cm", "Zoll"};

bool ends_in_a_digit(std::string_view word) {
    return !word.empty() && word.back() >= '0' && word.back() <= '9';
}

// A word without the full stop, comma or bracket behind it.
std::string_view bare(std::string_view word) {
    const std::size_t end = word.find_last_not_of(".,;:)");
    return word.substr(0, end == std::string_view::npos ? 0 : end + 1);
}

bool is_unit(std::string_view word) {
    return std::find(std::begin(units), std::end(units), word) != std::end(units);
}

std::string_view last_word(std::string_view text) {
    const std::size_t space = text.rfind(' ');
    return space == std::string_view::npos ? text : text.substr(space + 1);
}

}  // namespace

bool of_one_length(std::string_view before, std::string_view after) {
    const std::string_view last = last_word(before), next = bare(after);
    if (next == "+" || next == "\u2212") return ends_in_a_digit(last) || is_unit(last);
    if (!ends_in_a_digit(last)) return false;
    if (is_unit(next)) return true;
    const auto runs = text_runs(after);
    return !runs.empty() && runs.front().kind == RunKind::numerator;
}

}  // namespace kw::draw
