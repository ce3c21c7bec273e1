#include "draw/setup_dimensions.h"

#include "draw/setup_slide.h"

namespace kw::draw {
namespace {

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
    const std::string text = to_far_side ? measure_text(says.locale, "draw.fence_to_far_side", says.far())
                                         : control_text(way, says.index ? "draw.pin" : "draw.fence",
                                                        &SetupScene::fence, says.fence_at(CutterSide::near));
    drawing.shapes.emplace_back(Dimension{
        {0, 0}, {to, 0}, Side::below, slab_mm(stands), to_far_side ? 1 : 0, text, Emphasis::strong, change});
}

// It is said with the cutter. In a jig's picture, which is low and wide, it has no room but where it has changed.
void add_kerf_dimension(Drawing& drawing, const Way& way) {
    const SetupScene& stands = way.stands;
    const double near = stands.fence.mm(), far = stands.far().mm();
    const double stood_far = way.stood ? near + way.stood->kerf.mm() : far;
    const auto change = change_of(way, &SetupScene::kerf, {stood_far, 0}, "draw.wider", "draw.narrower");
    if (way.says.index && !change) return;
    drawing.shapes.emplace_back(Dimension{{near, 0},
                                          {far, 0},
                                          Side::below,
                                          slab_mm(stands),
                                          0,
                                          measure_text(way.says.locale, "draw.kerf", way.says.kerf),
                                          Emphasis::plain,
                                          change,
                                          !change});
}

void add_spacer_dimension(Drawing& drawing, const Way& way) {
    const SetupScene& stands = way.stands;
    const double above = drawn_top_mm(stands);
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
    drawing.shapes.emplace_back(Dimension{{0, fence_top_mm(stands)},
                                          {stands.spacer.mm(), spacer_top_mm(stands)},
                                          Side::above,
                                          above,
                                          0,
                                          spacer_text(way.says),
                                          Emphasis::strong,
                                          change});
}

}  // namespace

std::string spacer_text(const SetupScene& scene) {
    return measure_text(scene.locale, scene.sacrificial ? "draw.sacrificial_spacer" : "draw.spacer",
                        scene.spacer);
}

void add_dimensions(Drawing& drawing, const Way& way, const SetupViewOptions& options) {
    const SetupScene &stands = way.stands, &says = way.says;
    const double far = stands.far().mm(), top = stands.height.mm();
    // A jig's pin has one side.
    add_fence_dimension(drawing, way, options.to_far_side && !says.index);
    add_kerf_dimension(drawing, way);
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

}  // namespace kw::draw
