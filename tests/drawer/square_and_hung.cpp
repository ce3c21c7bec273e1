// An opening, a box in the clamps and a face in its opening: what tape and feelers read, and what that says.
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>
#include <random>

#include "drawer/hanging.h"
#include "drawer/squareness.h"
#include "drawer/survey.h"

using namespace kw;

namespace {

Length mm(double value) { return Length::nearest_mm(value); }

constexpr double degree = 0.017453292519943295;

// A parallelogram of 500 by 400 mm: skew, both diagonals, and how far one edge stands over against the other. Worked out by
// the law of cosines, outside of this program; d1^2 + d2^2 = 2 (w^2 + d^2) is 820 000 in every row.
struct Skewed {
    double deg, long_mm, short_mm, offset_mm;
};
constexpr Skewed skewed[] = {
    {0.1, 640.8573, 639.7670, 0.698}, {0.5, 643.0324, 637.5809, 3.491}, {1.0, 645.7406, 634.8378, 6.981}};

Survey survey_of(const Skewed& it) {
    Survey survey;
    survey.at(SurveyPlace::width_top) = survey.at(SurveyPlace::width_bottom) = mm(500);
    survey.at(SurveyPlace::height_left) = survey.at(SurveyPlace::height_right) = mm(400);
    survey.at(SurveyPlace::diagonal_rising) = mm(it.long_mm);
    survey.at(SurveyPlace::diagonal_falling) = mm(it.short_mm);
    return survey;
}

// What the box goes by where nothing was typed.
Opening least_of(const Survey& survey) {
    return {least_width(survey).value_or(Length{}), least_height(survey).value_or(Length{}),
            least_depth(survey).value_or(Length{})};
}

Survey mirrored(Survey survey) {
    std::swap(survey.at(SurveyPlace::diagonal_rising), survey.at(SurveyPlace::diagonal_falling));
    std::swap(survey.at(SurveyPlace::height_left), survey.at(SurveyPlace::height_right));
    std::swap(survey.at(SurveyPlace::depth_left), survey.at(SurveyPlace::depth_right));
    return survey;
}

}  // namespace

TEST_CASE("an opening that leans to the right has the longer diagonal rising to the right") {
    for (const Skewed& it : skewed) {
        const SurveyResult says = said_by(survey_of(it), usual_slide(SlideKind::side_mount), {});
        REQUIRE(says.leans_right);
        CHECK(says.leans_right->mm() == doctest::Approx(it.offset_mm).epsilon(0.001));
        CHECK(std::abs(says.contradicts_by->mm()) < 0.001);
        const SurveyResult other = said_by(mirrored(survey_of(it)), usual_slide(SlideKind::side_mount), {});
        CHECK(*other.leans_right == -*says.leans_right);
    }
}

TEST_CASE("equal diagonals alone don't make an opening square: the widths tell a trapezium") {
    Survey survey;
    survey.at(SurveyPlace::width_top) = mm(502);
    survey.at(SurveyPlace::width_bottom) = mm(498);
    survey.at(SurveyPlace::height_left) = survey.at(SurveyPlace::height_right) = mm(400.005);
    // Both run over half of both widths' sum, and over the height.
    survey.at(SurveyPlace::diagonal_rising) = survey.at(SurveyPlace::diagonal_falling) =
        mm(std::hypot(500.0, 400.0));
    const SurveyResult says = said_by(survey, usual_slide(SlideKind::side_mount), least_of(survey));
    CHECK(*says.leans_right == Length{});
    CHECK(says.width_differs == mm(4));
    CHECK(abs(*says.contradicts_by) < mm(0.02));
}

TEST_CASE("readings of which one is misread contradict each other") {
    Survey survey = survey_of(skewed[0]);
    survey.at(SurveyPlace::diagonal_falling) = mm(649.8);  // a centimetre
    const SurveyResult says = said_by(survey, usual_slide(SlideKind::side_mount), least_of(survey));
    CHECK(abs(*says.contradicts_by) > most_contradiction);
}

TEST_CASE("the box must pass the least of all places, and a slide takes up only so much of the rest") {
    Survey survey;
    CHECK_FALSE(least_width(survey));
    survey.at(SurveyPlace::width_top) = mm(400.4);
    survey.at(SurveyPlace::width_middle) = mm(401.0);
    survey.at(SurveyPlace::width_bottom) = mm(402.0);
    survey.at(SurveyPlace::width_back) = mm(399.5);
    survey.at(SurveyPlace::depth_right) = mm(460);
    CHECK(*least_width(survey) == mm(399.5));
    CHECK(*least_depth(survey) == mm(460));
    CHECK_FALSE(least_height(survey));
    // Two slides of 1/2 in, +1/32 -0 (published side space of side-mount slides; from memory), take up 1/16 in in all.
    const SurveyResult says = said_by(survey, usual_slide(SlideKind::side_mount), least_of(survey));
    CHECK(says.width_differs == mm(2.5));
    CHECK(says.shim == mm(2.5) - Length::inches(1, 16));
    survey.at(SurveyPlace::width_back) = mm(400.5);
    CHECK(said_by(survey, usual_slide(SlideKind::side_mount), least_of(survey)).shim ==
          mm(1.6) - Length::inches(1, 16));
}

TEST_CASE("behind a face frame the width at the back is compared as the fillers leave it") {
    const FrameStandsIn frame{mm(19), mm(19)};
    const Slide slide = usual_slide(SlideKind::side_mount);
    Survey survey;
    survey.at(SurveyPlace::width_top) = mm(400);
    survey.at(SurveyPlace::width_back) = mm(438);
    CHECK(*least_width(survey, frame) == mm(400));
    CHECK(said_by(survey, slide, {mm(400), {}, {}}, frame).width_differs == Length{});
    CHECK(said_by(survey, slide, {mm(400), {}, {}}, frame).shim == Length{});
    // Narrow at the back, the box would jam between the fillers.
    survey.at(SurveyPlace::width_back) = mm(430);
    CHECK(*least_width(survey, frame) == mm(392));
}

TEST_CASE("what is typed counts too: a box for less than was read anywhere needs that behind its slides") {
    Survey survey;
    survey.at(SurveyPlace::width_top) = mm(402);
    survey.at(SurveyPlace::width_bottom) = mm(402.6);
    const SurveyResult says = said_by(survey, usual_slide(SlideKind::side_mount), {mm(395), {}, {}});
    CHECK(says.shim == mm(7.6) - Length::inches(1, 16));
}

TEST_CASE("with no width or height read, the diagonals go by what was typed") {
    Survey survey;
    survey.at(SurveyPlace::diagonal_rising) = mm(640.8573);
    survey.at(SurveyPlace::diagonal_falling) = mm(639.7670);
    const SurveyResult says = said_by(survey, usual_slide(SlideKind::side_mount), {mm(500), mm(400), {}});
    CHECK(says.leans_right->mm() == doctest::Approx(0.698).epsilon(0.001));
    CHECK(std::abs(says.contradicts_by->mm()) < 0.001);
}

TEST_CASE("from two diagonals: how far a box is out of square, and which corner to push") {
    const BoxSides box = sides_of({mm(500), mm(100), mm(400)});
    for (const Skewed& it : skewed) {
        const auto leans_right = squareness(box, mm(it.long_mm), mm(it.short_mm));
        REQUIRE(leans_right);
        CHECK(leans_right->expected.mm() == doctest::Approx(640.3124).epsilon(1e-6));
        CHECK(leans_right->back_is_right.mm() == doctest::Approx(it.offset_mm).epsilon(0.001));
        CHECK(leans_right->skew_deg == doctest::Approx(it.deg).epsilon(0.001));
        CHECK(*leans_right->push == BoxCorner::back_right);
        const auto leans_left = squareness(box, mm(it.short_mm), mm(it.long_mm));
        CHECK(leans_left->back_is_right == -leans_right->back_is_right);
        CHECK(*leans_left->push == BoxCorner::back_left);
        CHECK(leans_left->shorten == leans_right->shorten);
    }
    const auto square = squareness(box, mm(640.3), mm(640.3));
    CHECK_FALSE(square->push);
    CHECK(square->back_is_right == Length{});
    CHECK(square->shorten == Length{});
}

namespace {

// A box with its left side turned by an angle, its right one where the back then reaches it: its diagonals from the front's corners.
struct Quad {
    double from_left_mm = 0, from_right_mm = 0;
};
Quad turned_by(double rad, double f, double k, double l, double r) {
    const double dx = l * std::sin(rad), dy = l * std::cos(rad);  // the back left corner
    const double ax = f - dx, ay = -dy, apart = std::hypot(ax, ay);
    const double along = (apart * apart + k * k - r * r) / (2 * apart), up = std::sqrt(k * k - along * along);
    const double cx = dx + (along * ax - up * ay) / apart, cy = dy + (along * ay + up * ax) / apart;
    return {std::hypot(cx, cy), std::hypot(f - dx, dy)};
}

}  // namespace

// Against corners worked out in the plane, the angle found by halving.
TEST_CASE(
    "four sides of unequal lengths are square where their diagonals are equal, and lean by their "
    "difference") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> off(-3.0, 3.0);
    for (int i = 0; i < 50; ++i) {
        const double f = 500 + off(random), k = 500 + off(random), l = 400 + off(random),
                     r = 400 + off(random);
        double low = -0.1, high = 0.1;
        for (int n = 0; n < 60; ++n) {
            const double rad = (low + high) / 2;
            const Quad quad = turned_by(rad, f, k, l, r);
            (quad.from_left_mm < quad.from_right_mm ? low : high) = rad;
        }
        const BoxSides box{mm(f), mm(k), mm(l), mm(r)};
        CHECK(std::abs(equal_diagonal(box).mm() - turned_by(low, f, k, l, r).from_left_mm) < 0.001);
        const Quad leans = turned_by(low + 0.005, f, k, l, r);
        const auto found = squareness(box, mm(leans.from_left_mm), mm(leans.from_right_mm));
        REQUIRE(found);
        CHECK(found->skew_deg == doctest::Approx(0.005 * 57.29578).epsilon(0.02));
        CHECK(abs(found->larger_than_expected) < Length::micrometres(20));
    }
}

TEST_CASE("diagonals of another box are not taken for this one's") {
    const BoxSides box = sides_of({mm(500), mm(100), mm(400)});
    CHECK(squareness(box, mm(64.03), mm(640.3)).error().field == "diagonals");
    CHECK_FALSE(squareness(box, mm(700), mm(700)));
    CHECK(squareness(box, mm(642), mm(642))->larger_than_expected == mm(642) - mm(std::hypot(500.0, 400.0)));
}

namespace {

// A face in an opening, its corners where turning it about its middle really puts them.
struct Hung {
    HungFace face{mm(300), mm(160), mm(2), mm(2), mm(2), mm(2.5)};
    double dx = 0, dy = 0, deg = 0;

    // Of the corner at (x, y) from the face's middle, from where it is to be.
    std::pair<double, double> moved(double x, double y) const {
        const double c = std::cos(deg * degree), s = std::sin(deg * degree);
        return {dx + c * x - s * y - x, dy + s * x + c * y - y};
    }
    Gaps gaps() const {
        const double x = face.width.mm() / 2, y = face.height.mm() / 2;
        Gaps out;
        const auto read = [&](GapPlace place, Length wanted, double grows) {
            out.at(place) = wanted + mm(grows);
        };
        read(GapPlace::left_top, face.left, moved(-x, y).first);
        read(GapPlace::left_bottom, face.left, moved(-x, -y).first);
        read(GapPlace::right_top, face.right, -moved(x, y).first);
        read(GapPlace::right_bottom, face.right, -moved(x, -y).first);
        read(GapPlace::top_left, face.top, -moved(-x, y).second);
        read(GapPlace::top_right, face.top, -moved(x, y).second);
        read(GapPlace::bottom_left, face.bottom, moved(-x, -y).second);
        read(GapPlace::bottom_right, face.bottom, moved(x, -y).second);
        return out;
    }
};

}  // namespace

TEST_CASE("a face that hangs crooked is told to be moved back by just what it hangs off") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> off(-1.5, 1.5), turn(-0.3, 0.3);
    for (int i = 0; i < 200; ++i) {
        Hung hung;
        hung.dx = off(random);
        hung.dy = off(random);
        hung.deg = turn(random);
        const auto says = hanging(hung.face, hung.gaps());
        REQUIRE(says);
        const double up = 150 * std::sin(hung.deg * degree);
        CHECK(says->to_right.mm() == doctest::Approx(-hung.dx).epsilon(0.01));
        CHECK(std::abs(says->left_up.mm() - (up - hung.dy)) < 0.01);
        CHECK(std::abs(says->right_up.mm() - (-up - hung.dy)) < 0.01);
        CHECK(says->left_over < mm(0.01));
    }
}

TEST_CASE("of any gaps that are read, the moves are those of least squares (Eigen's, as another reckoner)") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> gap(0.5, 4.0);
    std::uniform_int_distribution<int> coin(0, 2);
    const HungFace face{mm(380), mm(140), mm(2), mm(2), mm(2), mm(2)};
    for (int i = 0; i < 200; ++i) {
        Gaps gaps;
        Eigen::MatrixXd rows(8, 3);
        Eigen::VectorXd read = Eigen::VectorXd::Zero(8);
        rows.setZero();
        const double x = 190, y = 70;
        const double all[8][3] = {{1, 0, -y}, {1, 0, y},   {-1, 0, y}, {-1, 0, -y},
                                  {0, -1, x}, {0, -1, -x}, {0, 1, -x}, {0, 1, x}};
        int used = 0;
        for (int k = 0; k < 8; ++k) {
            if (coin(random) == 0) continue;
            const Length value = mm(gap(random));
            gaps.at(static_cast<GapPlace>(k)) = value;
            for (int j = 0; j < 3; ++j) rows(k, j) = all[k][j];
            read(k) = value.mm() - 2.0;
            ++used;
        }
        if (used < 3) continue;
        const auto says = hanging(face, gaps);
        REQUIRE(says);
        rows.col(2) /= x;
        if (rows.colPivHouseholderQr().rank() < 3) continue;  // what is not told is left as it is: see below
        const Eigen::VectorXd best = rows.completeOrthogonalDecomposition().solve(read);
        CHECK(std::abs(says->to_right.mm() + best(0)) < 1e-4);
        CHECK(std::abs(says->left_up.mm() + best(1) - best(2)) < 1e-4);
        CHECK(std::abs(says->right_up.mm() + best(1) + best(2)) < 1e-4);
    }
}

TEST_CASE("what no reading tells is left as it is") {
    const HungFace face{mm(380), mm(140), mm(2), mm(2), mm(2), mm(2)};
    CHECK_FALSE(hanging(face, {}));
    Gaps gaps;
    gaps.at(GapPlace::proud_left) = mm(0.6);
    const auto proud = hanging(face, gaps);
    CHECK(proud->left_out == mm(-0.6));
    CHECK(proud->right_out == Length{});
    CHECK(proud->to_right == Length{});
    CHECK(proud->left_up == Length{});
    // One gap that is off is a face that is moved and not one that is turned, and so are two at one height.
    Gaps one;
    one.at(GapPlace::left_top) = mm(3);
    CHECK(abs(hanging(face, one)->to_right - mm(-1)) < mm(1e-3));
    CHECK(abs(hanging(face, one)->left_up) < mm(1e-3));
    one.at(GapPlace::right_top) = mm(1);
    CHECK(abs(hanging(face, one)->to_right - mm(-1)) < mm(1e-3));
    CHECK(abs(hanging(face, one)->right_up) < mm(1e-3));
    gaps.at(GapPlace::right_top) = gaps.at(GapPlace::right_bottom) = mm(1.2);
    const auto narrow = hanging(face, gaps);
    CHECK(abs(narrow->to_right - mm(-0.8)) < mm(1e-4));
    CHECK(abs(narrow->left_up) < mm(1e-4));
}
