#include "draw/order_view.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "draw/order_layout.h"

namespace kw::draw {
namespace {

constexpr double tick_step_px = 120;     // minutes stand no closer
constexpr double least_seen_px = 0.4;    // narrower pieces of a foot are not seen
constexpr double least_outlined_px = 8;  // an outline would hide what is in a narrower foot

class Maker {
public:
    Maker(const Work& work, const std::string& next, const OrderRoom& room, const TextMeasure& measure)
        : room_(room),
          words_(work, next, measure),
          timeline_(timeline_of(work)),
          layout_(lay_out(timeline_, words_, room)) {}

    OrderView run() {
        for (std::size_t row = 0; row < layout_.rows.size(); ++row) {
            draw_machines(row);
            draw_walks(row);
            for (std::size_t i = layout_.rows[row].first; i < layout_.rows[row].end; ++i) draw_step(row, i);
            for (std::size_t lane = 0; lane < timeline_.machines.size(); ++lane) {
                draw_cutters(row, lane);
                draw_standing(row, lane);
            }
            draw_pins(row);
            draw_axis(row);
            const double y = layout_.row_y(row);
            view_.rows.push_back({layout_.rows[row].first,
                                  layout_.rows[row].end,
                                  {layout_.gutter_px, y - layout_.row_px(), room_.width_px, y}});
        }
        draw_now();
        const double foot = draw_legend(-layout_.row_px() * static_cast<double>(layout_.rows.size()));
        view_.drawing.frame = Box{0, foot, room_.width_px, 0};
        view_.drawing.title = title();
        by_look();
        return std::move(view_);
    }

private:
    double width(std::string_view text, bool bold = false) const { return words_.width(text, bold); }

    void say(Point at, std::string text, Anchor anchor, Emphasis emphasis, bool bare) {
        Label label{at, std::move(text), anchor, emphasis};
        label.bare = bare;
        view_.drawing.shapes.emplace_back(std::move(label));
    }

    // Shapes of one look one after another, so that they can be painted together. Blocks do not lie on each other, so it looks the same: walks
    // lie beneath all, then feet, heads, lines, pins, words.
    void by_look() {
        const auto look = [](const Shape& shape) {
            if (const auto* fill = std::get_if<Fill>(&shape))
                return std::pair(fill->material == Material::cutter && fill->outlined ? 4  // pins
                                 : fill->outlined                                     ? 2
                                                                                      : 1,
                                 static_cast<int>(fill->material));
            if (const auto* line = std::get_if<Line>(&shape))
                return std::pair(line->stroke == Stroke::walk ? 0 : 3, static_cast<int>(line->stroke));
            return std::pair(5, 0);
        };
        std::stable_sort(view_.drawing.shapes.begin(), view_.drawing.shapes.end(),
                         [&](const Shape& a, const Shape& b) { return look(a) < look(b); });
    }

    // ---- one row

    void draw_machines(std::size_t row) {
        for (std::size_t lane = 0; lane < timeline_.machines.size(); ++lane) {
            const double y = layout_.lane_y(row, lane) - cutter_px - (layout_.head_px() + foot_px) / 2;
            const std::string name =
                words_.shortened(timeline_.machines[lane], layout_.gutter_px - 2 * word_pad_px, true);
            say({word_pad_px, y}, name, Anchor::left, Emphasis::strong, true);
        }
    }

    struct Block {
        double left, right, top, head_foot, foot;
    };
    Block block_of(std::size_t row, const TimedStep& step) const {
        const double top = layout_.lane_y(row, step.lane) - cutter_px;
        return {layout_.x(row, step.from_s), layout_.x(row, step.to_s()), top, top - layout_.head_px(),
                top - layout_.head_px() - foot_px};
    }

    void draw_step(std::size_t row, std::size_t index) {
        const TimedStep& step = timeline_.steps[index];
        const Block block = block_of(row, step);
        const bool next = words_.is_next(step);
        std::int64_t at_s = step.from_s;
        for (const Piece& piece : step.pieces) {
            const double left = layout_.x(row, at_s), right = layout_.x(row, at_s + piece.seconds);
            at_s += piece.seconds;
            if (right - left < least_seen_px) continue;
            Fill fill{{rectangle({left, block.foot, right, block.head_foot})}, piece.material};
            fill.outlined = false;
            view_.drawing.shapes.emplace_back(std::move(fill));
        }
        const Material material = step.is_done ? Material::done : next ? Material::next : Material::ahead;
        Fill head{{rectangle({block.left, block.head_foot, block.right, block.top})}, material};
        view_.drawing.shapes.emplace_back(std::move(head));
        if (block.right - block.left >= least_outlined_px)
            view_.drawing.shapes.emplace_back(Line{{{block.left, block.head_foot},
                                                    {block.left, block.foot},
                                                    {block.right, block.foot},
                                                    {block.right, block.head_foot}},
                                                   Stroke::thin});
        double y = block.top - head_pad_px;
        for (const std::string& line : words_.head_lines(step, layout_)) {
            const bool strong = next && y == block.top - head_pad_px;
            say({block.left + word_pad_px + width(line, strong) / 2, y}, line, Anchor::top,
                strong ? Emphasis::strong : Emphasis::plain, true);
            y -= line_px;
        }
        view_.places.push_back({step.step,
                                {block.left, layout_.lane_y(row, step.lane) - layout_.lane_px(), block.right,
                                 layout_.lane_y(row, step.lane)}});
    }

    // From the block that was left to the one that is gone to.
    void draw_walks(std::size_t row) {
        for (std::size_t i = layout_.rows[row].first + 1; i < layout_.rows[row].end; ++i) {
            const TimedStep &from = timeline_.steps[i - 1], &to = timeline_.steps[i];
            if (from.lane == to.lane) continue;
            const Block a = block_of(row, from), b = block_of(row, to);
            const bool down = to.lane > from.lane;
            view_.drawing.shapes.emplace_back(
                Line{{{a.right, down ? a.foot : a.top}, {b.left, down ? b.top : b.foot}}, Stroke::walk});
            walks_ = true;
        }
    }

    // A line above the blocks for as long as a cutter is on, with its name where that fits.
    void draw_cutters(std::size_t row, std::size_t lane) {
        const TimeRow& span = layout_.rows[row];
        std::optional<std::int64_t> since = before_row(span.first, lane);
        std::string cutter = since ? cutter_before(span.first, lane) : std::string();
        const auto close = [&](std::int64_t until_s) {
            if (since && until_s > *since) draw_cutter(row, lane, *since, until_s, cutter);
        };
        for (std::size_t i = span.first; i < span.end; ++i) {
            const TimedStep& step = timeline_.steps[i];
            if (step.lane != lane) continue;
            if (step.setup->cutter == cutter && since) continue;
            close(step.from_s);
            const bool changed = !step.pieces.empty() && step.pieces.front().what == "cutter";
            since = step.from_s + (changed ? step.pieces.front().seconds : 0);
            cutter = step.setup->cutter;
        }
        close(is_used_after(span.end, lane) ? span.to_s : last_use(lane, span));
    }

    // A line along the feet from block to block where the machine stands as it was set while the maker is elsewhere.
    void draw_standing(std::size_t row, std::size_t lane) {
        const TimeRow& span = layout_.rows[row];
        const TimedStep* before = nullptr;
        for (std::size_t i = 0; i < timeline_.steps.size(); ++i) {
            const TimedStep& step = timeline_.steps[i];
            if (step.lane != lane) continue;
            const bool is_set = step.still_set || step.setting_s() == 0;
            if (before && is_set && i >= span.first && before->to_s() < step.from_s) {
                const double left = layout_.x(row, std::max(before->to_s(), span.from_s));
                const double right =
                    std::min(layout_.x(row, std::min(step.from_s, span.to_s)), room_.width_px);
                const double y = block_of(row, step).foot + foot_px / 2;
                if (left < right) {
                    view_.drawing.shapes.emplace_back(Line{{{left, y}, {right, y}}, Stroke::outline});
                    stands_ = true;
                }
            }
            before = &step;
            if (i >= span.end) break;
        }
    }

    void draw_cutter(std::size_t row, std::size_t lane, std::int64_t from_s, std::int64_t to_s,
                     const std::string& cutter) {
        const double y = layout_.lane_y(row, lane) - cutter_px + 4;
        const double left = layout_.x(row, from_s), right = layout_.x(row, to_s);
        view_.drawing.shapes.emplace_back(
            Line{{{left, y - 4}, {left, y}, {right, y}, {right, y - 4}}, Stroke::thin});
        const double text = width(cutter);
        if (const auto start = free_start(row, lane, left + word_pad_px, right - word_pad_px, text))
            say({*start + text / 2, y + 1}, cutter, Anchor::bottom, Emphasis::plain, true);
    }

    // The leftmost place for a text of this width above the blocks of a lane where neither a walk nor the mark of now crosses it.
    std::optional<double> free_start(std::size_t row, std::size_t lane, double left, double right,
                                     double text_px) const {
        for (std::size_t i = layout_.rows[row].first + 1; i < layout_.rows[row].end; ++i) {
            const TimedStep &from = timeline_.steps[i - 1], &to = timeline_.steps[i];
            if (lane <= std::min(from.lane, to.lane) || lane > std::max(from.lane, to.lane)) continue;
            const double begins = layout_.x(row, from.to_s()) - word_pad_px,
                         ends = layout_.x(row, to.from_s) + word_pad_px;
            if (begins < left + text_px && ends > left) left = ends;
        }
        const double now = layout_.x(row, timeline_.now_s);
        if (row_of_now() == row && now - word_pad_px < left + text_px && now + word_pad_px > left)
            left = now + word_pad_px;
        return left + text_px <= right ? std::optional(left) : std::nullopt;
    }

    // Nothing where the machine was not used before.
    std::optional<std::int64_t> before_row(std::size_t first, std::size_t lane) const {
        return cutter_before(first, lane).empty()
                   ? std::nullopt
                   : std::optional(timeline_.steps[first].from_s - timeline_.steps[first].walk_s);
    }
    std::string cutter_before(std::size_t first, std::size_t lane) const {
        for (std::size_t i = first; i-- > 0;)
            if (timeline_.steps[i].lane == lane) return timeline_.steps[i].setup->cutter;
        return {};
    }
    bool is_used_after(std::size_t end, std::size_t lane) const {
        return std::any_of(timeline_.steps.begin() + std::ptrdiff_t(end), timeline_.steps.end(),
                           [&](const TimedStep& step) { return step.lane == lane; });
    }
    std::int64_t last_use(std::size_t lane, const TimeRow& span) const {
        std::int64_t last = 0;
        for (std::size_t i = span.first; i < span.end; ++i)
            if (timeline_.steps[i].lane == lane) last = timeline_.steps[i].to_s();
        return last;
    }

    // ---- what is pinned

    // A wedge that points to where it is wanted, and ends at a bar.
    void draw_pin(Point middle, Pinned pinned) {
        const double to = pinned == Pinned::first ? -1 : 1, half = pin_px / 2;
        const double tip = middle.x_mm + to * half, back = middle.x_mm - to * half;
        Fill wedge{{{{tip, middle.y_mm}, {back, middle.y_mm - half}, {back, middle.y_mm + half}}},
                   Material::cutter};
        view_.drawing.shapes.emplace_back(std::move(wedge));
        view_.drawing.shapes.emplace_back(
            Line{{{tip, middle.y_mm - half}, {tip, middle.y_mm + half}}, Stroke::outline});
    }

    void draw_pins(std::size_t row) {
        for (std::size_t i = layout_.rows[row].first; i < layout_.rows[row].end; ++i) {
            const TimedStep& step = timeline_.steps[i];
            if (step.pinned == Pinned::nowhere) continue;
            const Block block = block_of(row, step);
            // At the right end of the name's line, or in the middle of a block that bears no name.
            const double middle = (block.left + block.right) / 2,
                         beside = block.right - word_pad_px - pin_px / 2;
            draw_pin({words_.has_room_for_name(step, layout_) ? beside : middle,
                      block.top - head_pad_px - line_px / 2},
                     step.pinned);
        }
    }

    // ---- time

    static std::string time_words(std::int64_t minutes) {
        const std::int64_t hours = minutes / 60, rest = minutes % 60;
        if (hours == 0) return std::to_string(rest) + " min";
        return std::to_string(hours) + " h" + (rest == 0 ? "" : " " + std::to_string(rest) + " min");
    }

    std::int64_t tick_minutes() const {
        for (const std::int64_t minutes : {5, 10, 15, 30, 60, 120, 240, 480})
            if (static_cast<double>(minutes * 60) * layout_.px_per_s >= tick_step_px) return minutes;
        return 1440;
    }

    std::optional<std::size_t> row_of_now() const {
        if (!timeline_.begun) return std::nullopt;
        for (std::size_t row = 0; row < layout_.rows.size(); ++row)
            if (timeline_.now_s < layout_.rows[row].to_s || row + 1 == layout_.rows.size()) return row;
        return std::nullopt;
    }

    // Its step may be too short to bear its name.
    std::string now_words() const {
        for (const TimedStep& step : timeline_.steps)
            if (!step.is_done) return words_.words()("draw.now", step.name);
        return words_.words()("draw.all_done");
    }

    // Of a text that stands at `x`, moved so that it is not cut off.
    double held_in(double x, double text_px) const {
        const double half = text_px / 2 + plate_pad_px;
        return std::clamp(x, std::min(half, room_.width_px / 2), std::max(room_.width_px - half, half));
    }

    void draw_axis(std::size_t row) {
        const TimeRow& span = layout_.rows[row];
        const double foot = layout_.row_y(row) - axis_px + 2;
        const std::int64_t step_s = 60 * tick_minutes();
        const auto now_row = row_of_now();
        double said_to = -1e9;
        const double now_x = held_in(layout_.x(row, timeline_.now_s), width(now_words(), true));
        view_.drawing.shapes.emplace_back(
            Line{{{layout_.gutter_px, foot}, {layout_.x(row, span.to_s), foot}}, Stroke::thin});
        for (std::int64_t at = (span.from_s + step_s - 1) / step_s * step_s; at <= span.to_s; at += step_s) {
            const double x = layout_.x(row, at);
            const std::string text = time_words(at / 60);
            const double middle = held_in(x, width(text));
            view_.drawing.shapes.emplace_back(Line{{{x, foot}, {x, foot - 7}}, Stroke::thin});
            const bool now_is_there = now_row == row && std::abs(middle - now_x) <
                                                            (width(text) + width(now_words(), true)) / 2 + 14;
            if (now_is_there || middle - width(text) / 2 < said_to + 2 * word_pad_px) continue;
            say({middle, foot + 1}, text, Anchor::bottom, Emphasis::faint, true);
            said_to = middle + width(text) / 2;
        }
    }

    void draw_now() {
        const auto row = row_of_now();
        if (!row) return;
        const double x = layout_.x(*row, timeline_.now_s), top = layout_.row_y(*row) - axis_px + 2;
        view_.drawing.shapes.emplace_back(
            Line{{{x, top}, {x, layout_.row_y(*row) - layout_.row_px() + lane_gap_px}}, Stroke::now});
        say({held_in(x, width(now_words(), true)), top + 1}, now_words(), Anchor::bottom, Emphasis::strong,
            true);
    }

    // ---- what the signs mean

    double draw_legend(double top) {
        double x = word_pad_px, y = top - legend_px / 2;
        const auto place = [&](const std::string& words) {
            if (x + words_.sign_px(words) - sign_gap_px > room_.width_px - word_pad_px) {
                x = word_pad_px;
                y -= legend_px;
            }
            const double left = x;
            say({left + swatch_px + swatch_gap_px, y}, words, Anchor::left, Emphasis::plain, true);
            x += words_.sign_px(words);
            return left;
        };
        for (const OrderSign& sign : signs_of(timeline_, words_.words())) {
            const double left = place(sign.words);
            view_.drawing.shapes.emplace_back(
                Fill{{rectangle({left, y - foot_px / 2, left + swatch_px, y + foot_px / 2})}, sign.material});
        }
        if (walks_) {
            const double left = place(words_.words()("draw.walk"));
            view_.drawing.shapes.emplace_back(Line{{{left, y}, {left + swatch_px, y}}, Stroke::walk});
        }
        if (stands_) {
            const double left = place(words_.words()("draw.stands"));
            view_.drawing.shapes.emplace_back(Line{{{left, y}, {left + swatch_px, y}}, Stroke::outline});
        }
        if (const std::string pins = pin_sign(timeline_, words_.words()); !pins.empty()) {
            const double left = place(pins), half = pin_px / 2, apart = 6;
            const bool first = timeline_.has_pinned(Pinned::first), last = timeline_.has_pinned(Pinned::last),
                       both = first && last;
            if (first) draw_pin({left + (both ? half - apart : swatch_px / 2), y}, Pinned::first);
            if (last) draw_pin({left + (both ? swatch_px - half : swatch_px / 2), y}, Pinned::last);
        }
        return y - legend_px / 2;
    }

    std::string title() const {
        const Words& words = words_.words();
        return words("draw.order",
                     words.counted("draw.steps", static_cast<long long>(timeline_.steps.size())),
                     words.counted("draw.machines", static_cast<long long>(timeline_.machines.size())),
                     time_words((timeline_.end_s() + 30) / 60));
    }

    const OrderRoom& room_;
    OrderWords words_;
    Timeline timeline_;
    OrderLayout layout_;
    OrderView view_;
    bool walks_ = false, stands_ = false;
};

}  // namespace

OrderView order_view(const Work& work, const std::string& next, const OrderRoom& room,
                     const TextMeasure& measure) {
    return Maker(work, next, room, measure).run();
}

std::string step_at(const OrderView& view, Point at, double reach_mm) {
    const StepPlace* nearest = nullptr;
    double least = reach_mm;
    for (const StepPlace& place : view.places) {
        const Box& box = place.box;
        if (at.y_mm < box.bottom_mm || at.y_mm > box.top_mm) continue;
        const double away = std::max({box.left_mm - at.x_mm, at.x_mm - box.right_mm, 0.0});
        if (away > least || (nearest && away == least)) continue;
        nearest = &place;
        least = away;
    }
    return nearest ? nearest->step : std::string();
}

}  // namespace kw::draw
