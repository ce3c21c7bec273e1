#include "print/marks.h"

#include <cmath>

#include "draw/fraction_text.h"
#include "draw/layout.h"
#include "print/text_size.h"

namespace kw::print {
namespace {

constexpr draw::Theme on_paper = draw::Theme::light;
constexpr draw::Rgb bare = draw::hex(0xffffff);  // the paper
constexpr std::array<double, 4> cut_dashes_mm{2, 1.5, 0, 0};

// A line of text, its fractions in pieces, from where it begins.
void set_text(std::vector<Mark>& marks, Spot at, const std::string& text, const TextStyle& style) {
    double x = at.x_mm;
    for (const draw::TextRun& run : draw::text_runs(text)) {
        TextStyle its = style;
        double y = at.y_mm;
        if (run.kind == draw::RunKind::numerator) {
            if (x > at.x_mm) x += draw::fraction_gap_em * style.size_mm;
            y -= draw::numerator_raise_em * style.size_mm;
        }
        if (run.kind == draw::RunKind::denominator) y += draw::denominator_drop_em * style.size_mm;
        if (run.kind == draw::RunKind::numerator || run.kind == draw::RunKind::denominator)
            its.size_mm *= draw::fraction_digit_size;
        const double width = text_width_mm(run.text, its);
        marks.push_back(SetText{{x, y}, run.text, its, width});
        x += width;
    }
}

class PictureMarks {
public:
    PictureMarks(const Picture& picture, std::vector<Mark>& marks)
        : picture_(picture), marks_(marks), view_(view_of(picture)) {}

    void operator()(const draw::Fill& fill) {
        const draw::FillStyle style = draw::fill_style(fill, on_paper);
        std::vector<std::vector<Spot>> rings, rings_px;
        for (const draw::Ring& ring : fill.rings) {
            rings.emplace_back();
            rings_px.emplace_back();
            for (const draw::Point& p : ring) {
                const draw::Pixel pixel = draw::to_pixel(view_, p);
                rings.back().push_back(spot(pixel));
                rings_px.back().push_back({pixel.x, pixel.y});
            }
        }
        if (!style.transparent) marks_.push_back(FilledArea{rings, style.ground});
        for (const draw::Hatch& hatch : style.hatches) {
            auto lines = hatch_lines(rings_px, hatch);
            for (auto& line : lines)
                for (Spot& p : line) p = spot({p.x_mm, p.y_mm});
            if (!lines.empty())
                marks_.push_back(StrokedLines{std::move(lines), style.hatch_ink, mm(hatch.width_px)});
        }
        if (style.edge_px > 0)
            marks_.push_back(StrokedLines{rings, style.edge, mm(style.edge_px),
                                          dashes({style.edge_dash_px, style.edge_space_px, 0, 0}), true});
    }

    void operator()(const draw::Line& line) {
        if (line.points.size() < 2) return;
        const draw::LineStyle style = draw::line_style(line.stroke, on_paper);
        std::vector<Spot> points;
        for (const draw::Point& p : line.points) points.push_back(spot(draw::to_pixel(view_, p)));
        const draw::Rgb ink = line.stroke == draw::Stroke::halo ? bare : style.ink;
        marks_.push_back(StrokedLines{{points}, ink, mm(style.width_px), dashes(style.dashes_px)});
        if (line.stroke == draw::Stroke::arrow) arrow_of_movement(line, style);
    }

    void operator()(const draw::Dimension&) {}  // with all the words, on top of everything
    void operator()(const draw::Label&) {}

    void words() {
        const draw::Annotations all = draw::annotate(picture_.drawing, view_, text_width_px);
        for (const draw::PlacedLine& line : all.lines) {
            const draw::AnnotationStyle style = draw::annotation_style(line.emphasis, on_paper);
            const double width = line.extension
                                     ? draw::annotation_style(draw::Emphasis::faint, on_paper).line_px
                                     : style.line_px;
            marks_.push_back(StrokedLines{{{spot(line.from), spot(line.to)}}, style.ink, mm(width)});
        }
        for (const draw::PlacedArrow& arrow : all.arrows)
            arrowhead(arrow.tip, arrow.direction, draw::annotation_style(arrow.emphasis, on_paper).ink, 1);
        for (const draw::Pixel& dot : all.dots) add_dot(dot);
        for (const draw::PlacedText& text : all.texts)
            if (!text.bare) plate(text);
        for (const draw::PlacedText& text : all.texts) {
            const TextStyle style{mm(text.size_px), text.bold,
                                  draw::annotation_style(text.emphasis, on_paper).ink};
            set_text(marks_, spot({text.box.left, text.box.top + draw::ascent_em * text.size_px}), text.text,
                     style);
        }
    }

private:
    static draw::View view_of(const Picture& picture) {
        draw::View view;
        view.px_per_mm = picture.scale / picture.px_mm;
        view.with_spares = picture.with_spares;
        view.is_low = picture.is_low;
        return view;
    }

    double mm(double px) const { return px * picture_.px_mm; }
    Spot spot(draw::Pixel p) const {
        return {picture_.origin.x_mm + mm(p.x), picture_.origin.y_mm + mm(p.y)};
    }

    std::array<double, 4> dashes(std::array<double, 4> px) const {
        for (double& dash : px) dash = mm(dash);
        return px;
    }

    void arrow_of_movement(const draw::Line& line, const draw::LineStyle& style) {
        const draw::Pixel tip = draw::to_pixel(view_, line.points.back()),
                          before = draw::to_pixel(view_, line.points[line.points.size() - 2]);
        const double length = std::hypot(tip.x - before.x, tip.y - before.y);
        if (length > 0)
            arrowhead(tip, {(tip.x - before.x) / length, (tip.y - before.y) / length}, style.ink, 1.6);
    }

    void arrowhead(draw::Pixel tip, draw::Pixel direction, draw::Rgb ink, double factor) {
        const double l = draw::arrow_length_px * factor, h = draw::arrow_half_width_px * factor;
        const draw::Pixel back{tip.x - direction.x * l, tip.y - direction.y * l};
        marks_.push_back(FilledArea{{{spot(tip), spot({back.x - direction.y * h, back.y + direction.x * h}),
                                      spot({back.x + direction.y * h, back.y - direction.x * h})}},
                                    ink});
    }

    void add_dot(draw::Pixel at) {
        constexpr double radius_px = 3;
        std::vector<Spot> ring;
        for (const draw::Point& p : draw::circle({at.x, at.y}, radius_px, 16))
            ring.push_back(spot({p.x_mm, p.y_mm}));
        marks_.push_back(FilledArea{{ring}, draw::palette(on_paper).ink});
    }

    void plate(const draw::PlacedText& text) {
        const draw::PixelBox& b = text.box;
        const double pad = draw::plate_pad_px;
        const std::vector<Spot> ring{spot({b.left - pad, b.top - pad}), spot({b.right + pad, b.top - pad}),
                                     spot({b.right + pad, b.bottom + pad}),
                                     spot({b.left - pad, b.bottom + pad})};
        marks_.push_back(FilledArea{{ring}, bare});
        if (!text.framed) return;
        const draw::AnnotationStyle style = draw::annotation_style(text.emphasis, on_paper);
        marks_.push_back(StrokedLines{{ring}, style.ink, mm(style.line_px), {}, true});
    }

    const Picture& picture_;
    std::vector<Mark>& marks_;
    draw::View view_;
};

struct ItemMarks {
    std::vector<Mark> marks = {};

    void operator()(const Text& text) {
        const double width = text_width_mm(text.text, text.style);
        const double left = text.align == Align::left ? 0 : text.align == Align::right ? width : width / 2;
        set_text(marks, {text.at.x_mm - left, text.at.y_mm}, text.text, text.style);
    }
    void operator()(const Path& path) {
        marks.push_back(StrokedLines{{path.points},
                                     path.ink,
                                     path.width_mm,
                                     path.dashed ? cut_dashes_mm : std::array<double, 4>{},
                                     path.closed});
    }
    void operator()(const Tint& tint) {
        const Area& a = tint.area;
        marks.push_back(FilledArea{{{{a.left_mm, a.top_mm},
                                     {a.right_mm, a.top_mm},
                                     {a.right_mm, a.bottom_mm},
                                     {a.left_mm, a.bottom_mm}}},
                                   tint.ink});
    }
    void operator()(const Picture& picture) {
        PictureMarks its(picture, marks);
        for (const draw::Shape& shape : picture.drawing.shapes) std::visit(its, shape);
        its.words();
    }
};

}  // namespace

std::vector<Mark> marks_of(const Page& page) {
    ItemMarks all;
    for (const Item& item : page.items) std::visit(all, item);
    return std::move(all.marks);
}

Area area_of(const SetText& text) {
    // Of capitals and figures, and of the tails of letters.
    return {text.at.x_mm, text.at.y_mm - 0.76 * text.style.size_mm, text.at.x_mm + text.width_mm,
            text.at.y_mm + 0.22 * text.style.size_mm};
}

}  // namespace kw::print
