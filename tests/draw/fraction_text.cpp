#include "draw/fraction_text.h"

#include <doctest/doctest.h>

using namespace kw::draw;

namespace {

std::string joined(std::string_view text) {
    std::string result;
    for (const TextRun& run : text_runs(text)) {
        const char mark = run.kind == RunKind::plain       ? 'p'
                          : run.kind == RunKind::numerator ? 'n'
                          : run.kind == RunKind::slash     ? 's'
                                                           : 'd';
        result += mark + std::string(run.kind == RunKind::slash ? "" : "[" + run.text + "]");
    }
    return result;
}

}  // namespace

TEST_CASE("a mixed number is set as a whole and a fraction, without the space between them") {
    CHECK(joined("10 1/16 in") == "p[10]n[1]sd[16]p[ in]");
    CHECK(joined("15/32") == "n[15]sd[32]");
    CHECK(joined("13 1/2 - 1/4") == "p[13]n[1]sd[2]p[ - ]n[1]sd[4]");
    CHECK(joined("\u22121/4 in") == "p[\u2212]n[1]sd[4]p[ in]");
}

TEST_CASE("words, dates, parts of decimals and units over units are no fractions") {
    CHECK(joined("mm/s") == "p[mm/s]");
    CHECK(joined("1/2/2024") == "p[1/2/2024]");
    CHECK(joined("0.5/2") == "p[0.5/2]");
    CHECK(joined("a1/2") == "p[a1/2]");
    CHECK(joined("1/2x") == "p[1/2x]");
    CHECK(joined("3/") == "p[3/]");
    CHECK(joined("").empty());
}
