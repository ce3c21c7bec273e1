#include "window/chime.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace kw::window {

std::vector<std::int16_t> chime_samples() {
    constexpr double note_s = 0.11, attack_s = 0.006, fades_s = 0.03, swing = 0.5 * 32767;
    const auto count = static_cast<std::size_t>(note_s * chime_rate_hz);
    std::vector<std::int16_t> samples;
    samples.reserve(2 * count);
    for (const double hz : chime_notes_hz)
        for (std::size_t i = 0; i < count; ++i) {
            const double t_s = static_cast<double>(i) / chime_rate_hz, left_s = note_s - t_s;
            // Struck, and let ring; the ends are rounded off, since a step in the signal is a click.
            const double loudness =
                std::min({1.0, t_s / attack_s, left_s / attack_s}) * std::exp(-t_s / fades_s);
            samples.push_back(static_cast<std::int16_t>(
                std::lround(swing * loudness * std::sin(2 * std::numbers::pi * hz * t_s))));
        }
    return samples;
}

}  // namespace kw::window
