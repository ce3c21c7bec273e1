#include "window/theme.h"

namespace kw::window {
namespace {

ImVec4 vec(draw::Rgb c, float alpha = 1) {
    return {static_cast<float>(c.red) / 255.0f, static_cast<float>(c.green) / 255.0f,
            static_cast<float>(c.blue) / 255.0f, alpha};
}

void set_sizes(ImGuiStyle& style, float r) {
    style.AntiAliasedLinesUseTex = false;  // their texture would have to be blended
    style.WindowPadding = {16 * r, 16 * r};
    style.FramePadding = {14 * r, 14 * r};
    style.ItemSpacing = {12 * r, 12 * r};
    style.ItemInnerSpacing = {8 * r, 8 * r};
    style.ScrollbarSize = 10 * r;
    style.GrabMinSize = 44 * r;
    style.WindowRounding = 10 * r;
    style.ChildRounding = 0;
    style.FrameRounding = 7 * r;
    style.PopupRounding = 10 * r;
    style.ScrollbarRounding = 5 * r;
    style.WindowBorderSize = 0;
    style.ChildBorderSize = 0;
    style.FrameBorderSize = 0;
    style.PopupBorderSize = 2 * r;
    style.TouchExtraPadding = {0, 0};
    style.DisabledAlpha = 1;  // what cannot be used now is drawn so by its widget, and stays readable
}

}  // namespace

double em_px(TypeSize size) {
    switch (size) {
        case TypeSize::small: return 18;
        case TypeSize::body: return 20;
        case TypeSize::heading: return 26;
        case TypeSize::number: return 44;
        case TypeSize::huge: break;
    }
    return 72;
}

draw::Rgb ink(draw::Theme theme, Tone tone) {
    const draw::Palette& p = draw::palette(theme);
    switch (tone) {
        case Tone::plain: return p.ink;
        case Tone::soft: return p.soft_ink;
        case Tone::accent: return p.accent;
        case Tone::changed: return p.changed;
        case Tone::good: return p.good;
        case Tone::caution: return p.caution;
        case Tone::wrong: break;
    }
    return p.wrong;
}

draw::Rgb tint(draw::Theme theme, Tone tone) {
    const draw::Palette& p = draw::palette(theme);
    switch (tone) {
        case Tone::plain:
        case Tone::soft: return p.card;
        case Tone::accent:
        case Tone::changed: return p.accent_tint;
        case Tone::good: return p.good_tint;
        case Tone::caution: return p.caution_tint;
        case Tone::wrong: break;
    }
    return p.wrong_tint;
}

const char* sign(Tone tone) {
    switch (tone) {
        case Tone::plain:
        case Tone::soft: return "";
        case Tone::accent: return "\u2192";
        case Tone::changed: return "\u25b2";
        case Tone::good: return "\u2713";
        case Tone::caution: return "\u26a0";
        case Tone::wrong: break;
    }
    return "\u2717";
}

ImU32 colour(draw::Rgb c, float alpha) { return ImGui::ColorConvertFloat4ToU32(vec(c, alpha)); }

void apply_style(ImGuiStyle& style, draw::Theme theme, double pixel_ratio) {
    style = ImGuiStyle();
    set_sizes(style, static_cast<float>(pixel_ratio));
    const draw::Palette& p = draw::palette(theme);
    for (ImVec4& c : style.Colors) c = vec(p.ink);
    const ImVec4 none{0, 0, 0, 0};
    const auto set = [&](std::initializer_list<ImGuiCol> which, ImVec4 c) {
        for (const ImGuiCol i : which) style.Colors[i] = c;
    };
    set({ImGuiCol_TextDisabled}, vec(p.soft_ink));
    set({ImGuiCol_WindowBg, ImGuiCol_PopupBg}, vec(p.card));
    set({ImGuiCol_ChildBg, ImGuiCol_BorderShadow, ImGuiCol_ScrollbarBg, ImGuiCol_NavHighlight}, none);
    set({ImGuiCol_Border}, vec(p.edge));
    set({ImGuiCol_FrameBg, ImGuiCol_FrameBgHovered, ImGuiCol_FrameBgActive}, none);
    set({ImGuiCol_ScrollbarGrab, ImGuiCol_ScrollbarGrabHovered}, vec(p.edge));
    set({ImGuiCol_ScrollbarGrabActive}, vec(p.accent));
    set({ImGuiCol_TextSelectedBg}, vec(p.accent, 0.30f));
    set({ImGuiCol_ModalWindowDimBg, ImGuiCol_NavWindowingDimBg}, vec(draw::hex(0x0c0a08), 0.55f));
}

}  // namespace kw::window
