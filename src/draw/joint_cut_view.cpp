#include <algorithm>

#include "draw/board_marks.h"
#include "draw/setup_dimensions.h"
#include "draw/wood.h"
#include "joint/closed.h"
#include "words/names.h"

namespace kw::draw {
namespace {

double end_mm(const SetupScene& scene) { return scene.spacer.mm(); }

// Where the board is broken off, in what is drawn of the machine.
double break_mm(const SetupScene& scene, const Reach& reach) {
    return reach.right_mm - 0.3 * scene.thickness.mm();
}

// The board less what came away before and what this pass takes.
Region board_of(const SetupScene& scene, Length shown) {
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

void add_rest(Drawing& drawing, const SetupScene& scene, const Reach& reach) {
    const double far = scene.far().mm(), near = scene.fence.mm(), slab = slab_mm(scene);
    // The table's insert is open where the cutter comes up.
    const Box slab_left{reach.left_mm, slab, near, 0}, slab_right{far, slab, reach.right_mm, 0};
    for (const Box& box : {slab_left, slab_right})
        drawing.shapes.push_back(Fill{{rectangle(box)}, Material::table, false, false, false});
    drawing.shapes.push_back(Line{{{reach.left_mm, 0}, {near, 0}}, Stroke::outline});
    drawing.shapes.push_back(Line{{{far, 0}, {reach.right_mm, 0}}, Stroke::outline});
    drawing.shapes.push_back(
        Fill{{rectangle({fence_left_mm(scene), 0, 0, fence_top_mm(scene)})}, Material::fence});
    if (scene.spacer > Length{})
        drawing.shapes.push_back(Fill{{rectangle({0, 0, end_mm(scene), spacer_top_mm(scene)})},
                                      scene.sacrificial ? Material::sacrificial_spacer : Material::spacer});
}

void add_removed(Drawing& drawing, const SetupScene& scene) {
    const double top = scene.height.mm();
    const auto strip = [&](Length from, Length to) {
        if (to > from)
            drawing.shapes.push_back(Fill{{rectangle({from.mm(), 0, to.mm(), top})}, Material::removed});
    };
    strip(scene.fence_before, min(scene.fence_before + scene.cleared, scene.fence));
    if (scene.nibble) strip(scene.spacer, scene.fence);
}

void add_cutter(Drawing& drawing, const SetupScene& scene) {
    drawing.shapes.push_back(
        Fill{{rectangle({scene.fence.mm(), slab_mm(scene), scene.far().mm(), scene.height.mm()})},
             Material::cutter});
}

// The loop stands on the marked face, near the break, where nothing is cut; the caret on the marked edge, where that is the one
// at the fence.
void add_marks(Drawing& drawing, const SetupScene& scene, const Reach& reach, bool in_mirror) {
    const double t = scene.thickness.mm(), up = scene.down == marked_face ? 1 : -1;
    const Point on_face{break_mm(scene, reach) - 0.33 * t, scene.down == marked_face ? 0 : t};
    add_face_mark(drawing, {on_face, {0, up * 0.62 * t}, in_mirror});
    if (scene.reference != marked_edge) return;
    const double above_cut = (scene.height.mm() + t) / 2;
    add_edge_mark(drawing, {{end_mm(scene), above_cut}, {0.38 * t, 0}});
}

std::string face_text(const SetupScene& scene) {
    return face_down_words(scene.locale.words(), name_of(scene.down));
}

std::string against_text(const SetupScene& scene) {
    const Words& words = scene.locale.words();
    return scene.spacer > Length{} ? words("draw.against_spacer", scene.references)
                                   : words("draw.against_fence", scene.references);
}

void add_labels(Drawing& drawing, const SetupScene& stands, const SetupScene& says, const Reach& reach) {
    const double t = stands.thickness.mm(), above = fence_top_mm(stands), end = end_mm(stands);
    const double mark = break_mm(stands, reach) - 0.62 * t, right = std::max(stands.far().mm(), end);
    // On whichever side of the cut there is more of the board.
    const double cut = stands.cleared > Length{} ? stands.fence_before.mm() : stands.fence.mm();
    const bool at_left = !stands.nibble && cut - end > mark - right;
    const double middle = (right + mark) / 2, face = at_left ? (end + cut) / 2 : middle;
    const auto led = [&](Point at, std::string text, Anchor anchor, Point target) {
        drawing.shapes.push_back(Label{at, std::move(text), anchor, Emphasis::plain, target});
    };
    drawing.shapes.push_back(
        Label{{face, 0.5 * t}, face_text(says), Anchor::centre, Emphasis::plain, std::nullopt});
    std::get<Label>(drawing.shapes.back()).on_drawing = true;
    led({end + 0.9 * t, above}, against_text(says), Anchor::left, {end, 0.93 * t});
    std::get<Label>(drawing.shapes.back()).spare = true;
    if (stands.nibble && stands.fence > stands.spacer)
        led({middle, t + 0.4 * (above - t)}, says.locale.words()("draw.nibble"), Anchor::left,
            {(stands.spacer + stands.fence).mm() / 2, stands.height.mm() * 0.6});
}

std::string title_of(const SetupScene& scene) {
    const Words& words = scene.locale.words();
    std::vector<std::string> all{measure_text(scene.locale, "draw.fence", scene.fence),
                                 measure_text(scene.locale, "draw.height", scene.height)};
    if (scene.spacer > Length{}) all.push_back(spacer_text(scene));
    all.push_back(face_text(scene));
    all.push_back(against_text(scene));
    return words("draw.setup", work_word(words, scene.work), words.list(all, "list.comma"));
}

// The cut, with the end or edge it is measured from where that is not far.
Box close_up_of(const SetupScene& scene) {
    const double near = scene.fence.mm(), far = scene.far().mm(), top = scene.height.mm();
    const double size = std::max(far - near, top);
    return {std::min(std::max(near - 1.6 * size, -0.4 * size), end_mm(scene) < near ? near : end_mm(scene)) -
                0.2 * size,
            -0.35 * size, far + 0.9 * size, top + 0.9 * size};
}

}  // namespace

Drawing joint_cut_view(const Way& way, const SetupViewOptions& options) {
    const SetupScene& stands = way.stands;
    const Grain grain = stands.along_edge ? Grain::across : Grain::along;
    const Length shown = Length::nearest_mm(break_mm(stands, way.reach)) - stands.spacer;
    Drawing drawing;
    drawing.title = title_of(way.says);
    drawing.close_up = close_up_of(stands);
    add_rest(drawing, stands, way.reach);
    add_wood(drawing, rings_of(board_of(stands, shown), shifted(end_mm(stands), 0)),
             {wood_material(stands.stock, grain), false, false},
             {std::nullopt, (shown + stands.spacer).mm(), std::nullopt, std::nullopt});
    add_removed(drawing, stands);
    add_cutter(drawing, stands);
    add_marks(drawing, stands, way.reach, !options.fence_left);
    add_dimensions(drawing, way, options);
    add_labels(drawing, stands, way.says, way.reach);
    return drawing;
}

}  // namespace kw::draw
