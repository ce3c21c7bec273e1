#include "draw/part_view.h"

#include <algorithm>

#include "draw/board_marks.h"
#include "draw/setup_parts.h"
#include "draw/standing_part.h"
#include "draw/wood.h"
#include "words/names.h"

namespace kw::draw {
namespace {

constexpr double longest_board = 3.2;  // of the other size: what is longer is broken off

// From the fence's face, in millimetres.
struct Board {
    BoardLie lie;
    BoardFace down = BoardFace::inside;
    double end_mm = 0;      // of the board, at the fence or the spacer
    double along_x_mm = 0;  // its size away from the fence, as drawn
    double along_y_mm = 0;  // and along the feed
    bool broken_x = false;
    bool broken_y = false;
    double cut_from_mm = 0;
    double cut_to_mm = 0;
    bool goes_through = false;
    bool sacrificial = false;
    bool at_router = false;  // fed toward y = 0: see is_at_router
    WoodLook look;

    double right_mm() const { return end_mm + along_x_mm; }
    double scale_mm() const { return std::min(along_x_mm, along_y_mm); }
};

double shortened(double size_mm, double other_mm, bool& broken) {
    const double longest = longest_board * std::max(other_mm, 40.0);
    broken = size_mm > longest;
    return std::min(size_mm, longest);
}

bool runs_along_length(Reference reference) {
    return reference == Reference::bottom_edge || reference == Reference::top_edge;
}

// At a router table the fence stands beyond the bit and the board is fed from right to left (common practice, no source). Seen from
// above and turned until the fence is at the left, it goes toward y = 0, and which edge is toward the maker says nothing.
bool is_at_router(const Work& work, const Setup& setup) {
    const Machine* machine = work.job.shop.machine_named(setup.machine);
    return machine && machine->kind == MachineKind::router_table;
}

Board sheet_of(const Work& work, const Setup& setup, const PartLie& lie, bool fence_left) {
    const Pass& pass = setup.passes[lie.pass];
    const PartSize& size = work.plan.part_with_id(pass.part)->size;
    Board sheet;
    sheet.lie = board_lie(lie.role, pass.reference, pass.down, fence_left);
    sheet.down = pass.down;
    sheet.at_router = is_at_router(work, setup);
    sheet.end_mm = setup.spacer.mm();
    const double length = size.length.mm(), width = size.width.mm();
    const bool edge = runs_along_length(pass.reference);
    sheet.along_x_mm = edge ? width : shortened(length, width, sheet.broken_x);
    // Along the fence a board may be broken off shorter: it must not become a tower.
    sheet.along_y_mm = edge ? std::min(length, 0.9 * width) : width;
    sheet.broken_y = edge && length > 0.9 * width;
    sheet.cut_from_mm = pass.nibble ? sheet.end_mm : std::max(setup.fence, setup.spacer).mm();
    sheet.cut_to_mm = (setup.fence + kerf_as_put_on(work, setup)).mm();
    sheet.sacrificial = setup.sacrificial;
    const bool grain = stock_of(work, setup).kind != StockKind::panel;
    sheet.look = {grain ? Material::long_grain : Material::end_grain, false, edge};
    return sheet;
}

void add_board(Drawing& drawing, const Board& sheet) {
    const double left = sheet.end_mm, right = sheet.right_mm(), top = sheet.along_y_mm;
    const auto piece = [&](Box box, const Breaks& breaks) {
        add_wood(drawing, {rectangle(box)}, sheet.look, breaks);
    };
    if (sheet.broken_y) return piece({left, 0, right, top}, {{}, {}, 0.0, top});
    if (!sheet.broken_x) return piece({left, 0, right, top}, {});
    const double gap_left = left + 0.60 * sheet.along_x_mm, gap_right = left + 0.64 * sheet.along_x_mm;
    piece({left, 0, gap_left, top}, {{}, gap_left, {}, {}});
    piece({gap_right, 0, right, top}, {gap_right, {}, {}, {}});
}

// Made from below: seen through the board.
void add_cut(Drawing& drawing, const Board& sheet) {
    const double from = std::max(sheet.cut_from_mm, sheet.end_mm);
    if (sheet.cut_to_mm > from)
        drawing.shapes.emplace_back(
            Fill{{rectangle({from, 0, sheet.cut_to_mm, sheet.along_y_mm})}, Material::removed});
}

double thickness_of_fence(const Board& sheet) { return std::max(0.10 * sheet.scale_mm(), 5.0); }

void add_fence(Drawing& drawing, const Board& sheet) {
    const double over = 0.12 * sheet.scale_mm(), thick = thickness_of_fence(sheet);
    const double bottom = sheet.broken_y ? -over : 0.22 * sheet.along_y_mm;
    drawing.shapes.emplace_back(
        Fill{{rectangle({-thick, bottom, 0, sheet.along_y_mm + over})}, Material::fence});
    if (sheet.end_mm > 0)
        drawing.shapes.emplace_back(
            Fill{{rectangle({0, 0.35 * sheet.along_y_mm, sheet.end_mm, 0.75 * sheet.along_y_mm})},
                 sheet.sacrificial ? Material::sacrificial_spacer : Material::spacer});
}

// The loop in the middle of the board's face, its tail to the marked edge, and the caret on that edge.
void add_marks(Drawing& drawing, const Board& sheet, bool in_mirror) {
    const BoardLie& lie = sheet.lie;
    const double left = sheet.end_mm, right = sheet.right_mm(), top = sheet.along_y_mm;
    const double across = sheet.broken_x ? left + 0.48 * sheet.along_x_mm : (left + right) / 2;
    const double high = 0.58 * sheet.scale_mm();
    std::optional<MarkPlace> tail;
    if (lie.toward_maker == marked_edge) tail = {{across, 0}, {0, high}, in_mirror};
    else if (lie.away == marked_edge) tail = {{across, top}, {0, -high}, in_mirror};
    else if (lie.at_fence == marked_edge) tail = {{left, 0.5 * top}, {high, 0}, in_mirror};
    else if (lie.from_fence == marked_edge) tail = {{right, 0.5 * top}, {-high, 0}, in_mirror};
    if (!tail) return;
    const bool underneath = lie.up != marked_face;
    add_face_mark(drawing, *tail, underneath);
    add_edge_mark(drawing, {tail->at, {0.26 * tail->in_mm.x_mm, 0.26 * tail->in_mm.y_mm}});
}

void add_names(Drawing& drawing, const Board& sheet, const Words& words) {
    const double left = sheet.end_mm, right = sheet.right_mm(), top = sheet.along_y_mm;
    const double gap = 0.09 * sheet.scale_mm(), in = 0.03 * sheet.along_x_mm;
    const bool edge = runs_along_length(sheet.lie.at_fence);
    const auto name = [&](Point at, std::string text, Anchor anchor) {
        drawing.shapes.emplace_back(Label{at, std::move(text), anchor, Emphasis::plain, std::nullopt});
    };
    const auto end = [&](Reference reference) { return end_word(words, name_of(reference)); };
    const std::string last = end(sheet.lie.away), first = end(sheet.lie.toward_maker);
    name({(left + right) / 2, top + gap}, sheet.at_router ? words("draw.trailing", last) : last,
         Anchor::bottom);
    name({(left + right) / 2, -gap},
         sheet.at_router ? words("draw.leading", first) : words("draw.toward_maker", first), Anchor::top);
    // Within the board where it is long, and beside it where it is not.
    if (edge) {
        name({-thickness_of_fence(sheet) - gap, 0.5 * top}, end(sheet.lie.at_fence), Anchor::right);
        name({right + gap, 0.5 * top}, end(sheet.lie.from_fence), Anchor::left);
    } else {
        name({left + in, 0.5 * top}, end(sheet.lie.at_fence), Anchor::left);
        name({right - in, 0.5 * top}, end(sheet.lie.from_fence), Anchor::right);
    }
}

std::string title_of(const Work& work, const Setup& setup, const PartLie& lie, const Board& sheet) {
    const Words& words = work.job.locale.words();
    const auto end = [&](Reference reference) { return end_word(words, name_of(reference)); };
    const std::string at_fence = end(sheet.lie.at_fence), first = end(sheet.lie.toward_maker);
    const std::vector<std::string> all{
        face_up_words(words, name_of(sheet.lie.up)),
        setup.spacer > Length{} ? words("draw.against_spacer", at_fence)
                                : words("draw.against_fence", at_fence),
        sheet.at_router ? words("draw.board_leading", first) : words("draw.board_toward_maker", first)};
    return words("draw.board_from_above", role_word(words, name_of(lie.role)), words.list(all, "list.comma"));
}

}  // namespace

std::vector<PartLie> part_lies(const Work& work, const Setup& setup) {
    std::vector<PartLie> lies;
    for (std::size_t i = 0; i < setup.passes.size(); ++i) {
        const Pass& pass = setup.passes[i];
        const Role role = work.plan.part_with_id(pass.part)->size.role;
        const bool known = std::any_of(lies.begin(), lies.end(), [&](const PartLie& lie) {
            const Pass& other = setup.passes[lie.pass];
            return lie.role == role && other.reference == pass.reference && other.down == pass.down;
        });
        if (!known) lies.push_back({i, role});
    }
    return lies;
}

std::string lie_words(const Work& work, const Setup& setup, const PartLie& lie,
                      const SetupViewOptions& options) {
    const Words& words = work.job.locale.words();
    const Pass& pass = setup.passes[lie.pass];
    if (!setup.index) return face_down_words(words, name_of(pass.down));
    return face_toward_words(words, standing_lie(lie.role, pass.reference, options.fence_left));
}

Drawing part_view(const Work& work, const Setup& setup, const PartLie& lie, const SetupViewOptions& options) {
    if (setup.index) return standing_part_view(work, setup, lie, options);
    // On which side of a saw's blade the fence stands says nothing of a router table's.
    const bool mirrored = !options.fence_left && !is_at_router(work, setup);
    const Board sheet = sheet_of(work, setup, lie, !mirrored);
    Drawing drawing;
    drawing.title = title_of(work, setup, lie, sheet);
    add_board(drawing, sheet);
    add_cut(drawing, sheet);
    add_fence(drawing, sheet);
    add_marks(drawing, sheet, mirrored);
    add_names(drawing, sheet, work.job.locale.words());
    return mirrored ? mirrored_about_x(drawing, 0) : drawing;
}

}  // namespace kw::draw
