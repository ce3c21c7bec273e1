#include "print/place_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/layout.h"
#include "print/text_size.h"

namespace kw::print {
namespace {

// ISO 5455 has 1, 2 and 5 with their tenfolds; between them are the steps of a draughtsman's rule.
constexpr std::array<double, 16> usual_scales{10,       5,       4,   3,       2.5,     2,    1.5, 1,
                                              1 / 1.25, 1 / 1.5, 0.5, 1 / 2.5, 1 / 3.0, 0.25, 0.2, 0.1};

draw::View view_at(const Picture& picture) {
    draw::View view;
    view.px_per_mm = picture.scale / picture.px_mm;
    view.with_spares = picture.with_spares;
    view.is_low = picture.is_low;
    return view;
}

// In pixels from its origin, with the ground round its words and half the width of its lines.
draw::PixelBox reach_of(const Picture& picture) {
    const draw::View view = view_at(picture);
    const draw::Box drawn = draw::bounds(picture.drawing);
    const draw::Pixel a = draw::to_pixel(view, {drawn.left_mm, drawn.top_mm}),
                      b = draw::to_pixel(view, {drawn.right_mm, drawn.bottom_mm});
    const draw::Annotations words = draw::annotate(picture.drawing, view, text_width_px);
    draw::PixelBox all{a.x, a.y, b.x, b.y};
    if (!words.texts.empty() || !words.lines.empty()) {
        const draw::PixelBox more = draw::extent(words);
        all = {std::min(all.left, more.left), std::min(all.top, more.top), std::max(all.right, more.right),
               std::max(all.bottom, more.bottom)};
    }
    const double pad = draw::plate_pad_px + 1;
    return {all.left - pad, all.top - pad, all.right + pad, all.bottom + pad};
}

bool fits(const Area& taken, const Area& room) {
    constexpr double hair_mm = 1e-6;
    return taken.width_mm() <= room.width_mm() + hair_mm && taken.height_mm() <= room.height_mm() + hair_mm;
}

void put_in_the_middle(Picture& picture, const Area& room) {
    picture.origin = {};
    const Area taken = area_of(picture);
    picture.origin = {(room.left_mm + room.right_mm - taken.left_mm - taken.right_mm) / 2,
                      (room.top_mm + room.bottom_mm - taken.top_mm - taken.bottom_mm) / 2};
}

}  // namespace

Picture picture_at_scale(const draw::Drawing& drawing, Spot origin, double scale, double px_mm) {
    return {drawing, origin, scale, px_mm};
}

Area area_of(const Picture& picture) {
    const draw::PixelBox box = reach_of(picture);
    const double px = picture.px_mm;
    return {picture.origin.x_mm + box.left * px, picture.origin.y_mm + box.top * px,
            picture.origin.x_mm + box.right * px, picture.origin.y_mm + box.bottom * px};
}

namespace {

// With words of this size.
Picture fitted_with(const draw::Drawing& drawing, const Area& area, double px_mm) {
    // How large its words are, and which, is weighed as on the screen.
    const draw::View best =
        draw::fitted(drawing, area.width_mm() / px_mm, area.height_mm() / px_mm, 1, text_width_px);
    Picture picture{drawing,          {},         best.px_per_mm * px_mm, px_mm * best.pixel_ratio,
                    best.with_spares, best.is_low};
    const double just_fits = picture.scale;
    for (const double scale : usual_scales) {
        if (scale > just_fits * 1.02 || scale < just_fits / 2) continue;
        picture.scale = scale;
        if (fits(area_of(picture), area)) {
            put_in_the_middle(picture, area);
            return picture;
        }
    }
    picture.scale = just_fits;
    // Lines and plates take a little more than the screen allows for.
    for (int tries = 0; tries < 12 && !fits(area_of(picture), area); ++tries) picture.scale *= 0.97;
    for (int tries = 0; tries < 40 && !fits(area_of(picture), area); ++tries) {
        picture.scale *= 0.97;
        picture.px_mm *= 0.97;
    }
    put_in_the_middle(picture, area);
    return picture;
}

}  // namespace

bool words_meet(const Picture& picture) {
    const auto texts = draw::annotate(picture.drawing, view_at(picture), text_width_px).texts;
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t k = 0; k < i; ++k) {
            const draw::PixelBox &a = texts[i].box, &b = texts[k].box;
            if (std::min(a.right, b.right) > std::max(a.left, b.left) &&
                std::min(a.bottom, b.bottom) > std::max(a.top, b.top))
                return true;
        }
    return false;
}

Picture fitted_picture(const draw::Drawing& drawing, const Area& area, double px_mm) {
    Picture picture = fitted_with(drawing, area, px_mm);
    // Where there is little room words are set smaller rather than on one another.
    for (const double smaller : {0.9, 0.8, 0.7}) {
        if (!words_meet(picture)) break;
        picture = fitted_with(drawing, area, smaller * px_mm);
    }
    return picture;
}

std::string scale_words(const Words& words, double scale) {
    const auto decimal = [&](double value) {
        const auto all = static_cast<long long>(std::llround(value * 100));
        std::string text = std::to_string(all / 100);
        const long long rest = all % 100;
        if (rest == 0) return text;
        text += std::string(words.text("decimal.mark")) + std::to_string(rest / 10);
        return rest % 10 == 0 ? text : text + std::to_string(rest % 10);
    };
    return scale >= 1 ? words("print.scale", decimal(scale), "1")
                      : words("print.scale", "1", decimal(1 / scale));
}

}  // namespace kw::print
