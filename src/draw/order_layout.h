#pragma once
// Where the parts of the order's picture go, and which words they have room for. Private to the picture.

#include <set>

#include "draw/order_view.h"
#include "draw/timeline.h"

namespace kw::draw {

// In paper pixels.
inline constexpr double line_px = 25;          // a line of words
inline constexpr double axis_px = 29;          // minutes above a row
inline constexpr double cutter_px = 28;        // which cutter is on
inline constexpr double foot_px = 18;          // what the time goes into
inline constexpr double head_pad_px = 2;       // above and beneath the words of a head
inline constexpr double pin_px = 12;           // a pin's mark, high and wide
inline constexpr double lane_gap_px = 8;       // beneath a lane
inline constexpr double word_pad_px = 4;       // beside the words of a head
inline constexpr double legend_px = 34;        // a line of it
inline constexpr double sign_gap_px = 20;      // from one sign to the next
inline constexpr double swatch_gap_px = 7;     // from a swatch to its words
inline constexpr double swatch_px = 26;        // of the legend
inline constexpr double most_gutter = 0.22;    // of the width, for the machines' names
inline constexpr std::size_t most_rows = 8;    // of time
inline constexpr int most_lines = 4;           // of words in a block
inline constexpr double enough_labels = 0.85;  // of the blocks have room for their names

struct OrderLayout {
    std::vector<TimeRow> rows;
    double gutter_px = 0;
    double px_per_s = 1;
    int lines = 1;  // of words in a block
    std::size_t lanes = 1;

    double head_px() const { return lines * line_px + 2 * head_pad_px; }
    double lane_px() const { return cutter_px + head_px() + foot_px + lane_gap_px; }
    double row_px() const { return axis_px + static_cast<double>(lanes) * lane_px(); }
    double x(std::size_t row, std::int64_t at_s) const {
        return gutter_px + static_cast<double>(at_s - rows[row].from_s) * px_per_s;
    }
    // The drawing's y is upward: all of it lies below 0.
    double row_y(std::size_t row) const { return -static_cast<double>(row) * row_px(); }
    double lane_y(std::size_t row, std::size_t lane) const {
        return row_y(row) - axis_px - static_cast<double>(lane) * lane_px();
    }
};

// What a sign in the feet of the blocks means.
struct OrderSign {
    int order = 0;  // in the legend
    std::string words;
    Material material = Material::ground;
    bool operator<(const OrderSign& other) const { return order < other.order; }
};
std::set<OrderSign> signs_of(const Timeline& timeline, const Words& words);

// Of the marks of pins in the legend: "first", "last", or "first, last"; empty where nothing is pinned.
std::string pin_sign(const Timeline& timeline, const Words& words);

// Words, and how much room they take.
class OrderWords {
public:
    OrderWords(const Work& work, const std::string& next, const TextMeasure& measure)
        : work_(work), next_(next), measure_(measure) {}

    const Words& words() const { return work_.job.locale.words(); }
    bool is_next(const TimedStep& step) const { return !step.is_done && step.step == next_; }
    double width(std::string_view text, bool bold = false) const { return measure_(text, label_px, bold); }
    std::string shortened(const std::string& text, double room, bool bold) const;
    bool has_room_for_name(const TimedStep& step, const OrderLayout& layout) const;
    // What is written on a block: its name; where it fits its work; then how fence and height are set.
    std::vector<std::string> head_lines(const TimedStep& step, const OrderLayout& layout) const;
    // Of a sign in the legend, with the room to the next.
    double sign_px(const std::string& words) const;

private:
    std::vector<std::string> wrapped(const std::string& text, double room, std::size_t most) const;

    const Work& work_;
    const std::string& next_;
    const TextMeasure& measure_;
};

// As few rows as let nearly every block have its name, as many as there is room for.
OrderLayout lay_out(const Timeline& timeline, const OrderWords& words, const OrderRoom& room);

}  // namespace kw::draw
