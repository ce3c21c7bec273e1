// Faces of a bank: the column adds up to the tick, by every rule and for every style.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "drawer/bank_ask.h"

namespace banks {

using namespace kw;
using tests::bank_ask, tests::in;

namespace {

Length whole_of(const BankAsk& ask, const Bank& bank) {
    const int sign = ask.style == FaceStyle::overlay ? 1 : -1;
    return bank.height + sign * (ask.ends.top + ask.ends.bottom);
}

// Faces, what is between them and what did not divide out.
Length sum_of(const Bank& bank) {
    Length sum = bank.left_over + static_cast<std::int64_t>(bank.faces.size() - 1) * bank.between;
    for (const BankFace& face : bank.faces) sum += face.height;
    return sum;
}

std::string said(const tl::expected<Bank, std::vector<Refusal>>& bank) {
    if (bank) return "made";
    std::string out;
    for (const Refusal& one : bank.error())
        out += one.field + ": " + one.why.text(Graduation::in_64) + "; " +
               one.remedy.text(Graduation::in_64) + "\n";
    return out;
}

class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    std::int64_t between(std::int64_t least, std::int64_t most) {
        return least + static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(most - least + 1));
    }

private:
    std::mt19937_64 engine_;
};

// Of any height in ticks, so that hardly anything divides out.
BankAsk random_ask(Dice& dice) {
    BankAsk ask = bank_ask(static_cast<std::size_t>(dice.between(1, 7)));
    const auto mm = [&](int least, int most) {
        return Length::from_ticks(
            dice.between(Length::millimetres(least).ticks(), Length::millimetres(most).ticks()));
    };
    ask.style = dice.between(0, 1) == 0 ? FaceStyle::overlay : FaceStyle::inset;
    ask.height = mm(700, 1500);
    ask.reveal = mm(1, 6);
    ask.ends = {mm(1, 15), mm(1, 15), mm(1, 15), mm(1, 15)};
    if (dice.between(0, 1) == 0) ask.rail = mm(12, 40);
    const FaceHeights rules[] = {FaceHeights::equal, FaceHeights::graduated, FaceHeights::in_proportion};
    ask.heights = rules[dice.between(0, 2)];
    if (dice.between(0, 1) == 0) ask.step = mm(0, 12);
    else ask.top_face = mm(40, 55);
    for (BankRow& row : ask.rows) row.parts = static_cast<int>(dice.between(2, 5));
    return ask;
}

}  // namespace

TEST_CASE("four equal faces in a frameless case of 28 1/2 in, worked by hand") {
    // 27 in of opening in 3/4 in of panels, the faces 1/8 in short of the top and level below: 27 + 5/8 + 3/4 = 28 3/8 in. Less three
    // reveals of 1/8 in, 28 in, in four: 7 in each. Upwards from the floor of the opening: -3/4, 6 3/8, 13 1/2, 20 5/8 in.
    const auto bank = make_bank(bank_ask(4));
    REQUIRE(bank);
    for (const BankFace& face : bank->faces) CHECK(face.height == in(7));
    CHECK(bank->faces[0].bottom == in(165, 8));
    CHECK(bank->faces[1].bottom == in(27, 2));
    CHECK(bank->faces[2].bottom == in(51, 8));
    CHECK(bank->faces[3].bottom == -in(3, 4));
    CHECK(bank->faces[0].top() == in(27) + in(5, 8));
    CHECK(bank->left_over == Length{});
    CHECK(bank->face_width == in(65, 4));
    // Without dividers a box has what lies behind its face: the lowest loses what covers the case.
    CHECK(bank->faces[1].opening_height == in(7));
    CHECK(bank->faces[3].opening_bottom == Length{});
    CHECK(bank->faces[3].opening_height == in(25, 4));
    CHECK(bank->faces[0].opening_height == in(51, 8));
}

TEST_CASE("equal faces are the quotient in whole ticks, and what remains is less than a tick a face") {
    // Against integer division: S = n q + r with 0 <= r < n (Euclid).
    Dice dice(7);
    for (int round = 0; round < 300; ++round) {
        BankAsk ask = bank_ask(static_cast<std::size_t>(dice.between(1, 9)));
        ask.height = Length::from_ticks(dice.between(in(20).ticks(), in(60).ticks()));
        const auto bank = make_bank(ask);
        REQUIRE(bank);
        const auto n = static_cast<std::int64_t>(ask.rows.size());
        const std::int64_t s = (whole_of(ask, *bank) - (n - 1) * ask.reveal).ticks();
        for (const BankFace& face : bank->faces) CHECK(face.height.ticks() == s / n);
        CHECK(bank->left_over.ticks() == s % n);
    }
}

TEST_CASE("three graduated faces with steps of 2 in, worked by hand") {
    // 28 3/8 in less two reveals: 28 1/8 in. Less 2 + 4 in of steps, in three: 7 3/8, 9 3/8, 11 3/8 in.
    BankAsk ask = bank_ask(3);
    ask.heights = FaceHeights::graduated;
    ask.step = in(2);
    const auto bank = make_bank(ask);
    REQUIRE(bank);
    CHECK(bank->faces[0].height == in(59, 8));
    CHECK(bank->faces[1].height == in(75, 8));
    CHECK(bank->faces[2].height == in(91, 8));
    // The other way round, from the top face the same steps follow.
    ask.step.reset();
    ask.top_face = in(59, 8);
    const auto again = make_bank(ask);
    REQUIRE(again);
    CHECK(again->step == in(2));
    CHECK(again->faces == bank->faces);
}

TEST_CASE("graduated faces add up as an arithmetic series does: n (first + last) / 2") {
    Dice dice(11);
    int made = 0;
    for (int round = 0; round < 300; ++round) {
        BankAsk ask = random_ask(dice);
        ask.heights = FaceHeights::graduated;
        if (ask.rows.size() < 2) continue;
        const auto bank = make_bank(ask);
        if (!bank) continue;
        ++made;
        const auto n = static_cast<std::int64_t>(ask.rows.size());
        const Length for_faces = whole_of(ask, *bank) - (n - 1) * bank->between;
        CHECK(n * (bank->faces.front().height + bank->faces.back().height) ==
              2 * (for_faces - bank->left_over));
        for (std::size_t i = 1; i < bank->faces.size(); ++i)
            CHECK(bank->faces[i].height - bank->faces[i - 1].height == bank->step);
        CHECK(bank->left_over >= Length{});
        CHECK(bank->left_over.ticks() < (ask.step ? n : n * (n - 1) / 2));
    }
    CHECK(made > 150);
}

TEST_CASE("random banks add up to the tick, every reveal is the same, and no face leaves its opening open") {
    Dice dice(3);
    int made = 0;
    for (int round = 0; round < 600; ++round) {
        const BankAsk ask = random_ask(dice);
        const auto bank = make_bank(ask);
        if (!bank) continue;
        ++made;
        CHECK(sum_of(*bank) == whole_of(ask, *bank));
        const bool overlay = ask.style == FaceStyle::overlay;
        CHECK(bank->faces.front().top() == bank->height + (overlay ? ask.ends.top : -ask.ends.top));
        CHECK(bank->faces.back().bottom - bank->left_over == (overlay ? -ask.ends.bottom : ask.ends.bottom));
        for (std::size_t i = 0; i < bank->faces.size(); ++i) {
            const BankFace& face = bank->faces[i];
            if (i > 0) CHECK(bank->faces[i - 1].bottom - face.top() == bank->between);
            CHECK(face.over_top == face.top() - face.opening_bottom - face.opening_height);
            CHECK(face.over_bottom == face.opening_bottom - face.bottom);
            if (overlay) CHECK(min(face.over_top, face.over_bottom) >= Length{});
            if (i > 0 && ask.rail)
                CHECK(bank->faces[i - 1].opening_bottom - face.opening_bottom - face.opening_height ==
                      *ask.rail);
        }
    }
    CHECK(made > 300);
}

TEST_CASE("a bank seen upside down has the same faces in the other order") {
    Dice dice(5);
    int made = 0;
    for (int round = 0; round < 200; ++round) {
        BankAsk ask = random_ask(dice);
        ask.heights = FaceHeights::in_proportion;
        BankAsk turned = ask;
        std::reverse(turned.rows.begin(), turned.rows.end());
        std::swap(turned.ends.top, turned.ends.bottom);
        const auto bank = make_bank(ask), other = make_bank(turned);
        REQUIRE(bank.has_value() == other.has_value());
        if (!bank) continue;
        ++made;
        const std::size_t last = bank->faces.size() - 1;
        for (std::size_t i = 0; i <= last; ++i) {
            CHECK(bank->faces[i].height == other->faces[last - i].height);
            // Measured from the other end; what did not divide out lies below in both.
            CHECK(bank->height - bank->faces[i].top() == other->faces[last - i].bottom - bank->left_over);
        }
    }
    CHECK(made > 150);
}

TEST_CASE("faces by opening cover every rail alike from both sides, worked by hand") {
    // Rails of 3/4 in, a reveal of 1/8 in in their middle: 5/16 in covered from each side. Openings of 4, 6 and 8 in.
    BankAsk ask = bank_ask(3);
    ask.height.reset();
    ask.rail = in(3, 4);
    ask.heights = FaceHeights::by_opening;
    for (std::size_t i = 0; i < 3; ++i) ask.rows[i].opening = in(4 + 2 * static_cast<std::int64_t>(i));
    const auto bank = make_bank(ask);
    REQUIRE(bank);
    CHECK(bank->height == in(39, 2));
    CHECK(bank->faces[0].height == in(4) + in(5, 8) + in(5, 16));
    CHECK(bank->faces[1].height == in(6) + in(5, 8));
    CHECK(bank->faces[2].height == in(8) + in(5, 16) + in(3, 4));
    CHECK(bank->faces[1].over_top == in(5, 16));
    CHECK(bank->faces[1].over_bottom == in(5, 16));
    CHECK(bank->left_over == Length{});
    // Inset, each stands in its own opening.
    ask.style = FaceStyle::inset;
    ask.ends = {in(1, 8), in(1, 8), in(1, 8), in(1, 8)};
    const auto inset = make_bank(ask);
    REQUIRE(inset);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(inset->faces[i].height == *ask.rows[i].opening - in(1, 4));
        CHECK(inset->faces[i].over_top == -in(1, 8));
    }
}

TEST_CASE("equal faces before unequal openings are refused with how far an edge must move") {
    BankAsk ask = bank_ask(2);
    ask.height.reset();
    ask.rail = in(3, 4);
    ask.rows[0].opening = in(4);
    ask.rows[1].opening = in(8);
    // 12 3/4 in + 1 3/8 in less the reveal, in two: 7 in. The upper one begins 5/8 in above and ends 2 3/8 in below its opening, over the
    // rail of 3/4 in; so the lower one begins 1 3/4 in below the top of its opening.
    CHECK(said(make_bank(ask)) ==
          "heights: the face of `d2` ends 1 3/4 in below the top of its opening: one would see into the "
          "case; the "
          "lower edge of the face of `d1` must come 1 3/4 in higher: heights \"by opening\" do that\n");
    std::swap(ask.rows[0].opening, ask.rows[1].opening);
    ask.heights = FaceHeights::given;
    ask.rows[0].face = in(7);
    CHECK(said(make_bank(ask)) ==
          "face_heights/0: the face of `d1` ends 1 5/8 in above the floor of its opening: one would see into "
          "the case; "
          "make the face of `d1` 1 5/8 in higher and that of `d2` 1 5/8 in lower\n");
    ask.rows[0].face = in(69, 8);  // the change that was told of
    CHECK(said(make_bank(ask)) == "made");
    // A reading of an opening may be 1/16 in off: that is flagged, and a tick more refused.
    ask.rows[0].face = in(69, 8) - in(1, 16);
    const auto flagged = make_bank(ask);
    REQUIRE(flagged);
    CHECK(flagged->near_misses == std::vector<NearMiss>{{Miss::above_floor, 0, in(1, 16)}});
    ask.rows[0].face = in(69, 8) - in(1, 16) - Length::from_ticks(1);
    CHECK(said(make_bank(ask)) != "made");
}

TEST_CASE("an inset face that comes to its rail nearer than the reveal, or over it, is refused") {
    BankAsk ask = bank_ask(2);
    ask.style = FaceStyle::inset;
    ask.ends = {in(1, 8), in(1, 8), in(1, 8), in(1, 8)};
    ask.height.reset();
    ask.rail = in(3, 4);
    ask.rows[0].opening = ask.rows[1].opening = in(6);
    ask.heights = FaceHeights::given;
    ask.rows[0].face = in(187, 32);
    CHECK(said(make_bank(ask)) ==
          "face_heights/0: the face of `d1` comes to 1/32 in from its rail, which is less than the reveal of "
          "1/8 in; make "
          "the face of `d1` 3/32 in lower and that of `d2` 3/32 in higher\n");
    ask.rows[0].face = in(93, 16);
    const auto flagged = make_bank(ask);
    REQUIRE(flagged);
    CHECK(flagged->near_misses == std::vector<NearMiss>{{Miss::near_rail, 0, in(1, 16)}});
    ask.rows[0].face = in(6);
    CHECK(said(make_bank(ask)).find("the face of `d1` goes 1/8 in over its rail") != std::string::npos);
    ask.rows[0].face = in(5);
    CHECK(said(make_bank(ask)).find("the face of `d2` goes 5/8 in over its rail") != std::string::npos);
    ask.rows[0].face = in(23, 4);
    CHECK(said(make_bank(ask)) == "made");
}

TEST_CASE("given heights must fill the column, and one of them may take the rest") {
    BankAsk ask = bank_ask(3);
    ask.heights = FaceHeights::given;
    ask.rows[0].face = in(6);
    ask.rows[1].face = in(9);
    const auto bank = make_bank(ask);
    REQUIRE(bank);
    CHECK(bank->faces[2].height == in(105, 8));  // 28 1/8 - 15
    ask.rows[2].face = in(13);
    CHECK(said(make_bank(ask)) ==
          "face_heights: the faces come to 28 in, 1/8 in less than there is for them (28 1/8 in); make one "
          "of them 1/8 in "
          "higher, or leave one open\n");
    ask.rows[2].face = in(14);
    CHECK(said(make_bank(ask)) ==
          "face_heights: the faces come to 29 in, 7/8 in more than there is for them (28 1/8 in); make one "
          "of them 7/8 in "
          "lower, or leave one open\n");
    ask.rows[1].face.reset();
    ask.rows[2].face.reset();
    CHECK(said(make_bank(ask)) ==
          "face_heights/2: more than one face is left open; give all heights, or all but one\n");
    ask.rows[1].face = in(22);
    CHECK(said(make_bank(ask))
              .find("face_heights/2: the other faces take 28 in of the 28 1/8 in that there is for all") ==
          0);
}

TEST_CASE("what covers more than the case has, or leaves the rail bare, is refused at its field") {
    BankAsk ask = bank_ask(2);
    ask.edges.top = in(1, 2);
    ask.rail = in(1, 16);
    CHECK(said(make_bank(ask)) ==
          "reveal: the reveal of 1/8 in is wider than the rail of 1/16 in behind it: one would see into the "
          "case beside it; a "
          "reveal of at most 1/16 in, or higher rails\n"
          "top: the faces cover 5/8 in there, and the case has 1/2 in; at most 1/2 in\n");
    ask = bank_ask(2);
    ask.reveal = {};
    CHECK(said(make_bank(ask)) == "reveal: faces with no reveal between them touch; 1/8 in is usual\n");
    ask = bank_ask(2);
    ask.height.reset();
    CHECK(said(make_bank(ask)).find("opening: how high the column is") == 0);
}

TEST_CASE("openings and rails that do not make up the column are refused with the height that would do") {
    BankAsk ask = bank_ask(2);
    ask.height = in(13);
    ask.rail = in(3, 4);
    ask.rows[0].opening = ask.rows[1].opening = in(6);
    CHECK(said(make_bank(ask)) ==
          "opening/height: the openings and rails come to 12 3/4 in, 1/4 in less than the column's 13 in; "
          "measure again: a "
          "column of 12 3/4 in would do, or other openings\n");
    ask.rows[1].opening.reset();
    const auto bank = make_bank(ask);
    REQUIRE(bank);
    CHECK(bank->faces[1].opening_height == in(25, 4));
}

TEST_CASE("the largest step that is offered is the largest that does") {
    BankAsk ask = bank_ask(4);
    ask.heights = FaceHeights::graduated;
    ask.step = in(9);
    const auto refused = make_bank(ask);
    REQUIRE_FALSE(refused);
    CHECK(refused.error()[0].field == "step");
    // 28 in less four faces of 20 mm, in six: (711.2 - 80) / 6 = 105.2 mm, worked by hand.
    CHECK(refused.error()[0].remedy.text(Graduation::mm_0_1) == "a step of at most 105.2 mm");
    ask.step = Length::millimetres(105) + Length::micrometres(200);
    CHECK(make_bank(ask));
    ask.step = Length::millimetres(105) + Length::micrometres(201);
    CHECK_FALSE(make_bank(ask));
}

TEST_CASE("a box may be given less than what lies behind its face, and not more") {
    BankAsk ask = bank_ask(4);
    ask.rows[1].opening = in(6);
    const auto bank = make_bank(ask);
    REQUIRE(bank);
    CHECK(bank->faces[1].opening_height == in(6));
    CHECK(bank->faces[1].opening_bottom == bank->faces[1].bottom);
    CHECK(bank->faces[1].over_top == in(1));
    ask.rows[1].opening = in(8);
    CHECK(said(make_bank(ask)) ==
          "openings/1: an opening of 8 in, and behind its face there is 7 in; at most 7 in, or leave it "
          "open\n");
}

}  // namespace banks
