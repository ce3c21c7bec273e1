#include "cutting/sheets.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "cutting/bounds.h"
#include "cutting/checks.h"
#include "cutting/pattern_bound.h"
#include "cutting/sheet_layout.h"
#include "cutting/smaller_stock.h"

namespace kw::cutting {
namespace {

constexpr std::size_t most_defects = 8;  // of a sheet: the ways around them grow with the fourth power

Fault check_defects(const SheetKind& kind, std::size_t index) {
    if (kind.defects.size() > most_defects)
        return Refusal{field_of("sheets", index, "defects"), Message::say("cutting.too_many_defects"),
                       Message::say("cutting.join_defects", static_cast<int>(most_defects))};
    for (const Rectangle& defect : kind.defects) {
        const std::string field = field_of("sheets", index, "defects");
        for (const Length size : {defect.length, defect.width})
            if (Fault fault = check_size(field, size)) return fault;
        if (defect.end_x() <= Length{} || defect.end_y() <= Length{} || defect.x >= kind.length ||
            defect.y >= kind.width)
            return Refusal{field, Message::say("cutting.defect_outside"),
                           Message::say("cutting.measure_defect")};
    }
    return std::nullopt;
}

Fault check_kind(const SheetKind& kind, std::size_t index) {
    const auto field = [index](const char* member) { return field_of("sheets", index, member); };
    if (Fault fault = check_size(field("length"), kind.length)) return fault;
    if (Fault fault = check_size(field("width"), kind.width)) return fault;
    if (Fault fault = check_supply(field("on_hand"), kind.on_hand, kind.is_offcut || !kind.defects.empty()))
        return fault;
    if (Fault fault = check_price(field("price"), kind.price)) return fault;
    if (Fault fault = check_trim(field("trim"), kind.trim, min(kind.length, kind.width))) return fault;
    return check_defects(kind, index);
}

Fault check_pieces(const SheetJob& job) {
    std::int64_t in_all = 0;
    for (std::size_t p = 0; p < job.pieces.size(); ++p) {
        const SheetPiece& piece = job.pieces[p];
        in_all += piece.count;
        if (Fault fault = check_size(field_of("pieces", p, "length"), piece.length)) return fault;
        if (Fault fault = check_size(field_of("pieces", p, "width"), piece.width)) return fault;
        if (Fault fault = check_count(field_of("pieces", p, "count"), piece.count, in_all)) return fault;
    }
    return std::nullopt;
}

Fault check_job(const SheetJob& job) {
    if (job.sheets.empty())
        return Refusal{"sheets", Message::say("cutting.no_stock"), Message::say("cutting.name_stock")};
    for (std::size_t k = 0; k < job.sheets.size(); ++k)
        if (Fault fault = check_kind(job.sheets[k], k)) return fault;
    if (Fault fault = check_not_negative("kerf", job.kerf)) return fault;
    return check_pieces(job);
}

// Guides the search only: what stays out weighs by its area, in 1/16 of a square millimetre.
std::int64_t value_of(const SheetPiece& piece) {
    return 1 + std::llround(16 * piece.length.mm() * piece.width.mm());
}

struct Asked {
    Packing packing;
    std::vector<std::vector<SoundWay>> ways;  // by kind
    bool is_in_money = false;
};

std::int64_t cost_of(const SheetKind& kind, bool is_in_money) {
    if (kind.is_offcut) return is_in_money ? kind.price.value_or(0) : 0;
    return is_in_money ? *kind.price : 1;
}

std::vector<SoundWay> ways_of(const SheetKind& kind, Length kerf) {
    const Region usable{(kind.length - 2 * kind.trim + kerf).ticks(),
                        (kind.width - 2 * kind.trim + kerf).ticks()};
    std::vector<Spot> defects;
    for (const Rectangle& defect : kind.defects)
        defects.push_back({(defect.x - kind.trim).ticks(), (defect.y - kind.trim).ticks(),
                           defect.length.ticks(), defect.width.ticks()});
    return sound_ways(usable, defects, kerf.ticks());
}

Asked ask(const SheetJob& job) {
    Asked asked;
    asked.is_in_money = std::all_of(job.sheets.begin(), job.sheets.end(),
                                    [](const SheetKind& kind) { return kind.is_offcut || kind.price; });
    int count = 0;
    for (const SheetPiece& piece : job.pieces) {
        count += piece.count;
        asked.packing.pieces.push_back({(piece.length + job.kerf).ticks(), (piece.width + job.kerf).ticks(),
                                        piece.count, piece.may_turn, value_of(piece)});
    }
    for (const SheetKind& kind : job.sheets) {
        asked.ways.push_back(ways_of(kind, job.kerf));
        Stock stock;
        const Spot& root = asked.ways.back().front().nodes.front().spot;
        stock.outer = {root.length, root.width};
        for (const SoundWay& way : asked.ways.back()) stock.ways.push_back(way.regions);
        stock.cost = cost_of(kind, asked.is_in_money);
        stock.supply = std::min(count, kind.on_hand.value_or(count));
        asked.packing.stocks.push_back(std::move(stock));
    }
    return asked;
}

struct Excess {
    Length size;
    Length room;
    bool is_length = true;

    Length by() const { return size - room; }
};

// What is most too large of a piece lying one way on a sheet.
Excess excess_of(Length length, Length width, const SheetKind& kind) {
    const Excess along{length, kind.length - 2 * kind.trim, true};
    const Excess across{width, kind.width - 2 * kind.trim, false};
    return along.by() > across.by() ? along : across;
}

Refusal fits_nothing(const SheetPiece& piece, std::size_t index, const SheetJob& job) {
    std::optional<Excess> least;
    bool is_turned = false;
    for (const SheetKind& kind : job.sheets)
        for (const bool turned : {false, true}) {
            if (turned && !piece.may_turn) continue;
            const Excess excess = turned ? excess_of(piece.width, piece.length, kind)
                                         : excess_of(piece.length, piece.width, kind);
            if (!least || excess.by() < least->by()) least = excess, is_turned = turned;
        }
    const bool is_length = least->is_length != is_turned;
    const std::string field = field_of("pieces", index, is_length ? "length" : "width");
    if (least->by() <= Length{})  // it would fit, but for the defects
        return {field, Message::say("cutting.defects_in_the_way"), Message::say("cutting.sound_sheet")};
    const Message why = is_length
                            ? Message::say("cutting.sheet_too_short", least->size, least->room, least->by())
                            : Message::say("cutting.sheet_too_narrow", least->size, least->room, least->by());
    return {field, why, Message::say("cutting.larger_sheet", least->size)};
}

Fault check_fit(const SheetJob& job, const Packing& packing) {
    for (std::size_t p = 0; p < packing.pieces.size(); ++p)
        if (std::none_of(packing.stocks.begin(), packing.stocks.end(),
                         [&](const Stock& stock) { return stock.takes(packing.pieces[p]); }))
            return fits_nothing(job.pieces[p], p, job);
    return std::nullopt;
}

double yield_of(const SheetJob& job, const SheetPlan& plan) {
    double pieces = 0;
    double stock = 0;
    for (const SheetPiece& piece : job.pieces) pieces += piece.count * piece.length.mm() * piece.width.mm();
    for (const SheetLayout& sheet : plan.sheets)
        stock += job.sheets[sheet.sheet].length.mm() * job.sheets[sheet.sheet].width.mm();
    return stock > 0 ? pieces / stock : 0;
}

Packed better_of(Packed a, Packed b) {
    const bool is_second =
        a.left_over.size() != b.left_over.size() ? b.left_over.size() < a.left_over.size() : b.cost < a.cost;
    return is_second ? std::move(b) : std::move(a);
}

bool is_done(const Packed& packed, std::int64_t bound) {
    return packed.left_over.empty() && packed.cost == bound;
}

// Hands a watch on to one search after another. Once it has said stop it is asked no more.
class Stopping {
public:
    explicit Stopping(const Watch& watch) : watch_(watch) {}

    Searching ask(std::int64_t best, std::int64_t bound) {
        if (watch_ && !is_stopped_) is_stopped_ = watch_(best, bound) == Searching::stop;
        return is_stopped_ ? Searching::stop : Searching::on;
    }
    bool is_stopped() const { return is_stopped_; }

private:
    const Watch& watch_;
    bool is_stopped_ = false;
};

constexpr double sheets_to_search = 3;  // of the rounded patterns, left to the search

// A quick search first: where it comes to the quick bound, that is all. Then the slow bound, which may be what the quick search has found,
// and whose patterns are a beginning; then the quick search again, for longer. Where that is stopped it may come less far than before.
Packed find_sheets(const Packing& packing, const Effort& effort, std::int64_t& bound) {
    Stopping stopping(effort.watch);
    const Watch watch = [&](std::int64_t best, std::int64_t least) { return stopping.ask(best, least); };
    const auto is_end = [&](const Packed& found) { return stopping.is_stopped() || is_done(found, bound); };
    RepackGoal goal;
    goal.enough_cost = bound;
    Packed packed = repack(packing, goal, {effort.looks / 20, watch});
    if (is_end(packed)) return packed;
    std::int64_t looks = effort.looks - packed.looks;
    std::optional<Patterns> patterns = Patterns::of(packing);
    const std::int64_t cost = packing.stocks.front().cost;
    if (patterns && cost > 0) {
        const std::int64_t enough =
            packed.left_over.empty() ? packed.cost / cost : std::numeric_limits<std::int64_t>::max();
        const BoundWatch of_bound = [&](std::int64_t sheets) {
            return stopping.ask(packed.cost, std::max(bound, sheets * cost));
        };
        const std::int64_t sheets = patterns->least_sheets(enough, effort.looks / 5 * 3, of_bound);
        goal.enough_cost = bound = std::max(bound, sheets * cost);
        if (is_end(packed)) return packed;
        const std::vector<PackingTree> begun = patterns->round(effort.looks / 30, sheets_to_search, of_bound);
        if (stopping.is_stopped()) return packed;
        looks = std::max<std::int64_t>(0, looks - patterns->looks());
        Packed from_begun = repack(packing, goal, {std::min(looks, effort.looks / 4), watch}, begun);
        looks = std::min(looks - from_begun.looks, effort.looks / 3);
        packed = better_of(std::move(packed), std::move(from_begun));
        if (is_end(packed)) return packed;
    }
    Packed last = repack(packing, goal, {looks, watch});
    return better_of(std::move(packed), std::move(last));
}

constexpr std::int64_t looks_for_smaller = 20'000;  // of one sheet on one smaller kind

}  // namespace

tl::expected<SheetPlan, Refusal> plan_sheets(const SheetJob& job, const Effort& effort) {
    if (Fault fault = check_job(job)) return tl::unexpected(*fault);
    const Asked asked = ask(job);
    if (Fault fault = check_fit(job, asked.packing)) return tl::unexpected(*fault);
    SheetPlan plan;
    plan.is_in_money = asked.is_in_money;
    plan.least_cost = least_cost(asked.packing);
    Packed packed = find_sheets(asked.packing, effort, plan.least_cost);
    if (!packed.left_over.empty()) return tl::unexpected(left_over("sheets", packed.left_over.size()));
    take_smaller_stock(asked.packing, packed, looks_for_smaller);
    plan.cost = packed.cost;
    plan.proved = plan.cost == plan.least_cost;
    std::stable_sort(packed.sheets.begin(), packed.sheets.end(),
                     [](const Sheet& a, const Sheet& b) { return a.stock < b.stock; });
    for (const Sheet& sheet : packed.sheets) {
        const Length trim = job.sheets[sheet.stock].trim;
        plan.sheets.push_back(
            layout_of(sheet, asked.ways[sheet.stock][sheet.way],
                      {job.kerf.ticks(), trim.ticks(), job.least_offcut_length, job.least_offcut_width}));
    }
    plan.yield = yield_of(job, plan);
    return plan;
}

}  // namespace kw::cutting
