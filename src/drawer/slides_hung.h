#pragma once
// Slides as they are screwed to the case: whether they run parallel and at one height, by readings of where they are.

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "length/length.h"

namespace kw {

enum class SlideReading {
    left_front,  // from the floor of the opening to the slide's middle, at its front end
    left_rear,
    right_front,
    right_rear,
    between_front,  // from slide to slide across the opening
    between_rear,
};
inline constexpr std::size_t slide_reading_count = 6;

// The names used in job files: "left_slide_front", "between_rear".
std::string_view name_of(SlideReading reading);
const std::vector<SlideReading>& slide_readings();

struct SlidesRead {
    std::array<std::optional<Length>, slide_reading_count> readings{};

    std::optional<Length>& at(SlideReading reading) { return readings[static_cast<std::size_t>(reading)]; }
    const std::optional<Length>& at(SlideReading reading) const {
        return readings[static_cast<std::size_t>(reading)];
    }
    bool is_empty() const;
    bool operator==(const SlidesRead&) const = default;
};

struct SlidesHung {
    // How far to raise each end so that it comes where it is wanted; - lower. In the order of SlideReading; 0 where nothing was read.
    std::array<Length, 4> up{};
    // How much wider it is between them at the front than at the rear; nothing where not both were read.
    std::optional<Length> wider_in_front;
    bool is_compared = false;  // one thing with another, or a height with the one that is wanted
    bool operator==(const SlidesHung&) const = default;
};

// `wanted`: the height of the slide's middle above the floor of the opening; where that is not known, the mean of what was read. Nothing
// where nothing was read.
std::optional<SlidesHung> slides_hung(const SlidesRead& read, std::optional<Length> wanted);

}  // namespace kw
