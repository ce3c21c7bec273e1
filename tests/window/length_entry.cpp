#include "window/length_entry.h"

#include <doctest/doctest.h>

#include "window/figure_parts.h"

using namespace kw::window;

namespace {

LengthEntry keyed(std::string_view keys, LengthEntry entry = {}) {
    for (const char key : keys) entry = key == '<' ? erased(entry) : typed(entry, key);
    return entry;
}

}  // namespace

TEST_CASE("what a hardware keyboard types is put where it belongs") {
    CHECK(text_of(keyed("10")) == "10");
    CHECK(text_of(keyed("10 1/16")) == "10 1/16");
    CHECK(text_of(keyed("3/8")) == "3/8");
    CHECK(text_of(keyed("12.7")) == "12.7");
    CHECK(text_of(keyed("12,7")) == "12.7");
    CHECK(text_of(keyed(".5")) == "0.5");
    CHECK(text_of(keyed("-1/4")) == "-1/4");
    CHECK(text_of(keyed("xyz")).empty());
}

TEST_CASE("a fraction by touch: the part first or the count first") {
    LengthEntry entry = keyed("10");
    entry = digit(denominator(entry, 16), '3');
    CHECK(text_of(entry) == "10 3/16");
    entry = denominator(digit(next_slot(keyed("9")), '7'), 8);
    CHECK(text_of(entry) == "9 7/8");
    entry = digit(denominator(LengthEntry{}, 32), '5');
    CHECK(text_of(entry) == "5/32");
}

TEST_CASE("another part takes the place of the one before") {
    CHECK(text_of(denominator(digit(denominator(keyed("1"), 4), '3'), 8)) == "1 3/8");
}

TEST_CASE("half a fraction is not offered as a value") {
    CHECK_FALSE(is_complete(LengthEntry{}));
    CHECK_FALSE(is_complete(denominator(keyed("10"), 16)));
    CHECK_FALSE(is_complete(keyed("10 3")));
    CHECK(is_complete(keyed("10 3/16")));
    CHECK(is_complete(keyed("0")));
}

TEST_CASE("an old value is replaced by the first digit, and kept by a sign or a unit") {
    const LengthEntry old = entry_of("10 1/16 in", "mm");
    CHECK(text_of(old) == "10 1/16 in");
    CHECK(text_of(typed(old, '7')) == "7 in");
    CHECK(text_of(erased(old)).empty());
    CHECK(text_of(with_unit(old, "mm")) == "10 1/16 mm");
    CHECK(text_of(change_sign(old)) == "-10 1/16 in");
}

TEST_CASE(
    "what a person wrote is taken apart; what is not one length gives an empty pad with the right unit") {
    CHECK(text_of(entry_of("12.7 mm", "in")) == "12.7 mm");
    CHECK(text_of(entry_of("12,7mm", "in")) == "12.7 mm");
    CHECK(text_of(entry_of("3/4\"", "mm")) == "3/4 in");
    CHECK(text_of(entry_of("-1/4", "in")) == "-1/4 in");
    CHECK(text_of(entry_of("5", "mm")) == "5 mm");
    CHECK(text_of(entry_of("13 1/2 - 1/4", "in")).empty());
    CHECK(text_of(entry_of("about two", "in")).empty());
    CHECK(entry_of("about two", "in").unit == "in");
}

TEST_CASE("erasing goes back the way it came") {
    CHECK(text_of(keyed("10 3/16<")) == "10 3/1");
    CHECK(text_of(keyed("10 3/16<<<<5/8")) == "10 5/8");
    CHECK(text_of(keyed("10 3/16<<<<<")) == "10");
    CHECK(text_of(keyed("12.7<<<")) == "1");
    CHECK(text_of(keyed("<<<<<<<<")).empty());
}

TEST_CASE("no run of keys makes more digits than a length can have") {
    CHECK(text_of(keyed("1234567890")).size() <= 6);
}

TEST_CASE("a shown length is taken apart for large type") {
    CHECK(figure_parts("10 15/32 +") == FigureParts{"10", "15", "32", "+"});
    CHECK(figure_parts("15/64") == FigureParts{"", "15", "64", ""});
    CHECK(figure_parts("\u22121/4") == FigureParts{"\u2212", "1", "4", ""});
    CHECK(figure_parts("6.35") == FigureParts{"6.35", "", "", ""});
    CHECK(figure_parts("10 +") == FigureParts{"10", "", "", "+"});
    CHECK(figure_parts("10 \u2212") == FigureParts{"10", "", "", "\u2212"});
    CHECK(figure_parts("") == FigureParts{});
}
