// The window by its keyboard. Nothing here is heard while words or a length are being put in.

#include <imgui_internal.h>

#include "window/screen_keys.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

// Each has a text for the keys and one for what they do. README has the same list.
constexpr const char* all_keys[] = {"places", "next",  "turn",   "ran", "fence", "tabs",  "history",
                                    "move",   "press", "digits", "sum", "nudge", "units", "this"};

bool pressed(ImGuiKey key) { return ImGui::IsKeyPressed(key, false); }

bool typed_question_mark() {
    for (const ImWchar c : ImGui::GetIO().InputQueueCharacters)
        if (c == '?') return true;
    return false;
}

bool is_open_elsewhere() {
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    return ImGui::GetIO().WantTextInput || g.OpenPopupStack.Size > 0;
}

// The toolkit would take the ring a page on as well, to whatever stands there, and Space would press that.
void leave_ring() {
    ImGui::NavMoveRequestCancel();
    ImGui::GetCurrentContext()->NavId = 0;
}

void turn_step(Screen& screen, const Stand& stand, int by) {
    leave_ring();
    const auto& sequence = stand.work.plan.sequence;
    const auto to = static_cast<std::ptrdiff_t>(stand.index) + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(sequence.size())) return;
    open_step(screen, sequence[static_cast<std::size_t>(to)],
              screen.state.saw_tab == SawTab::log ? SawTab::log : SawTab::picture);
}

void run_next_part(Screen& screen, const Stand& stand) {
    const RestStep* step = step_named(stand.work.rest, stand.step);
    if (step && !step->open.empty())
        screen.done = MarkRun{stand.setup.id, {step->open.front()}, true, is_told_late(screen, stand)};
}

void keys_at_saw(Screen& screen) {
    const auto stand = stand_at(screen);
    if (!stand) return;
    UiState& state = screen.state;
    if (ImGui::IsKeyPressed(ImGuiKey_PageUp)) return turn_step(screen, *stand, -1);
    if (ImGui::IsKeyPressed(ImGuiKey_PageDown)) return turn_step(screen, *stand, 1);
    if (pressed(ImGuiKey_R)) return run_next_part(screen, *stand);
    if (pressed(ImGuiKey_F)) {
        state.saw_tab = SawTab::picture;
        state.filling = state.filling.empty() ? fence_caption(screen, *stand) : std::string();
        return;
    }
    const std::pair<ImGuiKey, SawTab> tabs[] = {{ImGuiKey_P, SawTab::picture},
                                                {ImGuiKey_J, SawTab::closed},
                                                {ImGuiKey_T, SawTab::test},
                                                {ImGuiKey_L, SawTab::log}};
    for (const auto& [key, tab] : tabs) {
        if (!pressed(key)) continue;
        state.saw_tab = tab;
        state.filling.clear();
    }
}

bool keys_of_places(Screen& screen) {
    const std::pair<ImGuiKey, Where> places[] = {{ImGuiKey_1, Where::drawers},
                                                 {ImGuiKey_2, Where::order},
                                                 {ImGuiKey_3, Where::saw},
                                                 {ImGuiKey_4, Where::job}};
    for (const auto& [key, place] : places) {
        if (!pressed(key)) continue;
        screen.state.place = place;
        screen.state.filling.clear();
        screen.state.over = Over::none;
        return true;
    }
    return false;
}

}  // namespace

void take_keys(Screen& screen) {
    if (is_open_elsewhere()) return;
    UiState& state = screen.state;
    const ImGuiIO& io = ImGui::GetIO();
    if (io.KeyCtrl) {
        if (pressed(ImGuiKey_Z) && !screen.session.undo.empty()) screen.done = Undo{};
        if (pressed(ImGuiKey_Y) && !screen.session.redo.empty()) screen.done = Redo{};
        return;
    }
    if (io.KeyAlt || io.KeySuper) return;
    if (pressed(ImGuiKey_F1) || typed_question_mark()) {
        state.over = state.over == Over::keys ? Over::none : Over::keys;
        return;
    }
    if (pressed(ImGuiKey_Escape) && state.drag.step.empty()) {
        state.over = Over::none;
        state.filling.clear();
        return;
    }
    if (keys_of_places(screen) || !screen.work()) return;
    if (pressed(ImGuiKey_N)) return go_to_next(screen);
    if (state.place == Where::saw && state.over == Over::none) keys_at_saw(screen);
}

void draw_keys(Screen& screen) {
    Ui& ui = screen.ui;
    begin_scroll(ui, "keys", {0, 0});
    begin_card(ui, "keys");
    heading(ui, ui.text("keys.title"));
    const float room = content_width(ui), left = std::min(ui.px(240), room * 0.34f);
    for (const char* name : all_keys) {
        rule(ui);
        const ImVec2 corner = ImGui::GetCursorScreenPos();
        ImGui::BeginGroup();
        say(ui, ui.shown("keys.press_", name), TypeSize::body, Tone::accent, left);
        ImGui::EndGroup();
        ImGui::SameLine();
        ImGui::SetCursorScreenPos({corner.x + left + ui.px(size::gap), corner.y});
        say(ui, ui.shown("keys.does_", name), TypeSize::body, Tone::plain, room - left - ui.px(size::gap));
    }
    end_card(ui);
    if (primary_button(ui, ui.text("keys.back").c_str(), {.width = std::min(content_width(ui), ui.px(420))}))
        screen.state.over = Over::none;
    end_scroll(ui);
}

}  // namespace kw::window
