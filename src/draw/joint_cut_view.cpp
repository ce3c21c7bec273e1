#include <algorithm>

#include "draw/board_marks.h"
#include "draw/setup_parts.h"
#include "draw/setup_slide.h"
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

std::string spacer_text(const SetupScene& scene) {
    return measure_text(scene.locale, scene.sacrificial ? "draw.sacrificial_spacer" : "draw.spacer",
                        scene.spacer);
}

// On the maker's own graduation; where that shows what is to be moved as it stood, by a caliper.
std::string set_text(const Way& way, const char* key, Length SetupScene::*what) {
    const SetupScene& says = way.says;
    const Length now = says.*what, stood = way.stood ? way.stood->*what : now;
    const bool looks_alike = without_mark(show(now, says.locale)) == without_mark(show(stood, says.locale));
    const bool differs = looks_alike && !change_text(now - stood, says.locale, says.caliper).empty();
    return differs ? says.locale.words()(key, without_mark(show_with_unit(now, says.caliper)))
                   : measure_text(says.locale, key, now);
}

// Where it is set by its scale, what that is to show: the number that is told beside the picture.
std::string control_text(const Way& way, const char* key, Length SetupScene::*what, const ControlAt& at) {
    if (!at.by_scale) return set_text(way, key, what);
    return way.says.locale.words()("draw.by_scale", without_mark(show_with_unit(at.scale, way.says.caliper)));
}

// By how much the maker has to move what is dimensioned, where a caliper shows it. `more`, `less`: keys of the words.
std::optional<Change> change_by(const Way& way, Length by, Point stood, const char* more, const char* less) {
    if (!way.stood) return std::nullopt;
    const std::string text = change_text(by, way.says.locale, way.says.caliper);
    if (text.empty()) return std::nullopt;
    return Change{stood, way.says.locale.words()(by > Length{} ? more : less, text)};
}

std::optional<Change> change_of(const Way& way, Length SetupScene::*what, Point stood, const char* more,
                                const char* less) {
    if (!way.stood) return std::nullopt;
    return change_by(way, way.says.*what - way.stood->*what, stood, more, less);
}

// What a rule shows is that. Else between the two as a caliper shows them, so that the difference is that of the numbers told.
Length shown_by(const Way& way, const ControlMove& move) {
    const auto shown = [&](Length length, const Locale& locale) {
        return read_length(without_mark(show(length, locale)), unit_of(locale)).value_or(length);
    };
    if (shown(move.by(), way.says.locale) == move.by()) return move.by();
    return shown(move.to, way.says.caliper) - shown(move.from, way.says.caliper);
}

// Of what has a scale: by what is set.
std::optional<Change> fence_change(const Way& way, CutterSide measured_to) {
    if (!way.stood) return std::nullopt;
    const Length by =
        shown_by(way, move_of(way.stood->fence_at(measured_to), way.says.fence_at(measured_to)));
    return change_by(way, by, {way.stood_face_mm, 0}, "draw.out", "draw.closer");
}
std::optional<Change> height_change(const Way& way, Point stood_top) {
    if (!way.stood) return std::nullopt;
    const Length by = shown_by(way, move_of(way.stood->height_at(), way.says.height_at()));
    return change_by(way, by, stood_top, "draw.up", "draw.down");
}

void add_fence_dimension(Drawing& drawing, const Way& way, bool to_far_side) {
    const SetupScene &stands = way.stands, &says = way.says;
    const auto change = fence_change(way, to_far_side ? CutterSide::far : CutterSide::near);
    if (!to_far_side && says.fence == Length{} && !change) return;
    const double to = to_far_side ? stands.far().mm() : stands.fence.mm();
    const std::string text =
        to_far_side ? measure_text(says.locale, "draw.fence_to_far_side", says.far())
                    : control_text(way, "draw.fence", &SetupScene::fence, says.fence_at(CutterSide::near));
    drawing.shapes.emplace_back(Dimension{
        {0, 0}, {to, 0}, Side::below, slab_mm(stands), to_far_side ? 1 : 0, text, Emphasis::strong, change});
}

void add_spacer_dimension(Drawing& drawing, const Way& way) {
    const SetupScene& stands = way.stands;
    const double above = fence_top_mm(stands);
    if (way.says.spacer == Length{}) {
        if (way.stood && way.stood->spacer > Length{})
            drawing.shapes.emplace_back(Label{{0, above + 0.1 * stands.thickness.mm()},
                                              way.says.locale.words()("draw.spacer_off"),
                                              Anchor::bottom,
                                              Emphasis::changed,
                                              {}});
        return;
    }
    auto change = change_of(way, &SetupScene::spacer, {way.stood ? way.stood->spacer.mm() : 0, above},
                            "draw.thicker", "draw.thinner");
    if (way.stood && way.stood->spacer == Length{})
        change = Change{{0, above}, way.says.locale.words()("draw.spacer_put_on")};
    drawing.shapes.emplace_back(Dimension{{0, above},
                                          {end_mm(stands), spacer_top_mm(stands)},
                                          Side::above,
                                          above,
                                          0,
                                          spacer_text(way.says),
                                          Emphasis::strong,
                                          change});
}

void add_dimensions(Drawing& drawing, const Way& way, const SetupViewOptions& options) {
    const SetupScene &stands = way.stands, &says = way.says;
    const double near = stands.fence.mm(), far = stands.far().mm(), top = stands.height.mm();
    add_fence_dimension(drawing, way, options.to_far_side);
    const double stood_far = way.stood ? near + way.stood->kerf.mm() : far;
    const auto kerf_change = change_of(way, &SetupScene::kerf, {stood_far, 0}, "draw.wider", "draw.narrower");
    drawing.shapes.emplace_back(Dimension{{near, 0},
                                          {far, 0},
                                          Side::below,
                                          slab_mm(stands),
                                          0,
                                          measure_text(says.locale, "draw.kerf", says.kerf),
                                          Emphasis::plain,
                                          kerf_change,
                                          !kerf_change});  // it is said with the cutter
    const Point stood_top{far, way.stood ? way.stood->height.mm() : top};
    drawing.shapes.emplace_back(
        Dimension{{far, 0},
                  {far, top},
                  Side::right,
                  way.reach.right_mm,
                  0,
                  control_text(way, "draw.height", &SetupScene::height, says.height_at()),
                  Emphasis::strong,
                  height_change(way, stood_top)});
    add_spacer_dimension(drawing, way);
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

double fence_top_mm(const SetupScene& scene) {
    const double t = scene.thickness.mm();
    return t + std::max(0.45 * t, 6.0);
}

double fence_left_mm(const SetupScene& scene) { return -std::max(0.8 * scene.thickness.mm(), 9.0); }

double spacer_top_mm(const SetupScene& scene) { return 0.86 * scene.thickness.mm(); }

double slab_mm(const SetupScene& scene) { return -std::max(0.38 * scene.thickness.mm(), 4.5); }

Reach reach_of(const SetupScene& scene) {
    const double t = scene.thickness.mm(), cut_right = std::max(scene.far(), scene.spacer).mm();
    return {fence_left_mm(scene) - 0.3 * t, cut_right + std::max(3.5 * t, 42.0) + 0.3 * t};
}

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
