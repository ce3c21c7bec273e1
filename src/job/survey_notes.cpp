#include "job/survey_notes.h"

#include <initializer_list>

namespace kw {
namespace {

// Less than this a tape does not tell (common practice, no source).
constexpr Length tape = Length::micrometres(500);

Message at_place(SurveyPlace place) { return Message::name("survey.place.", name_of(place)); }

// Of these places the one with the most and the one with the least; at least two were read.
std::pair<SurveyPlace, SurveyPlace> most_and_least(const Survey& survey,
                                                   std::initializer_list<SurveyPlace> places) {
    std::optional<SurveyPlace> most, least;
    for (const SurveyPlace place : places) {
        if (!survey.at(place)) continue;
        if (!most || *survey.at(place) > *survey.at(*most)) most = place;
        if (!least || *survey.at(place) < *survey.at(*least)) least = place;
    }
    return {*most, *least};
}

// `goes_by`: what was typed, where that is less than all of them.
Message differs(const char* key, const Survey& survey, std::initializer_list<SurveyPlace> places, Length by,
                Length goes_by) {
    const auto ends = most_and_least(survey, places);
    return Message::say(key, by, at_place(ends.first), at_place(ends.second), goes_by);
}

class Notes {
public:
    explicit Notes(const DrawerSpec& drawer)
        : drawer_(drawer),
          goes_by_(drawer.opening.value_or(Opening{})),
          says_(said_by(drawer.survey, drawer.slide, goes_by_, drawer.frame.value_or(FrameStandsIn{}))) {}

    std::vector<Note> all(Length box_depth) {
        // No case is so far out: a reading is wrong, or in another unit, and nothing else is worth saying.
        using P = SurveyPlace;
        Length most =
            max(says_.shim, max(says_.width_differs, max(says_.height_differs, says_.depth_differs)));
        const auto beyond = [&](P place, Length goes_by) {
            if (const auto& read = drawer_.survey.at(place)) most = max(most, *read - goes_by);
        };
        for (const P place : {P::height_left, P::height_right}) beyond(place, goes_by_.height);
        for (const P place : {P::depth_left, P::depth_right}) beyond(place, goes_by_.depth);
        if (most > too_far_apart) {
            add(Message::say("survey.too_far_apart", most), Level::warning);
            return std::move(notes_);
        }
        width();
        const Survey& survey = drawer_.survey;
        if (says_.height_differs >= tape)
            add(differs("survey.higher", survey, {P::height_left, P::height_right}, says_.height_differs,
                        goes_by_.height));
        if (says_.depth_differs >= tape)
            add(differs("survey.deeper", survey, {P::depth_left, P::depth_right}, says_.depth_differs,
                        goes_by_.depth));
        lean();
        fillers(box_depth);
        if (!drawer_.slide.note.empty()) add(Message::say("survey.slide_note", drawer_.slide.note));
        return std::move(notes_);
    }

private:
    void add(Message text, Level level = Level::note) {
        notes_.push_back({level, drawer_.name, std::move(text)});
    }

    void width() {
        using P = SurveyPlace;
        const bool differs_much = says_.width_differs >= tape;
        Message wider =
            differs_much ? differs("survey.wider",
                                   between_fillers(drawer_.survey, drawer_.frame.value_or(FrameStandsIn{})),
                                   {P::width_top, P::width_middle, P::width_bottom, P::width_back},
                                   says_.width_differs, goes_by_.width)
                         : Message::say("survey.wider_than_typed", goes_by_.width);
        if (says_.shim >= tape)
            add(Message::say("survey.shim", wider, 2 * drawer_.slide.take_up, says_.shim), Level::warning);
        else if (differs_much) add(Message::say("survey.taken_up", wider));
    }

    void lean() {
        if (says_.contradicts_by && abs(*says_.contradicts_by) > most_contradiction)
            return add(Message::say("survey.contradicts", abs(*says_.contradicts_by)), Level::warning);
        if (!says_.leans_right) return;
        const Length lean = *says_.leans_right;
        if (abs(lean) < tape) {
            const Survey& survey = drawer_.survey;
            return add(Message::say("survey.square", abs(*survey.at(SurveyPlace::diagonal_rising) -
                                                         *survey.at(SurveyPlace::diagonal_falling))));
        }
        const Message leans =
            Message::say(lean > Length{} ? "survey.leans_right" : "survey.leans_left", abs(lean));
        if (drawer_.face.style == FaceStyle::inset)
            add(Message::say("survey.lean_of_inset", leans), Level::warning);
        else if (drawer_.face.style == FaceStyle::overlay) add(Message::say("survey.lean_of_overlay", leans));
        else add(leans);
    }

    void fillers(Length box_depth) {
        if (!drawer_.frame) return;
        const Length left = drawer_.frame->left, right = drawer_.frame->right;
        if (left > Length{} && right > Length{}) add(Message::say("survey.fillers", left, right, box_depth));
        else if (left > Length{}) add(Message::say("survey.filler_left", left, box_depth));
        else if (right > Length{}) add(Message::say("survey.filler_right", right, box_depth));
    }

    const DrawerSpec& drawer_;
    Opening goes_by_;
    SurveyResult says_;
    std::vector<Note> notes_;
};

}  // namespace

std::vector<Note> survey_notes(const DrawerSpec& drawer, Length box_depth) {
    if (drawer.box) return {};  // it is made as it is given, whatever its opening
    return Notes(drawer).all(box_depth);
}

}  // namespace kw
