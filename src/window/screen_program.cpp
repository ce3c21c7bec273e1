// The head of every page: the places, the way back and forth, and what is wrong with the job.

#include <array>

#include "window/screen_fields.h"
#include "window/screen_first.h"
#include "window/screen_keys.h"
#include "window/screen_next.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

// Where there is little room across, the head is set closer.
bool is_close(const Screen& screen) { return screen.ui.page_size.x < screen.ui.px(1200); }
// As wide as its word needs, in whichever language.
float head_button(const Screen& screen, const std::string& label) {
    Ui& ui = screen.ui;
    const float words = text_width(ui, label, ui.font(TypeSize::body, Face::strong));
    return std::max(std::ceil(words + 2 * ui.px(size::pad)), ui.px(is_close(screen) ? 74 : 84));
}
double head_px(const Screen& screen) { return screen.is_low() ? size::target : 60; }

// The way back and forth, and the options, at the right end of the head.
struct History {
    std::string undo, redo, options;
    float undo_width, redo_width, options_width, gap;

    explicit History(const Screen& screen)
        : undo(screen.text("head.undo")),
          redo(screen.text("head.redo")),
          options(screen.text("head.options")),
          undo_width(head_button(screen, undo)),
          redo_width(head_button(screen, redo)),
          options_width(head_button(screen, options)),
          gap(screen.ui.px(8)) {}
    float width() const { return undo_width + redo_width + options_width + 2 * gap; }
};

void draw_history(Screen& screen, const History& history, float left) {
    Ui& ui = screen.ui;
    ImGui::SetCursorPosX(left);
    // Brushed past it takes nothing back; what it takes back is said, and done again by a tap beside it.
    bool tapped = false;
    if (hold_button(ui, history.undo.c_str(),
                    {.width = history.undo_width, .enabled = !screen.session.undo.empty()}, tapped))
        screen.done = Undo{};
    if (tapped) ui.toast(ui.text("head.hold_undo"));
    ImGui::SameLine(0, history.gap);
    if (secondary_button(ui, history.redo.c_str(),
                         {.width = history.redo_width, .enabled = !screen.session.redo.empty()}))
        screen.done = Redo{};
    ImGui::SameLine(0, history.gap);
    if (secondary_button(ui, history.options.c_str(), {.width = history.options_width}))
        screen.state.over = screen.state.over == Over::preferences ? Over::none : Over::preferences;
}

// What is next to do, one tap away from everywhere.
void draw_next(Screen& screen, float width) {
    if (!screen.work()) return;
    const NextThing next = next_thing(screen.ui.words(), *screen.work());
    const bool is_here = is_at_next(screen, next);
    const std::string label = next.step.empty() ? screen.text("head.all_cut")
                              : is_here         ? screen.text("head.here")
                                                : screen.text("head.next", next.number);
    const Font font = screen.ui.font(TypeSize::small);
    const auto fits = [&](const std::string& words) {
        return text_width(screen.ui, words, font) <= width - screen.ui.px(2 * size::pad);
    };
    const std::string what = fits(next.what) ? next.what : std::string();
    if (button(screen.ui, (label + "##next to do").c_str(), is_here ? Rank::secondary : Rank::primary,
               {.width = width, .height_px = head_px(screen), .detail = what}))
        go_to_next(screen);
}

void draw_head(Screen& screen) {
    Ui& ui = screen.ui;
    const std::array<std::string, 4> labels{ui.text("head.drawers"), ui.text("head.order"),
                                            ui.text("head.saw"), ui.text("head.job")};
    const History history(screen);
    const float left = ImGui::GetCursorPosX(), room = ImGui::GetContentRegionAvail().x,
                gap = ui.px(size::gap);
    int place = screen.state.over != Over::none ? -1 : static_cast<int>(screen.state.place);
    ImGui::BeginGroup();
    const bool changed = places(ui, labels, place,
                                {.height_px = head_px(screen),
                                 .pad_px = screen.is_low()    ? 8
                                           : is_close(screen) ? size::gap
                                                              : size::page});
    ImGui::EndGroup();
    const float used = ImGui::GetItemRectSize().x, between = room - used - history.width() - 2 * gap;
    if (changed) {
        screen.state.place = static_cast<Where>(place);
        screen.state.filling.clear();
        screen.state.over = Over::none;
    }
    // In one row where there is room; on a narrow page what is next and the way back stand under the places.
    if (between >= ui.px(screen.is_low() ? 150 : 200)) {
        ImGui::SameLine();
        ImGui::SetCursorPosX(left + used + gap);
        draw_next(screen, between);
    } else {
        draw_next(screen, room - history.width() - gap);
    }
    if (screen.work()) ImGui::SameLine();
    draw_history(screen, history, left + room - history.width());
}

// To the field that a problem blames.
void go_to(UiState& state, const std::string& pointer) {
    state.place = Where::drawers;
    const auto starts = [&](const char* list) { return pointer.rfind(list, 0) == 0; };
    state.tab = starts("/stock")                            ? DrawersTab::stock
                : starts("/machines") || starts("/cutters") ? DrawersTab::shop
                : starts("/fit")                            ? DrawersTab::fit
                                                            : DrawersTab::drawers;
    if (pointer.find("/assembled/") != std::string::npos) {
        state.place = Where::job;
        state.job_tab = JobTab::together;
    }
    if (starts("/banks")) {
        state.place = Where::job;
        state.job_tab = JobTab::faces;
        state.bank = pointer.size() > 7 ? std::size_t(std::atoi(pointer.c_str() + 7)) : 0;
    }
    const std::string list = "/drawers/";
    if (starts("/drawers/") && pointer.size() > list.size())
        state.drawer = std::atoi(pointer.c_str() + list.size());
}

void draw_problems(Screen& screen) {
    Ui& ui = screen.ui;
    const auto& problems = screen.session.problems;
    if (problems.empty()) return;
    const std::string words = screen.text(screen.work() ? "head.last_plan" : "head.put_right");
    const float button_width = ui.px(170), room = ImGui::GetContentRegionAvail().x;
    ImGui::BeginChild("problems", {room - button_width - ui.px(size::gap), 0}, ImGuiChildFlags_AutoResizeY,
                      ImGuiWindowFlags_NoBackground);
    notice(ui, Tone::wrong,
           problems.size() > 1 ? screen.text("head.things_wrong", problems.size())
                               : screen.text("head.thing_wrong"),
           words);
    ImGui::EndChild();
    ImGui::SameLine(0, ui.px(size::gap));
    if (secondary_button(ui, ui.text("head.show_where").c_str(), {.width = button_width, .height_px = 60}))
        go_to(screen.state, problems.front().pointer);
}

void draw_place(Screen& screen) {
    const bool faces = screen.state.place == Where::job && screen.state.job_tab == JobTab::faces;
    if (screen.state.place == Where::drawers || (!screen.work() && !faces)) return draw_drawers(screen);
    if (screen.state.place == Where::order) return draw_order(screen);
    if (screen.state.place == Where::job) return draw_job(screen);
    draw_saw(screen);
}

// Whether another page is shown than in the frame before.
void note_page(Screen& screen) {
    UiState& state = screen.state;
    const ShownPage page{state.place,
                         state.tab,
                         state.saw_tab,
                         state.job_tab,
                         state.place == Where::saw ? state.setup : std::string(),
                         state.over};
    screen.ui.opens_anew = page != state.shown_page;
    if (!screen.ui.opens_anew) return;
    state.shown_page = page;
    screen.ui.scroll = {};  // a swing that was under way ends with its page
}

}  // namespace

std::optional<Action> draw_program(Ui& ui, const Session& session, UiState& state) {
    Screen screen{ui, session, state, std::nullopt};
    if (screen.work()) ui.rule = screen.work()->job.locale.graduation;
    if (state.first_question < 0) take_keys(screen);
    note_page(screen);
    const float pad = ui.px(size::page);
    ImGui::SetCursorPos({pad, ui.px(8)});
    ImGui::BeginChild("program", {ui.page_size.x - 2 * pad, ui.page_size.y - pad - ui.px(8)}, 0,
                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollWithMouse);
    const bool is_first = state.first_question >= 0;
    if (!is_first) draw_head(screen);
    if (!is_first) draw_problems(screen);
    if (is_first) draw_first(screen);
    else if (state.over == Over::keys) draw_keys(screen);
    else if (state.over == Over::preferences) draw_preferences(screen);
    else draw_place(screen);
    ImGui::EndChild();
    return std::move(screen.done);
}

}  // namespace kw::window
