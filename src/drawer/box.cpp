#include "drawer/box.h"

#include <algorithm>

namespace kw {
namespace {

constexpr Length least_inside = Length::millimetres(40);  // a box smaller than this holds nothing

Length box_width(const Opening& opening, const Slide& slide, Length side_thickness) {
    const Length between = opening.width - 2 * slide.side;
    return slide.kind == SlideKind::undermount ? between + 2 * side_thickness : between;
}

tl::expected<Length, Refusal> box_depth(const Opening& opening, const Slide& slide, Length face_in_depth) {
    const Length room = opening.depth - face_in_depth - slide.back;
    if (slide.lengths.empty()) return room;
    Length best;
    for (const Length length : slide.lengths)
        if (length <= room) best = max(best, length);
    if (best > Length{}) return best;
    const Length shortest = *std::min_element(slide.lengths.begin(), slide.lengths.end());
    return tl::unexpected(Refusal{"lengths", Message::say("drawer.slide_too_long", shortest, room),
                                  Message::say("drawer.shorter_slide", room)});
}

Refusal too_small(const char* field, Length have, Length taken) {
    return {field, Message::say("drawer.no_box", have, taken),
            Message::say("drawer.opening_at_least", taken + least_inside)};
}

}  // namespace

std::string_view name_of(SlideKind kind) {
    switch (kind) {
        case SlideKind::side_mount: return "side mount";
        case SlideKind::bottom_corner: return "bottom corner";
        case SlideKind::undermount: return "undermount";
        case SlideKind::wooden_runner: return "wooden runner";
    }
    return {};
}

const std::vector<SlideKind>& slide_kinds() {
    static const std::vector<SlideKind> kinds = {SlideKind::side_mount, SlideKind::bottom_corner,
                                                 SlideKind::undermount, SlideKind::wooden_runner};
    return kinds;
}

std::optional<SlideKind> slide_kind_named(std::string_view name) {
    for (const SlideKind kind : slide_kinds())
        if (name_of(kind) == name) return kind;
    return std::nullopt;
}

// Side spaces: side mount and bottom corner 1/2 in a side; undermount 42 mm in all between opening and box inside;
// wooden runner 1/16 in in all. Heights: undermount 9/16 in below and 1/4 in above, wooden runner 1/32 in and
// 3/32 in (published figures for the undermount, the rest common practice, no source). Taken up: 1/32 in a slide for side mount
// (+1/32, -0), 1/64 in for the undermount, whose published box widths leave a range of 1/32 in in all; the others as
// side mount (common practice, no source).
Slide usual_slide(SlideKind kind) {
    const auto in = [](std::int64_t n, std::int64_t d) { return Length::inches(n, d); };
    switch (kind) {
        case SlideKind::side_mount: return {kind, in(1, 2), in(3, 4), in(1, 4), in(1, 4), {}, in(1, 32)};
        case SlideKind::bottom_corner: return {kind, in(1, 2), in(3, 4), in(1, 4), in(1, 4), {}, in(1, 32)};
        case SlideKind::undermount:
            return {kind, Length::millimetres(21), in(1, 4), in(9, 16), in(1, 8), {}, in(1, 64)};
        case SlideKind::wooden_runner:
            return {kind, in(1, 32), in(3, 32), in(1, 32), in(1, 4), {}, in(1, 32)};
    }
    return {};
}

tl::expected<BoxSize, Refusal> size_box(const Opening& opening, const Slide& slide, Length side_thickness,
                                        Length face_in_depth) {
    const auto depth = box_depth(opening, slide, face_in_depth);
    if (!depth) return tl::unexpected(depth.error());
    const BoxSize box{box_width(opening, slide, side_thickness), opening.height - slide.top - slide.bottom,
                      *depth};
    if (box.width < least_inside + 2 * side_thickness)
        return tl::unexpected(
            too_small("width", opening.width, opening.width - box.width + 2 * side_thickness));
    if (box.height < least_inside)
        return tl::unexpected(too_small("height", opening.height, slide.top + slide.bottom));
    if (box.depth < least_inside)
        return tl::unexpected(too_small("depth", opening.depth, opening.depth - box.depth));
    return box;
}

}  // namespace kw
