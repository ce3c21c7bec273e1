#pragma once
// A bank: a column of drawers in one case, whose faces keep one reveal. From the column and the rule for the heights follow each face, its
// opening, and how far the face covers what is round it. All heights are measured up from the floor of the column's opening; what lies
// below it is negative. Rows go from the top down.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "drawer/box.h"

namespace kw {

enum class FaceHeights { equal, graduated, in_proportion, given, by_opening };

// The names used in job files: "equal", "graduated", "in proportion", "given", "by opening".
std::string_view name_of(FaceHeights rule);
std::optional<FaceHeights> face_heights_named(std::string_view name);
const std::vector<FaceHeights>& face_heights_rules();

struct Margins {
    Length left, right, top, bottom;
    bool operator==(const Margins&) const = default;
};

struct BankRow {
    std::string drawer;             // by whose name the row is told of
    std::optional<Length> opening;  // its height, where it is known; nothing: it follows from the faces
    std::optional<Length> face;     // of given heights; nothing: it takes the rest
    int parts = 1;                  // of heights in proportion
};

// How much the case has at each end of the column for faces to cover; nothing: it is not known.
struct CaseEdges {
    std::optional<Length> left, right, top, bottom;
};

struct BankAsk {
    FaceStyle style = FaceStyle::overlay;
    Length width;                  // of the column's opening
    std::optional<Length> height;  // nothing: what the openings and the rails add up to
    std::optional<Length>
        rail;       // height of each rail between two openings; nothing: one opening without dividers
    Length reveal;  // between two faces; with rails, between an inset face and its rail
    Margins ends;   // how far faces cover the ends of the column; of inset faces the gaps there
    CaseEdges edges;
    FaceHeights heights = FaceHeights::equal;
    std::optional<Length> step, top_face;  // of graduated heights, one of both
    std::vector<BankRow> rows;             // at least one
};

struct BankFace {
    Length bottom, height;                  // of the face
    Length opening_bottom, opening_height;  // of what its box may fill
    Length over_top, over_bottom;           // how far the face goes beyond its opening; - it ends inside

    Length top() const { return bottom + height; }
    bool operator==(const BankFace&) const = default;
};

// What a reading is off from what the faces need, when that is no more than a tape and a case are off: to be looked at, not refused.
enum class Miss { near_rail, above_floor, below_top, past_face, openings, faces };
struct NearMiss {
    Miss what;
    std::size_t row = 0;  // of `openings` and `faces` the last
    // near_rail: how much of the reveal is gone; above_floor, below_top: how far the face ends short; past_face: how much higher the
    // opening is; openings: how much less they and the rails come to than the column, - more; faces: the same of all faces
    Length by;

    bool operator==(const NearMiss&) const = default;
};

// Within this a reading agrees with what is needed: 1/32 in of a tape and as much of a case (common practice, no source).
inline constexpr Length near_enough = Length::inches(1, 16);

struct Bank {
    Length height;      // of the column's opening
    Length face_width;  // of all
    Length between;     // from one face to the next
    Length step;        // of graduated heights
    Length
        left_over;  // what did not divide out: less than a tick a face (in proportion or by steps, a tick a part)
    std::vector<BankFace> faces;
    std::vector<NearMiss> near_misses;
    std::size_t unread = 0;  // openings that are not known, where others are
    Length unread_height;    // of each, where they divide what is left; 0: their rails follow from the faces
};

// The faces, the spaces between them and what they leave or cover at the ends make up the column, to the tick:
//   sum of heights + (n - 1) between + left_over = height + ends.top + ends.bottom    (of inset faces: height - both gaps)
//   between = reveal, or with rails behind inset faces rail + 2 reveal
// equal          h = S / n, S what is left for the faces
// graduated      h_i = h_1 + (i - 1) step, so S = n h_1 + step n (n - 1) / 2: from the step follows the top face, or the other way round
// in proportion  h_i = S parts_i / sum of parts
// given          as they are; at most one takes the rest
// by opening     each rail is covered alike from above and below, with the reveal in its middle
// Heights are whole ticks, rounded down, so that faces that are to be alike are alike and are ripped in one setup; what that leaves goes to
// the lower end of the bank.
// Openings that are not given: with rails, one that is open takes what the others leave; of several each rail stands behind the middle of its
// reveal, but by opening they divide what is left. Without rails a box has what lies behind its own face. What is read within `near_enough`
// of what the faces need is flagged (near_misses) and not refused, as long as nothing touches. All refusals at once, by field of the bank: "reveal", "height", "step", "face_heights/2", "top" ...; "openings/2" is of a row's own
// opening.
tl::expected<Bank, std::vector<Refusal>> make_bank(const BankAsk& ask);

// A face lower than this holds nothing (common practice, no source).
inline constexpr Length least_face = Length::millimetres(20);

}  // namespace kw
