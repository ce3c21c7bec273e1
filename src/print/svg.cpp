#include "print/svg.h"

#include <cmath>
#include <cstdint>
#include <cstdio>

#include "print/marks.h"

namespace kw::print {
namespace {

// At most three decimals of a millimetre, no trailing zeros, a point whatever the locale.
std::string in_mm(double value) {
    const auto thousandths = static_cast<std::int64_t>(std::llround(std::abs(value) * 1000));
    std::string text = std::to_string(thousandths / 1000);
    if (const auto rest = static_cast<int>(thousandths % 1000); rest != 0) {
        text += '.';
        for (int digit = 100, left = rest; left != 0; left %= digit, digit /= 10)
            text += static_cast<char>('0' + left / digit);
    }
    return value < 0 && thousandths != 0 ? "-" + text : text;
}

std::string colour_of(draw::Rgb c) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", unsigned{c.red}, unsigned{c.green}, unsigned{c.blue});
    return text;
}

std::string escaped(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '&') out += "&amp;";
        else if (c == '<') out += "&lt;";
        else if (c == '>') out += "&gt;";
        else if (static_cast<unsigned char>(c) < 0x20) out += ' ';  // which XML does not hold
        else out += c;
    }
    return out;
}

std::string with(const char* name, const std::string& value) {
    return std::string(" ") + name + "=\"" + value + "\"";
}

std::string data_of(const std::vector<std::vector<Spot>>& lines, bool closed) {
    std::string data;
    for (const auto& line : lines) {
        char verb = 'M';
        for (const Spot& p : line) {
            data += verb + in_mm(p.x_mm) + " " + in_mm(p.y_mm);
            verb = 'L';
        }
        if (closed && !line.empty()) data += 'Z';
    }
    return data;
}

struct SvgWriter {
    std::string body = {};

    void operator()(const FilledArea& area) {
        body += "<path" + with("d", data_of(area.rings, true)) + with("fill", colour_of(area.ink)) +
                " fill-rule=\"evenodd\"/>\n";
    }
    void operator()(const StrokedLines& lines) {
        body += "<path" + with("d", data_of(lines.lines, lines.closed)) + " fill=\"none\"" +
                with("stroke", colour_of(lines.ink)) + with("stroke-width", in_mm(lines.width_mm)) +
                " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
        const auto& d = lines.dashes_mm;
        if (d[0] > 0) {
            std::string dashes = in_mm(d[0]) + " " + in_mm(d[1]);
            if (d[2] > 0) dashes += " " + in_mm(d[2]) + " " + in_mm(d[3]);
            body += with("stroke-dasharray", dashes);
        }
        body += "/>\n";
    }
    // With its width, so that it has room in another font as well.
    void operator()(const SetText& text) {
        body +=
            "<text" + with("x", in_mm(text.at.x_mm)) + with("y", in_mm(text.at.y_mm)) +
            with("font-size", in_mm(text.style.size_mm)) + (text.style.strong ? " font-weight=\"600\"" : "") +
            with("fill", colour_of(text.style.ink)) + with("textLength", in_mm(text.width_mm)) +
            " lengthAdjust=\"spacingAndGlyphs\" xml:space=\"preserve\">" + escaped(text.text) + "</text>\n";
    }
};

}  // namespace

std::string write_svg(const std::vector<Page>& pages) {
    const PaperSize size = size_of(pages.empty() ? Paper::a4 : pages.front().paper);
    const double width_mm = size.width.mm(), height_mm = size.height.mm(),
                 whole_mm = height_mm * static_cast<double>(pages.size());
    const std::string width = in_mm(width_mm), height = in_mm(height_mm), whole = in_mm(whole_mm);
    SvgWriter out;
    out.body = "<svg xmlns=\"http://www.w3.org/2000/svg\"" + with("width", width + "mm") +
               with("height", whole + "mm") + with("viewBox", "0 0 " + width + " " + whole) +
               " font-family=\"Inter, 'DejaVu Sans', sans-serif\">\n<title>" +
               escaped(pages.empty() ? std::string() : pages.front().title) +
               "</title>\n<style>@page { size: " + width + "mm " + height + "mm; margin: 0 }</style>\n" +
               "<rect" + with("width", width) + with("height", whole) + " fill=\"#ffffff\"/>\n";
    for (std::size_t i = 0; i < pages.size(); ++i) {
        out.body += "<g" + with("id", "page" + std::to_string(i + 1)) +
                    with("transform", "translate(0 " + in_mm(height_mm * static_cast<double>(i)) + ")") +
                    ">\n";
        for (const Mark& mark : marks_of(pages[i])) std::visit(out, mark);
        out.body += "</g>\n";
    }
    return out.body + "</svg>\n";
}

}  // namespace kw::print
