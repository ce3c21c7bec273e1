#include "draw/palette.h"

#include <algorithm>
#include <cmath>

namespace kw::draw {
namespace {

constexpr Palette light_palette{
    .paper = hex(0xf4efe4),
    .card = hex(0xfffcf5),
    .well = hex(0xfffefb),
    .ink = hex(0x1d1a15),
    .soft_ink = hex(0x5a5246),
    .hairline = hex(0xd8cfbd),
    .edge = hex(0x857a68),
    .accent = hex(0x0d4f63),
    .accent_press = hex(0x083947),
    .accent_tint = hex(0xd5e5e6),
    .on_accent = hex(0xffffff),
    .changed = hex(0x7d2a63),
    .good = hex(0x0a6147),
    .good_tint = hex(0xd8ebdf),
    .caution = hex(0x7a4a00),
    .caution_tint = hex(0xfbe6bd),
    .wrong = hex(0xa83200),
    .wrong_tint = hex(0xfbdfd0),
};

constexpr Palette dark_palette{
    .paper = hex(0x171512),
    .card = hex(0x211e1a),
    .well = hex(0x12100e),
    .ink = hex(0xf5efe3),
    .soft_ink = hex(0xbdb3a2),
    .hairline = hex(0x3b362e),
    .edge = hex(0x8b8170),
    .accent = hex(0x6cc9d6),
    .accent_press = hex(0x9adde6),
    .accent_tint = hex(0x1d3f47),
    .on_accent = hex(0x0b1f24),
    .changed = hex(0xe6a0cb),
    .good = hex(0x63cfa2),
    .good_tint = hex(0x173a2c),
    .caution = hex(0xf0b84a),
    .caution_tint = hex(0x40300f),
    .wrong = hex(0xff9366),
    .wrong_tint = hex(0x4a2213),
};

struct MaterialColours {
    Rgb ground, hatch, edge;
};

MaterialColours wood(Theme theme, Rgb light_ground, Rgb light_hatch) {
    if (theme == Theme::light) return {light_ground, light_hatch, hex(0x2a2118)};
    return {hex(0x4a3a26), hex(0xc29a63), hex(0xf0dfc3)};
}

MaterialColours pick(Theme theme, MaterialColours light, MaterialColours dark) {
    return theme == Theme::light ? light : dark;
}

FillStyle styled(MaterialColours colours, std::vector<Hatch> hatches) {
    FillStyle style;
    style.ground = colours.ground;
    style.hatch_ink = colours.hatch;
    style.edge = colours.edge;
    style.hatches = std::move(hatches);
    return style;
}

FillStyle end_grain(Theme theme) {
    return styled(wood(theme, hex(0xefd9ae), hex(0x94642a)),
                  {{.angle_deg = 45, .spacing_px = 9, .width_px = 1.2}});
}

FillStyle long_grain(Theme theme) {
    return styled(
        wood(theme, hex(0xf3e2bf), hex(0xa9773a)),
        {{.angle_deg = 0, .spacing_px = 18, .width_px = 1.2, .dash_px = 64, .space_px = 15, .stagger_px = 29},
         {.angle_deg = 0,
          .spacing_px = 18,
          .width_px = 1.2,
          .offset_px = 9,
          .dash_px = 25,
          .space_px = 20,
          .stagger_px = 17}});
}

FillStyle plywood(Theme theme) {
    return styled(wood(theme, hex(0xf0e0c0), hex(0x8a6030)),
                  {{.angle_deg = 0, .spacing_px = 14, .width_px = 1.2, .offset_px = 3.5},
                   {.angle_deg = 0,
                    .spacing_px = 14,
                    .width_px = 3.0,
                    .offset_px = 10.5,
                    .dash_px = 7,
                    .space_px = 6,
                    .stagger_px = 6}});
}

FillStyle cutter(Theme theme) {
    return styled(pick(theme, {hex(0x3a4047), hex(0x3a4047), hex(0x14171a)},
                       {hex(0xaab4bd), hex(0xaab4bd), hex(0xf2f6f9)}),
                  {});
}

FillStyle fence(Theme theme) {
    return styled(pick(theme, {hex(0xd3dae0), hex(0x71808c), hex(0x303a43)},
                       {hex(0x343d45), hex(0x84939f), hex(0xc6d2dc)}),
                  {{.angle_deg = 45, .spacing_px = 16, .width_px = 1.2},
                   {.angle_deg = 45, .spacing_px = 16, .width_px = 1.2, .offset_px = 4}});
}

FillStyle table(Theme theme) {
    return styled(pick(theme, {hex(0xe2e3e0), hex(0xaeb3b0), hex(0x4d5452)},
                       {hex(0x2b2d2c), hex(0x5d6462), hex(0xa9b1ae)}),
                  {{.angle_deg = 135, .spacing_px = 18, .width_px = 1.2}});
}

FillStyle spacer(Theme theme) {
    return styled(pick(theme, {hex(0xd5e7f2), hex(0x4f86a8), hex(0x17435c)},
                       {hex(0x1d3644), hex(0x6fa9cb), hex(0xb9dcf0)}),
                  {{.angle_deg = 45, .spacing_px = 14, .width_px = 1.2},
                   {.angle_deg = 135, .spacing_px = 14, .width_px = 1.2}});
}

FillStyle sacrificial_spacer(Theme theme) {
    FillStyle style = spacer(theme);
    style.edge = palette(theme).wrong;
    style.edge_px = 3.6;
    style.edge_dash_px = 10;
    style.edge_space_px = 7;
    return style;
}

FillStyle overlap(Theme theme) {
    return styled(pick(theme, {hex(0xf6b79a), hex(0xa83200), hex(0xa83200)},
                       {hex(0x7a2c0c), hex(0xffb08e), hex(0xffb08e)}),
                  {{.angle_deg = 45, .spacing_px = 5, .width_px = 1.4},
                   {.angle_deg = 135, .spacing_px = 5, .width_px = 1.4}});
}

FillStyle gap(Theme theme) {
    return styled(pick(theme, {hex(0xffffff), hex(0x0072b2), hex(0x005b8f)},
                       {hex(0x0c1a24), hex(0x63bdf0), hex(0x8fd0f5)}),
                  {{.angle_deg = 0,
                    .spacing_px = 6,
                    .width_px = 2.6,
                    .offset_px = 3,
                    .dash_px = 2.6,
                    .space_px = 5.4,
                    .stagger_px = 4}});
}

FillStyle removed(Theme theme) {
    const Rgb ghost = palette(theme).edge;
    FillStyle style = styled(
        {palette(theme).card, ghost, ghost},
        {{.angle_deg = 45, .spacing_px = 12, .width_px = 1.2, .dash_px = 5, .space_px = 7, .stagger_px = 6}});
    style.transparent = true;
    style.edge_px = 1.4;
    style.edge_dash_px = 7;
    style.edge_space_px = 5;
    return style;
}

FillStyle ground(Theme theme) {
    const Palette& p = palette(theme);
    FillStyle style = styled({p.paper, p.paper, p.hairline}, {});
    style.edge_px = 1.2;
    return style;
}

// Work in the order picture. Words stand on it: the edge alone tells it apart without colour.
FillStyle work_block(Rgb tint, Rgb edge, double edge_px) {
    FillStyle style = styled({tint, tint, edge}, {});
    style.edge_px = edge_px;
    return style;
}

FillStyle shims(Theme theme) {
    const Palette& p = palette(theme);
    return styled({p.card, p.caution, p.caution}, {{.angle_deg = 90, .spacing_px = 9, .width_px = 3}});
}

FillStyle height(Theme theme) {
    const Palette& p = palette(theme);
    return styled(
        pick(theme, {hex(0xf0b23c), p.caution, p.caution}, {hex(0x9a6a10), hex(0xffe2a6), p.caution}),
        {{.angle_deg = 0, .spacing_px = 9, .width_px = 1.6}});
}

FillStyle test_cut(Theme theme) {
    return styled(pick(theme, {hex(0xf3dcec), hex(0x7d2a63), hex(0x7d2a63)},
                       {hex(0x4a2340), hex(0xe6a0cb), hex(0xe6a0cb)}),
                  {{.angle_deg = 45, .spacing_px = 9, .width_px = 1.4},
                   {.angle_deg = 135, .spacing_px = 9, .width_px = 1.4}});
}

double channel(std::uint8_t value) {
    const double c = value / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(Rgb c) {
    return 0.2126 * channel(c.red) + 0.7152 * channel(c.green) + 0.0722 * channel(c.blue);
}

}  // namespace

const Palette& palette(Theme theme) { return theme == Theme::light ? light_palette : dark_palette; }

double contrast(Rgb a, Rgb b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

FillStyle fill_style(Material material, Theme theme) {
    switch (material) {
        case Material::end_grain: return end_grain(theme);
        case Material::long_grain: return long_grain(theme);
        case Material::plywood: return plywood(theme);
        case Material::cutter: return cutter(theme);
        case Material::fence: return fence(theme);
        case Material::table: return table(theme);
        case Material::spacer: return spacer(theme);
        case Material::sacrificial_spacer: return sacrificial_spacer(theme);
        case Material::overlap: return overlap(theme);
        case Material::gap: return gap(theme);
        case Material::removed: return removed(theme);
        case Material::done: return work_block(palette(theme).good_tint, palette(theme).good, 1.8);
        case Material::ahead: return work_block(palette(theme).accent_tint, palette(theme).accent, 1.6);
        case Material::next: return work_block(palette(theme).card, palette(theme).accent, 4);
        case Material::shims: return shims(theme);
        case Material::height: return height(theme);
        case Material::test_cut: return test_cut(theme);
        case Material::ground: break;
    }
    return ground(theme);
}

FillStyle fill_style(const Fill& fill, Theme theme) {
    FillStyle style = fill_style(fill.material, theme);
    for (Hatch& hatch : style.hatches) {
        if (fill.upright) hatch.angle_deg += 90;
        if (fill.mirrored) hatch.angle_deg = 180 - hatch.angle_deg;
    }
    if (!fill.outlined) style.edge_px = 0;
    return style;
}

LineStyle line_style(Stroke stroke, Theme theme) {
    const Palette& p = palette(theme);
    switch (stroke) {
        case Stroke::outline: return {p.ink, 2.4, {}};
        case Stroke::thin: return {p.ink, 1.2, {}};
        case Stroke::centre: return {p.soft_ink, 1.2, {18, 5, 4, 5}};
        case Stroke::hidden: return {p.soft_ink, 1.2, {6, 5, 6, 5}};
        case Stroke::ghost: return {p.edge, 2.4, {3, 7, 3, 7}};
        case Stroke::walk: return {p.accent, 3.6, {3.6, 4.4, 3.6, 4.4}};
        case Stroke::now: return {p.changed, 3.6, {}};
        case Stroke::stood: return {p.changed, 2.0, {9, 6, 9, 6}};
        case Stroke::pencil: return {p.ink, 3.0, {}};
        case Stroke::pencil_beneath: return {p.ink, 2.0, {6, 5, 6, 5}};
        case Stroke::halo: return {p.card, 9.0, {}};
        case Stroke::glue: return {p.accent, 6.0, {}};
        case Stroke::arrow: break;
    }
    return {p.accent, 3.0, {}};
}

AnnotationStyle annotation_style(Emphasis emphasis, Theme theme) {
    const Palette& p = palette(theme);
    switch (emphasis) {
        case Emphasis::plain: return {.ink = p.ink, .line_px = 1.2, .text_px = 20};
        case Emphasis::strong: return {.ink = p.accent, .line_px = 2.4, .text_px = 26, .bold = true};
        case Emphasis::changed:
            return {.ink = p.changed, .line_px = 2.4, .text_px = 26, .bold = true, .framed = true};
        case Emphasis::faint: break;
    }
    return {.ink = p.soft_ink, .line_px = 1.2, .text_px = 20};
}

}  // namespace kw::draw
