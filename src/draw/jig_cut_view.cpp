// A board on its end before an indexing jig's fence, seen along the feed.

#include <algorithm>

#include "draw/board_marks.h"
#include "draw/jig_sizes.h"
#include "draw/setup_dimensions.h"
#include "draw/wood.h"
#include "words/names.h"

namespace kw::draw {
namespace {

// What stands where, at the way's fraction; which socket is cut does not change on the way.
struct JigBoard {
    const SetupScene& scene;
    int before;
    double left_mm, right_mm, top_mm;
    bool is_broken;

    double near_mm(int socket) const { return jig::socket_mm(scene, socket, before); }
};

JigBoard jig_board(const Way& way) {
    const SetupScene& scene = way.stands;
    const int before = jig::sockets_before(way.says);
    const double left = jig::edge_mm(scene, before), right = jig::board_right_mm(scene, before, way.reach);
    return {
        scene, before, left, right, jig::board_top_mm(scene), right < left + scene.end_height.mm() - 1e-6};
}

void add_jig(Drawing& drawing, const Way& way) {
    const SetupScene& scene = way.stands;
    const double near = scene.fence.mm(), far = scene.far().mm(), slab = slab_mm(scene);
    for (const Box& box : {Box{way.reach.left_mm, slab, near, 0}, Box{far, slab, way.reach.right_mm, 0}})
        drawing.shapes.push_back(Fill{{rectangle(box)}, Material::table, false, false, false});
    drawing.shapes.push_back(Fill{
        {rectangle({way.reach.left_mm, 0, way.reach.right_mm, jig::wall_top_mm(scene)})}, Material::ground});
}

void add_standing_board(Drawing& drawing, const JigBoard& board) {
    const double top = board.scene.height.mm(), wide = board.scene.kerf.mm();
    std::vector<Rect> sockets;
    for (int i = 0; i <= board.before; ++i)
        sockets.push_back(rect_of({board.near_mm(i), 0, board.near_mm(i) + wide, top}));
    const Rect whole = rect_of({board.left_mm, 0, board.right_mm, board.top_mm});
    Breaks breaks;
    breaks.top_mm = whole.top.mm();
    if (board.is_broken) breaks.right_mm = whole.right.mm();
    const Material face = board.scene.stock == StockKind::panel ? Material::end_grain : Material::long_grain;
    add_wood(drawing, rings_of(subtract(to_region(whole), sockets), shifted(0, 0)), {face, false, true},
             breaks);
    // Those that come.
    for (int i = board.before + 1; i < board.scene.sockets && board.near_mm(i) < board.right_mm; ++i) {
        const double near = board.near_mm(i), far = std::min(near + wide, board.right_mm);
        drawing.shapes.push_back(Line{{{near, 0}, {near, top}, {far, top}, {far, 0}}, Stroke::hidden});
    }
}

void add_pin(Drawing& drawing, const SetupScene& scene) {
    drawing.shapes.push_back(
        Fill{{rectangle({fence_left_mm(scene), 0, 0, fence_top_mm(scene)})}, Material::fence});
    if (scene.spacer > Length{})
        drawing.shapes.push_back(
            Fill{{rectangle({0, 0, scene.spacer.mm(), spacer_top_mm(scene)})}, Material::spacer});
}

void add_jig_cutter(Drawing& drawing, const Way& way) {
    const SetupScene& scene = way.stands;
    drawing.shapes.push_back(Line{{{way.reach.left_mm, 0}, {scene.fence.mm(), 0}}, Stroke::outline});
    drawing.shapes.push_back(Line{{{scene.far().mm(), 0}, {way.reach.right_mm, 0}}, Stroke::outline});
    drawing.shapes.push_back(
        Fill{{rectangle({scene.fence.mm(), slab_mm(scene), scene.far().mm(), scene.height.mm()})},
             Material::cutter});
}

// From the socket that is cut to where it comes next.
void add_set_over(Drawing& drawing, const SetupScene& stands, const SetupScene& says) {
    if (says.sockets < 2) return;
    const double low = stands.height.mm(), y = low + 0.24 * (jig::board_top_mm(stands) - low);
    const double from = (stands.fence.mm() + stands.far().mm()) / 2, pitch = jig::pitch_mm(stands);
    drawing.shapes.push_back(Line{{{from, y}, {from - pitch, y}}, Stroke::arrow});
    // Above is the spacer's size, where there is one: then the number alone stands at the arrow, where no board is yet.
    if (says.spacer > Length{})
        drawing.shapes.emplace_back(Label{{from - 1.15 * pitch, y},
                                          show_with_unit(*says.index, says.locale),
                                          Anchor::right,
                                          Emphasis::strong,
                                          {},
                                          false,
                                          false,
                                          true});
    else
        drawing.shapes.emplace_back(Dimension{{0, low},
                                              {stands.far().mm(), low},
                                              Side::above,
                                              jig::board_top_mm(stands),
                                              0,
                                              measure_text(says.locale, "draw.set_over", *says.index),
                                              Emphasis::strong});
}

std::string end_down_text(const SetupScene& scene) {
    return scene.locale.words()("draw.end_down", scene.references);
}

std::string first_text(const SetupScene& scene) {
    const Words& words = scene.locale.words();
    return words(scene.spacer > Length{} ? "draw.first_against_spacer" : "draw.first_against_pin",
                 end_word(words, name_of(marked_edge)));
}

void add_jig_labels(Drawing& drawing, const JigBoard& board, const SetupScene& says) {
    const double low = board.scene.height.mm(), high = board.top_mm, up = high - low;
    const double pitch = jig::pitch_mm(board.scene);
    const auto led = [&](Point at, std::string text, Anchor anchor, Point target) {
        drawing.shapes.push_back(Label{at, std::move(text), anchor, Emphasis::plain, target, true});
    };
    // Above the board, or where that is for the spacer's size, beside it.
    const Point edge{board.left_mm, low + 0.88 * up};
    const std::string edge_text = end_word(says.locale.words(), name_of(marked_edge));
    if (board.before == 0)
        drawing.shapes.push_back(Label{
            {edge.x_mm - 0.2 * pitch, low + 0.95 * up}, edge_text, Anchor::right, Emphasis::plain, {}, true});
    else led({edge.x_mm + 0.3 * pitch, high + 0.3 * up}, edge_text, Anchor::bottom, edge);
    // To the right, where the height's number takes room as well.
    const double far = board.scene.far().mm(), x = std::min(far + 0.7 * pitch, (far + board.right_mm) / 2);
    led({x + 0.3 * pitch, high + 0.4 * up}, end_down_text(says), Anchor::left, {x, high - 0.3 * up});
}

std::string jig_title(const SetupScene& scene) {
    const Words& words = scene.locale.words();
    std::vector<std::string> all{measure_text(scene.locale, "draw.pin", scene.fence),
                                 measure_text(scene.locale, "draw.height", scene.height),
                                 measure_text(scene.locale, "draw.set_over", *scene.index)};
    if (scene.spacer > Length{}) all.push_back(spacer_text(scene));
    all.push_back(end_down_text(scene));
    all.push_back(first_text(scene));
    return words("draw.setup", work_word(words, scene.work), words.list(all, "list.comma"));
}

}  // namespace

Drawing jig_cut_view(const Way& way, const SetupViewOptions& options) {
    const SetupScene& scene = way.stands;
    const JigBoard board = jig_board(way);
    Drawing drawing;
    drawing.title = jig_title(way.says);
    const double pitch = jig::pitch_mm(scene);
    drawing.close_up = Box{fence_left_mm(scene) - 0.3 * pitch, -0.35 * scene.height.mm(),
                           scene.far().mm() + 0.5 * pitch, 1.5 * scene.height.mm()};
    add_jig(drawing, way);
    add_standing_board(drawing, board);
    add_pin(drawing, scene);
    add_jig_cutter(drawing, way);
    add_edge_mark(drawing, {{board.left_mm, scene.height.mm() + 0.42 * (board.top_mm - scene.height.mm())},
                            {0.3 * pitch, 0}});
    add_dimensions(drawing, way, options);
    add_set_over(drawing, scene, way.says);
    add_jig_labels(drawing, board, way.says);
    return drawing;
}

}  // namespace kw::draw
