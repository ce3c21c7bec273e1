#include "drawer/survey.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>

namespace kw {
namespace {

using Places = std::initializer_list<SurveyPlace>;

constexpr Places widths = {SurveyPlace::width_top, SurveyPlace::width_middle, SurveyPlace::width_bottom,
                           SurveyPlace::width_back};
constexpr Places front_widths = {SurveyPlace::width_top, SurveyPlace::width_middle,
                                 SurveyPlace::width_bottom};
constexpr Places heights = {SurveyPlace::height_left, SurveyPlace::height_right};
constexpr Places depths = {SurveyPlace::depth_left, SurveyPlace::depth_right};

std::vector<Length> readings_at(const Survey& survey, const Places& places) {
    std::vector<Length> out;
    for (const SurveyPlace place : places)
        if (survey.at(place)) out.push_back(*survey.at(place));
    return out;
}

std::optional<Length> least_of(const Survey& survey, const Places& places) {
    const std::vector<Length> all = readings_at(survey, places);
    return all.empty() ? std::nullopt : std::optional(*std::min_element(all.begin(), all.end()));
}

Length differs(const Survey& survey, const Places& places) {
    const std::vector<Length> all = readings_at(survey, places);
    if (all.empty()) return {};
    const auto ends = std::minmax_element(all.begin(), all.end());
    return *ends.second - *ends.first;
}

// 0 where there is none.
double mean_mm(const Survey& survey, const Places& places) {
    const std::vector<Length> all = readings_at(survey, places);
    double sum = 0.0;
    for (const Length one : all) sum += one.mm();
    return all.empty() ? 0.0 : sum / double(all.size());
}

}  // namespace

std::string_view name_of(SurveyPlace place) {
    constexpr std::array<std::string_view, survey_place_count> names = {
        "width_top",    "width_middle", "width_bottom", "width_back",      "height_left",
        "height_right", "depth_left",   "depth_right",  "diagonal_rising", "diagonal_falling"};
    return names[static_cast<std::size_t>(place)];
}

const std::vector<SurveyPlace>& survey_places() {
    static const std::vector<SurveyPlace> places = [] {
        std::vector<SurveyPlace> all;
        for (std::size_t i = 0; i < survey_place_count; ++i) all.push_back(static_cast<SurveyPlace>(i));
        return all;
    }();
    return places;
}

Survey between_fillers(Survey survey, const FrameStandsIn& frame) {
    if (auto& back = survey.at(SurveyPlace::width_back)) *back -= frame.left + frame.right;
    return survey;
}

std::vector<SurveyPlace> places_of(std::string_view size) {
    return size == "width" ? widths : size == "height" ? heights : depths;
}

std::optional<SurveyPlace> place_that_read(const Survey& survey, const FrameStandsIn& frame,
                                           std::string_view size, Length value) {
    const Survey as_run_in = between_fillers(survey, frame);
    for (const SurveyPlace place : places_of(size))
        if (as_run_in.at(place) == value) return place;
    return std::nullopt;
}

bool Survey::is_empty() const {
    return std::none_of(readings.begin(), readings.end(),
                        [](const std::optional<Length>& reading) { return reading.has_value(); });
}

std::optional<Length> least_width(const Survey& survey, const FrameStandsIn& frame) {
    return least_of(between_fillers(survey, frame), widths);
}
std::optional<Length> least_height(const Survey& survey) { return least_of(survey, heights); }
std::optional<Length> least_depth(const Survey& survey) { return least_of(survey, depths); }

SurveyResult said_by(const Survey& as_read, const Slide& slide, const Opening& goes_by,
                     const FrameStandsIn& frame) {
    const Survey survey = between_fillers(as_read, frame);
    SurveyResult result;
    result.width_differs = differs(survey, widths);
    result.height_differs = differs(survey, heights);
    result.depth_differs = differs(survey, depths);
    for (const Length width : readings_at(survey, widths))
        result.shim = max(result.shim, width - goes_by.width - 2 * slide.take_up);
    const auto& rising = survey.at(SurveyPlace::diagonal_rising);
    const auto& falling = survey.at(SurveyPlace::diagonal_falling);
    const auto or_typed = [](double mm, Length typed) { return mm > 0.0 ? mm : typed.mm(); };
    const double width_mm = or_typed(mean_mm(survey, front_widths), goes_by.width),
                 height_mm = or_typed(mean_mm(survey, heights), goes_by.height);
    if (!rising || !falling || width_mm <= 0.0) return result;
    const double rising_mm = rising->mm(), falling_mm = falling->mm();
    result.leans_right =
        Length::nearest_mm((rising_mm - falling_mm) * (rising_mm + falling_mm) / (4.0 * width_mm));
    if (height_mm > 0.0)
        result.contradicts_by =
            Length::nearest_mm(std::sqrt((rising_mm * rising_mm + falling_mm * falling_mm) / 2.0) -
                               std::hypot(width_mm, height_mm));
    return result;
}

}  // namespace kw
