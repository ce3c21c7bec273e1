#include "job/slide_notes.h"

#include <algorithm>

namespace kw {

std::optional<SlidePlace> slide_place_of(const Job& job, const Plan& plan, const DrawerSpec& drawer) {
    const auto box = std::find_if(plan.boxes.begin(), plan.boxes.end(),
                                  [&](const DrawerBox& one) { return one.drawer == drawer.name; });
    if (!drawer.opening || box == plan.boxes.end()) return std::nullopt;
    const Stock* face = drawer.face.style == FaceStyle::inset ? job.stock_named(drawer.face.stock) : nullptr;
    return slide_place(drawer.slide, box->size, face ? face->thickness : Length{});
}

Message say_slide_place(const SlidePlace& place) {
    if (!place.above_edge) return Message::say("slides.on_the_floor", place.behind_front);
    if (*place.above_edge == Length{})
        return Message::say("slides.at_the_edge", place.behind_front, place.above_floor);
    return Message::say("slides.at_the_middle", place.behind_front, place.above_floor, *place.above_edge);
}

}  // namespace kw
