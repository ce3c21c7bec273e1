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

TEST_CASE("a sum is put in term by term, and worked out exactly") {
    CHECK(text_of(keyed("13 1/2-1/4", entry_of("", "in"))) == "13 1/2 in - 1/4 in");
    CHECK(worked_text(keyed("13 1/2-1/4", entry_of("", "in"))) == "13 1/4 in");
    CHECK(worked_text(keyed("10+3/8+1/64", entry_of("", "in"))) == "10 25/64 in");
    CHECK(worked_text(keyed("12.7-0.25", entry_of("", "mm"))) == "12.45 mm");
    CHECK(worked_text(keyed("5", entry_of("", "in"))) == "5 in");
    // From the value that stands there.
    CHECK(worked_text(keyed("-1/4", entry_of("10 1/16 in", "in"))) == "-1/4 in");
    // Another sign takes the first one's place; a sum that ends with one is not a value yet.
    CHECK(worked_text(keyed("3-+1/2", entry_of("", "in"))) == "3 1/2 in");
    CHECK_FALSE(is_complete(keyed("3-")));
    CHECK(worked_text(change_sign(keyed("3 1/4-1/2", entry_of("", "in")))) == "3 3/4 in");
}

TEST_CASE("a hyphen without spaces joins a whole number and a fraction, as it does in a job's file") {
    const LengthEntry inches = entry_of("", "in");
    CHECK(worked_text(keyed("10-1/16", inches)) == "10 1/16 in");
    CHECK(worked_text(keyed("10 - 1/16", inches)) == "9 15/16 in");
    CHECK(worked_text(keyed("10-3", inches)) == "7 in");
    CHECK(worked_text(keyed("10.5-1/4", inches)) == "10 1/4 in");
    CHECK(worked_text(keyed("20-10-1/16", inches)) == "9 15/16 in");
    for (const char* typed_in : {"10-1/16", "20-10-1/16", "10 - 1/16", "13 1/2-1/4", "10-3"}) {
        CAPTURE(typed_in);
        // The length library reads the same text out of a file.
        const auto read = kw::read_length(typed_in, kw::Unit::inch);
        REQUIRE(read);
        CHECK(worked_text(keyed(typed_in, inches)) == kw::exact_text(*read, kw::Unit::inch));
    }
    // The key on the screen is a minus: there a fraction has its own keys.
    const LengthEntry by_touch = next_term(keyed("10", inches), '-');
    CHECK(worked_text(denominator(digit(next_slot(by_touch), '1'), 16)) == "9 15/16 in");
}

TEST_CASE("by touch, digits in front of a denominator hold its numerator where that can only be one") {
    CHECK(text_of(denominator(keyed("163"), 8)) == "16 3/8");
    CHECK(is_complete(denominator(keyed("163"), 8)));
    CHECK(text_of(denominator(keyed("3"), 8)) == "3/8");
    CHECK(text_of(denominator(keyed("1021"), 16)) == "102 1/16");
    // As long as the next key is no digit.
    CHECK(text_of(digit(denominator(keyed("163"), 8), '5')) == "163 5/8");
    CHECK(text_of(digit(denominator(keyed("3"), 8), '5')) == "3 5/8");
    // Eleven and three sixteenths, or one and thirteen.
    CHECK_FALSE(is_complete(denominator(keyed("113"), 16)));
    CHECK_FALSE(is_complete(denominator(keyed("10"), 16)));
}

TEST_CASE(
    "a value that stands there is converted to another unit; digits that were put in are of the unit "
    "chosen") {
    const auto in = [](std::string_view text) { return text_of(with_unit(entry_of(text, "in"), "mm")); };
    CHECK(in("1/2") == "12.7 mm");
    CHECK(in("10 1/16") == "255.59 mm");
    CHECK(in("-1/4") == "-6.35 mm");
    const auto mm = [](std::string_view text) { return text_of(with_unit(entry_of(text, "mm"), "in")); };
    CHECK(mm("12.7") == "1/2 in");
    CHECK(mm("13") == "0.512 in");
    // There and back, and the first digit still takes its place.
    CHECK(text_of(with_unit(with_unit(entry_of("10 1/16", "in"), "mm"), "in")) == "10.063 in");
    CHECK(text_of(digit(with_unit(entry_of("1/2", "in"), "mm"), '7')) == "7 mm");
    CHECK(text_of(with_unit(keyed("12", entry_of("1/2", "in")), "mm")) == "12 mm");
    CHECK(text_of(with_unit(entry_of("", "in"), "mm")).empty());
}

TEST_CASE("erasing a sum goes back into the term before") {
    CHECK(text_of(keyed("13 1/2-1<", entry_of("", "in"))).empty());
    CHECK(text_of(keyed("13 1/2-1<<", entry_of("", "in"))) == "13 1/2 in");
    CHECK(text_of(keyed("13 1/2-1<<<4", entry_of("", "in"))) == "13 1/4 in");
    CHECK(text_of(keyed("1+2-3<<", entry_of("", "in"))) == "1 in + 2 in");
}

TEST_CASE("a step is a line of the rule, or the last decimal, and goes on from where it is") {
    const auto rule = kw::Graduation::in_64;
    const auto text_after = [&](std::string_view text, int steps, std::string_view unit = "in") {
        return text_of(nudged(entry_of(text, unit), steps, rule));
    };
    CHECK(text_after("10 1/16", 1) == "10 5/64 in");
    CHECK(text_after("10 1/16", -4) == "10 in");
    CHECK(text_after("", 1) == "1/64 in");
    CHECK(text_after("0", -1) == "-1/64 in");
    CHECK(text_after("0.249", 1) == "0.250 in");
    CHECK(text_after("12.7 mm", 1) == "12.8 mm");
    CHECK(text_after("12.69 mm", 1) == "12.70 mm");
    CHECK(text_of(nudged(entry_of("10", "in"), 1, kw::Graduation::in_16)) == "10 1/16 in");
    // Between two lines of the rule it stays there.
    CHECK(text_after("1/128", 1) == "3/128 in");
    // Half a fraction is not moved.
    CHECK(nudged(denominator(keyed("10"), 16), 1, rule) == denominator(keyed("10"), 16));
    for (int steps = -130; steps <= 130; ++steps) {
        const auto there = nudged(entry_of("2 3/32", "in"), steps, rule);
        CHECK(text_of(nudged(there, -steps, rule)) == "2 3/32 in");
    }
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
