// The card that comes before the setups'.
#include <algorithm>

#include "job/breaking_down.h"
#include "print/job_to_print.h"
#include "session/say_breaking.h"
#include "session/setup_said.h"

using namespace kw::print;

namespace {

// Tick boxes on the page: squares of about 3 mm.
std::size_t boxes_on(const Page& page) {
    std::size_t boxes = 0;
    for (const Item& item : page.items) {
        const auto* path = std::get_if<Path>(&item);
        if (path && path->closed && path->points[1].x_mm - path->points[0].x_mm < 3.5) ++boxes;
    }
    return boxes;
}

// Each text with a space behind it, since a line is broken at one.
std::string words_on(const Page& page) {
    std::string all;
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<Text>(&item)) all += text->text + " ";
    return all;
}

bool is_about_breaking(const Page& page) {
    return words_on(page).find("fence and stop") != std::string::npos;
}

}  // namespace

TEST_CASE("the first card has a box for each setting of fence and stop, and what each of them frees") {
    const auto work = to_print::work_of(to_print::with_sizes(kw::tests::demo_json()));
    REQUIRE(work);
    const kw::LayOut layout = kw::lay_out(work->job, work->plan, work->standing, to_print::quick());
    const kw::BreakingDown down = kw::breaking_down(work->job, work->plan, layout);
    const auto with = setup_cards(*work, Paper::a4, {}, layout), without = setup_cards(*work, Paper::a4);
    REQUIRE(with.size() > without.size());
    const std::size_t first = with.size() - without.size();
    std::string words;
    std::size_t boxes = 0;
    for (std::size_t i = 0; i < first; ++i) {
        words += words_on(with[i]);
        boxes += boxes_on(with[i]);
    }
    CHECK(is_about_breaking(with.front()));
    CHECK(boxes == down.all.settings);
    std::size_t freed = 0;
    for (const kw::BreakingStock& stock : down.stocks)
        for (const kw::BreakingSetting& setting : stock.settings) {
            CHECK(words.find(kw::capital(kw::say_setting(work->job, setting))) != std::string::npos);
            freed += setting.frees.size();
        }
    CHECK(freed == work->plan.parts.size());
    std::size_t dots = 0, places = 0;
    for (std::size_t at = words.find("\u00b7"); at != std::string::npos; at = words.find("\u00b7", at + 1))
        ++dots;
    for (const kw::BreakingStock& stock : down.stocks)
        for (const kw::BreakingSetting& setting : stock.settings)
            places += setting.frees.empty() ? 0 : setting.frees.size() - 1;
    CHECK(dots == places);
}

TEST_CASE("without sizes of boards and sheets the cards begin with the first setup") {
    const auto work = to_print::work_of(kw::tests::demo_json());
    REQUIRE(work);
    const kw::LayOut layout = kw::lay_out(work->job, work->plan, work->standing, to_print::quick());
    const auto cards = setup_cards(*work, Paper::a4, {}, layout);
    CHECK(cards.size() == setup_cards(*work, Paper::a4).size());
    CHECK_FALSE(is_about_breaking(cards.front()));
}

TEST_CASE(
    "a stock that can't be laid out is named on the card, with what would do, also where there is no other") {
    for (const bool all : {false, true}) {
        kw::Json job = to_print::with_sizes(kw::tests::demo_json());
        for (std::size_t i = 0; i < (all ? job["stock"].size() : 1); ++i)
            job["stock"][i]["sizes"] = {{{"length", "6 in"}, {"width", "5 in"}}};
        const auto work = to_print::work_of(job);
        REQUIRE(work);
        const kw::LayOut layout = kw::lay_out(work->job, work->plan, work->standing, to_print::quick());
        const auto cards = setup_cards(*work, Paper::a4, {}, layout);
        REQUIRE(cards.size() > setup_cards(*work, Paper::a4).size());
        std::string words;
        for (std::size_t i = 0; i < cards.size() - setup_cards(*work, Paper::a4).size(); ++i)
            words += words_on(cards[i]);
        std::size_t refused = 0;
        for (const kw::LaidStock& laid : layout.stocks) {
            if (!laid.cannot) continue;
            ++refused;
            CHECK(words.find(kw::capital(laid.stock + ": " + laid.cannot->why.text(work->job.locale))) !=
                  std::string::npos);
            CHECK(words.find(laid.cannot->remedy.text(work->job.locale)) != std::string::npos);
        }
        CHECK(refused == (all ? layout.stocks.size() : 1));
    }
}

TEST_CASE("four hundred parts from one setting go on over as many pages as they take") {
    const auto work = to_print::work_of(to_print::with_sizes(kw::tests::demo_json()));
    REQUIRE(work);
    kw::LaidStock laid;
    laid.stock = work->job.stock.front().name;
    laid.settings.push_back({kw::cutting::CutDirection::crosscut, kw::Length::inches(20), {}});
    laid.least_settings = 1;
    kw::LaidPiece piece{0, {}, {}, {}};
    for (std::size_t i = 0; i < 400; ++i) {
        piece.parts.push_back({work->plan.parts[i % work->plan.parts.size()].id, {}, false});
        piece.cuts.push_back(
            {{kw::cutting::CutDirection::crosscut, kw::Length::inches(20), {}}, {i}, {}, {}});
        laid.settings.front().cuts.push_back({0, i});
    }
    laid.pieces.push_back(std::move(piece));
    kw::LayOut layout;
    layout.stocks.push_back(std::move(laid));
    const auto cards = setup_cards(*work, Paper::letter, {}, layout);
    std::size_t named = 0;
    for (std::size_t i = 0; i + setup_cards(*work, Paper::letter).size() < cards.size(); ++i) {
        const std::string words = words_on(cards[i]);
        for (std::size_t at = words.find("side"); at != std::string::npos; at = words.find("side", at + 1))
            ++named;
    }
    std::size_t sides = 0;
    for (std::size_t i = 0; i < 400; ++i)
        sides += work->plan.parts[i % work->plan.parts.size()].id.find("side") != std::string::npos ? 1u : 0u;
    CHECK(named == sides);
}
