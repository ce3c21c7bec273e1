// Where slides are screwed on (common practice, no source; the slide maker's sheet wins).
#include "drawer/slide_place.h"

#include <doctest/doctest.h>

using namespace kw;

TEST_CASE("the middles of slide and box side meet: above the floor by the clearance beneath the box more") {
    const BoxSize box{Length::inches(13), Length::inches(4), Length::inches(18)};
    const Slide slide = usual_slide(SlideKind::side_mount);
    const SlidePlace place = slide_place(slide, box, {});
    CHECK(*place.above_edge == Length::inches(2));
    CHECK(place.above_floor == Length::inches(2) + slide.bottom);
    CHECK(place.behind_front == Length::inches(1, 8));
}

TEST_CASE("an inset face sets the slide back by its thickness, and a maker's own middle is kept") {
    const BoxSize box{Length::inches(13), Length::inches(4), Length::inches(18)};
    Slide slide = usual_slide(SlideKind::side_mount);
    slide.middle = Length::inches(1);
    const SlidePlace place = slide_place(slide, box, Length::inches(3, 4));
    CHECK(place.behind_front == Length::inches(7, 8));
    CHECK(*place.above_edge == Length::inches(1));
    CHECK(place.above_floor == Length::inches(5, 4));
}

TEST_CASE("a corner slide goes by the box's bottom edge, and a concealed one lies on the floor") {
    const BoxSize box{Length::inches(13), Length::inches(4), Length::inches(18)};
    const Slide corner = usual_slide(SlideKind::bottom_corner);
    CHECK(slide_place(corner, box, {}).above_floor == corner.bottom);
    CHECK(*slide_place(corner, box, {}).above_edge == Length{});
    const SlidePlace concealed = slide_place(usual_slide(SlideKind::undermount), box, {});
    CHECK(concealed.above_floor == Length{});
    CHECK_FALSE(concealed.above_edge);
}
