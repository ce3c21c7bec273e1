// Random jobs whose boards and sheets are broken down. What is held to it: wood is neither made nor lost, and what was told is not asked for again.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "checker/dice.h"
#include "checker/random_job.h"
#include "job/on_hand.h"
#include "session/session.h"

// The checker has names of its own that are the program's as well.
namespace kw {
namespace {

constexpr const char* now = "2026-03-04T05:06:07Z";

// In sheets or boards, some counted and some to be bought, with a trim or without.
Json with_sizes(Json job, checker::Dice& dice) {
    for (Json& stock : job["stock"]) {
        const bool in_sheets = dice.between(0, 1) == 1;
        Json sizes = Json::array();
        for (const int length_mm : {3100, 2450, 1400}) {
            Json size = {{"length", std::to_string(length_mm) + " mm"}};
            if (in_sheets) size["width"] = "1530 mm";
            if (length_mm != 3100 && dice.between(0, 1) == 1) size["count"] = dice.between(0, 3);
            if (length_mm == 1400) size["offcut"] = true;
            if (dice.between(0, 1) == 1) size["trim"] = "3 mm";
            sizes.push_back(std::move(size));
        }
        stock["sizes"] = std::move(sizes);
    }
    return job;
}

LayOut layout_of(const Session& session) {
    return lay_out(session.work->job, session.work->plan, session.work->standing);
}

std::vector<BrokenDown> all_of(const Session& session) {
    std::vector<BrokenDown> all;
    for (const LaidStock& laid : layout_of(session).stocks)
        if (!laid.cannot) all.push_back(broken_down_of(session.work->job, laid));
    return all;
}

std::map<std::string, int> counted(const Session& session) {
    std::map<std::string, int> all;
    for (const Stock& stock : session.work->job.stock)
        for (const StockSize& size : stock.sizes) all[stock.name] += size.count.value_or(0);
    return all;
}

double square_mm(Length a, Length b) { return a.mm() * b.mm(); }

// Of sheets: parts and offcuts lie in what was used, and a kerf lies between them.
void check_wood(const Job& job, const BrokenDown& down) {
    if (!is_in_sheets(*job.stock_named(down.stock))) return;
    double used = 0, made = 0;
    for (const UsedPieces& one : down.used) used += one.count * square_mm(one.length, *one.width);
    for (const FreedPart& part : down.freed) made += square_mm(part.length, part.width);
    for (const KeptOffcut& offcut : down.kept) made += square_mm(offcut.length, offcut.width);
    CHECK(made < used);
}

Session all_told(Session session) {
    for (const BrokenDown& down : all_of(session)) {
        const auto before = counted(session);
        check_wood(session.work->job, down);
        session = apply(session, MarkBrokenDown{down}, now);
        REQUIRE(session.refused == "");
        int from_hand = 0;
        for (const UsedPieces& one : down.used) from_hand += one.is_bought ? 0 : one.count;
        CHECK(counted(session).at(down.stock) == before.at(down.stock) - from_hand + int(down.kept.size()));
    }
    return session;
}

std::set<std::string> laid_parts(const Session& session) {
    std::set<std::string> parts;
    for (const BrokenDown& down : all_of(session))
        for (const FreedPart& part : down.freed) parts.insert(part.part);
    return parts;
}

}  // namespace

TEST_CASE(
    "once all stock is told broken down nothing is laid out, and taking it back lays it out as before") {
    std::size_t stocks = 0, kept = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        CAPTURE(seed);
        checker::Dice dice(seed);
        const Json job = with_sizes(parse_json(checker::random_job(seed).dump()).value(), dice);
        const Session begun = open_session(job);
        if (!begun.problems.empty()) continue;
        const std::vector<BrokenDown> before = all_of(begun);
        const LayOut first = layout_of(begun);
        if (std::any_of(first.stocks.begin(), first.stocks.end(),
                        [](const LaidStock& laid) { return laid.cannot.has_value(); }))
            continue;
        Session session = all_told(begun);
        const LayOut none = layout_of(session);
        CHECK(none.stocks.empty());
        CHECK(none.too_small.empty());
        CHECK(none.freed.size() == session.work->plan.parts.size());
        // A part that is spoilt then is laid out alone, whichever it is.
        const auto& parts = session.work->plan.parts;
        const std::string spoilt =
            parts[static_cast<std::size_t>(dice.between(0, std::int64_t(parts.size()) - 1))].id;
        const Session lost = apply(session, MarkLost{spoilt}, now);
        CHECK(laid_parts(lost) == std::set<std::string>{spoilt});
        CHECK(layout_of(all_told(lost)).stocks.empty());
        for (std::size_t i = 0; i < before.size(); ++i) session = apply(session, TakeBack{}, now);
        CHECK(all_of(session) == before);
        CHECK(counted(session) == counted(begun));
        stocks += before.size();
        for (const BrokenDown& down : before) kept += down.kept.size();
    }
    CHECK(stocks > 60);
    CHECK(kept > 20);
}

}  // namespace kw
