#include "draw/standing_part.h"

#include <algorithm>

#include "draw/board_marks.h"
#include "draw/jig_sizes.h"
#include "draw/wood.h"
#include "words/names.h"

namespace kw::draw {
namespace {

constexpr double tallest = 0.8;  // of its width: the rest is broken off

// From the pin, in millimetres.
struct StandingBoard {
    SetupScene scene;
    StandingLie lie;
    double edge_mm = 0;  // its bottom edge
    double wide_mm = 0;
    double high_mm = 0;
    bool is_broken = false;
    int sockets = 1;

    double right_mm() const { return edge_mm + wide_mm; }
};

StandingBoard standing_board(const Work& work, const Setup& setup, const PartLie& lie,
                             const SetupViewOptions& options) {
    const Pass& pass = setup.passes[lie.pass];
    const PartSize& size = work.plan.part_with_id(pass.part)->size;
    StandingBoard board;
    board.scene = *setup_scene(work, setup);
    board.lie = standing_lie(lie.role, pass.reference, options.fence_left);
    board.edge_mm = setup.spacer.mm();
    board.wide_mm = size.width.mm();
    const double most = std::max(tallest * board.wide_mm, 2.5 * board.scene.height.mm());
    board.is_broken = size.length.mm() > most;
    board.high_mm = std::min(size.length.mm(), most);
    board.sockets = pass.cuts;
    return board;
}

// With its sockets, as it comes from the saw.
void add_upright_board(Drawing& drawing, const StandingBoard& board) {
    const bool has_grain = board.scene.stock != StockKind::panel;
    const Rect whole = rect_of({board.edge_mm, 0, board.right_mm(), board.high_mm});
    std::vector<Rect> sockets;
    for (int i = 0; i < board.sockets; ++i) {
        const double near = jig::socket_mm(board.scene, i, 0);
        sockets.push_back(rect_of({near, 0, near + board.scene.kerf.mm(), board.scene.height.mm()}));
    }
    Breaks breaks;
    if (board.is_broken) breaks.top_mm = whole.top.mm();
    add_wood(drawing, rings_of(subtract(to_region(whole), sockets), shifted(0, 0)),
             {has_grain ? Material::long_grain : Material::end_grain, false, true}, breaks);
}

void add_table_and_pin(Drawing& drawing, const StandingBoard& board) {
    const double over = 0.12 * board.wide_mm, left = -jig::pin_width_mm(board.scene);
    const double top = jig::pin_top_mm(board.scene);
    drawing.shapes.emplace_back(Line{{{left - over, 0}, {board.right_mm() + over, 0}}, Stroke::outline});
    drawing.shapes.emplace_back(Fill{{rectangle({left, 0, 0, top})}, Material::fence});
    if (board.edge_mm > 0)
        drawing.shapes.emplace_back(Fill{{rectangle({0, 0, board.edge_mm, top})}, Material::spacer});
}

// The loop and the caret stand at the marked edge, which is the one at the pin.
void add_upright_marks(Drawing& drawing, const StandingBoard& board, bool in_mirror) {
    static_assert(marked_edge == Reference::bottom_edge);
    const double low = board.scene.height.mm(), high = 0.62 * std::min(board.wide_mm, board.high_mm - low);
    const MarkPlace tail{{board.edge_mm, (low + board.high_mm) / 2}, {high, 0}, in_mirror};
    add_face_mark(drawing, tail, board.lie.toward_maker != marked_face);
    add_edge_mark(drawing, {tail.at, {0.26 * high, 0}});
}

void add_upright_names(Drawing& drawing, const StandingBoard& board, const Words& words) {
    const double gap = 0.06 * board.wide_mm, middle = (board.edge_mm + board.right_mm()) / 2;
    const double up = (board.scene.height.mm() + board.high_mm) / 2;
    const auto name = [&](Point at, std::string text, Anchor anchor) {
        drawing.shapes.emplace_back(Label{at, std::move(text), anchor, Emphasis::plain, std::nullopt});
    };
    const auto end = [&](Reference reference) { return end_word(words, name_of(reference)); };
    name({middle, board.high_mm + gap}, end(board.lie.up), Anchor::bottom);
    name({middle, -gap}, words("draw.end_down", end(board.lie.down)), Anchor::top);
    name({board.edge_mm - gap, up}, end(Reference::bottom_edge), Anchor::right);
}

std::string standing_title(const Work& work, const Setup& setup, const PartLie& lie,
                           const StandingBoard& board) {
    const Words& words = work.job.locale.words();
    const std::string edge = end_word(words, name_of(Reference::bottom_edge));
    const std::vector<std::string> all{
        words("draw.end_down", end_word(words, name_of(board.lie.down))),
        words(setup.spacer > Length{} ? "draw.first_against_spacer" : "draw.first_against_pin", edge),
        face_toward_words(words, board.lie)};
    return words("draw.board_in_jig", role_word(words, name_of(lie.role)), words.list(all, "list.comma"));
}

}  // namespace

std::string face_toward_words(const Words& words, const StandingLie& lie) {
    return words.name("face_toward.", name_of(lie.toward_maker));
}

Drawing standing_part_view(const Work& work, const Setup& setup, const PartLie& lie,
                           const SetupViewOptions& options) {
    const StandingBoard board = standing_board(work, setup, lie, options);
    Drawing drawing;
    drawing.title = standing_title(work, setup, lie, board);
    add_upright_board(drawing, board);
    add_table_and_pin(drawing, board);
    add_upright_marks(drawing, board, !options.fence_left);
    add_upright_names(drawing, board, work.job.locale.words());
    return options.fence_left ? drawing : mirrored_about_x(drawing, 0);
}

}  // namespace kw::draw
