// What is said of the breaking-down of boards and sheets.
#include "session/say_breaking.h"

#include <doctest/doctest.h>

using namespace kw;

namespace {

Job in_language(Language language) {
    Job job;
    job.locale.language = language;
    return job;
}

// Two sheets alike, each ripped into two strips, of which the lower is crosscut in two: as a maker would write it down.
LaidStock two_sheets_alike() {
    LaidStock laid;
    laid.stock = "birch";
    const auto place = [](const char* part) {
        return LaidPart{part, {{}, {}, Length::inches(20), Length::inches(4)}, false};
    };
    for (const char* part : {"a", "b"}) {
        const std::string id = part;
        LaidPiece piece{0, {place((id + ".1").c_str()), place((id + ".2").c_str())}, {}, {}};
        LaidCut rip{{cutting::CutDirection::rip, Length::inches(4), {}}, {}, {0, 1}, {}};
        LaidCut across{{cutting::CutDirection::crosscut, Length::inches(20), {}}, {0, 1}, {}, {}};
        across.after = 0;
        piece.cuts = {rip, across};
        laid.pieces.push_back(piece);
    }
    laid.settings = {{cutting::CutDirection::rip, Length::inches(4), {{0, 0}, {1, 0}}},
                     {cutting::CutDirection::crosscut, Length::inches(20), {{0, 1}, {1, 1}}}};
    laid.least_settings = 2;
    return laid;
}

Job with_birch(Language language, Length trim = {}) {
    Job job = in_language(language);
    Stock stock;
    stock.name = "birch";
    StockSize size;
    size.length = Length::inches(48);
    size.width = Length::inches(24);
    size.trim = trim;
    stock.sizes = {size};
    job.stock = {stock};
    return job;
}

BreakingDown broken_down(const Job& job) {
    LayOut layout;
    layout.stocks.push_back(two_sheets_alike());
    return breaking_down(job, {}, layout);
}

}  // namespace

TEST_CASE("two sheets cut alike take two settings and four cuts: 2 × 60 s and 4 × 40 s") {
    const Job job = with_birch(Language::english);
    const BreakingDown down = broken_down(job);
    CHECK(down.all == BreakingCount{2, 2, 4, 0, 280, 280});
    CHECK(say_breaking(job, down.all) ==
          "4 cuts at 2 settings of fence and stop, about 5 min; no order of these cuts has fewer settings");
    const Job trimmed = with_birch(Language::english, Length::inches(1, 8));
    CHECK(broken_down(trimmed).all == BreakingCount{2, 2, 4, 8, 600, 600});
    CHECK(say_breaking(trimmed, broken_down(trimmed).all) ==
          "4 cuts and 8 that trim at 2 settings of fence and stop, about 10 min; no order of these cuts has "
          "fewer settings");
}

TEST_CASE("each setting says which cuts are made at it, and what comes of them") {
    const Job job = with_birch(Language::english);
    const BreakingStock stock = broken_down(job).stocks.front();
    REQUIRE(stock.settings.size() == 2);
    const auto said = [&](const Job& in, std::size_t i) {
        return say_setting(in, stock.settings[i], stock.settings[i].frees);
    };
    CHECK(said(job, 0) == "rip, fence 4 in: 2 cuts (1.1, 2.1); strips for 4 parts");
    CHECK(said(job, 1) == "crosscut, stop 20 in: 2 cuts (1.2, 2.2); frees a.1, a.2, b.1 and b.2");
    const Job german = with_birch(Language::german);
    CHECK(said(german, 0) == "längs, Parallelanschlag 4 Zoll: 2 Schnitte (1.1, 2.1); Streifen für 4 Teile");
    CHECK(said(german, 1) ==
          "quer, Endanschlag 20 Zoll: 2 Schnitte (1.2, 2.2); ergibt a.1, a.2, b.1 und b.2");
}

TEST_CASE("where it is not proved that no order sets the fence less often, the least is told") {
    const Job job = with_birch(Language::english);
    CHECK(say_breaking(job, {3, 2, 4, 0, 340, 280}) ==
          "4 cuts at 3 settings of fence and stop, about 6 min; no order of these cuts has fewer settings "
          "than 2");
    CHECK(say_breaking(in_language(Language::german), {1, 1, 1, 1, 140, 140}) ==
          "1 Schnitt und 1 Besäumschnitt bei 1 Einstellung von Parallel- und Endanschlag, etwa 2 min; keine "
          "Reihenfolge dieser Schnitte braucht weniger Einstellungen");
}

TEST_CASE("how much larger parts are cut out is told by length and by width") {
    Job job = with_birch(Language::english);
    const auto said = [&] { return say_sizes_cut(job, {}, broken_down(job), {}); };
    using Lines = std::vector<std::string>;
    CHECK(said() == Lines{"parts are cut out 1/2 in longer and 1/8 in wider than finished: the setups bring "
                          "them to size"});
    job.cutting.over_length = {};
    CHECK(said() == Lines{"parts are cut out 1/8 in wider than finished, and to their finished length"});
    job.cutting.over_width = {};
    CHECK(said().empty());
    CHECK(say_sizes_cut(job, {}, {}, {}).empty());
}
