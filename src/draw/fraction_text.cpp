#include "draw/fraction_text.h"

#include <optional>

namespace kw::draw {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

std::size_t digits_end(std::string_view text, std::size_t at) {
    while (at < text.size() && is_digit(text[at])) ++at;
    return at;
}

bool joins_number(char c) { return is_digit(c) || is_letter(c) || c == '/' || c == '.' || c == ','; }

struct Fraction {
    std::size_t begin, slash, end;
};

std::optional<Fraction> fraction_at(std::string_view text, std::size_t begin) {
    if (begin > 0 && joins_number(text[begin - 1])) return std::nullopt;
    const std::size_t slash = digits_end(text, begin);
    if (slash == begin || slash >= text.size() || text[slash] != '/') return std::nullopt;
    const std::size_t end = digits_end(text, slash + 1);
    if (end == slash + 1) return std::nullopt;
    if (end < text.size() && (is_letter(text[end]) || text[end] == '/')) return std::nullopt;
    return Fraction{begin, slash, end};
}

void drop_space_after_whole(std::string& plain) {
    const std::size_t n = plain.size();
    if (n >= 2 && plain[n - 1] == ' ' && is_digit(plain[n - 2])) plain.pop_back();
}

}  // namespace

std::vector<TextRun> text_runs(std::string_view text) {
    std::vector<TextRun> runs;
    std::string plain;
    for (std::size_t at = 0; at < text.size();) {
        const auto fraction = fraction_at(text, at);
        if (!fraction) {
            plain += text[at++];
            continue;
        }
        drop_space_after_whole(plain);
        if (!plain.empty()) runs.push_back({plain, RunKind::plain});
        plain.clear();
        runs.push_back({std::string(text.substr(at, fraction->slash - at)), RunKind::numerator});
        runs.push_back({fraction_slash, RunKind::slash});
        runs.push_back({std::string(text.substr(fraction->slash + 1, fraction->end - fraction->slash - 1)),
                        RunKind::denominator});
        at = fraction->end;
    }
    if (!plain.empty()) runs.push_back({plain, RunKind::plain});
    return runs;
}

}  // namespace kw::draw
