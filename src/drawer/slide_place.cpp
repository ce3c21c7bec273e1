#include "drawer/slide_place.h"

namespace kw {

SlidePlace slide_place(const Slide& slide, const BoxSize& box, Length face_in_depth) {
    const Length behind = slide.setback + face_in_depth;
    switch (slide.kind) {
        case SlideKind::undermount: return {behind, {}, std::nullopt};
        case SlideKind::bottom_corner: return {behind, slide.bottom, Length{}};
        case SlideKind::side_mount:
        case SlideKind::wooden_runner: break;
    }
    const Length middle = slide.middle.value_or(box.height.scaled(1, 2));
    return {behind, slide.bottom + middle, middle};
}

}  // namespace kw
