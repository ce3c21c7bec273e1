// Fence, height and spacer of a setup, as large as they can be read from afar.

#include <algorithm>

#include "session/say_ways.h"
#include "session/words.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

struct Number {
    std::string caption;
    std::string value;
    std::string unit;
    std::string was;
    std::string note;
};

// What a rule cannot show, a caliper can. A joint is finer than the mark behind a rounded length: there a hair less than a
// quarter of the rule's step is the whole clearance.
std::string finer(const Job& job, Length length) {
    const auto shown = read_length(value_of(job, length), unit_of(job.graduation));
    return shown && *shown == length ? std::string() : caliper_text(job, length);
}

Number number_for(const Job& job, const std::string& caption, Length now, std::optional<Length> before) {
    Number number{caption, value_of(job, now), unit_words(job), {}, finer(job, now)};
    // What no caliper can tell apart is no change to the maker.
    if (!before || fine_words(job, *before) == fine_words(job, now)) return number;
    const bool looks_the_same = value_of(job, *before) == value_of(job, now);
    number.was = show_with_unit(*before, looks_the_same ? caliper_graduation(job) : job.graduation);
    if (looks_the_same) number.note = fine_words(job, now);
    return number;
}

std::vector<Number> numbers_of(const Stand& stand) {
    const Job& job = stand.work.job;
    const Setup& setup = stand.setup;
    const Setup* before = stand.at_machine;
    const Length zero;
    std::vector<Number> numbers;
    numbers.push_back(number_for(job, fence_caption(setup), setup.fence,
                                 before ? std::optional(before->fence) : std::nullopt));
    if (const std::string from_before = say_from_pass_before(stand.work, setup); !from_before.empty())
        numbers.back().note += (numbers.back().note.empty() ? "" : ", ") + from_before;
    if (!setup.height) {
        if (setup.guide != "stop") numbers.push_back({"Height", "", "", "", "Through: just above the board"});
        return numbers;
    }
    const auto by_scale = [&](Length wanted, Length dial, Length beyond) {
        const std::string words = say_scale(stand.work, wanted, dial, beyond);
        if (words.empty()) return;
        std::string& note = numbers.back().note;
        note += (note.empty() ? "" : ", ") + words;
    };
    const Dial dial = dial_of(stand.work, setup);
    by_scale(setup.fence, dial.fence, dial.fence_beyond);
    numbers.push_back(number_for(job, "Height", *setup.height, before ? before->height : std::nullopt));
    by_scale(*setup.height, dial.height, dial.height_beyond);
    if (const std::string shims = say_shims(stand.work, setup, dial.shims); !shims.empty())
        numbers.push_back({"Stack", "", "", "", capital(shims)});
    if (setup.spacer == zero) numbers.push_back({"Spacer", "", "", "", "None"});
    else
        numbers.push_back(number_for(job, setup.sacrificial ? "Spacer, sacrificial" : "Spacer", setup.spacer,
                                     before ? std::optional(before->spacer) : std::nullopt));
    return numbers;
}

void draw_number(Screen& screen, const Number& number, float width, double value_px) {
    if (number.value.empty() && screen.is_low()) return say(screen.ui, number.caption + ": " + number.note);
    if (number.value.empty()) {
        begin_card(screen.ui, number.caption.c_str(), width);
        caption(screen.ui, number.caption);
        say(screen.ui, number.note);
        return end_card(screen.ui);
    }
    if (figure(screen.ui, {.caption = number.caption,
                           .value = number.value,
                           .unit = number.unit,
                           .changed_from = number.was,
                           .note = number.note,
                           .value_px = value_px,
                           .width = width,
                           .pressable = true,
                           .compact = screen.is_low()}))
        screen.state.filling = number.caption;
}

}  // namespace

std::string fence_caption(const Setup& setup) {
    return setup.guide == "stop" ? "Stop to blade" : "Fence to near side";
}

void draw_numbers(Screen& screen, const Stand& stand, bool in_a_row) {
    const auto numbers = numbers_of(stand);
    if (!in_a_row) {
        const double value_px = screen.is_low()
                                    ? 46
                                    : std::clamp(static_cast<double>(ImGui::GetContentRegionAvail().y) /
                                                     screen.ui.pixel_ratio / 8,
                                                 60.0, 110.0);
        for (const Number& number : numbers) draw_number(screen, number, content_width(screen.ui), value_px);
        return;
    }
    const float gap = screen.ui.px(size::gap), count = static_cast<float>(numbers.size());
    const float width = (content_width(screen.ui) - (count - 1) * gap) / count;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        if (i > 0) ImGui::SameLine(0, gap);
        draw_number(screen, numbers[i], width, 58);
    }
}

// One number, as large as the page: to be read from across the shop. Any press brings the screen back.
bool draw_filling(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    for (const Number& number : numbers_of(stand)) {
        if (number.caption != screen.state.filling) continue;
        heading(ui, number.caption + (number.note.empty() ? "" : "  (" + number.note + ")"));
        const ImVec2 room = ImGui::GetContentRegionAvail();
        filling_figure(ui,
                       {.caption = number.caption,
                        .value = number.value,
                        .unit = number.unit,
                        .changed_from = number.was,
                        .note = {}},
                       {room.x, room.y - ui.px(100)});
        if (primary_button(ui, "Back to the setup", {.width = -1, .height_px = 76}))
            screen.state.filling.clear();
        return true;
    }
    screen.state.filling.clear();
    return false;
}

}  // namespace kw::window
