#include <doctest/doctest.h>

#include <cstdlib>
#include <map>
#include <random>
#include <regex>
#include <string>
#include <vector>

#include "length/text.h"

using namespace kw;

namespace {

struct Rule {
    Graduation graduation;
    Length step;
    const char* form;  // of the number, without sign and mark
};

const std::vector<Rule>& rules() {
    static const std::vector<Rule> all = {
        {Graduation::in_64, Length::inches(1, 64), R"(0|[1-9]\d*|([1-9]\d* )?[1-9]\d?/(2|4|8|16|32|64))"},
        {Graduation::in_32, Length::inches(1, 32), R"(0|[1-9]\d*|([1-9]\d* )?[1-9]\d?/(2|4|8|16|32))"},
        {Graduation::in_16, Length::inches(1, 16), R"(0|[1-9]\d*|([1-9]\d* )?[1-9]\d?/(2|4|8|16))"},
        {Graduation::in_001, Length::inches(1, 1000), R"(0|(0|[1-9]\d*)\.\d{3})"},
        {Graduation::mm_0_01, Length::micrometres(10), R"(0|(0|[1-9]\d*)\.\d{2})"},
        {Graduation::mm_0_1, Length::micrometres(100), R"(0|(0|[1-9]\d*)\.\d)"},
        {Graduation::mm_0_5, Length::micrometres(500), R"(0|(0|[1-9]\d*)\.[05])"},
    };
    return all;
}

struct Shown {
    std::string sign, number, mark;
};

// Takes a shown text apart by its letter alone.
Shown taken_apart(std::string text) {
    Shown out;
    const std::string minus = "\u2212";
    if (text.compare(0, minus.size(), minus) == 0) {
        out.sign = minus;
        text.erase(0, minus.size());
    }
    for (const std::string& mark : {std::string(" +"), " " + minus}) {
        if (text.size() < mark.size() || text.compare(text.size() - mark.size(), mark.size(), mark) != 0)
            continue;
        out.mark = mark;
        text.erase(text.size() - mark.size());
    }
    out.number = text;
    return out;
}

// The value of a shown number, by arithmetic of its own: ticks, exact for every graduation.
std::int64_t ticks_shown(const std::string& number, Unit unit) {
    const std::int64_t per_unit = unit == Unit::inch ? Length::ticks_per_inch : Length::ticks_per_mm;
    std::int64_t whole = 0, over = 0, under = 1;
    static const std::regex decimal(R"((\d+)\.(\d+))");
    static const std::regex fraction(R"((?:(\d+) )?(\d+)/(\d+))");
    std::smatch parts;
    if (std::regex_match(number, parts, decimal)) {
        whole = std::stoll(parts[1]);
        over = std::stoll(parts[2]);
        for (std::size_t i = 0; i < parts[2].str().size(); ++i) under *= 10;
    } else if (std::regex_match(number, parts, fraction)) {
        whole = parts[1].matched ? std::stoll(parts[1]) : 0;
        over = std::stoll(parts[2]);
        under = std::stoll(parts[3]);
    } else {
        whole = std::stoll(number);
    }
    return whole * per_unit + over * per_unit / under;
}

void check_shown(Length length, const Rule& rule) {
    const std::string text = show(length, rule.graduation);
    CAPTURE(length.ticks());
    CAPTURE(text);
    const Shown shown = taken_apart(text);
    static std::map<std::string, std::regex> forms;
    const auto form = forms.try_emplace(rule.form, rule.form).first;
    CHECK(std::regex_match(shown.number, form->second));
    if (shown.number == "0") CHECK(shown.sign.empty());
    else CHECK(shown.sign.empty() == (length > Length{}));

    const std::int64_t size = ticks_shown(shown.number, unit_of(rule.graduation));
    const std::int64_t error = length.ticks() - (shown.sign.empty() ? size : -size);
    CHECK(2 * std::abs(error) <= rule.step.ticks());
    const bool marked = 4 * std::abs(error) > rule.step.ticks();
    CHECK(shown.mark == (!marked ? "" : error > 0 ? " +" : " \u2212"));

    const std::string unit = unit_of(rule.graduation) == Unit::inch ? " in" : " mm";
    CHECK(show_with_unit(length, rule.graduation) == shown.sign + shown.number + unit + shown.mark);
}

}  // namespace

TEST_CASE("shown lengths, word for word") {
    CHECK(show(Length::inches(161, 16), Graduation::in_64) == "10 1/16");
    CHECK(show(Length::inches(32, 64), Graduation::in_64) == "1/2");
    CHECK(show(Length::inches(12), Graduation::in_64) == "12");
    CHECK(show(Length{}, Graduation::in_64) == "0");
    CHECK(show(Length{}, Graduation::mm_0_1) == "0");
    CHECK(show(-Length::inches(3, 8), Graduation::in_32) == "−3/8");
    CHECK(show(Length::millimetres(12), Graduation::mm_0_1) == "12.0");
    CHECK(show(Length::inches(1, 2), Graduation::in_001) == "0.500");
    CHECK(show(-Length::micrometres(50), Graduation::mm_0_01) == "−0.05");
    CHECK(show_with_unit(Length::inches(1, 2), Graduation::in_64) == "1/2 in");
    CHECK(show_with_unit(Length::inches(1, 2), Graduation::mm_0_1) == "12.7 mm");
    CHECK(show_with_unit(Length{}, Graduation::mm_0_1) == "0 mm");
}

TEST_CASE("12 mm plywood reads 15/32 in and a little more; 11.8 mm a little less") {
    CHECK(show(Length::millimetres(12), Graduation::in_32) == "15/32");        // 11.906 mm: 0.12 of a step
    CHECK(show(Length::micrometres(12'110), Graduation::in_32) == "15/32 +");  // 0.26 of a step
    CHECK(show(Length::micrometres(11'700), Graduation::in_32) == "15/32 −");  // 0.26 of a step the other way
    CHECK(show(-Length::micrometres(12'110), Graduation::in_32) == "−15/32 −");
    CHECK(show_with_unit(Length::micrometres(12'110), Graduation::in_32) == "15/32 in +");
}

TEST_CASE("what rounds to nothing has no sign, and its mark tells on which side it is") {
    for (const Rule& rule : rules()) {
        CHECK(show(Length::from_ticks(rule.step.ticks() / 4), rule.graduation) == "0");
        CHECK(show(Length::from_ticks(-rule.step.ticks() / 4), rule.graduation) == "0");
        CHECK(show(Length::from_ticks(rule.step.ticks() / 2 - 1), rule.graduation) == "0 +");
        CHECK(show(Length::from_ticks(1 - rule.step.ticks() / 2), rule.graduation) == "0 −");
    }
}

TEST_CASE("showing is never wrong by more than half a step, and says so above a quarter") {
    std::mt19937_64 random(64);
    for (const Rule& rule : rules()) {
        const std::int64_t step = rule.step.ticks();
        std::uniform_int_distribution<std::int64_t> ticks(-1'600'000'000, 1'600'000'000);  // 2 m
        std::uniform_int_distribution<std::int64_t> steps(-200, 200);
        for (int i = 0; i < 400; ++i) check_shown(Length::from_ticks(ticks(random)), rule);
        for (int i = 0; i < 100;
             ++i)  // where the rules turn: on the step, a quarter and a half off, a tick beside
            for (const std::int64_t off :
                 {std::int64_t{0}, step / 4, step / 4 + 1, step / 2 - 1, step / 2, step / 2 + 1})
                check_shown(Length::from_ticks(steps(random) * step + off), rule);
    }
}

TEST_CASE("fractions are reduced: the number above the line is odd") {
    for (int n = 1; n < 640; ++n) {
        const std::string text = show(Length::inches(n, 64), Graduation::in_64);
        CAPTURE(text);
        const auto slash = text.find('/');
        if (slash == std::string::npos) CHECK(n % 64 == 0);
        else CHECK((text[slash - 1] - '0') % 2 == 1);
    }
}

TEST_CASE("a step of a graduation is shown as that, with nothing left over") {
    const std::pair<Graduation, const char*> steps[] = {
        {Graduation::in_64, "1/64"},   {Graduation::in_32, "1/32"},   {Graduation::in_16, "1/16"},
        {Graduation::in_001, "0.001"}, {Graduation::mm_0_01, "0.01"}, {Graduation::mm_0_1, "0.1"},
        {Graduation::mm_0_5, "0.5"}};
    for (const auto& [graduation, text] : steps) CHECK(show(graduation_step(graduation), graduation) == text);
}

TEST_CASE("inch graduations read in inches and the others in millimetres") {
    for (const Graduation g : {Graduation::in_64, Graduation::in_32, Graduation::in_16, Graduation::in_001})
        CHECK(unit_of(g) == Unit::inch);
    for (const Graduation g : {Graduation::mm_0_01, Graduation::mm_0_1, Graduation::mm_0_5})
        CHECK(unit_of(g) == Unit::millimetre);
}
