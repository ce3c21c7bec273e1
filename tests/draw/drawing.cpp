#include "draw/drawing.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "draw/layout.h"
#include "draw/shapes_of.h"
#include "draw/svg.h"

using namespace kw::draw;

namespace {

// A board with dimensions wherever a maker may want them, in chains and on top of each other.
Drawing random_drawing(std::mt19937& dice) {
    std::uniform_real_distribution<double> place(0, 120), small(0.5, 40);
    std::uniform_int_distribution<int> side(0, 3), row(0, 2), emphasis(0, 3), count(1, 6);
    Drawing drawing;
    drawing.shapes.push_back(Fill{{rectangle({0, 0, 120, 18})}, Material::plywood});
    for (int i = count(dice); i > 0; --i) {
        Dimension d;
        const double a = place(dice), b = a + small(dice);
        d.side = static_cast<Side>(side(dice));
        const bool along_x = d.side == Side::above || d.side == Side::below;
        d.from = along_x ? Point{a, 9} : Point{60, a};
        d.to = along_x ? Point{b, 9} : Point{60, b};
        d.clear_of_mm = d.side == Side::above ? 18 : d.side == Side::right ? 120 : 0;
        d.row = row(dice);
        d.text = i % 2 ? "10 15/32 in" : "6.35 mm";
        d.emphasis = static_cast<Emphasis>(emphasis(dice));
        drawing.shapes.push_back(d);
    }
    drawing.shapes.push_back(Label{{40, 60}, "face mark", Anchor::left, Emphasis::plain, Point{30, 18}});
    return drawing;
}

}  // namespace

TEST_CASE("a drawing knows how far it reaches") {
    Drawing drawing;
    CHECK(bounds(drawing) == Box{});
    drawing.shapes.push_back(Fill{{rectangle({-3, -2, 5, 7})}});
    drawing.shapes.push_back(Line{{{0, 0}, {9, 1}}, Stroke::thin});
    CHECK(bounds(drawing) == Box{-3, -2, 9, 7});
    drawing.frame = Box{0, 0, 1, 1};
    CHECK(bounds(drawing) == Box{0, 0, 1, 1});
}

TEST_CASE("a circle's corners all stand on it") {
    for (const Point& p : circle({3, -4}, 12.5, 90))
        CHECK(std::hypot(p.x_mm - 3, p.y_mm + 4) == doctest::Approx(12.5));
}

TEST_CASE("mirroring twice gives the drawing back, and once turns lining, dimensions and words") {
    std::mt19937 dice(7);
    for (int i = 0; i < 50; ++i) {
        Drawing drawing = random_drawing(dice);
        drawing.frame = Box{-10, -5, 130, 70};
        const Drawing once = mirrored_about_x(drawing, 0), twice = mirrored_about_x(once, 0);
        CHECK(twice == drawing);
        CHECK(std::get<Fill>(once.shapes[0]).mirrored);
        CHECK(bounds(once) == Box{-130, -5, 10, 70});
    }
}

TEST_CASE("pixels and millimetres turn into each other, y upwards and downwards") {
    const View view{3.5, {100, 200}, 1};
    CHECK(to_pixel(view, {10, 20}) == Pixel{135, 130});
    const Point back = to_mm(view, to_pixel(view, {-7.25, 0.125}));
    CHECK(back.x_mm == doctest::Approx(-7.25));
    CHECK(back.y_mm == doctest::Approx(0.125));
}

TEST_CASE("no words of dimensions lie over each other, over their lines or off the sheet") {
    std::mt19937 dice(20240601);
    for (int i = 0; i < 400; ++i) {
        const Drawing drawing = i % 2 ? random_drawing(dice) : mirrored_about_x(random_drawing(dice), 60);
        const View view = fitted(drawing, 1600, 1100, 1, paper_text_width);
        const Annotations words = annotate(drawing, view, paper_text_width);
        for (std::size_t a = 0; a < words.texts.size(); ++a) {
            CHECK(words.texts[a].box.left >= 0);
            CHECK(words.texts[a].box.top >= 0);
            CHECK(words.texts[a].box.right <= 1600);
            CHECK(words.texts[a].box.bottom <= 1100);
            for (std::size_t b = a + 1; b < words.texts.size(); ++b)
                CHECK_FALSE(shapes_of::meet(words.texts[a].box, words.texts[b].box));
            for (const PlacedLine& line : words.lines) {
                if (line.extension) continue;  // these pass under the plates of the words
                const PixelBox box{std::min(line.from.x, line.to.x), std::min(line.from.y, line.to.y),
                                   std::max(line.from.x, line.to.x), std::max(line.from.y, line.to.y)};
                CHECK_FALSE(shapes_of::meet(
                    words.texts[a].box, {box.left - 0.6, box.top - 0.6, box.right + 0.6, box.bottom + 0.6}));
            }
        }
    }
}

TEST_CASE("dimensions of a chain share one line where there is room") {
    Drawing drawing;
    drawing.shapes.push_back(Fill{{rectangle({0, 0, 100, 10})}});
    for (const double x : {0.0, 50.0})
        drawing.shapes.push_back(Dimension{{x, 0}, {x + 50, 0}, Side::below, 0, 0, "50 mm"});
    const Annotations words = annotate(drawing, {8, {100, 100}, 1}, paper_text_width);
    REQUIRE(words.texts.size() == 2);
    CHECK(words.texts[0].box.top == words.texts[1].box.top);
}

TEST_CASE("a wide drawing fills the width of its sheet, words and all") {
    Drawing drawing;
    drawing.shapes.push_back(Fill{{rectangle({0, 0, 200, 10})}});
    drawing.shapes.push_back(Dimension{{200, 0}, {200, 10}, Side::right, 200, 0, "10 mm"});
    const View view = fitted(drawing, 900, 600, 1, paper_text_width);
    const PixelBox words = extent(annotate(drawing, view, paper_text_width));
    const double left = to_pixel(view, {0, 0}).x;
    CHECK(left == doctest::Approx(4).epsilon(0.5));
    CHECK(words.right > 885);
    CHECK(words.right <= 900);
}

TEST_CASE(
    "text is measured wider when it is longer, larger or bold, and fractions take less than their digits") {
    CHECK(paper_text_width("10 mm", 20, false) > paper_text_width("1 mm", 20, false));
    CHECK(paper_text_width("10 mm", 40, false) == doctest::Approx(2 * paper_text_width("10 mm", 20, false)));
    CHECK(paper_text_width("10 mm", 20, true) > paper_text_width("10 mm", 20, false));
    CHECK(paper_text_width("15/16", 20, false) < paper_text_width("15 16", 20, false));
    // Inter's digit zero is 625 thousandths of an em wide.
    CHECK(paper_text_width("0", 1000, false) == doctest::Approx(625));
}
