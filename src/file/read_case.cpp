#include "file/read_case.h"

namespace kw {
namespace {

Survey read_survey(Fields fields) {
    Survey survey;
    for (const SurveyPlace place : survey_places())
        survey.at(place) = fields.optional_length(std::string(name_of(place)));
    return survey;
}

Length least(Fields& opening, const std::string& name, const std::optional<Length>& measured) {
    if (!opening.has(name) && measured) return *measured;
    const Length typed = opening.required_length(name);
    return measured ? min(typed, *measured) : typed;
}

// The gaps round a face are never negative; how far it stands out may be.
Gaps read_gaps(Fields fields) {
    Gaps gaps;
    for (const GapPlace place : gap_places()) {
        const std::string name(name_of(place));
        if (!fields.has(name)) continue;
        const bool is_proud = place == GapPlace::proud_left || place == GapPlace::proud_right;
        gaps.at(place) = is_proud ? fields.signed_length(name, {}) : fields.length(name, {});
    }
    return gaps;
}

}  // namespace

void read_opening(Fields& opening, DrawerSpec& drawer) {
    drawer.survey = read_survey(opening.object("survey"));
    const Survey& survey = drawer.survey;
    drawer.opening =
        Opening{least(opening, "width", least_width(survey)), least(opening, "height", least_height(survey)),
                least(opening, "depth", least_depth(survey))};
    if (!opening.has("frame")) return;
    Fields frame = opening.object("frame");
    drawer.frame = FrameStandsIn{frame.length("left", {}), frame.length("right", {})};
}

std::map<int, Assembled> read_assembled(Fields fields, int count) {
    std::map<int, Assembled> all;
    for (int copy = 1; copy <= count; ++copy) {
        const std::string name = std::to_string(copy);
        if (!fields.has(name)) continue;
        Fields one = fields.object(name);
        all[copy] = {one.optional_length("from_front_left"), one.optional_length("from_front_right"),
                     read_gaps(one.object("gaps"))};
    }
    return all;
}

}  // namespace kw
