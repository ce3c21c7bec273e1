#include "wood/movement.h"

namespace kw {

std::optional<Refusal> check_climate(const Climate& climate) {
    constexpr double fibre_saturation_percent = 30;
    const Message remedy = Message::say("wood.give_from_driest");
    if (!(climate.driest_percent >= 0 && climate.driest_percent <= fibre_saturation_percent))
        return Refusal{"driest", Message::say("wood.outside"), remedy};
    if (!(climate.dampest_percent >= 0 && climate.dampest_percent <= fibre_saturation_percent))
        return Refusal{"dampest", Message::say("wood.outside"), remedy};
    if (climate.dampest_percent < climate.driest_percent)
        return Refusal{"dampest", Message::say("wood.dampest_is_drier"), remedy};
    return std::nullopt;
}

Length movement(const Species& species, GrainCut cut, Length width, double from_percent, double to_percent) {
    const double per_percent =
        cut == GrainCut::quartersawn ? species.radial_per_percent : species.tangential_per_percent;
    return Length::nearest_mm(width.mm() * per_percent * (to_percent - from_percent));
}

bool movement_holds(double from_percent, double to_percent) {
    const auto holds = [](double percent) { return percent >= 6 && percent <= 14; };
    return holds(from_percent) && holds(to_percent);
}

tl::expected<Length, Refusal> panel_swing(std::string_view species, GrainCut cut, Length width,
                                          const Climate& climate) {
    const Species* known = find_species(species);
    if (known == nullptr) {
        return tl::unexpected(Refusal{"species", Message::say("wood.unknown", in_quotes(species)),
                                      Message::say("wood.one_of", species_names())});
    }
    return abs(movement(*known, cut, width, climate.driest_percent, climate.dampest_percent));
}

}  // namespace kw
