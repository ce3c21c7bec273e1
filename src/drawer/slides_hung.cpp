#include "drawer/slides_hung.h"

#include <algorithm>

namespace kw {
namespace {

constexpr std::size_t ends_of_slides = 4;  // the first of the readings

std::optional<Length> mean_height(const SlidesRead& read) {
    Length sum;
    std::int64_t count = 0;
    for (std::size_t i = 0; i < ends_of_slides; ++i)
        if (read.readings[i]) {
            sum += *read.readings[i];
            ++count;
        }
    return count == 0 ? std::nullopt : std::optional(sum.scaled(1, count));
}

}  // namespace

std::string_view name_of(SlideReading reading) {
    constexpr std::array<std::string_view, slide_reading_count> names = {
        "left_slide_front", "left_slide_rear", "right_slide_front",
        "right_slide_rear", "between_front",   "between_rear"};
    return names[static_cast<std::size_t>(reading)];
}

const std::vector<SlideReading>& slide_readings() {
    static const std::vector<SlideReading> all = [] {
        std::vector<SlideReading> out;
        for (std::size_t i = 0; i < slide_reading_count; ++i) out.push_back(static_cast<SlideReading>(i));
        return out;
    }();
    return all;
}

bool SlidesRead::is_empty() const {
    return std::none_of(readings.begin(), readings.end(), [](const auto& one) { return one.has_value(); });
}

std::optional<SlidesHung> slides_hung(const SlidesRead& read, std::optional<Length> wanted) {
    if (read.is_empty()) return std::nullopt;
    SlidesHung hung;
    const std::optional<Length> height = wanted ? wanted : mean_height(read);
    for (std::size_t i = 0; i < ends_of_slides; ++i)
        if (read.readings[i]) hung.up[i] = *height - *read.readings[i];
    const auto &front = read.at(SlideReading::between_front), &rear = read.at(SlideReading::between_rear);
    if (front && rear) hung.wider_in_front = *front - *rear;
    const auto heights_read = std::count_if(read.readings.begin(), read.readings.begin() + ends_of_slides,
                                            [](const auto& one) { return one.has_value(); });
    hung.is_compared = hung.wider_in_front || heights_read > (wanted ? 0 : 1);
    return hung;
}

}  // namespace kw
