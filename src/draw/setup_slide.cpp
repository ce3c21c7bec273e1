#include "draw/setup_slide.h"

#include <algorithm>
#include <cmath>

#include "draw/setup_parts.h"
#include "draw/turned.h"

namespace kw::draw {
namespace {

Length between(Length a, Length b, double fraction) {
    return a + Length::nearest_mm((b - a).mm() * fraction);
}

SetupScene on_its_way(const SetupScene& before, const SetupScene& after, double fraction) {
    if (fraction >= 1) return after;
    SetupScene scene = after;
    const auto blend = [&](Length SetupScene::*what) {
        scene.*what = between(before.*what, after.*what, fraction);
    };
    blend(&SetupScene::thickness);
    blend(&SetupScene::fence);
    blend(&SetupScene::height);
    blend(&SetupScene::first_height);
    blend(&SetupScene::kerf);
    blend(&SetupScene::spacer);
    // What earlier passes took is wood that is gone: it appears with the new picture, and only as far as the fence has come.
    scene.cleared = std::max(Length{}, min(after.cleared, scene.fence - after.fence_before));
    return scene;
}

bool is_seen(Length by, const Locale& caliper) { return show(by, caliper) != show(Length{}, caliper); }

// What the maker moves: as the numbers and the sentences say it.
Length fence_moved_by(const SetupScene& before, const SetupScene& after) {
    return move_of(before.fence_at(CutterSide::near), after.fence_at(CutterSide::near)).by();
}
Length height_moved_by(const SetupScene& before, const SetupScene& after) {
    return move_of(before.height_at(), after.height_at()).by();
}

// Outlines are open where the thing stands on the table.
std::vector<Point> outline(double left, double right, double top) {
    return {{left, 0}, {left, top}, {right, top}, {right, 0}};
}

// In the frame of `after`, whose cutter has kept its near side.
void add_ghosts(Drawing& drawing, const SetupScene& before, const SetupScene& after, double old_face_mm) {
    const auto differs = [&](Length SetupScene::*what) {
        return is_seen(after.*what - before.*what, after.caliper);
    };
    const auto add = [&](double left, double right, double top) {
        drawing.shapes.emplace_back(Line{outline(left, right, top), Stroke::stood});
    };
    if (is_seen(fence_moved_by(before, after), after.caliper))
        add(old_face_mm + fence_left_mm(before), old_face_mm, fence_top_mm(before));
    if (is_seen(height_moved_by(before, after), after.caliper) || differs(&SetupScene::kerf))
        add(after.fence.mm(), (after.fence + before.kerf).mm(), before.height.mm());
    if (differs(&SetupScene::spacer) && before.spacer > Length{})
        add(old_face_mm, old_face_mm + before.spacer.mm(), spacer_top_mm(before));
}

// All that is drawn from beginning to end, from the fence's face after: the machine's table stands still.
Reach reach_of_both(const SetupScene& before, const SetupScene& after, double old_face_mm) {
    const Reach a = reach_of(before), b = reach_of(after);
    return {std::min(a.left_mm + old_face_mm, b.left_mm), std::max(a.right_mm + old_face_mm, b.right_mm)};
}

}  // namespace

std::string change_text(Length by, const Locale& locale, const Locale& caliper) {
    if (!is_seen(by, caliper)) return {};
    const std::string sign = by > Length{} ? "+" : "";
    const std::string plain = show_with_unit(by, locale);
    const auto shown = read_length(plain, unit_of(locale));
    // Only what is shown without a mark, and reads back as the same to the caliper, is shown exactly.
    if (shown && is_seen(by, locale) && show(*shown, caliper) == show(by, caliper)) return sign + plain;
    return sign + without_mark(show_with_unit(by, caliper));
}

bool slides(const SetupScene& before, const SetupScene& after) {
    if (before.machine != after.machine || before.cutter != after.cutter) return false;
    if (before.index.has_value() != after.index.has_value()) return false;  // the jig comes on, or goes
    const auto moved = [&](Length SetupScene::*what) {
        return is_seen(after.*what - before.*what, after.caliper);
    };
    return is_seen(fence_moved_by(before, after), after.caliper) ||
           is_seen(height_moved_by(before, after), after.caliper) || moved(&SetupScene::kerf) ||
           moved(&SetupScene::spacer);
}

Drawing setup_slide(const SetupScene& before, const SetupScene& after, double fraction,
                    const SetupViewOptions& options) {
    const SetupScene stands = on_its_way(before, after, std::clamp(fraction, 0.0, 1.0));
    const double old_face = (after.fence - before.fence).mm(), face = (after.fence - stands.fence).mm();
    const Reach all = reach_of_both(before, after, old_face);
    const Way way{stands, after, {all.left_mm - face, all.right_mm - face}, &before, old_face - face};
    Drawing drawing = moved(cut_view(way, options), face, 0);
    add_ghosts(drawing, before, after, old_face);
    const double bottom = std::min(slab_mm(before), slab_mm(after)),
                 top = std::max(drawn_top_mm(before), drawn_top_mm(after));
    drawing.frame = Box{all.left_mm, bottom, all.right_mm, top};
    return options.fence_left ? drawing : mirrored_about_x(drawing, 0);
}

}  // namespace kw::draw
