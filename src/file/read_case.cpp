#include "file/read_case.h"

namespace kw {
namespace {

// The box is cut by the least reading: one that lies so far below all others is not cut by.
void blame_far_less(Fields& fields, const Survey& survey, std::string_view size) {
    std::optional<SurveyPlace> least;
    std::optional<Length> next;
    for (const SurveyPlace place : places_of(size)) {
        if (!survey.at(place)) continue;
        if (!least || *survey.at(place) < *survey.at(*least)) {
            if (least) next = survey.at(*least);
            least = place;
        } else if (!next || *survey.at(place) < *next) {
            next = survey.at(place);
        }
    }
    if (next && *next - *survey.at(*least) > too_far_apart)
        fields.blame(std::string(name_of(*least)),
                     Message::say("survey.too_far_apart", *next - *survey.at(*least)),
                     Message::say("survey.measure_again"));
}

Survey read_survey(Fields fields) {
    Survey survey;
    for (const SurveyPlace place : survey_places())
        if (const std::string name(name_of(place)); fields.has(name))
            survey.at(place) = fields.required_length(name);
    for (const char* size : {"width", "height", "depth"}) blame_far_less(fields, survey, size);
    return survey;
}

SlidesRead read_slides(Fields fields) {
    SlidesRead read;
    for (const SlideReading reading : slide_readings())
        if (const std::string name(name_of(reading)); fields.has(name))
            read.at(reading) = fields.required_length(name);
    return read;
}

Length least(Fields& opening, const std::string& name, const std::optional<Length>& measured,
             const std::optional<Length>& otherwise) {
    if (!opening.has(name) && measured) return *measured;
    if (!opening.has(name) && otherwise) return *otherwise;
    const Length typed = opening.required_length(name);
    if (measured && *measured > Length{} && typed - *measured > too_far_apart)
        opening.blame(name, Message::say("survey.too_far_apart", typed - *measured),
                      Message::say("survey.measure_again"));
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

void read_opening(Fields& opening, DrawerSpec& drawer, const BankSpec* bank) {
    drawer.survey = read_survey(opening.object("survey"));
    if (opening.has("frame")) {
        Fields frame = opening.object("frame");
        drawer.frame = FrameStandsIn{frame.length("left", {}), frame.length("right", {})};
    }
    const Survey& survey = drawer.survey;
    std::optional<Length> width, height, depth;
    if (bank) {
        width = bank->width;
        height = Length{};
        depth = bank->depth;
    }
    drawer.opening =
        Opening{least(opening, "width", least_width(survey, drawer.frame.value_or(FrameStandsIn{})), width),
                least(opening, "height", least_height(survey), height),
                least(opening, "depth", least_depth(survey), depth)};
    drawer.face_opening = drawer.opening;
    Survey in_front = survey;
    in_front.at(SurveyPlace::width_back).reset();
    if (opening.has("width") || least_width(in_front))
        drawer.face_opening->width = least(opening, "width", least_width(in_front), width);
}

std::map<int, Assembled> read_assembled(Fields fields, int count) {
    std::map<int, Assembled> all;
    for (int copy = 1; copy <= count; ++copy) {
        const std::string name = std::to_string(copy);
        if (!fields.has(name)) continue;
        Fields one = fields.object(name);
        all[copy].gaps = read_gaps(one.object("gaps"));
        all[copy].slides = read_slides(one.object("slides"));
        if (one.has("from_front_left")) all[copy].from_front_left = one.required_length("from_front_left");
        if (one.has("from_front_right")) all[copy].from_front_right = one.required_length("from_front_right");
    }
    return all;
}

}  // namespace kw
