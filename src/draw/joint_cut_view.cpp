#include <algorithm>

#include "draw/setup_parts.h"
#include "draw/setup_view.h"
#include "draw/wood.h"
#include "joint/closed.h"

namespace kw::draw {
namespace {

// What stands where, all from the fence's face and the table.
struct Scene {
    Length thickness;
    Length fence;
    Length height;
    Length kerf;
    Length spacer;
    Length cleared;  // of this slot already, from `fence_before`: 0 before its first pass
    Length fence_before;
    bool nibble = false;
    bool sacrificial = false;
    BoardFace down = BoardFace::inside;

    Length far() const { return fence + kerf; }
};

// The fence of this slot's first pass, where `setup` is a later one.
std::optional<Length> first_fence(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group || !group->cuts_slot || group->slot_passes() < 2) return std::nullopt;
    const Pass& pass = setup.passes.front();
    const auto& receivers = group->work.receivers;
    const bool slot = std::any_of(receivers.begin(), receivers.end(), [&](const PartEnd& end) {
        return end.part == pass.part && end.reference == pass.reference;
    });
    if (!slot || setup.fence <= group->stands.fence) return std::nullopt;
    return group->stands.fence;
}

// As far as the passes before this one reached.
Length cleared_to(const Work& work, const Setup& setup) {
    const Group& group = *work.plan.group_with_id(setup.group);
    Length to = group.stands.fence;
    for (int pass = 0; pass < group.slot_passes(); ++pass) {
        const Length fence = fence_of_pass(group.stands, pass, group.slot_passes());
        if (fence < setup.fence) to = fence + group.stands.kerf;
    }
    return to;
}

Scene scene_of(const Work& work, const Setup& setup) {
    Scene scene;
    scene.thickness = stock_of(work, setup).thickness;
    scene.fence = setup.fence;
    scene.height = setup.height.value_or(scene.thickness);
    scene.kerf = setup.kerf;
    scene.spacer = setup.spacer;
    scene.sacrificial = setup.sacrificial;
    scene.nibble = setup.passes.front().nibble;
    scene.down = setup.passes.front().down;
    if (const auto first = first_fence(work, setup)) {
        scene.fence_before = *first;
        scene.cleared = cleared_to(work, setup) - *first;
    }
    return scene;
}

// Sizes of what is only shown, in proportion to the board.
struct Frame {
    double end_mm = 0;    // of the work, at the fence or the spacer
    double break_mm = 0;  // where the board is broken off
    double thickness_mm = 0;
    double fence_left_mm = 0;
    double fence_top_mm = 0;
    double slab_mm = 0;  // y of the table's underside
    double table_right_mm = 0;
};

Frame frame_of(const Scene& scene) {
    const double t = scene.thickness.mm();
    const double cut_right = std::max(scene.far(), scene.spacer).mm();
    Frame frame;
    frame.end_mm = scene.spacer.mm();
    frame.thickness_mm = t;
    frame.break_mm = cut_right + std::max(2.6 * t, 32.0);
    frame.fence_left_mm = -std::max(0.8 * t, 9.0);
    frame.fence_top_mm = t + std::max(0.45 * t, 6.0);
    frame.slab_mm = -std::max(0.38 * t, 4.5);
    frame.table_right_mm = frame.break_mm + 0.3 * t;
    return frame;
}

// The board less what came away before and what this pass takes.
Region board_of(const Scene& scene, Length shown) {
    const Length end = scene.spacer;
    std::vector<Removal> removals;
    const Length near = scene.nibble ? Length{} : max(scene.fence - end, Length{});
    removals.push_back({BoardFace::inside, near, scene.far() - end, scene.height});
    if (scene.cleared > Length{})
        removals.push_back({BoardFace::inside, scene.fence_before - end,
                            scene.fence_before + scene.cleared - end, scene.height});
    // A receiver's section has the inside face at y = 0, an insert's the outside: here it is the one that lies down.
    return cut_section(Member::receiver, scene.thickness, shown, removals);
}

void add_rest(Drawing& drawing, const Frame& frame, const Scene& scene) {
    const double far = scene.far().mm(), near = scene.fence.mm();
    const double left = frame.fence_left_mm - 0.3 * frame.thickness_mm;
    // The table's insert is open where the cutter comes up.
    const Box slab_left{left, frame.slab_mm, near, 0},
        slab_right{far, frame.slab_mm, frame.table_right_mm, 0};
    for (const Box& slab : {slab_left, slab_right})
        drawing.shapes.push_back(Fill{{rectangle(slab)}, Material::table, false, false, false});
    drawing.shapes.push_back(Line{{{left, 0}, {near, 0}}, Stroke::outline});
    drawing.shapes.push_back(Line{{{far, 0}, {frame.table_right_mm, 0}}, Stroke::outline});
    drawing.shapes.push_back(
        Fill{{rectangle({frame.fence_left_mm, 0, 0, frame.fence_top_mm})}, Material::fence});
    if (scene.spacer > Length{})
        drawing.shapes.push_back(Fill{{rectangle({0, 0, frame.end_mm, 0.86 * frame.thickness_mm})},
                                      scene.sacrificial ? Material::sacrificial_spacer : Material::spacer});
}

void add_removed(Drawing& drawing, const Scene& scene) {
    const double top = scene.height.mm();
    const auto strip = [&](Length from, Length to) {
        if (to > from)
            drawing.shapes.push_back(Fill{{rectangle({from.mm(), 0, to.mm(), top})}, Material::removed});
    };
    strip(scene.fence_before, min(scene.fence_before + scene.cleared, scene.fence));
    if (scene.nibble) strip(scene.spacer, scene.fence);
}

void add_cutter(Drawing& drawing, const Frame& frame, const Scene& scene) {
    drawing.shapes.push_back(
        Fill{{rectangle({scene.fence.mm(), frame.slab_mm, scene.far().mm(), scene.height.mm()})},
             Material::cutter});
}

const char* spacer_name(const Scene& scene) { return scene.sacrificial ? "sacrificial spacer" : "spacer"; }

void add_dimensions(Drawing& drawing, const Work& work, const Frame& frame, const Scene& scene) {
    const double near = scene.fence.mm(), far = scene.far().mm(), top = scene.height.mm();
    const auto add = [&](Point from, Point to, Side side, double clear, const char* what, Length length,
                         Emphasis emphasis) {
        drawing.shapes.push_back(
            Dimension{from, to, side, clear, 0, measure_text(work, what, length), emphasis});
    };
    if (scene.fence != Length{})
        add({0, 0}, {near, 0}, Side::below, frame.slab_mm, "fence", scene.fence, Emphasis::strong);
    add({near, 0}, {far, 0}, Side::below, frame.slab_mm, "kerf", scene.kerf, Emphasis::plain);
    add({far, 0}, {far, top}, Side::right, frame.table_right_mm, "height", scene.height, Emphasis::strong);
    if (scene.spacer > Length{})
        add({0, frame.fence_top_mm}, {frame.end_mm, 0.86 * frame.thickness_mm}, Side::above,
            frame.fence_top_mm, spacer_name(scene), scene.spacer, Emphasis::strong);
}

std::string face_text(const Scene& scene) { return std::string(name_of(scene.down)) + " face down"; }

std::string against_text(const Scene& scene, const Setup& setup) {
    return references_text(setup) + (scene.spacer > Length{} ? " against the spacer" : " against the fence");
}

void add_labels(Drawing& drawing, const Frame& frame, const Scene& scene, const Setup& setup) {
    const double t = frame.thickness_mm, above = frame.fence_top_mm;
    const double middle = (std::max(scene.far().mm(), frame.end_mm) + frame.break_mm) / 2;
    const auto led = [&](Point at, std::string text, Anchor anchor, Point target) {
        drawing.shapes.push_back(Label{at, std::move(text), anchor, Emphasis::plain, target});
    };
    drawing.shapes.push_back(
        Label{{middle, 0.5 * t}, face_text(scene), Anchor::centre, Emphasis::plain, std::nullopt});
    led({frame.end_mm + 0.9 * t, above}, against_text(scene, setup), Anchor::left, {frame.end_mm, 0.93 * t});
    std::get<Label>(drawing.shapes.back()).spare = true;
    if (scene.nibble && scene.fence > scene.spacer)
        led({middle, t + 0.4 * (above - t)}, "nibble this strip away", Anchor::left,
            {(scene.spacer + scene.fence).mm() / 2, scene.height.mm() * 0.6});
}

std::string title_of(const Work& work, const Scene& scene, const Setup& setup) {
    std::string title = setup.work + ": " + measure_text(work, "fence", scene.fence) + ", " +
                        measure_text(work, "height", scene.height);
    if (scene.spacer > Length{}) title += ", " + measure_text(work, spacer_name(scene), scene.spacer);
    return title + ", " + face_text(scene) + ", " + against_text(scene, setup);
}

}  // namespace

Drawing joint_cut_view(const Work& work, const Setup& setup) {
    const Scene scene = scene_of(work, setup);
    const Frame frame = frame_of(scene);
    const Grain grain = setup.guide == "rip fence" ? Grain::across : Grain::along;
    const Length shown = Length::nearest_mm(frame.break_mm) - scene.spacer;
    Drawing drawing;
    drawing.title = title_of(work, scene, setup);
    add_rest(drawing, frame, scene);
    add_wood(drawing, rings_of(board_of(scene, shown), shifted(frame.end_mm, 0)),
             {wood_material(stock_of(work, setup).kind, grain), false, false},
             {std::nullopt, (shown + scene.spacer).mm(), std::nullopt, std::nullopt});
    add_removed(drawing, scene);
    add_cutter(drawing, frame, scene);
    add_dimensions(drawing, work, frame, scene);
    add_labels(drawing, frame, scene, setup);
    return drawing;
}

}  // namespace kw::draw
