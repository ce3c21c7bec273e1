// The head of every page: the places, the way back and forth, and what is wrong with the job.

#include <array>

#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

void draw_history(Screen& screen, float left) {
    Ui& ui = screen.ui;
    ImGui::SameLine();
    ImGui::SetCursorPosX(left);
    if (secondary_button(ui, "Undo", {.width = ui.px(84), .enabled = !screen.session.undo.empty()}))
        screen.done = Undo{};
    ImGui::SameLine(0, ui.px(8));
    if (secondary_button(ui, "Redo", {.width = ui.px(84), .enabled = !screen.session.redo.empty()}))
        screen.done = Redo{};
    ImGui::SameLine(0, ui.px(8));
    if (secondary_button(ui, "Options", {.width = ui.px(110)}))
        screen.state.are_preferences_open = !screen.state.are_preferences_open;
}

void draw_head(Screen& screen) {
    Ui& ui = screen.ui;
    static const std::array<std::string, 3> labels{"Drawers", "Order of work", "At the saw"};
    const float left = ImGui::GetCursorPosX(), room = ImGui::GetContentRegionAvail().x,
                history = ui.px(2 * 84 + 110 + 16);
    int place = static_cast<int>(screen.state.place);
    ImGui::BeginGroup();
    const bool changed = places(ui, labels, place);
    ImGui::EndGroup();
    if (changed) screen.state.place = static_cast<Where>(place);
    if (changed) screen.state.filling.clear();
    if (changed) screen.state.are_preferences_open = false;
    draw_history(screen, left + room - history);
}

// To the field that a problem blames.
void go_to(UiState& state, const std::string& pointer) {
    state.place = Where::drawers;
    const auto starts = [&](const char* list) { return pointer.rfind(list, 0) == 0; };
    state.tab = starts("/stock")                            ? DrawersTab::stock
                : starts("/machines") || starts("/cutters") ? DrawersTab::shop
                : starts("/fit")                            ? DrawersTab::fit
                                                            : DrawersTab::drawers;
    const std::string list = "/drawers/";
    if (starts("/drawers/") && pointer.size() > list.size())
        state.drawer = std::atoi(pointer.c_str() + list.size());
}

void draw_problems(Screen& screen) {
    Ui& ui = screen.ui;
    const auto& problems = screen.session.problems;
    if (problems.empty()) return;
    const std::string words =
        screen.work() ? "What you see is the last plan that could be made." : "Put right what is marked.";
    const float button_width = ui.px(170), room = ImGui::GetContentRegionAvail().x;
    ImGui::BeginChild("problems", {room - button_width - ui.px(size::gap), 0}, ImGuiChildFlags_AutoResizeY,
                      ImGuiWindowFlags_NoBackground);
    const std::string more =
        problems.size() > 1 ? ": " + std::to_string(problems.size()) + " things are wrong" : "";
    notice(ui, Tone::wrong, "This can't be made as it is" + more, words);
    ImGui::EndChild();
    ImGui::SameLine(0, ui.px(size::gap));
    if (secondary_button(ui, "Show where", {.width = button_width, .height_px = 60}))
        go_to(screen.state, problems.front().pointer);
}

void draw_place(Screen& screen) {
    if (screen.state.are_preferences_open) return draw_preferences(screen);
    if (screen.state.place == Where::drawers || !screen.work()) return draw_drawers(screen);
    if (screen.state.place == Where::order) return draw_order(screen);
    draw_saw(screen);
}

}  // namespace

std::optional<Action> draw_program(Ui& ui, const Session& session, UiState& state) {
    Screen screen{ui, session, state, std::nullopt};
    const float pad = ui.px(size::page);
    ImGui::SetCursorPos({pad, ui.px(8)});
    ImGui::BeginChild("program", {ui.page_size.x - 2 * pad, ui.page_size.y - pad - ui.px(8)}, 0,
                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollWithMouse);
    draw_head(screen);
    draw_problems(screen);
    draw_place(screen);
    ImGui::EndChild();
    return std::move(screen.done);
}

}  // namespace kw::window
