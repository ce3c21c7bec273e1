// The board on a label, against boards held in the hand with the inside face up and the bottom edge toward the maker.

#include <doctest/doctest.h>

#include "draw/shapes_of.h"
#include "print/labels.h"

using namespace kw::print;
using kw::Length;
using kw::Role;

namespace {

struct Ends {
    std::string left, right, toward_maker;
};

Ends ends_of(Role role) {
    kw::Part part;
    part.size = {role, Length::inches(12), Length::inches(4), Length::inches(1, 2)};
    const kw::draw::Drawing drawing = label_view(part, kw::words_in(kw::Language::english), 50, 15);
    Ends ends;
    for (const kw::draw::Label& label : shapes_of::all<kw::draw::Label>(drawing)) {
        if (label.anchor == kw::draw::Anchor::left) ends.left = label.text;
        if (label.anchor == kw::draw::Anchor::right) ends.right = label.text;
        if (label.anchor == kw::draw::Anchor::top) ends.toward_maker = label.text;
    }
    return ends;
}

}  // namespace

// One who stands inside the drawer and looks at the left side has the front at his left hand; turned to the right side, at his right;
// turned round to the front, its left end at his right.
TEST_CASE(
    "seen from inside the drawer a left side has its front end at the left, and a front its left end at the "
    "right") {
    CHECK(ends_of(Role::side_left).left == "front end");
    CHECK(ends_of(Role::side_left).right == "rear end");
    CHECK(ends_of(Role::side_right).left == "rear end");
    CHECK(ends_of(Role::side_right).right == "front end");
    CHECK(ends_of(Role::front).left == "right end");
    CHECK(ends_of(Role::front).right == "left end");
    CHECK(ends_of(Role::back).left == "left end");
    CHECK(ends_of(Role::back).right == "right end");
    for (const Role role : {Role::side_left, Role::side_right, Role::front, Role::back, Role::face})
        CHECK(ends_of(role).toward_maker == "bottom edge");
}

TEST_CASE("a bottom lies with its front toward the maker, left at the left, and carries no marks") {
    const Ends ends = ends_of(Role::bottom);
    CHECK(ends.left == "left end");
    CHECK(ends.right == "right end");
    CHECK(ends.toward_maker == "front end");
    kw::Part part;
    part.size = {Role::bottom, Length::inches(12), Length::inches(16), Length::inches(1, 4)};
    const auto drawing = label_view(part, kw::words_in(kw::Language::english), 50, 15);
    CHECK(shapes_of::lines(drawing, kw::draw::Stroke::pencil).empty());
}

// Tipped up onto its bottom edge a board shows its top edge beyond its inside face. On a left side, its front at the left, the triangle
// runs to a tip that is farther right and at the inside; a right side mirrors it; a front has the triangle's foot toward its outside.
TEST_CASE("above the board stands its top edge, with the maker's triangle as it lies on that board") {
    const auto pencil_over_board = [](Role role) {
        kw::Part part;
        part.size = {role, Length::inches(12), Length::inches(2), Length::inches(1, 2)};
        const auto drawing = label_view(part, kw::words_in(kw::Language::english), 50, 20);
        return shapes_of::lines(drawing, kw::draw::Stroke::pencil).back().points;
    };
    const auto left = pencil_over_board(Role::side_left), right = pencil_over_board(Role::side_right);
    REQUIRE(left.size() == 3);
    CHECK(left[2].x_mm > left[1].x_mm);
    CHECK(left[2].y_mm < left[1].y_mm);
    CHECK(right[2].x_mm < right[1].x_mm);
    CHECK(right[2].y_mm < right[1].y_mm);
    const auto front = pencil_over_board(Role::front), back = pencil_over_board(Role::back);
    CHECK(front[1].y_mm > front[0].y_mm);  // the foot
    CHECK(back[1].y_mm > back[0].y_mm);    // the tip
    CHECK(back.size() == 3);
    CHECK(front.size() == 4);
}
