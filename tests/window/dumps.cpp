// What stands where on every screen, as text: golden files that are looked at when they change (./dev accept writes them anew).
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "effort.h"
#include "text_in.h"
#include "window/every_page.h"
#include "window/maker.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

void show(Maker& maker, const Page& page, const std::string& step) {
    maker.app().state() = state_at(page, step);
    maker.redraw();
    if (page.job_tab != JobTab::layout) return;
    maker.app().finish(maker.hand().ui());  // parts are laid out aside
    maker.redraw();
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

}  // namespace

// Another compiler rounds a place to the next pixel.
TEST_CASE("every screen says what it said, where it said it, in each size" *
          doctest::skip(tests::is_sanitized)) {
    for (const auto& [width, height] : {std::pair{1280, 800}, {800, 1280}, {1024, 600}}) {
        Maker maker(one_drawer, width, height);
        const std::string step = tested_step(maker.work());
        std::string all;
        for (const Page& page : every_page) {
            show(maker, page, step);
            all += std::string("== ") + page.name + "\n" + dump(maker.hand().log()) + "\n";
        }
        const std::string name = "screens_" + std::to_string(width) + "x" + std::to_string(height) + ".txt";
        const fs::path golden = fs::path(KW_TEST_DIR) / "golden" / name;
        if (std::getenv("KW_ACCEPT")) std::ofstream(golden, std::ios::binary) << all;
        INFO(name);
        const auto is = lines_of(all), was = lines_of(tests::text_in(golden));
        std::string page;
        for (std::size_t line = 0; line < std::min(is.size(), was.size()); ++line) {
            if (is[line].rfind("== ", 0) == 0) page = is[line];
            CAPTURE(page);
            REQUIRE(is[line] == was[line]);
        }
        CHECK(is.size() == was.size());
        CHECK(all.size() > 20'000);
    }
}

}  // namespace kw::window
