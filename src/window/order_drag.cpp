#include "window/order_drag.h"

#include <algorithm>
#include <cmath>

#include "window/text.h"

namespace kw::window {
namespace {

// A press that may become a drag. What is done stays where it is.
void take_up(Screen& screen, const PictureOnScreen& picture) {
    Ui& ui = screen.ui;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    screen.state.drag = {};
    const std::string step = draw::step_at(picture.view, picture.point_at(ui, mouse), size::least_target / 2);
    if (!step_named(screen.work()->rest, step)) return;
    screen.state.drag = {screen.session.work, step, mouse, {}};
    ui.scroll.may_move_across = true;
}

// Sideways it is a drag; up and down it may scroll the page.
void begin_when_moved(Screen& screen) {
    Ui& ui = screen.ui;
    OrderDrag& drag = screen.state.drag;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const float across = std::abs(mouse.x - drag.from.x), down = std::abs(mouse.y - drag.from.y);
    if (drag.moving || across <= ui.px(size::drag_starts) || across < down) return;
    drag.moving = draw::dragged_step(*screen.work(), drag.step);
    ui.scroll.down = false;
}

ImRect moved(ImRect box, ImVec2 by) {
    box.Translate(by);
    return box;
}

void draw_ghost(Ui& ui, ImDrawList& list, const ImRect& place, const ImRect& ghost, const std::string& step) {
    const draw::Palette& p = ui.colours();
    list.AddRectFilled(place.Min, place.Max, colour(p.card, 0.6f));
    list.AddRectFilled(ghost.Min, ghost.Max, colour(p.card, 0.85f), ui.px(3));
    list.AddRect(ghost.Min, ghost.Max, colour(p.accent), ui.px(3), 0, ui.px(3));
    const Font font = ui.font(TypeSize::body, Face::strong);
    const float room = ghost.GetWidth() - text_width(ui, step, font);
    if (room > 0)
        draw_text(ui, list, {ghost.Min.x + room / 2, ghost.Min.y + ui.px(6)}, step, font, colour(p.ink));
}

// In the lane, at the place to which the step would come.
void draw_mark(Ui& ui, ImDrawList& list, const PictureOnScreen& picture, const draw::Line& mark) {
    const draw::Point a = mark.points.front(), b = mark.points.back();
    const ImRect box = picture.on_screen(ui, {a.x_mm, b.y_mm, a.x_mm, a.y_mm});
    const ImU32 ink = colour(ui.colours().changed);
    const float half = ui.px(9), x = box.Min.x;
    list.AddLine(box.Min, box.Max, ink, ui.px(5));
    list.AddTriangleFilled({x - half, box.Min.y}, {x + half, box.Min.y}, {x, box.Min.y + half}, ink);
    list.AddTriangleFilled({x - half, box.Max.y}, {x + half, box.Max.y}, {x, box.Max.y - half}, ink);
}

// Above the finger, where no hand lies on it; beneath where there is no room.
void draw_words(Ui& ui, ImDrawList& list, const ImRect& ghost, const ImRect& room,
                const draw::DropWords& words) {
    const draw::Palette& p = ui.colours();
    const Font strong = ui.font(TypeSize::body, Face::strong), plain = ui.font(TypeSize::small);
    const float pad = ui.px(size::pad), gap = ui.px(14), line = ui.px(28);
    const float widest = room.GetWidth() - 2 * pad;
    const auto place = wrapped(ui, words.place, strong, widest),
               what_then = wrapped(ui, words.what_then, plain, widest);
    float width = 0;
    for (const std::string& text : place) width = std::max(width, text_width(ui, text, strong));
    for (const std::string& text : what_then) width = std::max(width, text_width(ui, text, plain));
    const ImVec2 size{width + 2 * pad, static_cast<float>(place.size() + what_then.size()) * line + pad};
    const float above = ghost.Min.y - gap - size.y;
    const ImVec2 min{
        std::clamp(ghost.GetCenter().x - size.x / 2, room.Min.x, std::max(room.Min.x, room.Max.x - size.x)),
        above >= gap ? above : ghost.Max.y + gap};
    const ImVec2 max{min.x + size.x, min.y + size.y};
    list.AddRectFilled(min, max, colour(p.card), ui.px(size::radius));
    list.AddRect(min, max, colour(p.accent), ui.px(size::radius), 0, ui.px(2));
    ImVec2 at{min.x + pad, min.y + pad / 2};
    for (const std::string& text : place) {
        draw_text(ui, list, at, text, strong, colour(p.ink));
        at.y += line;
    }
    for (const std::string& text : what_then) {
        draw_text(ui, list, at, text, plain, colour(p.ink));
        at.y += line;
    }
    LoggedWidget said;
    said.kind = "drag";
    said.label = words.place;
    said.value = words.what_then;
    said.text_px = em_px(TypeSize::small);
    said.contrast = draw::contrast(p.ink, p.card);
    log_widget(ui, said, min, max);
}

void draw_drag(Screen& screen, const Press& press, const PictureOnScreen& picture, draw::Drop drop) {
    Ui& ui = screen.ui;
    const OrderDrag& drag = screen.state.drag;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const ImRect place = picture.on_screen(ui, picture.view.places[drag.moving->at].box);
    const ImRect ghost = moved(place, {mouse.x - drag.from.x, mouse.y - drag.from.y});
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    if (const auto mark = draw::drop_mark(picture.view, *drag.moving, drop))
        draw_mark(ui, list, picture, *mark);
    draw_ghost(ui, list, place, ghost, drag.step);
    draw_words(ui, list, ghost, press.box, draw::say_drop(*drag.moving, drop, ui.words()));
}

}  // namespace

bool drag_step(Screen& screen, const Press& press, const PictureOnScreen& picture) {
    OrderDrag& drag = screen.state.drag;
    const ImGuiIO& io = ImGui::GetIO();
    if (press.held && io.MouseClicked[0]) take_up(screen, picture);
    if (drag.step.empty()) return false;
    const bool let_go = io.MouseReleased[0];
    // Another plan, or a page that scrolls, takes it out of the hand; so does the Escape key.
    const bool is_lost = drag.of != screen.session.work || (!press.held && !let_go);
    if (!is_lost) begin_when_moved(screen);
    const bool was_moving = drag.moving.has_value();
    if (is_lost || ImGui::IsKeyPressed(ImGuiKey_Escape, false)) {
        if (press.held) ImGui::ClearActiveID();
        drag = {};
        return was_moving;
    }
    if (!was_moving) {
        if (let_go) drag = {};
        return false;
    }
    const draw::Drop drop =
        draw::drop_at(picture.view, *drag.moving, picture.point_at(screen.ui, io.MousePos));
    if (!let_go) {
        draw_drag(screen, press, picture, drop);
        return true;
    }
    const RestStep* step = step_named(screen.work()->rest, drag.step);
    if (const auto asked = draw::asked_by(*drag.moving, drop); asked && step)
        screen.done = PinSetup{step->setup, *asked};
    drag = {};
    return true;
}

}  // namespace kw::window
