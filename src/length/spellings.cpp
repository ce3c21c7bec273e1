#include "length/spellings.h"

#include <algorithm>
#include <array>
#include <string>

namespace kw {
namespace {

using Kind = TokenKind;

struct Symbol {
    std::string_view text;
    Kind kind;
    Measure measure = Measure::inch;
    int over = 0;
    int under = 1;
};

// Where one begins with another, the longer stands first. A phone turns a hyphen between digits into an en
// dash; the proper minus is nobody's hyphen.
constexpr std::array symbols = {
    Symbol{"+", Kind::plus},
    Symbol{"-", Kind::hyphen},
    Symbol{"\u2010", Kind::hyphen},
    Symbol{"\u2011", Kind::hyphen},
    Symbol{"\u2013", Kind::hyphen},
    Symbol{"\u2212", Kind::minus},
    Symbol{"''", Kind::measure, Measure::inch},
    Symbol{"\u2032\u2032", Kind::measure, Measure::inch},
    Symbol{"\u2019\u2019", Kind::measure, Measure::inch},
    Symbol{"\"", Kind::measure, Measure::inch},
    Symbol{"\u2033", Kind::measure, Measure::inch},
    Symbol{"\u201d", Kind::measure, Measure::inch},
    Symbol{"'", Kind::measure, Measure::foot},
    Symbol{"\u2032", Kind::measure, Measure::foot},
    Symbol{"\u2019", Kind::measure, Measure::foot},
    Symbol{"½", Kind::fraction, Measure::inch, 1, 2},
    Symbol{"⅓", Kind::fraction, Measure::inch, 1, 3},
    Symbol{"⅔", Kind::fraction, Measure::inch, 2, 3},
    Symbol{"¼", Kind::fraction, Measure::inch, 1, 4},
    Symbol{"¾", Kind::fraction, Measure::inch, 3, 4},
    Symbol{"⅛", Kind::fraction, Measure::inch, 1, 8},
    Symbol{"⅜", Kind::fraction, Measure::inch, 3, 8},
    Symbol{"⅝", Kind::fraction, Measure::inch, 5, 8},
    Symbol{"⅞", Kind::fraction, Measure::inch, 7, 8},
};

constexpr std::array<std::string_view, 8> spaces = {" ",      "\t",     "\n",     "\r",
                                                    "\u00a0", "\u2007", "\u2009", "\u202f"};

struct Word {
    std::string_view text;
    Measure measure;
};

constexpr std::array words = {
    Word{"in", Measure::inch},   Word{"inch", Measure::inch},     Word{"inches", Measure::inch},
    Word{"ft", Measure::foot},   Word{"foot", Measure::foot},     Word{"feet", Measure::foot},
    Word{"m", Measure::metre},   Word{"cm", Measure::centimetre}, Word{"mm", Measure::millimetre},
    Word{"zoll", Measure::inch},
};

bool begins_with(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

std::string lowercase(std::string_view word) {
    std::string out(word);
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

// What the first byte of a UTF-8 character promises; 0 where it can't be one.
std::size_t promised_bytes(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xc2 && first <= 0xdf) return 2;
    if (first >= 0xe0 && first <= 0xef) return 3;
    return first >= 0xf0 && first <= 0xf4 ? 4 : 0;
}

bool is_whole_character(std::string_view bytes) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
    if (bytes.size() != promised_bytes(byte(0))) return false;
    for (std::size_t i = 1; i < bytes.size(); ++i)
        if ((byte(i) & 0xc0) != 0x80) return false;
    // Not longer than need be (e0, f0), no half of a surrogate pair (ed), nothing beyond the last character
    // (f4).
    switch (byte(0)) {
        case 0xe0: return byte(1) >= 0xa0;
        case 0xed: return byte(1) < 0xa0;
        case 0xf0: return byte(1) >= 0x90;
        case 0xf4: return byte(1) < 0x90;
        default: return true;
    }
}

bool can_be_shown(std::string_view character) {
    const auto first = static_cast<unsigned char>(character[0]);
    return character.size() > 1 ? is_whole_character(character) : first >= 0x20 && first < 0x7f;
}

}  // namespace

std::optional<Token> symbol_at(std::string_view text) {
    const auto found = std::find_if(symbols.begin(), symbols.end(),
                                    [&](const Symbol& s) { return begins_with(text, s.text); });
    if (found == symbols.end()) return std::nullopt;
    return Token{found->kind, 0, found->text.size(), Ratio{found->over, found->under}, found->measure};
}

std::size_t space_at(std::string_view text) {
    for (const std::string_view space : spaces)
        if (begins_with(text, space)) return space.size();
    return 0;
}

std::size_t slash_at(std::string_view text) {
    for (const std::string_view slash : {std::string_view("/"), std::string_view("\u2044")})
        if (begins_with(text, slash)) return slash.size();
    return 0;
}

std::optional<Measure> measure_named(std::string_view word) {
    const std::string lower = lowercase(word);
    const auto found =
        std::find_if(words.begin(), words.end(), [&](const Word& w) { return w.text == lower; });
    if (found == words.end()) return std::nullopt;
    return found->measure;
}

std::size_t character_at(std::string_view text) {
    const std::size_t bytes = promised_bytes(static_cast<unsigned char>(text[0]));
    return bytes > 1 && bytes <= text.size() && is_whole_character(text.substr(0, bytes)) ? bytes : 1;
}

std::string plain(std::string_view text) {
    constexpr int longest = 40;
    std::string out;
    for (int count = 0; !text.empty(); ++count) {
        if (count == longest) return out + "…";
        const std::string_view character = text.substr(0, character_at(text));
        out += can_be_shown(character) ? std::string(character) : "?";
        text.remove_prefix(character.size());
    }
    return out;
}

}  // namespace kw
