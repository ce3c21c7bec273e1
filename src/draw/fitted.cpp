// How large a drawing is shown, so that it and its words lie on a sheet.

#include <algorithm>
#include <optional>
#include <utility>

#include "draw/palette.h"
#include "draw/pixel_box.h"

namespace kw::draw {
namespace {

std::optional<PixelBox> reach(const Annotations& annotations) {
    std::optional<PixelBox> box;
    const auto add = [&](const PixelBox& other) { box = box ? both(*box, other) : other; };
    for (const PlacedLine& line : annotations.lines) add(around(line.from, line.to));
    for (const PlacedText& text : annotations.texts) add(text.box);
    return box;
}

constexpr double bare_px = 4;               // round everything
constexpr double room_for_spares_px = 270;  // a lower sheet is for what is drawn
constexpr double good_share = 0.5;          // of the room, for the drawing without its words
constexpr double least_share =
    0.2;  // of the scale without words: below this the words must be cut off instead

// Everything that would be seen at this scale, with (0 mm, 0 mm) at the sheet's corner.
PixelBox everything(const Drawing& drawing, const Box& box, const View& view, const TextMeasure& measure) {
    const PixelBox shapes =
        around(to_pixel(view, {box.left_mm, box.bottom_mm}), to_pixel(view, {box.right_mm, box.top_mm}));
    const auto words = reach(annotate(drawing, view, measure));
    return words ? both(shapes, padded(*words, plate_pad_px * view.pixel_ratio)) : shapes;
}

}  // namespace

PixelBox extent(const Annotations& annotations) { return reach(annotations).value_or(PixelBox{}); }

namespace {

// Words keep their size while the picture shrinks to make room for them, and move as it does: the scale is searched for. The
// largest at which all fits; `least_share` of the scale without words where none does.
View fitted_with(const Drawing& drawing, double width_px, double height_px, View view,
                 const TextMeasure& measure) {
    const Box box = bounds(drawing);
    const double w = width_px - 2 * bare_px * view.pixel_ratio,
                 h = height_px - 2 * bare_px * view.pixel_ratio;
    const double most = std::min(w / std::max(box.right_mm - box.left_mm, 1e-6),
                                 h / std::max(box.top_mm - box.bottom_mm, 1e-6));
    double low = most * least_share, high = most;
    view.px_per_mm = low;
    PixelBox seen = everything(drawing, box, view, measure);
    const auto fits_at = [&](double px_per_mm) {
        view.px_per_mm = px_per_mm;
        const PixelBox tried = everything(drawing, box, view, measure);
        const bool fits = tried.right - tried.left <= w && tried.bottom - tried.top <= h;
        if (fits) seen = tried;
        return fits;
    };
    // From the largest down, since a smaller picture need not fit better: words that are longer than it stand out.
    constexpr double step_down = 0.85;
    double tried = high;
    while (tried > low && !fits_at(tried)) high = std::exchange(tried, tried * step_down);
    low = std::max(low, tried);
    for (int round = 0; round < 8 && low < high; ++round) {
        const double middle = (low + high) / 2;
        (fits_at(middle) ? low : high) = middle;
    }
    view.px_per_mm = low;
    view.origin = {(width_px - seen.left - seen.right) / 2, (height_px - seen.top - seen.bottom) / 2};
    return view;
}

double share_of_room(const Drawing& drawing, const View& view, double width_px, double height_px) {
    const Box box = bounds(drawing);
    return view.px_per_mm *
           std::max((box.right_mm - box.left_mm) / width_px, (box.top_mm - box.bottom_mm) / height_px);
}

struct WordsSet {
    double size;
    bool with_spares;
};

}  // namespace

View fitted(const Drawing& drawing, double width_px, double height_px, double pixel_ratio,
            const TextMeasure& measure) {
    View best{};
    double best_share = 0;
    for (const WordsSet words :
         {WordsSet{1, true}, WordsSet{0.9, true}, WordsSet{1, false}, WordsSet{0.9, false}}) {
        const bool is_low = height_px < room_for_spares_px * pixel_ratio;
        if (words.with_spares && is_low) continue;
        View wanted{1, {}, pixel_ratio * words.size, words.with_spares};
        wanted.is_low = is_low;
        const View view = fitted_with(drawing, width_px, height_px, wanted, measure);
        const double share = share_of_room(drawing, view, width_px, height_px);
        if (share > best_share * 1.15) {
            best = view;
            best_share = share;
        }
        if (best_share >= good_share) break;
    }
    return best;
}

}  // namespace kw::draw
