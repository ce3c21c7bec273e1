#include "window/look.h"

#include <algorithm>
#include <cmath>

namespace kw::window {
namespace {

constexpr double least_apart_px = 8;    // nearer fingers say nothing of a scale
constexpr double close_up_share = 0.8;  // of the room: the words need the rest

double apart(const Fingers& fingers) {
    return std::max(least_apart_px, std::hypot(fingers.second.x_px - fingers.first.x_px,
                                               fingers.second.y_px - fingers.first.y_px));
}

FromMiddle middle(const Fingers& fingers) {
    return {(fingers.first.x_px + fingers.second.x_px) / 2, (fingers.first.y_px + fingers.second.y_px) / 2};
}

}  // namespace

ViewTransform zoomed_about(const ViewTransform& look, double factor, FromMiddle at) {
    const double zoom = std::clamp(look.zoom * factor, 1.0, most_zoom), real = zoom / look.zoom;
    if (zoom <= 1.0) return {};
    return {zoom, at.x_px + (look.pan_x_px - at.x_px) * real, at.y_px + (look.pan_y_px - at.y_px) * real};
}

ViewTransform pinched(const ViewTransform& look, const Fingers& before, const Fingers& now) {
    const FromMiddle was = middle(before), is = middle(now);
    ViewTransform next = zoomed_about(look, apart(now) / apart(before), was);
    if (next.zoom <= 1.0) return {};
    next.pan_x_px += is.x_px - was.x_px;
    next.pan_y_px += is.y_px - was.y_px;
    return next;
}

ViewTransform close_up(const draw::Box& part, const draw::View& all, double width, double height,
                       double pixel_ratio) {
    const double wide = std::max(part.right_mm - part.left_mm, 1e-3) * all.px_per_mm,
                 high = std::max(part.top_mm - part.bottom_mm, 1e-3) * all.px_per_mm;
    const double zoom = std::clamp(close_up_share * std::min(width / wide, height / high), 1.0, most_zoom);
    const draw::Pixel at =
        to_pixel(all, {(part.left_mm + part.right_mm) / 2, (part.bottom_mm + part.top_mm) / 2});
    return {zoom, -zoom * (at.x - width / 2) / pixel_ratio, -zoom * (at.y - height / 2) / pixel_ratio};
}

draw::View seen(const draw::View& all, const ViewTransform& look, double width, double height,
                double pixel_ratio) {
    draw::View view = all;
    const double cx = width / 2, cy = height / 2;
    view.px_per_mm *= look.zoom;
    view.origin.x = cx + (all.origin.x - cx) * look.zoom + look.pan_x_px * pixel_ratio;
    view.origin.y = cy + (all.origin.y - cy) * look.zoom + look.pan_y_px * pixel_ratio;
    if (look.zoom > 1) view.sheet = draw::PixelBox{0, 0, width, height};
    return view;
}

draw::View between(const draw::View& from, const draw::View& to, double fraction) {
    const auto blend = [&](double a, double b) { return a + (b - a) * fraction; };
    draw::View view = to;
    view.px_per_mm = blend(from.px_per_mm, to.px_per_mm);
    view.origin = {blend(from.origin.x, to.origin.x), blend(from.origin.y, to.origin.y)};
    return view;
}

}  // namespace kw::window
