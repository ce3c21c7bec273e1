// Drawings on paper: at the scale that is said.

#include "print/place_picture.h"

#include <cmath>

#include "draw/random_views.h"
#include "draw/setup_view.h"
#include "print/marks.h"

using namespace kw::print;

namespace {

kw::draw::Drawing board(double length_mm, double width_mm) {
    kw::draw::Drawing drawing;
    drawing.shapes.emplace_back(kw::draw::Fill{{kw::draw::rectangle({0, 0, length_mm, width_mm})}});
    return drawing;
}

double width_of_outline(const Picture& picture) {
    for (const Mark& mark : marks_of({Paper::a4, "", {picture}}))
        if (const auto* area = std::get_if<FilledArea>(&mark))
            return area->rings[0][1].x_mm - area->rings[0][0].x_mm;
    return 0;
}

}  // namespace

TEST_CASE("a board drawn at 1 : 2 is half as long on paper, and at 1 : 1 a template of itself") {
    CHECK(width_of_outline(picture_at_scale(board(120, 30), {20, 80}, 0.5)) == doctest::Approx(60));
    CHECK(width_of_outline(picture_at_scale(board(120, 30), {20, 80}, 1)) == doctest::Approx(120));
}

TEST_CASE("y of a drawing goes up from its origin, and that of the page down") {
    const Picture picture = picture_at_scale(board(100, 40), {20, 80}, 1);
    for (const Mark& mark : marks_of({Paper::a4, "", {picture}}))
        if (const auto* area = std::get_if<FilledArea>(&mark)) {
            CHECK(area->rings[0][0].y_mm == doctest::Approx(80));
            CHECK(area->rings[0][2].y_mm == doctest::Approx(40));
        }
}

TEST_CASE("the setup's section lies within its room, and at the scale that is written under it") {
    const Area room{20, 30, 130, 95};
    random_views::for_joint_and_jig_setups([&](const kw::Work& work, const kw::Setup& setup) {
        const Picture picture = fitted_picture(kw::draw::setup_view(work, setup), room);
        const Area taken = area_of(picture);
        CHECK(taken.left_mm >= room.left_mm - 1e-6);
        CHECK(taken.right_mm <= room.right_mm + 1e-6);
        CHECK(taken.top_mm >= room.top_mm - 1e-6);
        CHECK(taken.bottom_mm <= room.bottom_mm + 1e-6);
        CHECK_FALSE(words_meet(picture));
        // What is said has two decimals.
        const std::string said = scale_words(work.job.locale.words(), picture.scale);
        const std::size_t colon = said.find(" : ");
        REQUIRE(colon != std::string::npos);
        const double scale = std::stod(said.substr(0, colon)) / std::stod(said.substr(colon + 3));
        CHECK(scale == doctest::Approx(picture.scale).epsilon(0.005));
    });
}

TEST_CASE("scales are said as on a drawing") {
    const kw::Words& english = kw::words_in(kw::Language::english);
    CHECK(scale_words(english, 2) == "2 : 1");
    CHECK(scale_words(english, 1) == "1 : 1");
    CHECK(scale_words(english, 0.4) == "1 : 2.5");
    CHECK(scale_words(kw::words_in(kw::Language::german), 1.5) == "1,5 : 1");
}
