#pragma once
// An opening as it was measured: at several places, and what the readings say of each other.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "drawer/box.h"

namespace kw {

enum class SurveyPlace {
    width_top,
    width_middle,
    width_bottom,
    width_back,  // inside the case, at its back: behind a face frame this is wider than between the fillers
    height_left,
    height_right,
    depth_left,
    depth_right,
    diagonal_rising,   // from the lower left corner to the upper right one
    diagonal_falling,  // from the upper left corner to the lower right one
};
inline constexpr std::size_t survey_place_count = 10;

// The names used in job files: "width_top", "diagonal_rising".
std::string_view name_of(SurveyPlace place);
const std::vector<SurveyPlace>& survey_places();

// Any of them may be missing.
struct Survey {
    std::array<std::optional<Length>, survey_place_count> readings{};

    std::optional<Length>& at(SurveyPlace place) { return readings[static_cast<std::size_t>(place)]; }
    const std::optional<Length>& at(SurveyPlace place) const {
        return readings[static_cast<std::size_t>(place)];
    }
    bool is_empty() const;
    bool operator==(const Survey&) const = default;
};

// How far a face frame stands in from the inside of the case: a filler as thick goes behind the slide.
struct FrameStandsIn {
    Length left, right;
};

// With the width at the back as the fillers leave it: as wide as what the slides run between.
Survey between_fillers(Survey survey, const FrameStandsIn& frame);

// The least of the readings, which the box must pass; nothing where there is none. At the back it is what the fillers leave.
std::optional<Length> least_width(const Survey& survey, const FrameStandsIn& frame = {});
std::optional<Length> least_height(const Survey& survey);
std::optional<Length> least_depth(const Survey& survey);

// The places of one size: "width", "height" or "depth".
std::vector<SurveyPlace> places_of(std::string_view size);

// Where such a width, height or depth ("width" and so on) was read between the fillers; nothing where it was not.
std::optional<SurveyPlace> place_that_read(const Survey& survey, const FrameStandsIn& frame,
                                           std::string_view size, Length value);

struct SurveyResult {
    Length width_differs, height_differs,
        depth_differs;  // the most less the least; 0 with one reading or none
    // How far the top stands to the right of the bottom. From both diagonals and a width.
    std::optional<Length> leans_right;
    // The mean of the diagonals by what they were read as, less what the widths and heights make it: nothing that is cut as
    // a parallelogram or a trapezium has more than errors of reading here. Nothing where one of them is missing.
    std::optional<Length> contradicts_by;
    // What must go behind the slides where the opening is widest, in all: what it is wider there than what the box goes by, less what both
    // slides take up.
    Length shim;

    bool operator==(const SurveyResult&) const = default;
};

// `goes_by`: what the box is made for. With d_r and d_f the diagonals, w the mean width at the front and h the mean height along the sides
// (those of `goes_by` where none was read):
//   leans_right     (d_r^2 - d_f^2) / (4 w)
//   contradicts_by  sqrt((d_r^2 + d_f^2) / 2) - sqrt(w^2 + h^2)     the parallelogram law
// To the nearest tick, which says nothing of their accuracy.
SurveyResult said_by(const Survey& survey, const Slide& slide, const Opening& goes_by,
                     const FrameStandsIn& frame = {});

// No case is so far out (common practice, no source): a reading is wrong, or in another unit.
inline constexpr Length too_far_apart = Length::millimetres(40);

// Beyond this, readings with a tape contradict each other: one is misread. Four readings of half a millimetre each
// (EU class II tape at one metre), with room for how it is held.
inline constexpr Length most_contradiction = Length::millimetres(3);

}  // namespace kw
