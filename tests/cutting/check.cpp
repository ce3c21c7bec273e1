#include "check.h"

#include <algorithm>
#include <map>

namespace laid {

using namespace kw::cutting;
using kw::Length;

namespace {

struct Said {
    std::string what;
};

void demand(bool is_so, const std::string& what) {
    if (!is_so) throw Said{what};
}

template <class Check>
Wrong first_wrong(const Check& check) {
    try {
        check();
    } catch (const Said& said) { return said.what; }
    return std::nullopt;
}

// `used` by kind; adds up what it costs, by the words of boards.h and sheets.h.
template <class Kind>
std::int64_t counted_cost(const std::vector<Kind>& kinds, const std::vector<int>& used) {
    bool is_in_money = true;
    for (const Kind& kind : kinds) is_in_money = is_in_money && (kind.is_offcut || kind.price);
    std::int64_t cost = 0;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        demand(!kinds[k].on_hand || used[k] <= *kinds[k].on_hand, "more of a kind than there are");
        if (is_in_money) cost += used[k] * kinds[k].price.value_or(0);
        if (!is_in_money && !kinds[k].is_offcut) cost += used[k];
    }
    return cost;
}

template <class Plan>
void check_cost(const Plan& plan, std::int64_t cost) {
    demand(plan.cost == cost, "the cost isn't what the stock costs");
    demand(plan.least_cost <= plan.cost, "the bound is above the cost");
    demand(plan.proved == (plan.least_cost == plan.cost), "proved is not what bound and cost say");
}

bool is_within(const Rectangle& inner, const Rectangle& outer) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.end_x() <= outer.end_x() &&
           inner.end_y() <= outer.end_y();
}

bool are_apart(const Rectangle& a, const Rectangle& b, Length by) {
    return a.end_x() + by <= b.x || b.end_x() + by <= a.x || a.end_y() + by <= b.y || b.end_y() + by <= a.y;
}

struct Leaves {
    std::vector<const CutNode*> pieces;
    std::vector<Rectangle> offcuts;
    std::size_t nodes = 0;
};

void follow(const SheetLayout& layout, int index, Length kerf, Leaves& leaves);

// The area is cut from edge to edge: what is cut off, a kerf, and what remains.
void follow_cut(const SheetLayout& layout, const CutNode& node, Length kerf, Leaves& leaves) {
    const bool is_across = node.direction == CutDirection::crosscut;
    const Length size = is_across ? node.area.length : node.area.width;
    demand(node.fence > Length{} && node.fence < size, "a cut that cuts nothing off");
    demand(node.cut_off >= 0 || node.remainder >= 0, "a cut that leaves nothing");
    const auto part = [&](Length from, Length to) {
        Rectangle area = node.area;
        (is_across ? area.x : area.y) += from;
        (is_across ? area.length : area.width) = to - from;
        return area;
    };
    const auto area_of = [&layout](int child) { return layout.cuts[static_cast<std::size_t>(child)].area; };
    if (node.cut_off >= 0 && node.remainder >= 0) {
        demand(area_of(node.cut_off) == part({}, node.fence), "what is cut off isn't what the fence says");
        demand(area_of(node.remainder) == part(node.fence + kerf, size),
               "what remains isn't behind the kerf");
    } else if (node.cut_off >= 0) {
        demand(area_of(node.cut_off) == part({}, node.fence), "what is cut off isn't what the fence says");
        demand(size - node.fence <= kerf, "more is lost than the blade takes");
    } else {
        demand(area_of(node.remainder) == part(size - node.fence, size),
               "what is trimmed isn't what the fence says");
        demand(size - node.fence <= kerf, "more is lost than the blade takes");
    }
    if (node.cut_off >= 0) follow(layout, node.cut_off, kerf, leaves);
    if (node.remainder >= 0) follow(layout, node.remainder, kerf, leaves);
}

void follow(const SheetLayout& layout, int index, Length kerf, Leaves& leaves) {
    const CutNode& node = layout.cuts.at(static_cast<std::size_t>(index));
    ++leaves.nodes;
    demand(node.area.length > Length{} && node.area.width > Length{}, "a part of no size");
    switch (node.use) {
        case CutUse::cut: follow_cut(layout, node, kerf, leaves); break;
        case CutUse::piece: leaves.pieces.push_back(&node); break;
        case CutUse::offcut: leaves.offcuts.push_back(node.area); break;
        case CutUse::waste: break;
    }
}

void check_tree(const SheetLayout& layout, const Rectangle& usable, Length kerf) {
    demand(!layout.cuts.empty() && layout.cuts.front().area == usable,
           "the first part isn't the trimmed sheet");
    Leaves leaves;
    follow(layout, 0, kerf, leaves);
    demand(leaves.nodes == layout.cuts.size(), "a part that no cut leads to, or two do");
    demand(leaves.pieces.size() == layout.pieces.size(), "pieces that no cut leads to");
    for (const CutNode* const node : leaves.pieces)
        demand(node->placed < layout.pieces.size() && layout.pieces[node->placed].area == node->area,
               "a piece that lies elsewhere than its node says");
    for (const PlacedPiece& placed : layout.pieces)
        demand(std::any_of(leaves.pieces.begin(), leaves.pieces.end(),
                           [&placed](const CutNode* node) {
                               return node->area == placed.area && node->piece == placed.piece &&
                                      node->is_turned == placed.is_turned;
                           }),
               "a piece that isn't where the cuts say");
    demand(leaves.offcuts.size() == layout.offcuts.size(), "offcuts that no cut leads to");
    for (const Rectangle& offcut : layout.offcuts)
        demand(std::find(leaves.offcuts.begin(), leaves.offcuts.end(), offcut) != leaves.offcuts.end(),
               "an offcut that isn't where the cuts say");
}

bool frees_something(const SheetLayout& layout, int index) {
    if (index < 0) return false;
    const CutNode& node = layout.cuts[static_cast<std::size_t>(index)];
    if (node.use != CutUse::cut) return node.use != CutUse::waste;
    return frees_something(layout, node.cut_off) || frees_something(layout, node.remainder);
}

void check_order(const SheetLayout& layout) {
    std::vector<bool> is_there(layout.cuts.size(), false);  // lies on the saw, or beside it
    is_there.front() = true;
    std::size_t count = 0;
    for (const CutNode& node : layout.cuts) count += node.use == CutUse::cut ? 1 : 0;
    const std::vector<Cut> cuts = cuts_in_order(layout);
    demand(cuts.size() == count, "not every cut is in the order once");
    for (const Cut& cut : cuts) {
        const CutNode& node = layout.cuts[cut.node];
        demand(is_there[cut.node], "a part is cut before it is there");
        demand(frees_something(layout, static_cast<int>(cut.node)), "a cut that frees nothing");
        demand(cut.fence == node.fence && cut.direction == node.direction && cut.of == node.area,
               "a cut in the order isn't the tree's");
        is_there[cut.node] = false;
        for (const int child : {node.cut_off, node.remainder})
            if (child >= 0) is_there[static_cast<std::size_t>(child)] = true;
    }
}

void check_places(const SheetLayout& layout, const Rectangle& usable, const std::vector<Rectangle>& defects,
                  Length kerf) {
    std::vector<Rectangle> areas;
    for (const PlacedPiece& placed : layout.pieces) {
        demand(is_within(placed.area, usable), "a piece beyond the trimmed sheet");
        for (const Rectangle& defect : defects)
            demand(are_apart(placed.area, defect, {}), "a piece over a defect");
        for (const Rectangle& other : areas)
            demand(are_apart(placed.area, other, kerf), "no kerf between two pieces");
        for (const Rectangle& offcut : layout.offcuts)
            demand(are_apart(placed.area, offcut, kerf), "no kerf between a piece and an offcut");
        areas.push_back(placed.area);
    }
    demand(can_be_set_apart(areas, kerf), "no cuts from edge to edge set the pieces apart");
}

template <class Asked>
void check_size_of(const PlacedPiece& placed, const Asked& asked) {
    demand(!placed.is_turned || asked.may_turn, "a piece turned against its grain");
    const Length length = placed.is_turned ? asked.width : asked.length;
    const Length width = placed.is_turned ? asked.length : asked.width;
    demand(placed.area.length == length && placed.area.width == width, "a piece of another size");
}

}  // namespace

bool can_be_set_apart(const std::vector<Rectangle>& pieces, Length kerf) {
    if (pieces.size() <= 1) return true;
    for (const bool is_across : {true, false}) {
        const auto from = [is_across](const Rectangle& r) { return is_across ? r.x : r.y; };
        const auto to = [is_across](const Rectangle& r) { return is_across ? r.end_x() : r.end_y(); };
        std::vector<Rectangle> sorted = pieces;
        std::sort(sorted.begin(), sorted.end(),
                  [&from](const Rectangle& a, const Rectangle& b) { return from(a) < from(b); });
        Length end = to(sorted.front());
        for (std::size_t i = 1; i < sorted.size(); ++i) {
            if (end + kerf <= from(sorted[i])) {
                const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(i);
                return can_be_set_apart({sorted.begin(), middle}, kerf) &&
                       can_be_set_apart({middle, sorted.end()}, kerf);
            }
            end = kw::max(end, to(sorted[i]));
        }
    }
    return false;
}

Wrong wrong_with(const BoardJob& job, const BoardPlan& plan) {
    return first_wrong([&] {
        std::vector<int> made(job.pieces.size(), 0);
        std::vector<int> used(job.boards.size(), 0);
        for (const BoardLayout& board : plan.boards) {
            const BoardKind& kind = job.boards.at(board.board);
            ++used[board.board];
            demand(!board.pieces.empty(), "a board for nothing");
            Length free = kind.trim;
            for (const PieceOnBoard& placed : board.pieces) {
                demand(placed.from >= free, "no kerf before a piece, or a piece in the trim");
                const Length end = placed.from + job.pieces.at(placed.piece).length;
                demand(end <= kind.length - kind.trim, "a piece beyond the trimmed board");
                free = end + job.kerf;
                ++made[placed.piece];
            }
            demand(board.offcut_from == free, "the offcut isn't behind the last kerf");
            demand(board.offcut == kw::max(Length{}, kind.length - kind.trim - free),
                   "an offcut of another length");
        }
        for (std::size_t p = 0; p < made.size(); ++p)
            demand(made[p] == job.pieces[p].count, "a piece too many or too few");
        check_cost(plan, counted_cost(job.boards, used));
    });
}

Wrong wrong_with(const SheetJob& job, const SheetPlan& plan) {
    return first_wrong([&] {
        std::vector<int> made(job.pieces.size(), 0);
        std::vector<int> used(job.sheets.size(), 0);
        for (const SheetLayout& sheet : plan.sheets) {
            const SheetKind& kind = job.sheets.at(sheet.sheet);
            ++used[sheet.sheet];
            demand(!sheet.pieces.empty(), "a sheet for nothing");
            const Rectangle usable{kind.trim, kind.trim, kind.length - 2 * kind.trim,
                                   kind.width - 2 * kind.trim};
            for (const PlacedPiece& placed : sheet.pieces) {
                check_size_of(placed, job.pieces.at(placed.piece));
                ++made[placed.piece];
            }
            check_places(sheet, usable, kind.defects, job.kerf);
            check_tree(sheet, usable, job.kerf);
            check_order(sheet);
            for (const Rectangle& offcut : sheet.offcuts)
                for (const Rectangle& defect : kind.defects)
                    demand(are_apart(offcut, defect, {}), "an offcut with a defect");
        }
        for (std::size_t p = 0; p < made.size(); ++p)
            demand(made[p] == job.pieces[p].count, "a piece too many or too few");
        check_cost(plan, counted_cost(job.sheets, used));
    });
}

Wrong wrong_with(const PanelJob& job, const PanelPlan& plan) {
    return first_wrong([&] {
        std::vector<int> made(job.pieces.size(), 0);
        std::int64_t value = 0;
        for (const PlacedPiece& placed : plan.layout.pieces) {
            check_size_of(placed, job.pieces.at(placed.piece));
            demand(++made[placed.piece] <= job.pieces[placed.piece].count, "more of a piece than are wanted");
            value += job.pieces[placed.piece].value;
        }
        const Rectangle panel{{}, {}, job.length, job.width};
        check_places(plan.layout, panel, {}, job.kerf);
        check_tree(plan.layout, panel, job.kerf);
        check_order(plan.layout);
        demand(plan.value == value, "the value isn't that of the pieces");
        demand(plan.most_value >= plan.value, "the bound is below the value");
        demand(plan.proved == (plan.most_value == plan.value), "proved is not what bound and value say");
    });
}

}  // namespace laid
