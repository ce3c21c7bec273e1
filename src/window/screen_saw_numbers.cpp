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
    const auto shown = read_length(value_of(job, length), unit_of(job.locale));
    return shown && *shown == length ? std::string() : caliper_text(job, length);
}

std::string with(const std::string& note, const std::string& more) {
    return note + (note.empty() || more.empty() ? "" : ", ") + more;
}

// As a caliper reads it, without its unit.
std::string fine_value(const Job& job, Length length) {
    return without_mark(show(length, caliper_locale(job)));
}

Number number_for(const Job& job, const std::string& caption, Length now, std::optional<Length> before) {
    Number number{caption, value_of(job, now), unit_words(job), {}, finer(job, now)};
    // What no caliper can tell apart is no change to the maker; what it can is seen in the number itself.
    if (!before || fine_value(job, *before) == fine_value(job, now)) return number;
    const bool looks_the_same = value_of(job, *before) == value_of(job, now);
    number.was = looks_the_same ? caliper_text(job, *before) : show_with_unit(*before, job.locale);
    if (looks_the_same) {
        number.value = fine_value(job, now);
        number.note = "about " + show_with_unit(now, job.locale);
    }
    return number;
}

// `truly`: where the control is to stand, with what makes up for the cutter; `set`: what its scale shows then. Where the scale is known to be off, the number to set it to; where that puts the control is the note.
Number control_number(const Job& job, const std::string& control, const std::string& to, Length truly,
                      Length set, std::optional<Length> set_before) {
    if (!is_off(truly, set)) return number_for(job, capital(control) + to, truly, set_before);
    Number number{"Set " + control + " scale to", fine_value(job, set), unit_words(job), {}, {}};
    if (set_before && fine_value(job, *set_before) != number.value)
        number.was = caliper_text(job, *set_before);
    number.note = "Truly " + show_with_unit(truly, job.locale) + to;
    if (const std::string fine = finer(job, truly); !fine.empty()) number.note += " (" + fine + ")";
    return number;
}

std::vector<Number> numbers_of(const Stand& stand, CutterSide measured_to) {
    const Job& job = stand.work.job;
    const Setup& setup = stand.setup;
    const Setup* before = stand.at_machine;
    const Length zero;
    const Dial dial = dial_of(stand.work, setup);
    const std::optional<Dial> was = before ? std::optional(dial_of(stand.work, *before)) : std::nullopt;
    std::vector<Number> numbers;
    const auto note = [&](const std::string& words) {
        numbers.back().note = with(numbers.back().note, words);
    };
    // The scale of a fence says nothing of how the cutter is measured: it is set as it reads.
    const bool by_scale = is_off(setup.fence + dial.fence_beyond, dial.fence);
    const auto stands = [&](const Setup& of, const Dial& its) {
        return fence_reading(stand.work, of, of.height ? measured_to : CutterSide::near).distance +
               its.fence_beyond;
    };
    const Length truly = stands(setup, dial);
    std::optional<Length> fence_before;
    if (before) fence_before = by_scale ? was->fence : stands(*before, *was);
    const bool stop = setup.guide == "stop";
    const std::string side =
        fence_reading(stand.work, setup, setup.height ? measured_to : CutterSide::near).side;
    numbers.push_back(control_number(job, stop ? "stop" : "fence",
                                     stop ? " to blade" : " to " + side + " side", truly,
                                     by_scale ? dial.fence : truly, fence_before));
    if (by_scale && side == "far") note("the scale reads to the near side");
    note(say_from_pass_before(stand.work, setup));
    if (setup.height) note(say_beyond(stand.work, dial.fence_beyond));
    if (!setup.height) {
        if (!stop) numbers.push_back({"Height", "", "", "", "Through: just above the board"});
        return numbers;
    }
    std::optional<Length> height_before;
    if (before && before->height) height_before = was->height;
    numbers.push_back(
        control_number(job, "height", "", *setup.height + dial.height_beyond, dial.height, height_before));
    note(say_beyond(stand.work, dial.height_beyond));
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

std::string fence_caption(const Stand& stand, CutterSide measured_to) {
    return numbers_of(stand, measured_to).front().caption;
}

void draw_numbers(Screen& screen, const Stand& stand, bool in_a_row) {
    const auto numbers = numbers_of(stand, screen.state.preferences.fence_to);
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
    for (const Number& number : numbers_of(stand, screen.state.preferences.fence_to)) {
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
