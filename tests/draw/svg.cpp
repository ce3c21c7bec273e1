#include "draw/svg.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>

#include "draw/section_sample.h"
#include "text_in.h"

using namespace kw::draw;

namespace {

int count(const std::string& text, const std::string& part) {
    int n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

}  // namespace

// The picture in the golden file was looked at: hatches, dimensions and words are where they belong. After a change on
// purpose, look again and write it anew with KW_ACCEPT=1.
TEST_CASE("the sample section is drawn as in the golden file, byte for byte") {
    const std::string golden = std::string(KW_TEST_DIR) + "/golden/section_sample.svg";
    const std::string svg = to_svg(section_sample(), {.width_px = 900, .height_px = 520});
    if (std::getenv("KW_ACCEPT")) std::ofstream(golden, std::ios::binary) << svg;
    CHECK(svg == kw::tests::text_in(golden));
}

TEST_CASE("equal hatches share one pattern, and each material of a drawing has its own") {
    const std::string svg = to_svg(section_sample());
    CHECK(count(svg, "<pattern ") == count(svg, "</pattern>"));
    Drawing two;
    for (const double x : {0.0, 30.0})
        two.shapes.push_back(Fill{{rectangle({x, 0, x + 20, 20})}, Material::end_grain});
    CHECK(count(to_svg(two), "<pattern ") == 1);
    std::get<Fill>(two.shapes[1]).mirrored = true;
    CHECK(count(to_svg(two), "<pattern ") == 2);
}

TEST_CASE("words with signs of markup stay words") {
    Drawing drawing;
    drawing.title = "front & <back>";
    drawing.shapes.push_back(Label{{0, 0}, "a \"b\" < c & d"});
    const std::string svg = to_svg(drawing);
    CHECK(svg.find("<title>front &amp; &lt;back&gt;</title>") != std::string::npos);
    CHECK(svg.find("a &quot;b&quot; &lt; c &amp; d") != std::string::npos);
}

TEST_CASE("a given scale is kept") {
    Drawing drawing;
    drawing.shapes.push_back(Fill{{rectangle({0, 0, 10, 10})}, Material::cutter});
    const std::string svg = to_svg(drawing, {.width_px = 400, .height_px = 300, .px_per_mm = 4});
    CHECK(svg.find("M180,170L220,170L220,130L180,130Z") != std::string::npos);
}
