// Templates for handles: true to size, one for all faces whose holes lie alike.
#include <doctest/doctest.h>

#include "bank_job.h"
#include "draw/handle_template.h"
#include "print/slide_templates.h"
#include "session/session.h"

namespace handles_on_paper {

using namespace kw;

TEST_CASE("a template's crosses are as far apart as the handle's screws, and as far below the edge") {
    const draw::Drawing drawing =
        draw::handle_template({2, Length::millimetres(96), Length::millimetres(40)}, Graduation::mm_0_1);
    std::vector<double> upright;  // the crosses' upright strokes
    for (const draw::Shape& shape : drawing.shapes)
        if (const auto* line = std::get_if<draw::Line>(&shape); line && line->points.size() == 2)
            if (line->points[0].x_mm == line->points[1].x_mm && line->stroke == draw::Stroke::outline) {
                upright.push_back(line->points[0].x_mm);
                CHECK(0.5 * (line->points[0].y_mm + line->points[1].y_mm) == doctest::Approx(-40));
            }
    REQUIRE(upright.size() == 2);
    CHECK(upright[1] - upright[0] == doctest::Approx(96));
    CHECK(upright[0] + upright[1] == doctest::Approx(0));
}

TEST_CASE("faces of one height have one template between them, others their own") {
    Json job = tests::bank_job(Json{{"left", "1/2"}, {"right", "1/2"}, {"top", "1/2"}, {"bottom", "1/2"}});
    const auto pages = [&] {
        const Session session = open_session(job);
        REQUIRE(session.problems.empty());
        return print::slide_templates(*session.work, print::Paper::a4).size();
    };
    const std::size_t slides = pages();
    job["banks"][0]["handles"] = {{"centres", "96 mm"}};
    CHECK(pages() == slides + 1);
    job["banks"][0]["heights"] = "given";
    job["banks"][0]["face_heights"] = {"6", "6", nullptr};
    const std::size_t two_heights = pages();
    job["banks"][0].erase("handles");
    CHECK(two_heights == pages() + 2);
}

}  // namespace handles_on_paper
