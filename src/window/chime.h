#pragma once
// The sound at another step: two notes, a fourth apart, that can be told from a machine's hum.

#include <cstdint>
#include <vector>

namespace kw::window {

inline constexpr int chime_rate_hz = 48000;
inline constexpr double chime_notes_hz[] = {
    659.26, 880.0};  // e'' and a'' of equal temperament, a' at 440 Hz (ISO 16)

// Samples of one channel, from silence to silence, at half of the full swing.
std::vector<std::int16_t> chime_samples();

}  // namespace kw::window
