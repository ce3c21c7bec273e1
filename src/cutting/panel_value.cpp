#include "cutting/panel_value.h"

#include <algorithm>

#include "cutting/builds.h"
#include "cutting/checks.h"
#include "cutting/repack.h"
#include "cutting/sheet_layout.h"

namespace kw::cutting {
namespace {

constexpr std::size_t most_points = 2000;  // of a side: more cut points make no bound
constexpr double most_steps = 4e8;         // of the recursion over all cuts

Fault check_value(const std::string& field, std::int64_t value) {
    constexpr std::int64_t dearest = 1'000'000'000'000;  // sums stay within 64 bits
    if (value >= 0 && value <= dearest) return std::nullopt;
    return Refusal{field, Message::say("cutting.no_price"), Message::say("cutting.give_price")};
}

Fault check_panel(const PanelJob& job) {
    if (Fault fault = check_size("length", job.length)) return fault;
    if (Fault fault = check_size("width", job.width)) return fault;
    if (Fault fault = check_not_negative("kerf", job.kerf)) return fault;
    std::int64_t in_all = 0;
    for (std::size_t p = 0; p < job.pieces.size(); ++p) {
        const PanelPiece& piece = job.pieces[p];
        in_all += piece.count;
        if (Fault fault = check_size(field_of("pieces", p, "length"), piece.length)) return fault;
        if (Fault fault = check_size(field_of("pieces", p, "width"), piece.width)) return fault;
        if (Fault fault = check_count(field_of("pieces", p, "count"), piece.count, in_all)) return fault;
        if (Fault fault = check_value(field_of("pieces", p, "value"), piece.value)) return fault;
    }
    return std::nullopt;
}

struct AskedPanel {
    Packing packing;
    std::vector<std::size_t> kinds;  // by piece of the packing: its index in the job
};

AskedPanel ask_panel(const PanelJob& job) {
    AskedPanel asked;
    const Region all{(job.length + job.kerf).ticks(), (job.width + job.kerf).ticks()};
    asked.packing.stocks.push_back({all, {{all}}, 0, 1});
    for (std::size_t p = 0; p < job.pieces.size(); ++p) {
        const PanelPiece& kind = job.pieces[p];
        const Piece piece{(kind.length + job.kerf).ticks(), (kind.width + job.kerf).ticks(), kind.count,
                          kind.may_turn, kind.value};
        if (piece.value == 0 || !piece.fits(all.length, all.width)) continue;
        asked.packing.pieces.push_back(piece);
        asked.kinds.push_back(p);
    }
    return asked;
}

struct FoundPanel {
    Sheet sheet;
    std::int64_t value = 0;
    std::int64_t most_value = 0;
};

std::optional<PanelBound> bound_of(const Packing& panel) {
    const Region& all = panel.stocks.front().outer;
    std::vector<Ticks> xs = cut_points(panel.pieces, all.length, true, most_points);
    std::vector<Ticks> ys = cut_points(panel.pieces, all.width, false, most_points);
    const auto x = static_cast<double>(xs.size());
    const auto y = static_cast<double>(ys.size());
    if (xs.empty() || ys.empty() || x * y * (x + y) > most_steps) return std::nullopt;
    return PanelBound(panel, std::move(xs), std::move(ys));
}

// An eighth of the effort for a good layout, the rest for a better one or the proof that there is none.
FoundPanel find_panel(const Packing& panel, const Effort& effort) {
    const Region& all = panel.stocks.front().outer;
    std::int64_t total = 0;
    for (const Piece& piece : panel.pieces) total += piece.count * piece.value;
    FoundPanel found;
    found.most_value = AreaBound(panel).of(static_cast<double>(all.length) * static_cast<double>(all.width),
                                           std::vector<int>(panel.pieces.size(), 0));
    const std::optional<PanelBound> bound = bound_of(panel);
    if (bound) found.most_value = std::min(found.most_value, bound->within(all.length, all.width));
    RepackGoal goal;
    goal.must_place_all = false;
    goal.enough_lost = total - found.most_value;
    Watch watch;
    if (effort.watch)  // the search counts what stays out
        watch = [&](std::int64_t lost, std::int64_t least) {
            return effort.watch(total - lost, total - least);
        };
    Packed packed = repack(panel, goal, {effort.looks / 8, watch});
    found.value = total - packed.lost;
    found.sheet =
        packed.sheets.empty() ? Sheet{0, 0, {PackingTree(all)}, true} : std::move(packed.sheets.front());
    if (!bound || found.value == found.most_value) return found;
    BuiltPanel built = build_panel(panel, *bound, found.value, {effort.looks - packed.looks, effort.watch});
    found.most_value = std::min(found.most_value, built.most_value);
    if (built.tree) {
        found.sheet.regions = {std::move(*built.tree)};
        found.value = built.value;
    }
    return found;
}

}  // namespace

tl::expected<PanelPlan, Refusal> most_valuable(const PanelJob& job, const Effort& effort) {
    if (Fault fault = check_panel(job)) return tl::unexpected(*fault);
    const AskedPanel asked = ask_panel(job);
    const FoundPanel found = find_panel(asked.packing, effort);
    const Region& all = asked.packing.stocks.front().outer;
    PanelPlan plan;
    plan.value = found.value;
    plan.most_value = found.most_value;
    plan.proved = plan.value == plan.most_value;
    const std::vector<SoundWay> ways = sound_ways(all, {}, job.kerf.ticks());
    plan.layout = layout_of(found.sheet, ways.front(), {job.kerf.ticks(), 0, {}, {}});
    for (PlacedPiece& placed : plan.layout.pieces) placed.piece = asked.kinds[placed.piece];
    for (CutNode& node : plan.layout.cuts)
        if (node.use == CutUse::piece) node.piece = asked.kinds[node.piece];
    return plan;
}

}  // namespace kw::cutting
