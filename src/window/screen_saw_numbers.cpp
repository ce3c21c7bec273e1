// Fence, height and spacer of a setup, as large as they can be read from afar.

#include <algorithm>

#include "session/say_ways.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

using Number = SetupNumber;

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
            setup_numbers(stand.work, stand.at_machine, stand.setup, measured_to),
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
