#pragma once
// How the maker looks at a picture, on top of fitting it into its room. Pure: no window, no toolkit.

#include "draw/layout.h"

namespace kw::window {

// In paper pixels, from the middle of the picture's room.
struct FromMiddle {
    double x_px = 0;
    double y_px = 0;
    bool operator==(const FromMiddle&) const = default;
};

struct ViewTransform {
    double zoom = 1;      // 1: all of it
    double pan_x_px = 0;  // paper pixels
    double pan_y_px = 0;
    bool operator==(const ViewTransform&) const = default;
};

inline constexpr double most_zoom = 60;

// What lies at `at` stays there. Never smaller than all of it, which is then in its place again.
ViewTransform zoomed_about(const ViewTransform& look, double factor, FromMiddle at);

// Two fingers on the picture: what lay under each comes with it, as far as zoom and pan alone can do that.
struct Fingers {
    FromMiddle first, second;
};
ViewTransform pinched(const ViewTransform& look, const Fingers& before, const Fingers& now);

// The look at which this part of the drawing fills a room of width x height device pixels, where `all` shows the whole.
ViewTransform close_up(const draw::Box& part, const draw::View& all, double width, double height,
                       double pixel_ratio);

// The view of a picture in such a room, of pixel_ratio device pixels to a paper pixel. Zoomed in, the words keep to what can be seen.
draw::View seen(const draw::View& all, const ViewTransform& look, double width, double height,
                double pixel_ratio);

// A picture on its way from one view to another.
draw::View between(const draw::View& from, const draw::View& to, double fraction);

}  // namespace kw::window
