#include "draw/line_breaks.h"

#include <doctest/doctest.h>

using kw::draw::of_one_length;

TEST_CASE("a length is not parted from its fraction, its unit or its mark") {
    CHECK(of_one_length("10", "1/16"));
    CHECK(of_one_length("534.5", "mm"));
    CHECK(of_one_length("534.5 mm", "+."));
    CHECK(of_one_length("1/4 in", "\u2212"));
    CHECK(of_one_length("1/4", "in),"));
    CHECK(of_one_length("0,246", "Zoll"));
}

TEST_CASE("words that are of no length may stand on two lines") {
    CHECK_FALSE(of_one_length("fit:", "+"));
    CHECK_FALSE(of_one_length("step", "12"));
    CHECK_FALSE(of_one_length("12", "into"));
    CHECK_FALSE(of_one_length("put", "in"));
    CHECK_FALSE(of_one_length("mm", "and"));
}
