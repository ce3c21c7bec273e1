// Slides by readings of where they are screwed.
#include <doctest/doctest.h>

#include <random>

#include "drawer/slides_hung.h"

using namespace kw;

namespace {

Length whole_mm(std::int64_t n) { return Length::millimetres(n); }

}  // namespace

TEST_CASE("an end that is too low is raised to the height that is wanted, and one too high lowered") {
    SlidesRead read;
    read.at(SlideReading::left_front) = whole_mm(50);
    read.at(SlideReading::left_rear) = whole_mm(48);
    read.at(SlideReading::right_rear) = whole_mm(51);
    const auto hung = slides_hung(read, whole_mm(50));
    REQUIRE(hung);
    CHECK(hung->up == std::array{Length{}, whole_mm(2), Length{}, -whole_mm(1)});
    CHECK_FALSE(hung->wider_in_front);
}

TEST_CASE("where no height is wanted the slides come to the mean of what was read, with as much up as down") {
    std::mt19937 random(20);
    for (int trial = 0; trial < 200; ++trial) {
        SlidesRead read;
        for (const SlideReading one : {SlideReading::left_front, SlideReading::left_rear,
                                       SlideReading::right_front, SlideReading::right_rear})
            if (random() % 4 > 0)
                read.at(one) = whole_mm(40) + Length::micrometres(std::int64_t(random() % 4000));
        const auto hung = slides_hung(read, std::nullopt);
        CHECK(hung.has_value() != read.is_empty());
        if (!hung) continue;
        Length sum;
        for (const Length up : hung->up) sum += up;
        CHECK(abs(sum) <= 4 * Length::micrometres(1));
        for (std::size_t i = 0; i < 4; ++i)
            for (std::size_t j = 0; j < 4; ++j)
                if (read.readings[i] && read.readings[j])
                    CHECK(*read.readings[i] + hung->up[i] == *read.readings[j] + hung->up[j]);
    }
}

TEST_CASE("the way between them is compared only where both ends were read") {
    SlidesRead read;
    read.at(SlideReading::between_front) = whole_mm(341);
    CHECK_FALSE(slides_hung(read, whole_mm(50))->wider_in_front);
    read.at(SlideReading::between_rear) = whole_mm(340);
    CHECK(slides_hung(read, whole_mm(50))->wider_in_front == whole_mm(1));
    CHECK_FALSE(slides_hung(SlidesRead{}, whole_mm(50)));
}
