// Zoomed in, the words of a picture keep to what can be seen of it.

#include <doctest/doctest.h>

#include <algorithm>

#include "draw/layout.h"
#include "draw/random_views.h"
#include "draw/setup_view.h"
#include "draw/svg.h"

using namespace kw::draw;

namespace {

constexpr double width = 700, height = 420;

View zoomed(const Drawing& drawing, double zoom) {
    View view = fitted(drawing, width, height, 1, paper_text_width);
    const Box part = *drawing.close_up;
    view.px_per_mm *= zoom;
    view.origin = {width / 2 - view.px_per_mm * (part.left_mm + part.right_mm) / 2,
                   height / 2 + view.px_per_mm * (part.bottom_mm + part.top_mm) / 2};
    view.sheet = PixelBox{0, 0, width, height};
    return view;
}

bool on_sheet(const PixelBox& box) {
    return box.left >= -1e-6 && box.top >= -1e-6 && box.right <= width + 1e-6 && box.bottom <= height + 1e-6;
}

bool says(const Annotations& annotations, const std::string& word) {
    return std::any_of(annotations.texts.begin(), annotations.texts.end(),
                       [&](const PlacedText& text) { return text.text.rfind(word + " ", 0) == 0; });
}

}  // namespace

TEST_CASE("at the close-up every size that can be seen is written on the sheet") {
    random_views::for_joint_and_jig_setups([](const kw::Work& work, const kw::Setup& setup) {
        const Drawing drawing = setup_view(work, setup);
        REQUIRE(drawing.close_up);
        const Annotations near = annotate(drawing, zoomed(drawing, 2.5), paper_text_width);
        for (const char* word : {"height", setup.index ? "pin" : "kerf"}) CHECK(says(near, word));
        for (const PlacedText& text : near.texts) {
            const bool is_size = text.text.rfind("height ", 0) == 0 || text.text.rfind("kerf ", 0) == 0;
            CAPTURE(text.text);
            if (is_size) CHECK(on_sheet(text.box));
        }
    });
}

TEST_CASE("what is out of sight is not spoken of") {
    random_views::for_joint_and_jig_setups([](const kw::Work& work, const kw::Setup& setup) {
        const Drawing drawing = setup_view(work, setup);
        View view = zoomed(drawing, 3);
        view.origin.x += 40 * width;
        view.origin.y += 40 * height;
        CHECK(annotate(drawing, view, paper_text_width).texts.empty());
    });
}

TEST_CASE("words are no larger and no smaller when the picture is") {
    random_views::for_joint_and_jig_setups([](const kw::Work& work, const kw::Setup& setup) {
        const Drawing drawing = setup_view(work, setup);
        const View view = zoomed(drawing, 1);
        for (const double zoom : {1.0, 2.0, 9.0})
            for (const PlacedText& text : annotate(drawing, zoomed(drawing, zoom), paper_text_width).texts)
                CHECK((text.size_px == doctest::Approx(20 * view.pixel_ratio) ||
                       text.size_px == doctest::Approx(26 * view.pixel_ratio)));
    });
}
