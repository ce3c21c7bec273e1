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

// What is seen or felt with a fingertip on the closed joint, where nothing is measured.
struct Sight {
    std::string_view word;
    std::string_view reading;  // that it stands for: shoulder_gap, face_step
    double low_mm;  // of that reading, as it would be without end: a shoulder that is closed may have room
    double high_mm;
};

// For each reading in order, each beginning where the last one ends. Common practice, no source, but for the gaps: 0.1 mm is
// hard to see and 0.2 mm is seen (see feel.cpp); and for the sheets: office paper of 80 g/m2 is about 0.1 mm thick.
const std::array<Sight, 12>& sight_table();
const Sight* sight_of_word(std::string_view word);
inline constexpr double sight_spread_mm = 0.05;  // one sigma about every edge

}  // namespace kw
