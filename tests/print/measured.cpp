// PDF pages as Poppler reads and rasterises them.

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>
#include <sstream>

#include "print/job_to_print.h"
#include "print/printed.h"
#include "print/sheet.h"
#include "print/svg.h"
#include "print/text_size.h"
#include "session/setup_said.h"

using namespace kw::print;
using printed::Pdf;

namespace {

constexpr int dpi = 600;
constexpr double mm_per_dot = 25.4 / dpi;

struct Run {
    int from = 0, to = 0, row = 0;
    double mm() const { return (to - from) * mm_per_dot; }
};

// The longest dark runs of the rows between two heights, at the left margin.
std::vector<Run> long_runs(const Pdf::Raster& page, double top_mm, double bottom_mm, double least_mm) {
    std::vector<Run> runs;
    for (int y = static_cast<int>(top_mm / mm_per_dot); y < static_cast<int>(bottom_mm / mm_per_dot); ++y)
        for (int x = 0; x < page.width;) {
            if (page.at(x, y) > 127) {
                ++x;
                continue;
            }
            const int from = x;
            while (x < page.width && page.at(x, y) <= 127) ++x;
            if ((x - from) * mm_per_dot >= least_mm) runs.push_back({from, x, y});
        }
    return runs;
}

std::shared_ptr<const kw::Work> demo(kw::Language language = kw::Language::english) {
    const auto work = to_print::work_of(kw::tests::demo_json(), language);
    REQUIRE(work);
    return work;
}

std::size_t count_of(const std::string& text, const std::string& what) {
    std::size_t count = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
    return count;
}

}  // namespace

// ISO 216: A4 is 210 by 297 mm. ANSI: Letter is 8.5 by 11 in. A PDF point is 1/72 in (ISO 32000-1, 8.3.2.3).
TEST_CASE("pages have the paper's size") {
    const auto work = demo();
    const std::regex said(R"(Page size: +([0-9.]+) x ([0-9.]+) pts)");
    for (const auto& [paper, wide_mm, high_mm] :
         {std::tuple{Paper::a4, 210.0, 297.0}, std::tuple{Paper::letter, 215.9, 279.4}}) {
        const std::string info = Pdf(part_labels(*work, paper)).info();
        std::smatch size;
        REQUIRE(std::regex_search(info, size, said));
        CHECK(std::abs(std::stod(size[1]) * 25.4 / 72 - wide_mm) < 0.01);
        CHECK(std::abs(std::stod(size[2]) * 25.4 / 72 - high_mm) < 0.01);
        CHECK(info.find("Date") == std::string::npos);
    }
}

TEST_CASE("the check ruler is 100 mm and 4 in long on every kind of page and on both papers") {
    const auto work = demo();
    for (const Paper paper : {Paper::a4, Paper::letter})
        for (const auto& pages : to_print::all_pages(*work, paper)) {
            const Area inside = inside_margins(paper), body = body_of(paper);
            const Pdf::Raster page = Pdf({pages.front()}).raster(1, dpi);
            const auto runs = long_runs(page, body.bottom_mm, inside.bottom_mm - 5.5, 80);
            std::set<int> millimetres, inches;  // rows
            for (const Run& run : runs) {
                CAPTURE(run.mm());
                const bool is_mm = std::abs(run.mm() - 100) < 0.2,
                           is_inches = std::abs(run.mm() - 101.6) < 0.2;
                CHECK((is_mm || is_inches));
                (is_mm ? millimetres : inches).insert(run.row);
            }
            CHECK_FALSE(millimetres.empty());
            CHECK_FALSE(inches.empty());
        }
}

TEST_CASE("there are ticks every 10 mm and every quarter of an inch") {
    const auto pages = part_list(*demo(), Paper::a4);
    const Pdf::Raster page = Pdf({pages.front()}).raster(1, dpi);
    const Area inside = inside_margins(Paper::a4), body = body_of(Paper::a4);
    const auto runs = long_runs(page, body.bottom_mm, inside.bottom_mm - 5.5, 80);
    REQUIRE(runs.size() >= 2);
    const auto ticks = [&](int row, const Run& ruler, double step_mm, int count) {
        for (int i = 0; i <= count; ++i) {
            const double line_mm = 0.12;
            const int x =
                ruler.from + static_cast<int>(std::lround((i * step_mm + line_mm / 2) / mm_per_dot));
            bool dark = false;
            for (int near = -2; near <= 2; ++near)
                dark = dark || (x + near >= 0 && page.at(x + near, row) <= 127);
            CAPTURE(i);
            CHECK(dark);
        }
    };
    const int away = static_cast<int>(1.2 / mm_per_dot);
    ticks(runs.front().row - away, runs.front(), 10, 10);
    ticks(runs.back().row + away, runs.back(), 25.4 / 4, 16);
}

TEST_CASE("ink stays within the margins of every page") {
    const auto work = demo(kw::Language::german);
    for (const auto& pages : to_print::all_pages(*work, Paper::a4)) {
        const Pdf pdf(pages);
        for (std::size_t i = 0; i < pages.size(); i += 5) {
            constexpr int rough = 100;
            const Pdf::Raster page = pdf.raster(static_cast<int>(i) + 1, rough);
            const int margin = static_cast<int>(margin_mm * rough / 25.4) - 1;
            int outside = 0;
            for (int y = 0; y < page.height; ++y)
                for (int x = 0; x < page.width; ++x)
                    if ((x < margin || y < margin || x >= page.width - margin || y >= page.height - margin) &&
                        page.at(x, y) < 250)
                        ++outside;
            CHECK(outside == 0);
        }
    }
}

TEST_CASE("fonts are embedded, with the letters that they stand for") {
    const std::string fonts = Pdf(setup_cards(*demo(), Paper::a4)).fonts_in();
    CAPTURE(fonts);
    CHECK(fonts.find("Inter-Regular") != std::string::npos);
    CHECK(fonts.find("Inter-SemiBold") != std::string::npos);
    std::istringstream lines(fonts);
    std::string line;
    std::getline(lines, line);
    std::getline(lines, line);
    while (std::getline(lines, line)) CHECK(line.find("yes yes yes") != std::string::npos);
}

// Poppler measures words by the widths in the embedded fonts: the table by which pages are laid out is the font's own.
TEST_CASE("words are as wide in the font as they were laid out for") {
    Page page{Paper::a4, "words", {}};
    const std::vector<std::string> texts{"Werkzeugschubladen", "Schl\u00fcssel\u00f6ffnung", "dado,",
                                         "0123456789", "WMfi@%"};
    std::vector<TextStyle> styles{{5, false}, {5, true}};
    double y = 30;
    std::vector<double> widths;
    for (const TextStyle& style : styles)
        for (const std::string& text : texts) {
            page.items.emplace_back(Text{{20, y}, text, style});
            widths.push_back(text_width_mm(text, style));
            y += 10;
        }
    const std::string boxes = Pdf({page}).boxes();
    const std::regex word(R"re(xMin="([0-9.]+)" yMin="[0-9.]+" xMax="([0-9.]+)")re");
    std::vector<double> found;
    for (std::sregex_iterator at(boxes.begin(), boxes.end(), word), end; at != end; ++at)
        found.push_back((std::stod((*at)[2]) - std::stod((*at)[1])) * 25.4 / 72);
    REQUIRE(found.size() == widths.size());
    for (std::size_t i = 0; i < widths.size(); ++i)
        CHECK(found[i] == doctest::Approx(widths[i]).epsilon(0.004));
}

TEST_CASE("each card's text holds the numbers that its setup is set to") {
    for (const kw::Language language : {kw::Language::english, kw::Language::german}) {
        const auto work = demo(language);
        const kw::Words& words = work->job.locale.words();
        const auto pages = setup_cards(*work, Paper::letter);
        const Pdf pdf(pages);
        std::vector<std::string> texts;
        for (std::size_t i = 0; i < pages.size(); ++i) texts.push_back(pdf.text(static_cast<int>(i) + 1));
        for (std::size_t step = 0; step < work->plan.sequence.size(); ++step) {
            const kw::Setup& setup = *kw::setup_of_step(work->plan, work->plan.sequence[step]);
            CAPTURE(setup.id);
            const std::string title = words("print.step_of", step + 1, work->plan.sequence.size());
            const auto card = std::find_if(texts.begin(), texts.end(), [&](const std::string& text) {
                return (text + "\n").find(title + "\n") != std::string::npos;
            });
            REQUIRE(card != texts.end());
            CAPTURE(*card);
            // With nothing learned the scales show the plan's numbers.
            std::vector<kw::Length> numbers{setup.fence};
            if (setup.height) numbers.push_back(*setup.height);
            if (setup.spacer > kw::Length{}) numbers.push_back(setup.spacer);
            for (const kw::Length length : numbers) {
                const std::string value = kw::without_mark(kw::show(length, work->job.locale));
                CAPTURE(value);
                CHECK(card->find(value) != std::string::npos);
            }
        }
    }
}

TEST_CASE("the same work gives the same bytes, as PDF and as SVG") {
    const auto once = setup_cards(*demo(), Paper::a4), again = setup_cards(*demo(), Paper::a4);
    CHECK(write_svg(once) == write_svg(again));
    const auto first = write_pdf(once, printed::fonts()), second = write_pdf(again, printed::fonts());
    REQUIRE(first);
    REQUIRE(second);
    CHECK(*first == *second);
    CHECK(count_of(*first, "CreationDate") == 0);
}

TEST_CASE("without a font that can be read no PDF is written, and it is said what would do") {
    const auto pdf = write_pdf(part_list(*demo(), Paper::a4), {"no font", ""});
    REQUIRE_FALSE(pdf);
    CHECK(pdf.error().text({}) ==
          "the fonts to print with can't be read: install the program's own (fonts/Inter-Regular.otf, "
          "fonts/Inter-SemiBold.otf), or write .svg");
}
