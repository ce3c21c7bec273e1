// Cards, and regions that scroll.

#include <algorithm>
#include <cmath>

#include "window/press.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

constexpr float swing_kept_per_s =
    0.03f;  // share of the speed of a let-go region that is left after a second
constexpr float least_swing_px_s = 20;

bool types_here(const ImGuiContext& g) { return g.ActiveId != 0 && g.ActiveId == g.InputTextState.ID; }

void start_finger(Ui& ui, const ImGuiWindow* window) {
    const ImGuiIO& io = ImGui::GetIO();
    const ImGuiContext& g = *ImGui::GetCurrentContext();
    if (!io.MouseClicked[0] || g.HoveredWindow != window || window->ScrollMax.y <= 0 || types_here(g)) return;
    ScrollState& s = ui.scroll;
    s = {};
    s.region = window->ID;
    s.pressed_x = io.MousePos.x;
    s.pressed_y = s.last_y = io.MousePos.y;
    s.last_s = ui.now_s;
    s.down = true;
}

// Takes in the way since the last frame, also when the finger has left with it.
void follow_finger(Ui& ui, ImGuiWindow* window) {
    ScrollState& s = ui.scroll;
    const ImGuiIO& io = ImGui::GetIO();
    const float down = std::abs(io.MousePos.y - s.pressed_y), across = std::abs(io.MousePos.x - s.pressed_x);
    const bool is_other_move = s.may_move_across && across >= down;
    if (!s.dragging && !is_other_move && down > ui.px(size::drag_starts)) {
        s.dragging = true;
        ImGui::ClearActiveID();  // what was pressed at first is not meant
    }
    if (s.dragging) {
        const float step = io.MousePos.y - s.last_y;
        const auto seconds = static_cast<float>(std::max(ui.now_s - s.last_s, 1e-3));
        ImGui::SetScrollY(window, std::clamp(window->Scroll.y - step, 0.0f, window->ScrollMax.y));
        s.speed = 0.6f * step / seconds + 0.4f * s.speed;
        if (step != 0) ui.pacer.request(Pacer::settle_frames);
    }
    s.last_y = io.MousePos.y;
    s.last_s = ui.now_s;
    if (!io.MouseDown[0]) {
        s.down = false;
        if (!s.dragging) s.speed = 0;
        s.dragging = false;
    }
}

void swing(Ui& ui, ImGuiWindow* window) {
    ScrollState& s = ui.scroll;
    const float dt = ImGui::GetIO().DeltaTime;
    const float to = std::clamp(window->Scroll.y - s.speed * dt, 0.0f, window->ScrollMax.y);
    ImGui::SetScrollY(window, to);
    s.speed *= std::pow(swing_kept_per_s, dt);
    const bool at_end = to <= 0 || to >= window->ScrollMax.y;
    if (at_end || std::abs(s.speed) < ui.px(static_cast<double>(least_swing_px_s))) s.speed = 0;
    ui.pacer.request(s.speed != 0 ? 1 : Pacer::settle_frames);
}

void shade_hidden(Ui& ui, const ImGuiWindow* window) {
    const float h = ui.px(14);
    const ImRect& r = window->InnerRect;
    const ImU32 solid = colour(ui.colours().soft_ink, 0.16f), clear = colour(ui.colours().soft_ink, 0);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (window->Scroll.y > 1)
        list.AddRectFilledMultiColor(r.Min, {r.Max.x, r.Min.y + h}, solid, solid, clear, clear);
    if (window->Scroll.y < window->ScrollMax.y - 1) {
        list.AddRectFilledMultiColor({r.Min.x, r.Max.y - h}, r.Max, clear, clear, solid, solid);
    }
}

}  // namespace

float content_width(const Ui& ui) {
    if (ui.cards.empty()) return std::max(1.0f, ImGui::GetContentRegionAvail().x);
    const CardFrame& card = ui.cards.back();
    return std::max(1.0f, card.corner.x + card.width - ui.px(size::pad) - ImGui::GetCursorScreenPos().x);
}

void begin_card(Ui& ui, const char* id, float width, Tone tone, float least_height) {
    const float whole = width > 0 ? width : content_width(ui);
    CardFrame& card = ui.cards.emplace_back();
    card.corner = ImGui::GetCursorScreenPos();
    card.width = std::floor(whole);
    card.tone = tone;
    card.height = least_height;
    card.splitter.Split(ImGui::GetWindowDrawList(), 2);
    card.splitter.SetCurrentChannel(ImGui::GetWindowDrawList(), 1);
    ImGui::PushID(id);
    ImGui::BeginGroup();
    const float pad = ui.px(size::pad);
    ImGui::SetCursorScreenPos({card.corner.x + pad, card.corner.y + pad});
    ImGui::BeginGroup();
}

void end_card(Ui& ui) {
    CardFrame& card = ui.cards.back();
    ImGui::EndGroup();
    const float pad = ui.px(size::pad);
    const float height = std::max(card.height, std::ceil(ImGui::GetItemRectMax().y + pad - card.corner.y));
    const ImVec2 min{std::floor(card.corner.x), std::floor(card.corner.y)},
        max{min.x + card.width, min.y + height};
    ImGui::SetCursorScreenPos(card.corner);
    ImGui::Dummy({card.width, height});
    ImGui::EndGroup();
    ImGui::PopID();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    card.splitter.SetCurrentChannel(&list, 0);
    const draw::Palette& p = ui.colours();
    fill_sheet(ui, list, min, max, p.card, ui.px(size::radius + 1));
    const bool toned = card.tone != Tone::plain && card.tone != Tone::soft;
    list.AddRect(min, max, colour(toned ? ink(ui.theme, card.tone) : p.hairline), ui.px(size::radius + 1), 0,
                 ui.px(toned ? 2.5 : 1.5));
    card.splitter.Merge(&list);
    ui.cards.pop_back();
}

void begin_scroll(Ui& ui, const char* id, ImVec2 size) {
    if (ui.opens_anew) ImGui::SetNextWindowScroll({0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    // Flattened: the keyboard goes on from the page into the region and out of it again.
    ImGui::BeginChild(id, size, ImGuiChildFlags_AlwaysUseWindowPadding,
                      ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NavFlattened);
    ImGui::PopStyleVar();
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    start_finger(ui, window);
    if (ui.scroll.region != window->ID) return;
    if (ui.scroll.down) follow_finger(ui, window);
    else if (ui.scroll.speed != 0) swing(ui, window);
}

void rows_in_sight(Ui& ui, std::vector<float>& heights, std::size_t count,
                   const std::function<void(std::size_t)>& draw) {
    const float gap = ImGui::GetStyle().ItemSpacing.y;
    const float top = ImGui::GetWindowPos().y, foot = top + ImGui::GetWindowSize().y;
    heights.resize(count, heights.empty() ? ui.px(size::target) : heights.back());
    for (std::size_t i = 0; i < count; ++i) {
        const float y = ImGui::GetCursorScreenPos().y;
        const bool in_sight = y + heights[i] >= top && y <= foot;
        if (!in_sight && !ui.log) {  // a test looks at them all
            ImGui::Dummy({1, heights[i]});
            continue;
        }
        draw(i);
        heights[i] = ImGui::GetCursorScreenPos().y - y - gap;
    }
}

void end_scroll(Ui& ui) {
    shade_hidden(ui, ImGui::GetCurrentWindow());
    ImGui::EndChild();
}

}  // namespace kw::window
