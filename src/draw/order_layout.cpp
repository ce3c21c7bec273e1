#include "draw/order_layout.h"

#include <algorithm>
#include <cmath>

#include "draw/setup_parts.h"
#include "words/names.h"

namespace kw::draw {
namespace {

double block_px(const TimedStep& step, const OrderLayout& layout) {
    return static_cast<double>(step.to_s() - step.from_s) * layout.px_per_s;
}

int order_in_legend(std::string_view what) {
    constexpr const char* all[] = {"done",   "cutter", "shims",    "fence",
                                   "height", "spacer", "test cut", "cuts"};
    return static_cast<int>(std::find(std::begin(all), std::end(all), what) - std::begin(all));
}

// Of a part of a step: what is set, a test cut, the cuts.
std::string piece_words(const Words& words, const std::string& what) {
    if (what == "test cut") return words("draw.test_cut");
    return what == "cuts" ? words("draw.cuts") : control_word(words, what);
}

double share_of_names(const Timeline& timeline, const OrderWords& words, const OrderLayout& layout) {
    const auto named =
        std::count_if(timeline.steps.begin(), timeline.steps.end(),
                      [&](const TimedStep& step) { return words.has_room_for_name(step, layout); });
    return timeline.steps.empty() ? 1.0
                                  : static_cast<double>(named) / static_cast<double>(timeline.steps.size());
}

void set_rows(OrderLayout& layout, const Timeline& timeline, std::size_t rows, double width_px) {
    layout.rows = rows_of(timeline, rows);
    std::int64_t longest = 1;
    for (const TimeRow& row : layout.rows) longest = std::max(longest, row.to_s - row.from_s);
    layout.px_per_s = (width_px - layout.gutter_px - 2) / static_cast<double>(longest);
}

// As if there were walks, and machines that stand as they were set.
double legend_height_px(const Timeline& timeline, const OrderWords& words, double width_px) {
    const Words& said = words.words();
    double all = words.sign_px(said("draw.walk")) + words.sign_px(said("draw.stands"));
    for (const OrderSign& sign : signs_of(timeline, said)) all += words.sign_px(sign.words);
    if (const std::string pins = pin_sign(timeline, said); !pins.empty()) all += words.sign_px(pins);
    return legend_px * std::ceil(all / (width_px - 2 * word_pad_px));
}

// Of the first line.
double pin_room(const TimedStep& step) { return step.pinned == Pinned::nowhere ? 0 : pin_px + word_pad_px; }

int lines_needed(const Timeline& timeline, const OrderWords& words, const OrderLayout& layout) {
    std::size_t most = 1;
    for (const TimedStep& step : timeline.steps) most = std::max(most, words.head_lines(step, layout).size());
    return static_cast<int>(most);
}

}  // namespace

std::set<OrderSign> signs_of(const Timeline& timeline, const Words& words) {
    std::set<OrderSign> signs;
    for (const TimedStep& step : timeline.steps) {
        if (step.is_done) signs.insert({order_in_legend("done"), words("draw.done"), Material::done});
        for (const Piece& piece : step.pieces)
            signs.insert({order_in_legend(piece.what), piece_words(words, piece.what), piece.material});
    }
    return signs;
}

std::string pin_sign(const Timeline& timeline, const Words& words) {
    std::vector<std::string> pins;
    if (timeline.has_pinned(Pinned::first)) pins.push_back(words("draw.first"));
    if (timeline.has_pinned(Pinned::last)) pins.push_back(words("draw.last"));
    return words.list(pins, "list.comma");
}

bool OrderWords::has_room_for_name(const TimedStep& step, const OrderLayout& layout) const {
    return width(step.name, is_next(step)) + 2 * word_pad_px + pin_room(step) <= block_px(step, layout);
}

double OrderWords::sign_px(const std::string& words) const {
    return swatch_px + swatch_gap_px + width(words) + sign_gap_px;
}

std::string OrderWords::shortened(const std::string& text, double room, bool bold) const {
    if (width(text, bold) <= room) return text;
    std::string kept = text;
    while (!kept.empty() && width(kept + "\u2026", bold) > room) {
        // A letter outside ASCII is several bytes long.
        while (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0xc0) == 0x80) kept.pop_back();
        if (!kept.empty()) kept.pop_back();
    }
    return kept.empty() ? kept : kept + "\u2026";
}

// The words of `text` in lines no wider than `room`; nothing where one is wider or there are too many lines.
std::vector<std::string> OrderWords::wrapped(const std::string& text, double room, std::size_t most) const {
    std::vector<std::string> lines{""};
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word = text.substr(at, end - at);
        const std::string longer = lines.back().empty() ? word : lines.back() + " " + word;
        if (width(longer) <= room) lines.back() = longer;
        else if (lines.back().empty() || width(word) > room) return {};
        else lines.push_back(word);
        at = end + 1;
    }
    return lines.size() <= most ? lines : std::vector<std::string>{};
}

std::vector<std::string> OrderWords::head_lines(const TimedStep& step, const OrderLayout& layout) const {
    if (!has_room_for_name(step, layout)) return {};
    const double room = block_px(step, layout) - 2 * word_pad_px;
    const bool bold = is_next(step);
    const auto most = static_cast<std::size_t>(layout.lines);
    const Setup& setup = *step.setup;
    std::vector<std::string> lines{step.name};
    const std::string work = work_word(words(), setup.work), whole = step.name + "  " + work;
    if (width(whole, bold) <= room - pin_room(step)) lines[0] = whole;
    else
        for (std::string& line : wrapped(work, room, most - 1)) lines.push_back(std::move(line));
    const bool has_work = lines.size() > 1 || lines[0] != step.name;
    const auto add = [&](const char* key, Length length) {
        const std::string text = measure_text(work_.job.locale, key, length);
        if (has_work && lines.size() < most && width(text) <= room) lines.push_back(text);
    };
    add(setup.index ? "draw.pin" : setup.guide == "stop" ? "draw.stop" : "draw.fence", setup.fence);
    if (setup.height) add("draw.height", *setup.height);
    return lines;
}

OrderLayout lay_out(const Timeline& timeline, const OrderWords& words, const OrderRoom& room) {
    OrderLayout layout;
    layout.lanes = std::max<std::size_t>(timeline.machines.size(), 1);
    for (const std::string& machine : timeline.machines)
        layout.gutter_px = std::max(layout.gutter_px, words.width(machine, true) + 2 * word_pad_px + 4);
    layout.gutter_px = std::min(layout.gutter_px, most_gutter * room.width_px);
    const double height_px = room.height_px - legend_height_px(timeline, words, room.width_px);
    const auto height_of = [&](std::size_t rows, int lines) {
        OrderLayout tried = layout;
        tried.lines = lines;
        return static_cast<double>(rows) * tried.row_px();
    };
    std::size_t rows = 1;
    set_rows(layout, timeline, rows, room.width_px);
    while (rows < most_rows && share_of_names(timeline, words, layout) < enough_labels &&
           height_of(rows + 1, 1) <= height_px)
        set_rows(layout, timeline, ++rows, room.width_px);
    while (layout.lines < most_lines && height_of(layout.rows.size(), layout.lines + 1) <= height_px)
        ++layout.lines;
    layout.lines = std::min(layout.lines, lines_needed(timeline, words, layout));
    return layout;
}

}  // namespace kw::draw
