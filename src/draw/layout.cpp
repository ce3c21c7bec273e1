#include "draw/layout.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "draw/pixel_box.h"

namespace kw::draw {
namespace {

// A sheet in the making: what is placed, and which places are taken.
class Sheet {
public:
    Sheet(const Drawing& drawing, const View& view, const TextMeasure& measure)
        : view_(view), measure_(measure) {
        const Box drawn = bounds(drawing);
        drawn_left_ = to_pixel(view, {drawn.left_mm, drawn.top_mm}).x;
        drawn_right_ = to_pixel(view, {drawn.right_mm, drawn.top_mm}).x;
    }

    void fixed_label(const Label& label) {
        if (!in_sight(to_pixel(view_, label.at))) return;
        PlacedText text = sized(label.text, label.emphasis, label_px);
        text.bare = label.bare;
        place(text, to_pixel(view_, label.at), label.anchor);
        take(text);
    }

    void led_label(const Label& label) {
        PlacedText text = sized(label.text, label.emphasis, label_px);
        const Pixel target = to_pixel(view_, *label.points_at);
        if (!in_sight(target)) return;
        Pixel at = to_pixel(view_, label.at);
        place(text, at, label.anchor);
        at = on_sheet(text, at);
        // Labels at one side stand in a column; others go on outward.
        const bool in_a_column = label.anchor == Anchor::left || label.anchor == Anchor::right;
        const Pixel step = in_a_column ? Pixel{0, px(row_step_px)} : direction(target, at, px(row_step_px));
        place(text, at, label.anchor);
        for (int tries = 0; tries < most_steps && taken(plate(text)); ++tries) {
            at = {at.x + step.x, at.y + step.y};
            place(text, at, label.anchor);
        }
        lead(text, target, label.emphasis);
        take(text);
    }

    void dimension(const Dimension& d) {
        const bool along_x = d.side == Side::above || d.side == Side::below;
        double out = d.side == Side::above || d.side == Side::left ? -1 : 1;
        const double inward = -out;
        const AnnotationStyle style = annotation_style(d.emphasis, Theme::light);
        Said words{sized(d.text, d.emphasis, style.text_px), {}};
        if (d.change) words.change = sized(d.change->text, Emphasis::changed, label_px);
        const Pixel from = to_pixel(view_, d.from), to = to_pixel(view_, d.to);
        const Pixel clear = to_pixel(view_, {d.clear_of_mm, d.clear_of_mm});
        double level = (along_x ? clear.y : clear.x) + out * px(dimension_clearance_px);
        if (d.row > 0) level += out * d.row * row_depth(words.text, along_x);
        if (is_out_of_sight(from, to, along_x)) return;
        for (int tries = 0;; ++tries) {
            put_beside(words, from, to, level, d.side);
            if (const double kept = kept_on_sheet(level, plate(words), d.side); kept != level) {
                level = kept;
                out = inward;  // from the sheet's edge the next row is farther in
                put_beside(words, from, to, level, d.side);
            }
            if (tries == most_steps || !taken(room(plate(words), from, to, level, along_x))) break;
            level += out * px(row_step_px);
        }
        taken_.push_back(room(plate(words), from, to, level, along_x));
        if (d.change) {
            const Pixel stood = to_pixel(view_, d.change->stood);
            extend(stood, along_x ? Pixel{stood.x, level} : Pixel{level, stood.y}, Emphasis::changed);
        }
        draw_dimension(from, to, level, along_x, d.emphasis);
        sheet_.texts.push_back(words.text);
        if (words.change) sheet_.texts.push_back(*words.change);
    }

    Annotations finished() && { return std::move(sheet_); }

private:
    static constexpr int most_steps = 60;

    double px(double paper_px) const { return paper_px * view_.pixel_ratio; }

    bool in_sight(Pixel p) const {
        const auto& sheet = view_.sheet;
        return !sheet ||
               (p.x >= sheet->left && p.x <= sheet->right && p.y >= sheet->top && p.y <= sheet->bottom);
    }

    // The same point, moved so that the text round it lies on the sheet.
    Pixel on_sheet(const PlacedText& text, Pixel at) const {
        if (!view_.sheet) return at;
        const PixelBox box = plate(text);
        const auto by = [](double low, double high, double least, double most) {
            return low < least ? least - low : high > most ? most - high : 0.0;
        };
        return {at.x + by(box.left, box.right, view_.sheet->left, view_.sheet->right),
                at.y + by(box.top, box.bottom, view_.sheet->top, view_.sheet->bottom)};
    }

    bool is_out_of_sight(Pixel from, Pixel to, bool along_x) const {
        if (!view_.sheet) return false;
        const double a = along_x ? from.x : from.y, b = along_x ? to.x : to.y;
        return std::max(a, b) < (along_x ? view_.sheet->left : view_.sheet->top) ||
               std::min(a, b) > (along_x ? view_.sheet->right : view_.sheet->bottom);
    }

    double kept_on_sheet(double level, const PixelBox& words, Side side) const {
        if (!view_.sheet) return level;
        const PixelBox& sheet = *view_.sheet;
        switch (side) {
            case Side::above: return level + std::max(0.0, sheet.top - words.top);
            case Side::below: return level - std::max(0.0, words.bottom - sheet.bottom);
            case Side::left: return level + std::max(0.0, sheet.left - words.left);
            case Side::right: break;
        }
        return level - std::max(0.0, words.right - sheet.right);
    }

    // The middle of what can be seen of a dimension.
    double middle_in_sight(double a, double b, double low, double high) const {
        if (!view_.sheet) return (a + b) / 2;
        return (std::clamp(std::min(a, b), low, high) + std::clamp(std::max(a, b), low, high)) / 2;
    }
    PixelBox plate(const PlacedText& text) const { return padded(text.box, px(plate_pad_px)); }

    // What stands at a dimension: its text, and how it has changed beneath.
    struct Said {
        PlacedText text;
        std::optional<PlacedText> change;
    };

    PixelBox plate(const Said& words) const {
        if (!words.change) return plate(words.text);
        constexpr double frame_px = 3;  // and a hair
        return both(plate(words.text), padded(plate(*words.change), px(frame_px)));
    }

    PlacedText sized(const std::string& words, Emphasis emphasis, double size) const {
        const AnnotationStyle style = annotation_style(emphasis, Theme::light);
        PlacedText text{words, {}, px(size), style.bold, emphasis, style.framed, false};
        text.box.right = measure_(words, text.size_px, text.bold);
        text.box.bottom = text.size_px * line_height_em;
        return text;
    }

    static void place(PlacedText& text, Pixel at, Anchor anchor) {
        const double w = text.box.right - text.box.left, h = text.box.bottom - text.box.top;
        const double left = anchor == Anchor::left ? at.x : anchor == Anchor::right ? at.x - w : at.x - w / 2;
        const double top = anchor == Anchor::top ? at.y : anchor == Anchor::bottom ? at.y - h : at.y - h / 2;
        text.box = {left, top, left + w, top + h};
    }

    bool taken(const PixelBox& box) const {
        return std::any_of(taken_.begin(), taken_.end(),
                           [&](const PixelBox& other) { return meet(box, other); });
    }

    void take(const PlacedText& text) {
        taken_.push_back(plate(text));
        sheet_.texts.push_back(text);
    }

    static Pixel direction(Pixel from, Pixel to, double length) {
        const double dx = to.x - from.x, dy = to.y - from.y, d = std::hypot(dx, dy);
        return d < 1e-9 ? Pixel{0, -length} : Pixel{dx / d * length, dy / d * length};
    }

    void lead(const PlacedText& text, Pixel target, Emphasis emphasis) {
        const PixelBox box = plate(text);
        const Pixel start{std::clamp(target.x, box.left, box.right),
                          std::clamp(target.y, box.top, box.bottom)};
        sheet_.lines.push_back({start, target, emphasis, true});
        sheet_.dots.push_back(target);
    }

    double row_depth(const PlacedText& text, bool along_x) const {
        const double text_depth = along_x ? text.box.bottom - text.box.top : text.box.right - text.box.left;
        return text_depth + px(text_gap_px + 2 * plate_pad_px);
    }

    // Words that are longer than what they dimension stand out beyond what is drawn as little as can be, but over their own line:
    // what stands out takes room from the picture.
    double kept_within_drawn(double middle, double width, double from, double to) const {
        const double low = drawn_left_ + width / 2, high = drawn_right_ - width / 2;
        const bool at_right = middle > (drawn_left_ + drawn_right_) / 2;
        const double kept = low <= high ? std::clamp(middle, low, high) : at_right ? high : low;
        const double a = std::min(from, to) - width / 2, b = std::max(from, to) + width / 2;
        return std::clamp(kept, a, b);
    }

    // The text stands on the outer side of the dimension line, upright to the reader in every direction.
    void put_beside(Said& words, Pixel from, Pixel to, double level, Side side) const {
        const PixelBox sheet = view_.sheet.value_or(PixelBox{});
        const double gap = px(text_gap_px), mid_x = middle_in_sight(from.x, to.x, sheet.left, sheet.right),
                     mid_y = middle_in_sight(from.y, to.y, sheet.top, sheet.bottom);
        // Two plates one under the other, and between them as little as shows that they are two.
        const auto height = [](const PlacedText& text) { return text.box.bottom - text.box.top; };
        const double apart = words.change ? px(2 * plate_pad_px + 1) : 0;
        const double below = words.change ? height(*words.change) + apart : 0;
        const double whole = height(words.text) + below;
        const auto set = [&](double x, double top, Anchor anchor) {
            const double middle = top + height(words.text) / 2;
            if (anchor == Anchor::top) place(words.text, {x, top}, anchor);
            else place(words.text, {x, middle}, anchor);
            if (!words.change) return;
            const double next = top + height(words.text) + apart;
            if (anchor == Anchor::top) place(*words.change, {x, next}, anchor);
            else place(*words.change, {x, next + height(*words.change) / 2}, anchor);
        };
        const auto width = [](const PlacedText& text) { return text.box.right - text.box.left; };
        const double widest = std::max(width(words.text), words.change ? width(*words.change) : 0.0);
        const double over = kept_within_drawn(mid_x, widest, from.x, to.x);
        switch (side) {
            case Side::above: set(over, level - gap - whole, Anchor::top); break;
            case Side::below: set(over, level + gap, Anchor::top); break;
            case Side::left: set(level - gap, mid_y - whole / 2, Anchor::right); break;
            case Side::right: set(level + gap, mid_y - whole / 2, Anchor::left); break;
        }
    }

    double arrow_reach(double span) const {
        return span < px(2.6 * arrow_length_px) ? px(2 * arrow_length_px) : 0;
    }

    // What a dimension takes up: its text, its line, and the arrows that stand outside a short one.
    PixelBox room(const PixelBox& words, Pixel from, Pixel to, double level, bool along_x) const {
        const double a = along_x ? from.x : from.y, b = along_x ? to.x : to.y;
        const double reach = arrow_reach(std::abs(a - b)), half = px(arrow_half_width_px);
        const double low = std::min(a, b) - reach, high = std::max(a, b) + reach;
        const PixelBox line = along_x ? PixelBox{low, level - half, high, level + half}
                                      : PixelBox{level - half, low, level + half, high};
        // A hair less than touching, so that chains of dimensions share one row.
        return both(padded(line, -0.5), words);
    }

    void draw_dimension(Pixel from, Pixel to, double level, bool along_x, Emphasis emphasis) {
        const auto at = [&](double along, double across) {
            return along_x ? Pixel{along, across} : Pixel{across, along};
        };
        double a = along_x ? from.x : from.y, b = along_x ? to.x : to.y;
        double a_across = along_x ? from.y : from.x, b_across = along_x ? to.y : to.x;
        if (a > b) {
            std::swap(a, b);
            std::swap(a_across, b_across);
        }
        extend(at(a, a_across), at(a, level), emphasis);
        extend(at(b, b_across), at(b, level), emphasis);
        const double reach = arrow_reach(b - a);
        const double inward = reach > 0 ? 1 : -1;
        sheet_.lines.push_back({at(a - reach, level), at(b + reach, level), emphasis, false});
        sheet_.arrows.push_back({at(a, level), at(inward, 0), emphasis});
        sheet_.arrows.push_back({at(b, level), at(-inward, 0), emphasis});
    }

    void extend(Pixel point, Pixel level, Emphasis emphasis) {
        const double length = std::hypot(level.x - point.x, level.y - point.y);
        if (length <= px(extension_gap_px)) return;
        const Pixel gap = direction(point, level, px(extension_gap_px));
        const Pixel over = direction(point, level, px(extension_overrun_px));
        sheet_.lines.push_back(
            {{point.x + gap.x, point.y + gap.y}, {level.x + over.x, level.y + over.y}, emphasis, true});
    }

    const View& view_;
    const TextMeasure& measure_;
    double drawn_left_ = 0, drawn_right_ = 0;
    Annotations sheet_;
    std::vector<PixelBox> taken_;
};

}  // namespace

Pixel to_pixel(const View& view, Point p) {
    return {view.origin.x + p.x_mm * view.px_per_mm, view.origin.y - p.y_mm * view.px_per_mm};
}

Point to_mm(const View& view, Pixel p) {
    return {(p.x - view.origin.x) / view.px_per_mm, (view.origin.y - p.y) / view.px_per_mm};
}

Annotations annotate(const Drawing& drawing, const View& view, const TextMeasure& measure) {
    Sheet sheet(drawing, view, measure);
    std::vector<Dimension> dimensions;
    std::vector<Label> led;
    for (const Shape& shape : drawing.shapes) {
        if (const auto* label = std::get_if<Label>(&shape)) {
            if ((label->spare && !view.with_spares) || (label->on_drawing && view.is_low)) continue;
            if (label->points_at) led.push_back(*label);
            else sheet.fixed_label(*label);
        } else if (const auto* dimension = std::get_if<Dimension>(&shape)) {
            if (!dimension->spare || view.with_spares) dimensions.push_back(*dimension);
        }
    }
    std::stable_sort(dimensions.begin(), dimensions.end(),
                     [](const Dimension& a, const Dimension& b) { return a.row < b.row; });
    for (const Dimension& dimension : dimensions) sheet.dimension(dimension);
    for (const Label& label : led) sheet.led_label(label);
    return std::move(sheet).finished();
}

}  // namespace kw::draw
