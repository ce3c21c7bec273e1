// Words measured and broken into lines.

#include "print/text_size.h"

#include <doctest/doctest.h>

#include <numeric>

using namespace kw::print;

namespace {

constexpr TextStyle style{3.5};

std::string without_spaces(std::string text) {
    std::erase(text, ' ');
    return text;
}

std::string all_of(const std::vector<std::string>& lines) {
    return std::accumulate(lines.begin(), lines.end(), std::string());
}

}  // namespace

TEST_CASE("no line is wider than its room, and no letter is lost") {
    const std::string text =
        "Move the fence out from 9 35/64 in \u2212 to 10 1/16 in: Werkzeugschubladenunterschrankbeschlaege "
        "\u00e4\u00f6\u00fc\u00df";
    for (double room = 6; room < 120; room += 3.7) {
        CAPTURE(room);
        const auto lines = wrapped(text, style, room);
        CHECK(without_spaces(all_of(lines)) == without_spaces(text));
        // A length that is wider than the room by itself is broken as any other word.
        for (const std::string& line : lines) CHECK(text_width_mm(line, style) <= room + 1e-9);
    }
}

TEST_CASE("a length is not torn apart at a line's end") {
    for (double room = 24; room < 60; room += 0.5)
        for (const std::string& line : wrapped("set the fence to 10 1/16 in + and leave it", style, room)) {
            CAPTURE(line);
            CHECK((line.find("10") == std::string::npos) == (line.find("1/16 in +") == std::string::npos));
        }
}

TEST_CASE("what has room stays, and what has none ends in an ellipsis within it") {
    CHECK(shortened("twine", style, 40) == "twine");
    const std::string cut = shortened("Drawer for string, seed and other things", style, 30);
    CHECK(cut.find("\u2026") != std::string::npos);
    CHECK(text_width_mm(cut, style) <= 30);
}

TEST_CASE("a fraction takes less room than its digits in a row") {
    CHECK(text_width_mm("35/64", style) < text_width_mm("35", style) + text_width_mm("64", style));
}
