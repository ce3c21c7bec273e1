#include <algorithm>
#include <array>
#include <cstdint>

#include "draw/fraction_text.h"
#include "draw/line_breaks.h"
#include "print/text_size.h"

namespace kw::print {
namespace {

// Advance widths in thousandths of an em, read from the font's own files (Inter 4.0 beta).
// Regular, U+0020 to U+007E.
constexpr std::array<short, 95> regular_ascii{
    281, 278, 403, 631, 638, 813, 639, 222, 362, 362, 500, 659, 280, 460, 276, 357, 625, 464, 605,
    636, 642, 608, 624, 571, 616, 624, 276, 280, 659, 659, 659, 507, 936, 676, 651, 727, 719, 598,
    587, 743, 740, 264, 543, 652, 563, 889, 753, 761, 635, 761, 639, 638, 642, 741, 676, 949, 642,
    665, 625, 362, 357, 362, 469, 452, 497, 564, 621, 558, 621, 582, 361, 609, 591, 237, 237, 544,
    237, 869, 585, 597, 609, 609, 372, 523, 364, 581, 557, 813, 540, 557, 541, 362, 327, 362, 659};
// Semi Bold, the same.
constexpr std::array<short, 95> strong_ascii{
    248, 309, 396, 643, 649, 844, 663, 213, 393, 393, 543, 673, 295, 466, 290, 379, 667, 481,  621,
    652, 666, 632, 648, 587, 646, 648, 290, 295, 673, 673, 673, 544, 999, 724, 657, 744, 724,  608,
    586, 755, 744, 275, 561, 677, 566, 906, 741, 775, 643, 776, 651, 649, 660, 734, 724, 1007, 690,
    705, 653, 393, 379, 393, 481, 468, 497, 575, 630, 577, 630, 593, 377, 625, 613, 261, 261,  569,
    261, 898, 610, 608, 625, 625, 397, 549, 380, 608, 576, 837, 563, 576, 562, 393, 358, 393,  673};
// Regular, U+00A0 to U+017F.
constexpr std::array<short, 224> regular_latin{
    281, 278, 558, 631, 723, 548, 266, 551, 591, 915, 449, 540, 540, 460, 670, 449, 455, 659, 420, 430, 497,
    622, 599, 276, 267, 313, 449, 540, 884, 926, 949, 507, 676, 676, 676, 676, 676, 676, 990, 727, 598, 598,
    598, 598, 264, 264, 264, 264, 719, 753, 761, 761, 761, 761, 761, 659, 761, 741, 741, 741, 741, 665, 631,
    609, 564, 564, 564, 564, 564, 564, 925, 558, 582, 582, 582, 582, 237, 237, 237, 237, 580, 585, 597, 597,
    597, 597, 597, 659, 597, 581, 581, 581, 581, 557, 609, 557, 676, 564, 676, 564, 676, 564, 727, 558, 727,
    558, 727, 558, 727, 558, 719, 677, 719, 621, 598, 582, 598, 582, 598, 582, 598, 582, 598, 582, 743, 609,
    743, 609, 743, 609, 743, 609, 740, 591, 777, 591, 443, 278, 264, 237, 264, 237, 264, 237, 264, 237, 807,
    474, 543, 237, 652, 544, 631, 563, 237, 563, 237, 563, 305, 563, 315, 563, 237, 753, 585, 753, 585, 753,
    585, 994, 753, 585, 761, 597, 761, 597, 761, 597, 953, 990, 639, 372, 639, 372, 639, 372, 638, 523, 638,
    523, 638, 523, 638, 523, 642, 364, 642, 364, 642, 364, 741, 581, 741, 581, 741, 581, 741, 581, 741, 581,
    741, 581, 949, 813, 665, 557, 665, 625, 541, 625, 541, 625, 541, 267};
// Semi Bold, the same.
constexpr std::array<short, 224> strong_latin{
    248,  309, 577, 658,  751, 564, 319, 579, 553, 915, 474, 597, 566, 466, 666, 526, 458, 673,  423,
    438,  497, 652, 606,  290, 339, 318, 473, 599, 881, 919, 960, 544, 724, 724, 724, 724, 724,  724,
    1017, 744, 608, 608,  608, 608, 275, 275, 275, 275, 724, 741, 775, 775, 775, 775, 775, 673,  775,
    734,  734, 734, 734,  705, 657, 646, 575, 575, 575, 575, 575, 575, 917, 577, 593, 593, 593,  593,
    261,  261, 261, 261,  593, 610, 608, 608, 608, 608, 608, 673, 608, 608, 608, 608, 608, 576,  612,
    576,  724, 575, 724,  575, 724, 575, 744, 577, 744, 577, 744, 577, 744, 577, 724, 716, 724,  630,
    608,  593, 608, 593,  608, 593, 608, 593, 608, 593, 755, 625, 755, 625, 755, 625, 755, 625,  744,
    613,  799, 613, 448,  285, 275, 261, 275, 261, 275, 266, 275, 261, 836, 521, 561, 261, 677,  569,
    657,  566, 261, 566,  261, 566, 352, 574, 380, 578, 261, 741, 610, 741, 610, 741, 610, 1031, 741,
    616,  775, 608, 775,  608, 775, 608, 996, 981, 651, 397, 651, 397, 651, 397, 649, 549, 649,  549,
    649,  549, 649, 549,  660, 380, 660, 404, 660, 380, 734, 608, 734, 608, 734, 608, 734, 608,  734,
    608,  734, 608, 1007, 837, 705, 576, 705, 653, 562, 653, 562, 653, 562, 282};

struct SignWidth {
    std::uint32_t sign;
    short regular, strong;
};
constexpr std::array<SignWidth, 26> signs{
    {{0x2010, 358, 429}, {0x2013, 500, 500},   {0x2014, 1000, 1000}, {0x2018, 199, 228},
     {0x2019, 185, 214}, {0x201c, 381, 408},   {0x201d, 381, 407},   {0x201e, 381, 407},
     {0x2022, 563, 496}, {0x2026, 821, 806},   {0x2032, 220, 259},   {0x2033, 405, 461},
     {0x2044, 274, 273}, {0x2190, 955, 955},   {0x2191, 955, 955},   {0x2192, 955, 955},
     {0x2193, 955, 955}, {0x2212, 659, 673},   {0x2248, 659, 673},   {0x2264, 659, 673},
     {0x2265, 659, 673}, {0x25b2, 1009, 1035}, {0x25b3, 1009, 1035}, {0x26a0, 1009, 1009},
     {0x2713, 881, 881}, {0x25c6, 1051, 1058}}};
constexpr int other_sign = 1000;  // of what the font need not have: room enough

// The sign that begins at `at`, which goes on to the next. What is no UTF-8 counts as one sign a byte.
std::uint32_t next_sign(std::string_view text, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const std::uint32_t lead = byte(at++);
    const int more = lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : lead >= 0xc0 ? 1 : 0;
    std::uint32_t sign = more == 3   ? lead & 0x07u
                         : more == 2 ? lead & 0x0fu
                         : more == 1 ? lead & 0x1fu
                                     : lead;
    for (int i = 0; i < more && at < text.size() && (byte(at) & 0xc0u) == 0x80u; ++i)
        sign = sign << 6 | (byte(at++) & 0x3fu);
    return sign;
}

int advance(std::uint32_t sign, bool strong) {
    if (sign >= 0x20 && sign <= 0x7e) return (strong ? strong_ascii : regular_ascii)[sign - 0x20];
    if (sign >= 0xa0 && sign <= 0x17f) return (strong ? strong_latin : regular_latin)[sign - 0xa0];
    for (const SignWidth& one : signs)
        if (one.sign == sign) return strong ? one.strong : one.regular;
    return other_sign;
}

double plain_em(std::string_view text, bool strong) {
    int sum = 0;
    for (std::size_t at = 0; at < text.size();) sum += advance(next_sign(text, at), strong);
    return sum / 1000.0;
}

double width_em(std::string_view text, bool strong) {
    double em = 0;
    for (const draw::TextRun& run : draw::text_runs(text)) {
        const bool is_digits = run.kind == draw::RunKind::numerator || run.kind == draw::RunKind::denominator;
        if (run.kind == draw::RunKind::numerator && em > 0) em += draw::fraction_gap_em;
        em += plain_em(run.text, strong) * (is_digits ? draw::fraction_digit_size : 1.0);
    }
    return em;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// Whether a line may not end between these two words: within a length, or before its unit or its mark.
bool stay_together(std::string_view before, std::string_view after) {
    if (draw::of_one_length(before, after)) return true;
    if (before.empty() || !is_digit(before.back())) return after == "\u2212" || after == "+";
    return is_digit(after.front()) || after.front() == '(' || after == "+" || after == "\u2212" ||
           after.substr(0, 2) == "in" || after.substr(0, 2) == "mm" || after.substr(0, 2) == "cm" ||
           after.front() == '%';
}

// The words of a text, with those that stay together in one.
std::vector<std::string> pieces_of(std::string_view text) {
    std::vector<std::string> pieces;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string_view word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) continue;
        if (!pieces.empty() && stay_together(pieces.back(), word)) pieces.back() += " " + std::string(word);
        else pieces.emplace_back(word);
    }
    return pieces;
}

// As much of the word as has room, at least one sign.
std::size_t end_of_room(std::string_view word, const TextStyle& style, double width_mm) {
    std::size_t end = 0, next = 0;
    while (next < word.size()) {
        next_sign(word, next);
        if (end > 0 && text_width_mm(word.substr(0, next), style) > width_mm) break;
        end = next;
    }
    return end;
}

}  // namespace

double text_width_mm(std::string_view text, const TextStyle& style) {
    return width_em(text, style.strong) * style.size_mm;
}

double text_width_px(std::string_view text, double size_px, bool bold) {
    return width_em(text, bold) * size_px;
}

std::vector<std::string> wrapped(std::string_view text, const TextStyle& style, double width_mm) {
    std::vector<std::string> lines;
    std::string line;
    for (std::string word : pieces_of(text)) {
        const std::string longer = line.empty() ? word : line + " " + word;
        if (text_width_mm(longer, style) <= width_mm) {
            line = longer;
            continue;
        }
        if (!line.empty()) lines.push_back(line);
        while (text_width_mm(word, style) > width_mm) {
            const std::size_t end = end_of_room(word, style, width_mm);
            if (end == word.size()) break;
            lines.push_back(word.substr(0, end));
            word.erase(0, end);
        }
        line = word;
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

std::string shortened(std::string text, const TextStyle& style, double width_mm) {
    if (text_width_mm(text, style) <= width_mm) return text;
    const std::string ellipsis = "\u2026";
    const double room = width_mm - text_width_mm(ellipsis, style);
    text.erase(end_of_room(text, style, room));
    while (!text.empty() && (text.back() == ' ' || text.back() == ',')) text.pop_back();
    return text + ellipsis;
}

// Inter's own: an em holds 0.969 above the baseline and 0.242 below it.
double ascent_mm(const TextStyle& style) { return 0.97 * style.size_mm; }
double descent_mm(const TextStyle& style) { return 0.242 * style.size_mm; }
double line_height_mm(const TextStyle& style) { return 1.26 * style.size_mm; }

}  // namespace kw::print
