#include "window/picture_choice.h"

#include <cmath>

#include "window/gl_picture.h"
#include "window/press.h"
#include "window/text.h"
#include "window/theme.h"

namespace kw::window {

bool picture_choice(Ui& ui, const char* label, const draw::Drawing& drawing, float width, bool& chosen) {
    const Font font = ui.font(TypeSize::small, chosen ? Face::strong : Face::text);
    const float picture_height = ui.px(84), pad = ui.px(6);
    const auto lines = wrapped(ui, shown_label(label), font, width - 2 * pad);
    const float height =
        picture_height + 2 * font.line + 3 * pad;  // two lines of words, so that a row is even
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::BeginGroup();  // one thing in the row, whatever is drawn in it
    const Press press = press_area(ui, label, {width, height});
    const draw::Palette& p = ui.colours();
    ImDrawList& canvas = *ImGui::GetWindowDrawList();
    fill_sheet(ui, canvas, press.box.Min, press.box.Max, chosen ? p.accent_tint : p.card,
               ui.px(size::radius));
    canvas.AddRect(press.box.Min, press.box.Max, colour(chosen ? p.accent : p.edge), ui.px(size::radius), 0,
                   ui.px(chosen ? 2 * size::edge : size::edge));
    ImGui::SetCursorScreenPos({corner.x + pad, corner.y + pad});
    draw_picture(ui, label, drawing, {width - 2 * pad, picture_height});
    float y = corner.y + picture_height + 2 * pad;
    for (const std::string& line : lines) {
        draw_text(ui, canvas, {corner.x + pad, y}, line, font, colour(p.ink));
        y += font.line;
    }
    focus_ring(ui, press);
    LoggedWidget logged =
        pressable("picture choice", shown_label(label), em_px(TypeSize::small), p.ink, p.card);
    logged.chosen = chosen;
    log_widget(ui, logged, press.box.Min, press.box.Max);
    ImGui::SetCursorScreenPos(corner);
    ImGui::Dummy({width, height});
    ImGui::EndGroup();
    if (!press.pressed) return false;
    chosen = !chosen;
    return true;
}

}  // namespace kw::window
