// A page of each kind, kept as SVG to be looked at. KW_ACCEPT=1 in the environment writes them anew.

#include "draw/golden.h"
#include "draw/view_job.h"
#include "print/job_to_print.h"
#include "print/svg.h"

using namespace kw::print;

namespace {

bool is_kept_page(const std::string& name, const Page& page) {
    const std::string svg = write_svg({page});
    const char* accept = std::getenv("KW_ACCEPT");
    if (accept && std::string(accept) == "1") std::ofstream(golden::path_of(name), std::ios::binary) << svg;
    return svg == golden::kept(name);
}

}  // namespace

TEST_CASE("a page of each kind is as it was when it was looked at") {
    const auto inches = view_job::work(view_job::Wanted{});
    view_job::Wanted wanted = view_job::metric();
    wanted.language = kw::Language::german;
    const auto metric = view_job::work(wanted);
    const auto cards = setup_cards(*inches, Paper::letter), german = setup_cards(*metric, Paper::a4);
    REQUIRE(cards.size() > 3);
    CHECK(is_kept_page("print_inch_two_cards", cards.front()));
    CHECK(is_kept_page("print_inch_card_with_test", cards[3]));
    CHECK(is_kept_page("print_metric_german_card", german.back()));
    CHECK(is_kept_page("print_inch_labels", part_labels(*inches, Paper::letter).front()));
    CHECK(is_kept_page("print_metric_german_parts", part_list(*metric, Paper::a4).front()));
}

TEST_CASE("pages of one SVG lie under each other, each at its true size") {
    const auto work = view_job::work(view_job::Wanted{});
    const auto pages = setup_cards(*work, Paper::a4);
    const std::string svg = write_svg(pages);
    CHECK(svg.find("width=\"210mm\" height=\"" + std::to_string(297 * pages.size()) + "mm\"") !=
          std::string::npos);
    CHECK(svg.find("<g id=\"page2\" transform=\"translate(0 297)\">") != std::string::npos);
}
