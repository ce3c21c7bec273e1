#include "print/page.h"

namespace kw::print {

PaperSize size_of(Paper paper) {
    switch (paper) {
        case Paper::a4: return {Length::micrometres(210'000), Length::micrometres(297'000)};
        case Paper::letter: break;
    }
    return {Length::inches(17, 2), Length::inches(11)};
}

Item moved(Item item, double right_mm, double down_mm) {
    const auto move = [&](Spot& spot) {
        spot.x_mm += right_mm;
        spot.y_mm += down_mm;
    };
    if (auto* text = std::get_if<Text>(&item)) move(text->at);
    else if (auto* path = std::get_if<Path>(&item))
        for (Spot& spot : path->points) move(spot);
    else if (auto* picture = std::get_if<Picture>(&item)) move(picture->origin);
    else if (auto* tint = std::get_if<Tint>(&item)) {
        Area& a = tint->area;
        a = {a.left_mm + right_mm, a.top_mm + down_mm, a.right_mm + right_mm, a.bottom_mm + down_mm};
    }
    return item;
}

Path frame(const Area& area, double width_mm) {
    return {{{area.left_mm, area.top_mm},
             {area.right_mm, area.top_mm},
             {area.right_mm, area.bottom_mm},
             {area.left_mm, area.bottom_mm}},
            width_mm,
            true};
}

}  // namespace kw::print
