// The order of work as a picture that can be tapped.

#include <cmath>

#include "window/order_drag.h"
#include "window/screen.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

const draw::OrderView& view_for(Screen& screen, const draw::OrderRoom& room) {
    Ui& ui = screen.ui;
    OrderPicture& kept = screen.state.order;
    if (kept.of == screen.session.work && kept.room.width_px == room.width_px &&
        kept.room.height_px == room.height_px && kept.fonts == ui.fonts.generation())
        return kept.view;
    const draw::TextMeasure measure = [&ui](std::string_view text, double size_px, bool bold) {
        const Font font = ui.font_px(size_px, bold ? Face::strong : Face::text);
        return static_cast<double>(text_width(ui, text, font)) / ui.pixel_ratio;
    };
    kept = {screen.session.work, room, ui.fonts.generation(),
            draw::order_view(*screen.work(), next_step(*screen.work()), room, measure)};
    return kept.view;
}

// For tests: each block, as if it were a button.
void log_blocks(Ui& ui, const draw::OrderView& view, ImVec2 corner, float margin) {
    if (!ui.log) return;
    for (const draw::StepPlace& place : view.places) {
        LoggedWidget block;
        block.kind = "block";
        block.label = place.step;
        block.pressable = true;
        const auto at = [&](double x_mm, double y_mm) {
            return ImVec2{corner.x + margin + ui.px(x_mm), corner.y + margin - ui.px(y_mm)};
        };
        log_widget(ui, block, at(place.box.left_mm, place.box.top_mm),
                   at(place.box.right_mm, place.box.bottom_mm));
    }
}

// A finger that went off, whichever way, did not mean what lies where it came up.
bool was_carried(const Ui& ui) {
    const ImGuiIO& io = ImGui::GetIO();
    const float far = ui.px(size::drag_starts);
    const float x = io.MousePos.x - io.MouseClickedPos[0].x, y = io.MousePos.y - io.MouseClickedPos[0].y;
    return x * x + y * y > far * far || io.MouseDragMaxDistanceSqr[0] > far * far;
}

}  // namespace

std::string draw_order_picture(Screen& screen, float most_height) {
    Ui& ui = screen.ui;
    constexpr double margin_px = 4;  // that a picture leaves round itself
    const float width = std::floor(content_width(ui));
    const draw::OrderRoom room{width / ui.pixel_ratio - 2 * margin_px,
                               std::floor(most_height) / ui.pixel_ratio - 2 * margin_px};
    const draw::OrderView& view = view_for(screen, room);
    const draw::Box frame = draw::bounds(view.drawing);
    const ImVec2 size{width, std::ceil(ui.px(frame.top_mm - frame.bottom_mm + 2 * margin_px))};
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const Press press = press_area(ui, "order of work", size);
    ImGui::SetCursorScreenPos(corner);
    draw_picture(ui, "order", view.drawing, size);
    focus_ring(ui, press);
    const PictureOnScreen picture{view, {corner.x + ui.px(margin_px), corner.y + ui.px(margin_px)}};
    log_blocks(ui, view, corner, ui.px(margin_px));
    if (drag_step(screen, press, picture) || !press.pressed) return {};
    // By keyboard there is no place on the picture: it opens what is next.
    if (ImGui::GetCurrentContext()->NavActivateId == press.id) return next_step(*screen.work());
    if (was_carried(ui)) return {};
    return draw::step_at(view, picture.point_at(ui, ImGui::GetIO().MousePos), size::least_target / 2);
}

}  // namespace kw::window
