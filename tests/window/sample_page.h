#pragma once
// One page with every kind of widget on it, as screens use them.

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "draw/section_sample.h"
#include "window/gl_picture.h"
#include "window/widgets.h"

namespace kw::window {

struct SamplePage {
    draw::Drawing drawing = draw::section_sample();
    ViewTransform look;
    std::string name = "drawer with a name of some forty letters";
    std::string dado = "10 1/16 in";
    std::string stock = "3/4 in";
    std::string refusal = "thicker than the rabbet leaves: a third of 1/2 in must stay under the dado";
    std::vector<std::string> feels{"will not enter", "tight", "right", "loose", "rattles"};
    std::vector<std::string> place_names{"Drawers", "Work", "At the saw"};
    std::vector<std::string> recent{"1/4 in", "12.7 mm"};
    int feel = 2;
    int place = 0;
    bool first = true, second = false, sound = false;
    int nexts = 0, backs = 0, lost = 0, undone = 0, confirmed = 0, figures = 0;

    void operator()(Ui& ui) {
        const float page = ui.px(size::page), gap = ui.px(size::gap), whole = ui.page_size.x - 2 * page;
        const bool wide = ui.page_size.x > ui.page_size.y;
        ImGui::SetCursorPos({page, ui.px(6)});
        places(ui, place_names, place);
        const float top = ui.px(78), foot = ui.page_size.y - ui.px(76);
        const float left = wide ? std::floor(whole * 0.5f) : whole, right = wide ? whole - left - gap : whole;
        const float split = wide ? foot : std::floor(top + (foot - top) * 0.4f);
        ImGui::SetCursorPos({page, top});
        begin_scroll(ui, "left", {left, split - top - gap});
        shown(ui, left - gap, split - top);
        end_scroll(ui);
        ImGui::SetCursorPos(wide ? ImVec2{page + left + gap, top} : ImVec2{page, split});
        begin_scroll(ui, "right", {right, foot - (wide ? top : split) - gap});
        entered(ui, right - gap);
        end_scroll(ui);
        ImGui::SetCursorPos({page, foot});
        if (secondary_button(ui, "Back")) ++backs;
        ImGui::SameLine(0, gap);
        if (primary_button(ui, "Next setup", {.width = ui.px(220)})) ++nexts;
        ImGui::SameLine(0, gap);
        quiet_button(ui, "Not now", {.enabled = false});
    }

private:
    void shown(Ui& ui, float width, float height) {
        begin_card(ui, "picture", width);
        heading(ui, "Dado in the sides");
        caption(ui, "Inside face down, front end against the fence");
        explore_picture(ui, "section", drawing,
                        {content_width(ui), std::max(height - ui.px(560), ui.px(320))}, look);
        end_card(ui);
        begin_card(ui, "numbers", width);
        if (figure(ui, {.caption = "Fence",
                        .value = "10 15/32 +",
                        .unit = "in",
                        .changed_from = "9 1/2 in",
                        .size = TypeSize::huge,
                        .pressable = true}))
            ++figures;
        figure(ui, {.caption = "Blade height", .value = "6.35", .unit = "mm", .note = "as before"});
        notice(ui, Tone::caution, "Guard and riving knife are off for this cut",
               "Refit both before the next through cut.");
        end_card(ui);
    }

    void entered(Ui& ui, float width) {
        begin_card(ui, "parts", width);
        progress(ui, 1, 2);
        tick_row(ui, "Left side", first, "front end");
        tick_row(ui, "Right side", second);
        toggle_row(ui, "Sound on the next step", sound);
        if (list_row(ui, "The joint closed", "fits", false, Tone::good)) ++figures;
        end_card(ui);
        begin_card(ui, "entry", width);
        segments(ui, "feel", feels, feel, -1);
        length_field(ui, "Dado width", dado, {.unit = "in", .width = -1, .recent = recent});
        length_field(ui, "Stock", stock, {.unit = "in", .error = refusal, .width = -1});
        text_field(ui, "Name", name, {.width = -1});
        status(ui, Tone::wrong, "too tight by 0.2 mm");
        if (chip(ui, "last value")) ++figures;
        if (confirm_button(ui, "Mark as lost", "Press again: it is lost")) ++lost;
        if (hold_button(ui, "Hold to undo", {}, 0.05)) ++undone;
        end_card(ui);
    }
};

}  // namespace kw::window
