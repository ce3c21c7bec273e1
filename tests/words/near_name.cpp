// What was meant by a name that is none.
#include <doctest/doctest.h>

#include "words/near_name.h"

using kw::near_name;

TEST_CASE("a slip or two leads to the name that was meant, and another word to none") {
    const std::vector<std::string> known{"width_top", "width_middle", "width_bottom", "height_left"};
    CHECK(near_name("widht_top", known) == "width_top");
    CHECK(near_name("WIDTH_BOTTOM", known) == "width_bottom");
    CHECK(near_name("hight_left", known) == "height_left");
    CHECK(near_name("depth", known).empty());
    CHECK(near_name("", known).empty());
    CHECK(near_name("width_top", {}).empty());
    CHECK(near_name(std::string(1000, 'w'), known).empty());
}

TEST_CASE("of names that are equally near the first is meant") {
    CHECK(near_name("ac", {"ab", "ad"}) == "ab");
    CHECK(near_name("ac", {"ad", "ab"}) == "ad");
}
