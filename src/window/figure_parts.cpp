#include "window/figure_parts.h"

#include "draw/fraction_text.h"

namespace kw::window {
namespace {

std::string trimmed(std::string text) {
    while (!text.empty() && text.back() == ' ') text.pop_back();
    while (!text.empty() && text.front() == ' ') text.erase(text.begin());
    return text;
}

// A remainder mark after a number without a fraction: "10 +".
void split_mark(FigureParts& parts) {
    for (const std::string_view mark : {" +", " \u2212"}) {
        const std::string& text = parts.before;
        if (text.size() <= mark.size() || text.compare(text.size() - mark.size(), mark.size(), mark) != 0)
            continue;
        parts.after = mark.substr(1);
        parts.before.resize(text.size() - mark.size());
        return;
    }
}

}  // namespace

FigureParts figure_parts(std::string_view value) {
    FigureParts parts;
    for (const draw::TextRun& run : draw::text_runs(value)) {
        if (run.kind == draw::RunKind::numerator && parts.numerator.empty()) parts.numerator = run.text;
        else if (run.kind == draw::RunKind::denominator && parts.denominator.empty())
            parts.denominator = run.text;
        else if (run.kind == draw::RunKind::plain)
            (parts.numerator.empty() ? parts.before : parts.after) += run.text;
    }
    parts.before = trimmed(parts.before);
    parts.after = trimmed(parts.after);
    if (parts.numerator.empty()) split_mark(parts);
    return parts;
}

}  // namespace kw::window
