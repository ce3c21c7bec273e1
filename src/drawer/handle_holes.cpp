#include "drawer/handle_holes.h"

#include <algorithm>

namespace kw {
namespace {

struct NamedHeight {
    HandleHeight rule;
    std::string_view name;
};
constexpr NamedHeight height_names[] = {{HandleHeight::centred, "centred"},
                                        {HandleHeight::third, "a third down"},
                                        {HandleHeight::from_top, "from the top"}};

}  // namespace

std::string_view name_of(HandleHeight rule) {
    for (const NamedHeight& one : height_names)
        if (one.rule == rule) return one.name;
    return {};
}

std::optional<HandleHeight> handle_height_named(std::string_view name) {
    for (const NamedHeight& one : height_names)
        if (one.name == name) return one.rule;
    return std::nullopt;
}

HandleHoles handle_holes(const HandleAsk& ask, Length face_width, Length face_height) {
    HandleHoles holes;
    const Length middle = face_width.scaled(1, 2);
    if (ask.holes == 1) holes.from_left = {middle};
    else
        holes.from_left = {middle - ask.centres.scaled(1, 2),
                           middle - ask.centres.scaled(1, 2) + ask.centres};
    switch (ask.height) {
        case HandleHeight::centred: holes.from_bottom = face_height.scaled(1, 2); break;
        case HandleHeight::third: holes.from_bottom = face_height - face_height.scaled(1, 3); break;
        case HandleHeight::from_top: holes.from_bottom = face_height - ask.from_top; break;
    }
    return holes;
}

HoleCheck check_holes(const HandleHoles& holes, Length diameter, Length face_width, Length face_height,
                      const BoxBehind& behind) {
    const Length half = diameter.scaled(1, 2), y = holes.from_bottom;
    const Length leftmost = holes.from_left.front() - half, rightmost = holes.from_left.back() + half;
    HoleCheck check;
    const Length lowest = behind.bottom + behind.groove_near + behind.groove_width + half,
                 highest = behind.bottom + behind.box.height - half;
    const Length low = max(lowest, half), high = min(highest, face_height - half);
    if (low <= high) check.clear_at = std::clamp(y, low, high);
    const auto meets = [&](HoleMeets what, Length by) {
        if (by <= Length{} || check.meets != HoleMeets::front) return;
        check.meets = what;
        check.by = by;
    };
    meets(HoleMeets::edge_of_face,
          max(max(half - y, y + half - face_height), max(-leftmost, rightmost - face_width)));
    const Length in_left = behind.left + behind.sides,
                 in_right = behind.left + behind.box.width - behind.sides;
    meets(HoleMeets::side, max(in_left - leftmost, rightmost - in_right));
    meets(HoleMeets::nothing_above, y - highest);
    meets(HoleMeets::nothing_below, behind.bottom + half - y);
    meets(behind.bottom + behind.groove_near >= y + half ? HoleMeets::below_bottom : HoleMeets::groove,
          lowest - y);
    return check;
}

}  // namespace kw
