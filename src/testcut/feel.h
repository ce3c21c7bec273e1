#pragma once
// What a hand says of a fit, as an interval of clearance. The one place for these numbers.

#include <array>
#include <optional>
#include <string_view>

namespace kw {

enum class Feel { will_not_enter, mallet, hand_tight, slides, rattles };

struct FeelMeaning {
    Feel feel;
    std::string_view word;
    double low_mm;   // clearance, + loose; may be -infinity
    double high_mm;  // may be +infinity
    std::string_view reason;
};

// In order from tight to loose; each begins where the last one ends, so every clearance has one word.
const std::array<FeelMeaning, 5>& feel_table();

// How far two hands differ about an edge between two words, one sigma. The same at every edge: then the
// chances of the five words add up to one. Wide against the words themselves, as a feel is worth less than a
// feeler. Common practice, no source.
inline constexpr double feel_spread_mm = 0.05;

const FeelMeaning& meaning(Feel feel);
std::optional<Feel> feel_of_word(std::string_view word);

}  // namespace kw
