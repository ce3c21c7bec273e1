#include "testcut/feel.h"

#include <algorithm>
#include <limits>

namespace kw {

const std::array<FeelMeaning, 5>& feel_table() {
    // Common practice, no source. The order of magnitude of the tight half agrees with the interference fit
    // of 0.1 mm that Elek et al. (Eur. J. Wood Prod. 2020) found strongest, and that was driven together; the
    // loose half with gaps of 0.1 mm hard to see and 0.2 mm visible.
    constexpr double open = std::numeric_limits<double>::infinity();
    static constexpr std::array<FeelMeaning, 5> table = {{
        {Feel::will_not_enter, "will not enter", -open, -0.20,
         "wood gives a tenth or two under a mallet, no more"},
        {Feel::mallet, "mallet", -0.20, -0.05, "goes home only when driven: the fibres are pressed"},
        {Feel::hand_tight, "hand tight", -0.05, 0.05,
         "friction holds it, a push closes it: about size for size"},
        {Feel::slides, "slides", 0.05, 0.20, "drops in, and no play is seen"},
        {Feel::rattles, "rattles", 0.20, open, "play is seen and heard"},
    }};
    return table;
}

const FeelMeaning& meaning(Feel feel) { return feel_table()[static_cast<std::size_t>(feel)]; }

std::optional<Feel> feel_of_word(std::string_view word) {
    const auto& table = feel_table();
    const auto found =
        std::find_if(table.begin(), table.end(), [word](const FeelMeaning& row) { return row.word == word; });
    if (found == table.end()) return std::nullopt;
    return found->feel;
}

const std::array<Sight, 12>& sight_table() {
    constexpr double open = std::numeric_limits<double>::infinity();
    static constexpr std::array<Sight, 12> table = {{
        {"no paper beside it", "fit", -open, 0.10},
        {"one sheet beside it", "fit", 0.10, 0.20},
        {"two sheets beside it", "fit", 0.20, 0.30},
        {"three sheets beside it", "fit", 0.30, open},
        {"shoulder closed", "shoulder_gap", -open, 0.10},
        {"shoulder a hair open", "shoulder_gap", 0.10, 0.25},
        {"shoulder open", "shoulder_gap", 0.25, open},
        {"side shy", "face_step", -open, -0.30},
        {"side a hair shy", "face_step", -0.30, -0.10},
        {"flush", "face_step", -0.10, 0.10},
        {"side a hair proud", "face_step", 0.10, 0.30},
        {"side proud", "face_step", 0.30, open},
    }};
    return table;
}

const Sight* sight_of_word(std::string_view word) {
    const auto& table = sight_table();
    const auto found =
        std::find_if(table.begin(), table.end(), [word](const Sight& row) { return row.word == word; });
    return found == table.end() ? nullptr : &*found;
}

}  // namespace kw
