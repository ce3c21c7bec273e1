// Sketches for the questions of the first start: what is measured, with an arrow along it.

#include "window/screen_first.h"

namespace kw::window {
namespace {

// A place in a sketch: shares of its width and height.
struct Frame {
    Ui& ui;
    ImDrawList& list;
    ImVec2 corner, size;

    ImVec2 at(float x, float y) const { return {corner.x + x * size.x, corner.y + y * size.y}; }
    void box(float left, float top, float right, float bottom, draw::Rgb fill) const {
        list.AddRectFilled(at(left, top), at(right, bottom), colour(fill));
        list.AddRect(at(left, top), at(right, bottom), colour(ui.colours().ink), 0, 0, ui.px(2.5));
    }
    void arrow_across(float left, float right, float y) const { arrow(at(left, y), at(right, y), true); }
    void arrow_down(float top, float bottom, float x) const { arrow(at(x, top), at(x, bottom), false); }

private:
    void arrow(ImVec2 a, ImVec2 b, bool across) const {
        const ImU32 ink = colour(ui.colours().accent);
        const float h = ui.px(7), l = ui.px(16);
        list.AddLine(a, b, ink, ui.px(4));
        if (across) {
            list.AddTriangleFilled(a, {a.x + l, a.y - h}, {a.x + l, a.y + h}, ink);
            list.AddTriangleFilled(b, {b.x - l, b.y + h}, {b.x - l, b.y - h}, ink);
        } else {
            list.AddTriangleFilled(a, {a.x + h, a.y + l}, {a.x - h, a.y + l}, ink);
            list.AddTriangleFilled(b, {b.x - h, b.y - l}, {b.x + h, b.y - l}, ink);
        }
    }
};

// The case, and the opening in it.
void draw_case(const Frame& frame) {
    const draw::Palette& p = frame.ui.colours();
    frame.box(0.14f, 0.12f, 0.86f, 0.88f, p.accent_tint);
    frame.box(0.20f, 0.26f, 0.80f, 0.74f, p.well);
}

void draw_rule(const Frame& frame) {
    frame.box(0.06f, 0.36f, 0.94f, 0.64f, frame.ui.colours().well);
    const ImU32 ink = colour(frame.ui.colours().ink);
    for (int i = 1; i < 32; ++i) {
        const float x = 0.06f + 0.88f * static_cast<float>(i) / 32;
        const float long_as = i % 16 == 0 ? 0.20f : i % 8 == 0 ? 0.15f : i % 4 == 0 ? 0.11f : 0.07f;
        frame.list.AddLine(frame.at(x, 0.36f), frame.at(x, 0.36f + long_as), ink, frame.ui.px(2));
    }
}

void draw_slide_places(const Frame& frame) {
    const draw::Palette& p = frame.ui.colours();
    draw_case(frame);
    frame.box(0.26f, 0.32f, 0.74f, 0.68f, p.card);
    frame.box(0.205f, 0.46f, 0.255f, 0.54f, p.accent);
    frame.box(0.745f, 0.46f, 0.795f, 0.54f, p.accent);
}

void draw_side_view(const Frame& frame) {
    const draw::Palette& p = frame.ui.colours();
    frame.box(0.12f, 0.16f, 0.88f, 0.84f, p.accent_tint);
    frame.box(0.12f, 0.28f, 0.82f, 0.72f, p.well);
    frame.arrow_across(0.12f, 0.82f, 0.5f);
}

// A board's edge between a caliper's jaws.
void draw_board(const Frame& frame, float top, float bottom) {
    const draw::Palette& p = frame.ui.colours();
    frame.box(0.10f, top, 0.90f, bottom, p.accent_tint);
    frame.arrow_down(top, bottom, 0.5f);
}

}  // namespace

void draw_sketch(Ui& ui, Sketch sketch, ImVec2 size) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    fill_sheet(ui, list, corner, {corner.x + size.x, corner.y + size.y}, ui.colours().card,
               ui.px(kw::window::size::radius));
    const Frame frame{ui, list, corner, size};
    switch (sketch) {
        case Sketch::rule: draw_rule(frame); break;
        case Sketch::width:
            draw_case(frame);
            frame.arrow_across(0.20f, 0.80f, 0.5f);
            break;
        case Sketch::height:
            draw_case(frame);
            frame.arrow_down(0.26f, 0.74f, 0.5f);
            break;
        case Sketch::depth: draw_side_view(frame); break;
        case Sketch::slides: draw_slide_places(frame); break;
        case Sketch::stock: draw_board(frame, 0.30f, 0.70f); break;
        case Sketch::bottom: draw_board(frame, 0.42f, 0.62f); break;
    }
    ImGui::Dummy(size);
}

}  // namespace kw::window
