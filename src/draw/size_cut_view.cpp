#include <algorithm>

#include "draw/setup_parts.h"
#include "draw/setup_view.h"
#include "draw/wood.h"
#include "words/names.h"

namespace kw::draw {
namespace {

// From above, in millimetres: the blade's kerf is [0, kerf], the work to keep lies left of it, and y runs away from
// the maker.
struct Scene {
    double size_mm = 0;  // fence or stop to the blade, as drawn
    double kerf_mm = 0;
    double across_mm = 0;  // of the board, along the blade
    double offcut_mm = 0;
    bool shortened = false;
};

// The part's other size: what lies along the blade.
double across_of(const Work& work, const Setup& setup) {
    const PartSize& size = work.plan.part_with_id(setup.passes.front().part)->size;
    return (setup.stage == Stage::rip ? size.length : size.width).mm();
}

constexpr double longest_share = 2.4;  // of what is drawn across: longer boards are broken off

Scene scene_of(const Work& work, const Setup& setup) {
    Scene scene;
    scene.kerf_mm = setup.kerf.mm();
    scene.size_mm = setup.fence.mm();
    const double across = across_of(work, setup);
    scene.across_mm = setup.stage == Stage::rip ? std::min(across, 0.8 * scene.size_mm) : across;
    const double longest = longest_share * std::max(scene.across_mm, 40.0);
    scene.shortened = scene.size_mm > longest;
    scene.size_mm = std::min(scene.size_mm, longest);
    scene.offcut_mm = 0.22 * scene.size_mm;
    return scene;
}

Ring board(double left, double right, double height) { return rectangle({left, 0, right, height}); }

// The face of a board shows its grain; a panel has none.
WoodLook face_look(const Work& work, const Setup& setup) {
    const bool grain = stock_of(work, setup).kind != StockKind::panel;
    return {grain ? Material::long_grain : Material::end_grain, false, setup.stage == Stage::rip};
}

void add_work(Drawing& drawing, const Scene& scene, const WoodLook& look, bool broken_at_ends) {
    Breaks breaks;
    if (broken_at_ends) breaks.bottom_mm = 0;
    if (broken_at_ends) breaks.top_mm = scene.across_mm;
    const double right = scene.kerf_mm + scene.offcut_mm, left = -scene.size_mm;
    Breaks offcut = breaks;
    offcut.right_mm = right;
    add_wood(drawing, {board(scene.kerf_mm, right, scene.across_mm)}, look, offcut);
    if (!scene.shortened) {
        add_wood(drawing, {board(left, 0, scene.across_mm)}, look, breaks);
        return;
    }
    // A piece is left out of the middle.
    const double gap_left = 0.56 * left, gap_right = 0.50 * left;
    Breaks first = breaks, second = breaks;
    first.right_mm = gap_left;
    second.left_mm = gap_right;
    add_wood(drawing, {board(left, gap_left, scene.across_mm)}, look, first);
    add_wood(drawing, {board(gap_right, 0, scene.across_mm)}, look, second);
}

void add_blade(Drawing& drawing, const Scene& scene) {
    drawing.shapes.push_back(Fill{{board(0, scene.kerf_mm, scene.across_mm)}, Material::removed});
    const double low = 0.2 * scene.across_mm, high = 0.8 * scene.across_mm;
    drawing.shapes.push_back(Fill{{rectangle({0, low, scene.kerf_mm, high})}, Material::cutter});
}

std::string guide_measure(const Work& work, const Setup& setup) {
    const char* key = setup.guide == "rip fence" ? "draw.fence" : "draw.stop";
    return measure_text(work.job.locale, key, setup.fence);
}

void add_words(Drawing& drawing, const Work& work, const Scene& scene, const Setup& setup, double below,
               double above) {
    const double left = -scene.size_mm, top = scene.across_mm;
    drawing.shapes.push_back(
        Dimension{{left, 0}, {0, 0}, Side::below, below, 0, guide_measure(work, setup), Emphasis::strong});
    drawing.shapes.push_back(Dimension{{0, top},
                                       {scene.kerf_mm, top},
                                       Side::above,
                                       above,
                                       0,
                                       measure_text(work.job.locale, "draw.kerf", setup.kerf),
                                       Emphasis::plain});
    drawing.shapes.push_back(Label{{left * (scene.shortened ? 0.25 : 0.5), 0.5 * top},
                                   work.job.locale.words()("draw.keep"),
                                   Anchor::centre,
                                   Emphasis::plain,
                                   std::nullopt});
}

// The fence runs the whole length of the cut.
void add_fence(Drawing& drawing, const Scene& scene, const Words& words) {
    const double over = 0.14 * scene.across_mm, left = -scene.size_mm;
    const double thick = std::max(0.08 * scene.size_mm, 6.0);
    drawing.shapes.push_back(
        Fill{{rectangle({left - thick, -over, left, scene.across_mm + over})}, Material::fence});
    drawing.shapes.push_back(Label{{left - 0.5 * thick, scene.across_mm + over},
                                   guide_word(words, "rip fence"),
                                   Anchor::bottom,
                                   Emphasis::plain,
                                   std::nullopt});
}

// The stop stands on the guide that the board's long edge lies against.
double add_stop(Drawing& drawing, const Scene& scene, const Words& words) {
    const double thick = std::max(0.16 * scene.across_mm, 8.0), left = -scene.size_mm, top = scene.across_mm;
    const double end = left - 1.6 * thick;
    drawing.shapes.push_back(Fill{{rectangle({end, top, -0.4 * thick, top + thick})}, Material::fence});
    drawing.shapes.push_back(Fill{{rectangle({left - thick, 0.55 * top, left, top})}, Material::spacer});
    drawing.shapes.push_back(Label{{left - 0.5 * thick, 0.5 * top},
                                   guide_word(words, "stop"),
                                   Anchor::top,
                                   Emphasis::plain,
                                   std::nullopt});
    return top + thick;
}

std::string title_of(const Work& work, const Setup& setup) {
    const Words& words = work.job.locale.words();
    return words("draw.setup_from_above", work_word(words, setup.work), guide_measure(work, setup));
}

}  // namespace

Drawing size_cut_view(const Work& work, const Setup& setup) {
    const bool along_fence = setup.guide == "rip fence";
    const Scene scene = scene_of(work, setup);
    Drawing drawing;
    drawing.title = title_of(work, setup);
    add_work(drawing, scene, face_look(work, setup), along_fence);
    double above = scene.across_mm;
    const Words& words = work.job.locale.words();
    if (along_fence) add_fence(drawing, scene, words);
    else above = add_stop(drawing, scene, words);
    add_blade(drawing, scene);
    add_words(drawing, work, scene, setup, along_fence ? -0.14 * scene.across_mm : 0, above);
    return drawing;
}

}  // namespace kw::draw
