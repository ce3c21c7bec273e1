#include "job/assembly.h"

#include <algorithm>

#include "job/box_as_made.h"
#include "job/slide_notes.h"

namespace kw {

std::optional<HungFace> hung_face(const DrawerSpec& drawer, int copy) {
    const FaceSpec& face = drawer.face;
    const auto size = face_size(drawer);
    if (!size || size->length <= Length{} || size->width <= Length{}) return std::nullopt;
    if (face.in_bank) {
        const Margins& gaps = face.in_bank->gaps.at(static_cast<std::size_t>(copy - 1));
        return HungFace{size->length, size->width, gaps.left, gaps.right, gaps.top, gaps.bottom};
    }
    if (face.style == FaceStyle::inset)
        return HungFace{size->length, size->width, face.left, face.right, face.top, face.bottom};
    return HungFace{size->length, size->width, face.reveal, face.reveal, face.reveal, face.reveal};
}

std::optional<AssemblyResult> assembly(const Work& work, const std::string& drawer, int copy) {
    const auto& designs = work.standing_design.drawers;
    const auto design = std::find_if(designs.begin(), designs.end(),
                                     [&](const DrawerDesign& one) { return one.spec->name == drawer; });
    if (design == designs.end() || copy < 1 || copy > design->spec->count) return std::nullopt;
    const DrawerSpec* spec = design->spec;
    AssemblyResult result;
    result.box = box_as_made(work, *design, copy);
    result.is_as_planned = is_near(result.box, sides_of(design->box), worth_moving);
    result.diagonal = equal_diagonal(result.box);
    result.face = hung_face(*spec, copy);
    const auto read = spec->assembled.find(copy);
    if (read == spec->assembled.end()) return result;
    const Assembled& readings = read->second;
    if (readings.from_front_left && readings.from_front_right) {
        const auto square = squareness(result.box, *readings.from_front_left, *readings.from_front_right);
        if (square) result.square = *square;
        else result.not_this_box = square.error();
    }
    // On the floor they lie by themselves; where the box stands on them, it is its edge that is told, not their middle.
    const auto place = slide_place_of(work.job, work.plan, *spec);
    result.slides = slides_hung(readings.slides, place && place->above_edge && *place->above_edge > Length{}
                                                     ? std::optional(place->above_floor)
                                                     : std::nullopt);
    result.slide_take_up = spec->slide.take_up;
    result.is_half_read = readings.from_front_left.has_value() != readings.from_front_right.has_value();
    result.gaps = readings.gaps;
    if (result.face) result.hanging = hanging(*result.face, readings.gaps);
    return result;
}

}  // namespace kw
