#include "draw/symptom_view.h"

#include <cmath>

#include "draw/joint_view.h"
#include "words/names.h"

namespace kw::draw {
namespace {

// An amount that shows the word: the middle of what it means, and well past the edge where it has no end.
double shown_mm(const Sight& sight) {
    constexpr double past_mm = 0.3;
    if (std::isinf(sight.low_mm)) return sight.reading == "face_step" ? sight.high_mm - past_mm : 0.0;
    if (std::isinf(sight.high_mm)) return sight.low_mm + past_mm;
    return 0.5 * (sight.low_mm + sight.high_mm);
}

Settings with_symptom(const Group& group, const Sight& sight) {
    const JointDesign& joint = group.work.chosen.joint;
    const Length by = Length::nearest_mm(shown_mm(sight));
    Settings settings = group.designed;
    if (has_fingers(joint)) {
        // The pitch stays, so that the sockets get wider by half and the fingers narrower by half.
        const Length half = (by - joint.clearance).scaled(1, 2);
        if (sight.reading == "fit") settings.kerf += half, settings.fence -= half;
        else if (sight.reading == "face_step") settings.height += by - joint.step;
    } else if (has_lap(joint) && group.cuts_slot) {
        // One setting makes both rabbets: wider and deeper by half each is a step, wider and less deep an open shoulder.
        const Length half = (by - (sight.reading == "face_step" ? joint.step : Length{})).scaled(1, 2);
        settings.spacer -= half;
        settings.height += sight.reading == "face_step" ? half : -half;
    } else if (has_lap(joint)) {
        if (sight.reading == "face_step") settings.height += by - joint.step;
        else settings.spacer -= by;
    } else if (sight.reading == "fit")
        (group.cuts_end ? settings.height : settings.kerf) += by - joint.clearance;
    else if (sight.reading == "face_step") settings.fence += by - joint.step;
    else if (by > Length{}) settings.spacer -= by + joint.end_relief;
    return settings;
}

}  // namespace

Drawing symptom_view(const Work& work, const Group& group, const Sight& sight) {
    Drawing drawing = joint_magnified(work, group, with_symptom(group, sight));
    // No words, and no pencil: they are small pictures of one thing.
    std::erase_if(drawing.shapes, [](const Shape& shape) {
        const auto* line = std::get_if<Line>(&shape);
        return std::holds_alternative<Label>(shape) || std::holds_alternative<Dimension>(shape) ||
               (line && (line->stroke == Stroke::pencil || line->stroke == Stroke::pencil_beneath ||
                         line->stroke == Stroke::halo));
    });
    drawing.title = sight_word(work.job.locale.words(), sight.word);
    return drawing;
}

}  // namespace kw::draw
