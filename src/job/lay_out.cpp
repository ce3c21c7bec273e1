#include "job/lay_out.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

#include "cutting/boards.h"
#include "cutting/sheets.h"
#include "job/laid_cuts.h"
#include "job/on_hand.h"

namespace kw {
namespace {

// A full kerf, where the shop has no ripping blade of its own (1/8 in; common practice).
constexpr Length full_kerf = Length::inches(1, 8);

std::optional<std::int64_t> price_of(const StockSize& size) {
    return is_here(size) ? std::nullopt : size.price_cents;
}

// Parts of one stock that are cut alike, by their ids.
struct AlikeParts {
    Length length, width;
    std::vector<std::string> ids;
};

using Names = std::set<std::string>;

std::vector<AlikeParts> parts_of_stock(const Job& job, const Plan& plan, const std::string& stock,
                                       const Names& are_cut) {
    std::vector<AlikeParts> all;
    std::map<std::pair<Length, Length>, std::size_t> known;
    for (const Part& part : plan.parts) {
        if (part.stock != stock || are_cut.count(part.id) != 0) continue;
        const auto [length, width] = rough_size(job, part);
        const auto [place, is_new] = known.try_emplace({length, width}, all.size());
        if (is_new) all.push_back({length, width, {}});
        all[place->second].ids.push_back(part.id);
    }
    return all;
}

// Hands out the ids of parts that are alike, one for each place.
class Ids {
public:
    explicit Ids(const std::vector<AlikeParts>& parts) : parts_(parts), used_(parts.size(), 0) {}
    const std::string& next(std::size_t piece) { return parts_[piece].ids[used_[piece]++]; }

private:
    const std::vector<AlikeParts>& parts_;
    std::vector<std::size_t> used_;
};

template <class Plan>
void take_result(const Plan& plan, LaidStock& laid) {
    laid.is_in_money = plan.is_in_money;
    laid.cost = plan.cost;
    laid.least_cost = plan.least_cost;
    laid.proved = plan.proved;
    laid.yield = plan.yield;
}

// "pieces.2.length" blames parts, and the stock is to give: its sizes; "sheets.0.trim" is a field of a size.
std::string field_of(const std::string& at, const std::string& blamed) {
    const std::size_t first = blamed.find('.');
    const std::string list = blamed.substr(0, first);
    if ((list != "sheets" && list != "boards") || first == std::string::npos) return at + "/sizes";
    std::string rest = blamed.substr(first);
    if (const std::size_t on_hand = rest.rfind(".on_hand"); on_hand != std::string::npos)
        rest.replace(on_hand, std::string::npos, ".count");
    std::replace(rest.begin(), rest.end(), '.', '/');
    return at + "/sizes" + rest;
}

class StockLayOut {
public:
    StockLayOut(const Job& job, const Plan& plan, std::size_t index, const Names& are_cut,
                const cutting::Effort& effort)
        : job_(job),
          stock_(job.stock[index]),
          at_("/stock/" + std::to_string(index)),
          effort_(effort),
          parts_(parts_of_stock(job, plan, stock_.name, are_cut)),
          safe_(safe_length(job)) {}

    bool has_parts() const { return !parts_.empty(); }

    LaidStock run() {
        LaidStock laid;
        laid.stock = stock_.name;
        const auto has_width = [](const StockSize& size) { return size.width.has_value(); };
        const auto narrow = std::find_if_not(stock_.sizes.begin(), stock_.sizes.end(), has_width);
        laid.is_in_sheets = is_in_sheets(stock_);
        // A board as wide as its parts and a sheet can't be weighed against each other.
        if (laid.is_in_sheets && narrow != stock_.sizes.end()) {
            laid.cannot = Problem{at_ + "/sizes/" + std::to_string(narrow - stock_.sizes.begin()) + "/length",
                                  Message::say("layout.width_of_some"), Message::say("layout.width_of_all")};
            return laid;
        }
        if (laid.is_in_sheets) on_sheets(laid);
        else on_boards(laid);
        order_by_fence(laid, effort_.watch);
        return laid;
    }

private:
    void blame(const Refusal& refusal, LaidStock& laid) const {
        const Message of_what = piece_blamed(refusal.field);
        laid.cannot = Problem{field_of(at_, refusal.field), of_what + refusal.why, refusal.remedy};
    }

    // "`twine.1.front`: " of "pieces.3.length"; else the stock's name.
    Message piece_blamed(const std::string& field) const {
        const std::string list = "pieces.";
        const std::size_t index =
            field.rfind(list, 0) == 0 ? std::size_t(std::atoi(field.c_str() + list.size())) : parts_.size();
        return Message::of(
            index < parts_.size() ? part_message(parts_[index].ids.front()) : Message::of(stock_.name), ": ");
    }

    void on_sheets(LaidStock& laid) {
        cutting::SheetJob ask;
        ask.kerf = layout_kerf(job_);
        ask.least_offcut_length = job_.cutting.least_offcut_length;
        ask.least_offcut_width = job_.cutting.least_offcut_width;
        for (const AlikeParts& part : parts_)
            ask.pieces.push_back({part.length, part.width, int(part.ids.size()), stock_.may_turn});
        for (const StockSize& size : stock_.sizes) {
            cutting::SheetKind kind{size.length,    *size.width,   size.count,
                                    price_of(size), is_here(size), size.trim};
            for (const StockDefect& defect : size.defects)
                kind.defects.push_back({defect.x, defect.y, defect.length, defect.width});
            ask.sheets.push_back(std::move(kind));
        }
        const auto plan = cutting::plan_sheets(ask, effort_);
        if (!plan) return blame(plan.error(), laid);
        take_result(*plan, laid);
        Ids ids(parts_);
        for (const cutting::SheetLayout& sheet : plan->sheets) {
            LaidPiece piece{sheet.sheet, {}, laid_cuts(sheet, safe_), sheet.offcuts};
            for (const cutting::PlacedPiece& placed : sheet.pieces)
                piece.parts.push_back({ids.next(placed.piece), placed.area, placed.is_turned});
            laid.pieces.push_back(std::move(piece));
        }
    }

    void on_boards(LaidStock& laid) {
        cutting::BoardJob ask;
        ask.kerf = layout_kerf(job_);
        for (const AlikeParts& part : parts_) ask.pieces.push_back({part.length, int(part.ids.size())});
        Length widest;
        for (const AlikeParts& part : parts_) widest = max(widest, part.width);
        for (const StockSize& size : stock_.sizes) {
            const bool is_too_narrow = size.no_wider && *size.no_wider < widest;
            ask.boards.push_back(
                {size.length, is_too_narrow ? 0 : size.count, price_of(size), is_here(size), size.trim});
        }
        const auto plan = cutting::plan_boards(ask, effort_);
        if (!plan) return blame(plan.error(), laid);
        take_result(*plan, laid);
        Ids ids(parts_);
        for (const cutting::BoardLayout& board : plan->boards) laid.pieces.push_back(laid_board(board, ids));
    }

    LaidPiece laid_board(const cutting::BoardLayout& board, Ids& ids) const {
        LaidPiece piece{board.board, {}, {}, {}};
        Length widest;
        for (const cutting::PieceOnBoard& placed : board.pieces) {
            const AlikeParts& part = parts_[placed.piece];
            const cutting::Rectangle area{placed.from, {}, part.length, part.width};
            piece.parts.push_back({ids.next(placed.piece), area, false});
            LaidCut cut{{cutting::CutDirection::crosscut, part.length, area}, {}, {}, {}};
            cut.frees.push_back(piece.parts.size() - 1);
            if (safe_ && part.length < safe_->least) cut.too_short = part.length;
            cut.at_fence = CutSide{cutting::CutUse::piece, area, false, {piece.parts.size() - 1}};
            piece.cuts.push_back(std::move(cut));
            widest = max(widest, part.width);
        }
        if (board.offcut >= max(job_.cutting.least_offcut_length, Length::from_ticks(1)))
            piece.offcuts.push_back({board.offcut_from, {}, board.offcut, widest});
        note_what_stays(board, piece);
        return piece;
    }

    // Each part is cut from what the one before it left.
    static void note_what_stays(const cutting::BoardLayout& board, LaidPiece& piece) {
        for (std::size_t i = 0; i + 1 < piece.cuts.size(); ++i) {
            piece.cuts[i].beyond = CutSide{cutting::CutUse::cut, {}, false, {}};
            for (std::size_t later = i + 1; later < piece.cuts.size(); ++later)
                piece.cuts[i].beyond->parts.push_back(later);
        }
        if (board.offcut > Length{} && !piece.cuts.empty())
            piece.cuts.back().beyond =
                CutSide{piece.offcuts.empty() ? cutting::CutUse::waste : cutting::CutUse::offcut,
                        {board.offcut_from, {}, board.offcut, {}},
                        false,
                        {}};
    }

    const Job& job_;
    const Stock& stock_;
    std::string at_;
    const cutting::Effort& effort_;
    std::vector<AlikeParts> parts_;
    std::optional<SafeLength> safe_;
};

}  // namespace

bool can_be_laid_out(const Job& job) {
    return std::any_of(job.stock.begin(), job.stock.end(),
                       [](const Stock& stock) { return !stock.sizes.empty(); });
}

bool is_here(const StockSize& size) { return size.is_offcut || size.count; }

Length layout_kerf(const Job& job) {
    if (job.cutting.kerf) return *job.cutting.kerf;
    Length widest;
    for (const Cutter& cutter : job.shop.cutters)
        if (cutter.kind == CutterKind::blade) widest = max(widest, cutter.kerf);
    return widest > Length{} ? widest : full_kerf;
}

RoughSize rough_size(const Job& job, const Part& part) {
    return {part.size.length + job.cutting.over_length, part.size.width + job.cutting.over_width};
}

namespace {

// What has been at a machine was cut from its board or sheet before.
Names at_machines(const Standing& standing) {
    Names parts;
    for (const auto* gone_through : {&standing.ran, &standing.again})
        for (const Ran& ran : *gone_through) parts.insert(ran.part);
    return parts;
}

// Notes which parts are left out, and which are laid out once more. The names of those that are left out.
Names note_cut_already(const Job& job, const Plan& plan, const Standing& standing, LayOut& all) {
    Names are_cut = at_machines(standing);
    for (const Part& part : plan.parts) {
        const auto freed = standing.freed.find(part.id);
        const bool is_freed = freed != standing.freed.end(), has_run = are_cut.count(part.id) != 0;
        if (is_freed && !has_run && !is_enough(job, part, freed->second)) {
            all.too_small.push_back({part.id, freed->second});
        } else if (is_freed || has_run) {
            are_cut.insert(part.id);
            all.cut_already.push_back(part.id);
            if (is_freed) all.freed.push_back({part.id, freed->second});
        }
    }
    return are_cut;
}

}  // namespace

LayOut lay_out(const Job& job, const Plan& plan, const Standing& standing, const cutting::Effort& effort) {
    LayOut all;
    const Names are_cut = note_cut_already(job, plan, standing, all);
    for (std::size_t i = 0; i < job.stock.size(); ++i) {
        StockLayOut one(job, plan, i, are_cut, effort);
        if (!one.has_parts()) continue;
        if (job.stock[i].sizes.empty()) all.without_size.push_back(job.stock[i].name);
        else all.stocks.push_back(one.run());
    }
    return all;
}

}  // namespace kw
