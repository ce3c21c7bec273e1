#include "draw/svg.h"

#include <cmath>
#include <cstdint>
#include <cstdio>

#include "draw/fraction_text.h"

namespace kw::draw {
namespace {

// At most two decimals, no trailing zeros, a point whatever the locale.
std::string number(double value) {
    const auto hundredths = static_cast<std::int64_t>(std::llround(std::abs(value) * 100));
    std::string text = std::to_string(hundredths / 100);
    if (const auto rest = static_cast<int>(hundredths % 100); rest != 0) {
        text += '.';
        text += static_cast<char>('0' + rest / 10);
        if (rest % 10 != 0) text += static_cast<char>('0' + rest % 10);
    }
    return value < 0 && hundredths != 0 ? "-" + text : text;
}

std::string colour(Rgb c) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", unsigned{c.red}, unsigned{c.green}, unsigned{c.blue});
    return text;
}

std::string escaped(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (c == '&') result += "&amp;";
        else if (c == '<') result += "&lt;";
        else if (c == '>') result += "&gt;";
        else if (c == '"') result += "&quot;";
        else result += c;
    }
    return result;
}

std::string attribute(const char* name, const std::string& value) {
    return std::string(" ") + name + "=\"" + value + "\"";
}

std::string attribute(const char* name, double value) { return attribute(name, number(value)); }

class Writer {
public:
    Writer(const SvgOptions& options, const View& view)
        : options_(options), view_(view), colours_(palette(options.theme)) {}

    void operator()(const Fill& fill) {
        const FillStyle style = fill_style(fill, options_.theme);
        const std::string path = attribute("d", path_of(fill.rings)) + " fill-rule=\"evenodd\"";
        if (!style.transparent) body_ += "<path" + path + attribute("fill", colour(style.ground)) + "/>\n";
        for (const Hatch& hatch : style.hatches) {
            body_ +=
                "<path" + path + attribute("fill", "url(#" + pattern(hatch, style.hatch_ink) + ")") + "/>\n";
        }
        if (style.edge_px <= 0) return;
        body_ += "<path" + path + " fill=\"none\"" + attribute("stroke", colour(style.edge)) +
                 attribute("stroke-width", style.edge_px) + " stroke-linejoin=\"round\"" +
                 dashes({style.edge_dash_px, style.edge_space_px, 0, 0}) + "/>\n";
    }

    void operator()(const Line& line) {
        if (line.points.size() < 2) return;
        const LineStyle style = line_style(line.stroke, options_.theme);
        std::string points;
        for (const Point& p : line.points) points += (points.empty() ? "" : " ") + pair(to_pixel(view_, p));
        body_ += "<polyline" + attribute("points", points) + " fill=\"none\"" +
                 attribute("stroke", colour(style.ink)) + attribute("stroke-width", style.width_px) +
                 " stroke-linejoin=\"round\" stroke-linecap=\"round\"" + dashes(style.dashes_px) + "/>\n";
        if (line.stroke == Stroke::arrow) arrow_of_movement(line, style);
    }

    void operator()(const Dimension&) {}  // with all the words, on top of everything
    void operator()(const Label&) {}

    void words(const Annotations& annotations) {
        for (const PlacedLine& line : annotations.lines) {
            const AnnotationStyle style = annotation_style(line.emphasis, options_.theme);
            const double width =
                line.extension ? annotation_style(Emphasis::faint, options_.theme).line_px : style.line_px;
            body_ += "<path" + attribute("d", "M" + pair(line.from) + "L" + pair(line.to)) +
                     attribute("stroke", colour(style.ink)) + attribute("stroke-width", width) + "/>\n";
        }
        for (const PlacedArrow& arrow : annotations.arrows) {
            arrowhead(arrow.tip, arrow.direction, annotation_style(arrow.emphasis, options_.theme).ink, 1);
        }
        for (const Pixel& dot : annotations.dots) {
            body_ += "<circle" + attribute("cx", dot.x) + attribute("cy", dot.y) + " r=\"3\"" +
                     attribute("fill", colour(colours_.ink)) + "/>\n";
        }
        for (const PlacedText& text : annotations.texts)
            if (!text.bare) plate(text);
        for (const PlacedText& text : annotations.texts) words_of(text);
    }

    std::string finished(const std::string& title) const {
        const std::string size =
            attribute("width", options_.width_px) + attribute("height", options_.height_px);
        return "<svg xmlns=\"http://www.w3.org/2000/svg\"" + size +
               attribute("viewBox", "0 0 " + number(options_.width_px) + " " + number(options_.height_px)) +
               " font-family=\"Inter, 'DejaVu Sans', sans-serif\">\n<title>" + escaped(title) +
               "</title>\n<defs>\n" + patterns_ + "</defs>\n<rect" + size +
               attribute("fill", colour(colours_.card)) + "/>\n" + body_ + "</svg>\n";
    }

private:
    static std::string pair(Pixel p) { return number(p.x) + "," + number(p.y); }

    std::string path_of(const std::vector<Ring>& rings) const {
        std::string path;
        for (const Ring& ring : rings) {
            char verb = 'M';
            for (const Point& p : ring) {
                path += verb + pair(to_pixel(view_, p));
                verb = 'L';
            }
            if (!ring.empty()) path += 'Z';
        }
        return path;
    }

    static std::string dashes(const std::array<double, 4>& d) {
        if (d[0] <= 0) return "";
        std::string list = number(d[0]) + " " + number(d[1]);
        if (d[2] > 0) list += " " + number(d[2]) + " " + number(d[3]);
        return attribute("stroke-dasharray", list);
    }

    // The tile holds as many lines as it takes until the dashes stand as in the first one again.
    static int lines_in_tile(const Hatch& hatch) {
        if (hatch.dash_px <= 0 || hatch.stagger_px <= 0) return 1;
        const double period = hatch.dash_px + hatch.space_px;
        int lines = 1;
        while (lines < 400 && std::abs(std::remainder(lines * hatch.stagger_px, period)) > 1e-6) ++lines;
        return lines;
    }

    static void tile_line(std::string& tile, double y, double from, double to) {
        tile += "M" + number(from) + "," + number(y) + "L" + number(to) + "," + number(y);
    }

    static std::string tile_path(const Hatch& hatch, int lines, double period) {
        std::string tile;
        for (int k = 0; k < lines; ++k) {
            const double y = hatch.offset_px + k * hatch.spacing_px;
            if (hatch.dash_px <= 0) {
                tile_line(tile, y, 0, period);
                continue;
            }
            // Round caps stand half a width beyond the ends; the shader's dashes include them.
            const double half = hatch.width_px / 2;
            const double start = std::fmod(k * hatch.stagger_px, period);
            for (const double shift : {-period, 0.0, period}) {
                tile_line(tile, y, start + shift + half,
                          start + shift + std::max(hatch.dash_px - half, half + 0.01));
            }
        }
        return tile;
    }

    // One pattern for each kind of hatch, used by every fill that shares it.
    std::string pattern(const Hatch& hatch, Rgb ink) {
        const double period = hatch.dash_px > 0 ? hatch.dash_px + hatch.space_px : hatch.spacing_px;
        const int lines = lines_in_tile(hatch);
        // Lines stand half a spacing from the tile's edges, so that none is cut off by it.
        Hatch centred = hatch;
        const double shift = hatch.spacing_px / 2 - hatch.offset_px;
        centred.offset_px = hatch.spacing_px / 2;
        const std::string text =
            " patternUnits=\"userSpaceOnUse\"" + attribute("width", period) +
            attribute("height", lines * hatch.spacing_px) +
            attribute("patternTransform",
                      "translate(" + number(view_.origin.x) + " " + number(view_.origin.y) + ") rotate(" +
                          number(-hatch.angle_deg) + ") translate(0 " + number(-shift) + ")") +
            "><path" + attribute("d", tile_path(centred, lines, period)) + attribute("stroke", colour(ink)) +
            attribute("stroke-width", hatch.width_px) +
            (hatch.dash_px > 0 ? " stroke-linecap=\"round\"" : "") + "/></pattern>\n";
        for (std::size_t i = 0; i < pattern_texts_.size(); ++i) {
            if (pattern_texts_[i] == text) return "hatch" + std::to_string(i);
        }
        const std::string id = "hatch" + std::to_string(pattern_texts_.size());
        pattern_texts_.push_back(text);
        patterns_ += "<pattern" + attribute("id", id) + text;
        return id;
    }

    void arrow_of_movement(const Line& line, const LineStyle& style) {
        const Pixel tip = to_pixel(view_, line.points.back());
        const Pixel before = to_pixel(view_, line.points[line.points.size() - 2]);
        const double length = std::hypot(tip.x - before.x, tip.y - before.y);
        if (length <= 0) return;
        arrowhead(tip, {(tip.x - before.x) / length, (tip.y - before.y) / length}, style.ink, 1.6);
    }

    void arrowhead(Pixel tip, Pixel direction, Rgb ink, double factor) {
        const double l = arrow_length_px * factor, h = arrow_half_width_px * factor;
        const Pixel back{tip.x - direction.x * l, tip.y - direction.y * l};
        const Pixel one{back.x - direction.y * h, back.y + direction.x * h};
        const Pixel two{back.x + direction.y * h, back.y - direction.x * h};
        body_ += "<path" + attribute("d", "M" + pair(tip) + "L" + pair(one) + "L" + pair(two) + "Z") +
                 attribute("fill", colour(ink)) + "/>\n";
    }

    void plate(const PlacedText& text) {
        const PixelBox& b = text.box;
        const AnnotationStyle style = annotation_style(text.emphasis, options_.theme);
        body_ += "<rect" + attribute("x", b.left - plate_pad_px) + attribute("y", b.top - plate_pad_px) +
                 attribute("width", b.right - b.left + 2 * plate_pad_px) +
                 attribute("height", b.bottom - b.top + 2 * plate_pad_px) + " rx=\"3\"" +
                 attribute("fill", colour(colours_.card));
        if (text.framed)
            body_ += attribute("stroke", colour(style.ink)) + attribute("stroke-width", style.line_px);
        body_ += "/>\n";
    }

    void words_of(const PlacedText& text) {
        const AnnotationStyle style = annotation_style(text.emphasis, options_.theme);
        body_ += "<text" + attribute("x", (text.box.left + text.box.right) / 2) +
                 attribute("y", text.box.top + ascent_em * text.size_px) +
                 " text-anchor=\"middle\" xml:space=\"preserve\"" + attribute("font-size", text.size_px) +
                 attribute("fill", colour(style.ink)) + (text.bold ? " font-weight=\"600\"" : "") + ">";
        const auto runs = text_runs(text.text);
        double raised = 0;
        for (std::size_t i = 0; i < runs.size(); ++i) body_ += run_of(runs[i], text.size_px, i > 0, raised);
        body_ += "</text>\n";
    }

    static std::string run_of(const TextRun& run, double size_px, bool follows, double& raised) {
        const double up = run.kind == RunKind::numerator     ? numerator_raise_em
                          : run.kind == RunKind::denominator ? -denominator_drop_em
                                                             : 0;
        const bool small = run.kind == RunKind::numerator || run.kind == RunKind::denominator;
        std::string tag = "<tspan" + attribute("dy", (raised - up) * size_px);
        if (run.kind == RunKind::numerator && follows) tag += attribute("dx", fraction_gap_em * size_px);
        if (small) tag += attribute("font-size", fraction_digit_size * size_px);
        raised = up;
        return tag + ">" + escaped(run.text) + "</tspan>";
    }

    const SvgOptions& options_;
    const View& view_;
    const Palette& colours_;
    std::vector<std::string> pattern_texts_;
    std::string patterns_;
    std::string body_;
};

View view_for(const Drawing& drawing, const SvgOptions& options) {
    View view = fitted(drawing, options.width_px, options.height_px, 1, paper_text_width);
    if (options.px_per_mm <= 0) return view;
    const Point middle = to_mm(view, {options.width_px / 2, options.height_px / 2});
    view.px_per_mm = options.px_per_mm;
    view.origin = {options.width_px / 2 - middle.x_mm * options.px_per_mm,
                   options.height_px / 2 + middle.y_mm * options.px_per_mm};
    return view;
}

}  // namespace

std::string to_svg(const Drawing& drawing, const SvgOptions& options) {
    const View view = view_for(drawing, options);
    Writer writer(options, view);
    for (const Shape& shape : drawing.shapes) std::visit(writer, shape);
    writer.words(annotate(drawing, view, paper_text_width));
    return writer.finished(drawing.title);
}

}  // namespace kw::draw
