// The cut list for spreadsheets: RFC 4180, Common Format and MIME Type for Comma-Separated Values Files, 2005; in UTF-8. One header line,
// lines end in CR LF, texts stand in quotes and a quote in them is doubled.

#include <initializer_list>

#include "command/write.h"
#include "file/document.h"
#include "job/lay_out.h"
#include "words/names.h"

namespace kw {
namespace {

std::string in_quotes(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) out += c == '"' ? "\"\"" : std::string(1, c);
    return out + "\"";
}

// Which way the grain runs; a part whose stock may be turned has none to mind.
const char* grain_of(const Job& job, const Part& part) {
    const Stock* const stock = job.stock_named(part.stock);
    return stock && stock->may_turn ? "any" : "length";
}

}  // namespace

std::string parts_csv(const Work& work) {
    std::string out =
        "part,drawer,role,copy,length,width,thickness,length_mm,width_mm,thickness_mm,stock,"
        "rough_length,rough_width,rough_length_mm,rough_width_mm,grain,banded_edges,band_mm\r\n";
    const auto shown = [&](std::initializer_list<Length> sizes) {
        for (const Length size : sizes)
            out += "," + in_quotes(without_mark(show_with_unit(size, work.job.locale)));
    };
    const auto numbers = [&](std::initializer_list<Length> sizes) {
        for (const Length size : sizes) out += "," + Json(size.mm()).dump();
    };
    for (const Part& part : work.plan.parts) {
        const RoughSize rough = rough_size(work.job, part);
        out += in_quotes(part.id) + "," + in_quotes(part.drawer) + "," +
               std::string(name_of(part.size.role)) + "," + std::to_string(part.copy);
        shown({part.size.length, part.size.width, part.size.thickness});
        numbers({part.size.length, part.size.width, part.size.thickness});
        out += "," + in_quotes(part.stock);
        shown({rough.length, rough.width});
        numbers({rough.length, rough.width});
        std::string edges;
        for (const BandedEdge edge : part.banded)
            edges += (edges.empty() ? "" : " ") + std::string(name_of(edge));
        out += std::string(",") + grain_of(work.job, part) + "," + in_quotes(edges);
        numbers({edges.empty() ? Length{} : part.band});
        out += "\r\n";
    }
    return out;
}

}  // namespace kw
