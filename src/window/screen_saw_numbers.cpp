// Fence, height and spacer of a setup, as large as they can be read from afar.

#include <algorithm>

#include "session/say_ways.h"
#include "session/words.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

using Number = SetupNumber;

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
        number.note = job.locale.words()("number.about", show_with_unit(now, job.locale));
    }
    return number;
}

// Where the scale is known to be off, the number to set it to; where that puts the control is the note. `name`: of its texts.
Number control_number(const Job& job, const char* name, const ControlAt& now,
                      const std::optional<ControlAt>& stood) {
    const Words& words = job.locale.words();
    const std::optional<Length> from = stood ? std::optional(move_of(*stood, now).from) : std::nullopt;
    if (!now.by_scale) return number_for(job, words(key_of("number.", name)), now.truly, from);
    Number number{words(key_of("number.scale_", name)), fine_value(job, now.scale), unit_words(job), {}, {}};
    if (from && fine_value(job, *from) != number.value) number.was = caliper_text(job, *from);
    number.note = words(key_of("number.truly_", name), show_with_unit(now.truly, job.locale));
    if (const std::string fine = finer(job, now.truly); !fine.empty()) number.note += " (" + fine + ")";
    return number;
}

std::vector<Number> numbers_of(const Stand& stand, CutterSide measured_to) {
    const Job& job = stand.work.job;
    const Words& words = job.locale.words();
    const Setup& setup = stand.setup;
    const Setup* before = stand.at_machine;
    const Length zero;
    const SetTo set = set_to(stand.work, setup);
    const std::optional<SetTo> stood = before ? std::optional(set_to(stand.work, *before)) : std::nullopt;
    std::vector<Number> numbers;
    const auto note = [&](const std::string& more) { numbers.back().note = with(numbers.back().note, more); };
    const auto words_alone = [&](const char* name, const std::string& what) {
        numbers.push_back({words(name), "", "", "", what});
    };
    const bool stop = setup.guide == "stop";
    const bool is_far =
        fence_reading(stand.work, setup, setup.height ? measured_to : CutterSide::near).side == "far";
    numbers.push_back(control_number(job,
                                     stop     ? "stop"
                                     : is_far ? "fence_far"
                                              : "fence_near",
                                     set.fence_to(measured_to),
                                     stood ? std::optional(stood->fence_to(measured_to)) : std::nullopt));
    if (set.fence.by_scale && is_far) note(words("number.scale_is_near"));
    note(say_from_pass_before(stand.work, setup));
    if (setup.height) note(say_beyond(stand.work, set.dial.fence_beyond));
    if (!setup.height) {
        if (!stop) words_alone("number.height", words("number.through"));
        return numbers;
    }
    numbers.push_back(control_number(job, "height", *set.height, stood ? stood->height : std::nullopt));
    note(say_beyond(stand.work, set.dial.height_beyond));
    if (const std::string shims = say_shims(stand.work, setup, set.dial.shims); !shims.empty())
        words_alone("number.stack", capital(shims));
    if (setup.spacer == zero) words_alone("number.spacer", words("number.none"));
    else
        numbers.push_back(number_for(job,
                                     words(setup.sacrificial ? "number.sacrificial_spacer" : "number.spacer"),
                                     setup.spacer, before ? std::optional(before->spacer) : std::nullopt));
    return numbers;
}

void draw_number(Screen& screen, const Number& number, float width, double value_px) {
    // Where there is little room, that there is none is said by the picture alone.
    if (number.value.empty() && screen.is_low() && number.note == screen.text("number.none")) return;
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

// Once for each change of the work: a first setting that makes up for the cutter is searched for.
const SetupSaid& said_at(Screen& screen, const Stand& stand) {
    SetupSaid& said = screen.state.setup_said;
    const CutterSide measured_to = screen.state.preferences.fence_to;
    if (said.of == screen.session.work && said.step == stand.step && said.measured_to == measured_to)
        return said;
    said = {screen.session.work,
            stand.step,
            measured_to,
            numbers_of(stand, measured_to),
            setup_changes(stand.work, stand.at_machine, stand.setup, measured_to),
            say_cutter(stand.work, stand.setup),
            say_test(stand.work, stand.setup.id, measured_to)};
    return said;
}

std::string fence_caption(Screen& screen, const Stand& stand) {
    return said_at(screen, stand).numbers.front().caption;
}

void draw_numbers(Screen& screen, const Stand& stand, bool in_a_row) {
    const std::vector<Number>& numbers = said_at(screen, stand).numbers;
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
    for (const Number& number : said_at(screen, stand).numbers) {
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
        if (primary_button(ui, ui.text("saw.back_to_setup").c_str(), {.width = -1, .height_px = 76}))
            screen.state.filling.clear();
        return true;
    }
    screen.state.filling.clear();
    return false;
}

}  // namespace kw::window
