// WCAG 2.2: text 4.5:1 (1.4.3), 7:1 for the best grade (1.4.6), what must be seen of controls 3:1 (1.4.11).
#include "draw/palette.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace kw::draw;

namespace {

constexpr Theme themes[] = {Theme::light, Theme::dark};
constexpr Material materials[] = {
    Material::end_grain, Material::long_grain, Material::plywood, Material::cutter,
    Material::fence,     Material::table,      Material::spacer,  Material::sacrificial_spacer,
    Material::overlap,   Material::gap,        Material::removed, Material::ground,
    Material::done,      Material::ahead,      Material::next,    Material::shims,
    Material::height,    Material::test_cut};
constexpr Emphasis emphases[] = {Emphasis::plain, Emphasis::strong, Emphasis::changed, Emphasis::faint};

bool same(const Hatch& a, const Hatch& b) {
    return a.angle_deg == b.angle_deg && a.spacing_px == b.spacing_px && a.width_px == b.width_px &&
           a.offset_px == b.offset_px && a.dash_px == b.dash_px && a.space_px == b.space_px &&
           a.stagger_px == b.stagger_px;
}

// Told apart without any colour.
bool same_pattern(const FillStyle& a, const FillStyle& b) {
    if (a.hatches.size() != b.hatches.size() || a.edge_dash_px != b.edge_dash_px || a.edge_px != b.edge_px)
        return false;
    for (std::size_t i = 0; i < a.hatches.size(); ++i) {
        if (!same(a.hatches[i], b.hatches[i])) return false;
    }
    return true;
}

// How a colour looks to a dichromat, in linear light. The matrices are Machado, Oliveira and Fernandes 2009 at severity 1,
// from memory: protanopia, deuteranopia, tritanopia.
using Light = std::array<double, 3>;
constexpr double blindness[3][3][3] = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Light linear(Rgb c) {
    const auto part = [](std::uint8_t v) { return std::pow(v / 255.0, 2.2); };
    return {part(c.red), part(c.green), part(c.blue)};
}

double seen_apart(Rgb a, Rgb b, const double (&m)[3][3]) {
    const Light la = linear(a), lb = linear(b);
    double sum = 0;
    for (const auto& row : m) {
        double va = 0, vb = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            va += row[i] * la[i];
            vb += row[i] * lb[i];
        }
        // Compared as the eye does, roughly: by cube roots.
        const double d = std::cbrt(std::max(va, 0.0)) - std::cbrt(std::max(vb, 0.0));
        sum += d * d;
    }
    return std::sqrt(sum);
}

}  // namespace

TEST_CASE("contrast is as WCAG 2.2 defines it") {
    CHECK(contrast(hex(0x000000), hex(0xffffff)) == doctest::Approx(21.0));
    CHECK(contrast(hex(0xffffff), hex(0xffffff)) == doctest::Approx(1.0));
    // Of the Okabe-Ito set on white, computed independently: blue 5.19, vermillion 3.87, bluish green 3.42.
    CHECK(contrast(hex(0x0072b2), hex(0xffffff)) == doctest::Approx(5.19).epsilon(0.002));
    CHECK(contrast(hex(0xd55e00), hex(0xffffff)) == doctest::Approx(3.87).epsilon(0.002));
    CHECK(contrast(hex(0x009e73), hex(0xffffff)) == doctest::Approx(3.42).epsilon(0.002));
}

TEST_CASE("every text can be read on every ground that it stands on") {
    for (const Theme theme : themes) {
        const Palette& p = palette(theme);
        for (const Rgb ground : {p.paper, p.card, p.well}) {
            CHECK(contrast(p.ink, ground) >= 7);
            for (const Rgb ink : {p.soft_ink, p.accent, p.changed, p.good, p.caution, p.wrong})
                CHECK(contrast(ink, ground) >= 4.5);
            CHECK(contrast(p.edge, ground) >= 3);
        }
        CHECK(contrast(p.on_accent, p.accent) >= 4.5);
        CHECK(contrast(p.on_accent, p.accent_press) >= 4.5);
        CHECK(contrast(p.accent, p.accent_tint) >= 4.5);
        CHECK(contrast(p.good, p.good_tint) >= 4.5);
        CHECK(contrast(p.caution, p.caution_tint) >= 4.5);
        CHECK(contrast(p.wrong, p.wrong_tint) >= 4.5);
        for (const Rgb ground : {p.accent_tint, p.good_tint, p.caution_tint, p.wrong_tint})
            CHECK(contrast(p.ink, ground) >= 7);
    }
}

TEST_CASE("large numbers have the best grade of contrast, changed ones too") {
    for (const Theme theme : themes) {
        const Palette& p = palette(theme);
        CHECK(contrast(p.ink, p.card) >= 7);
        CHECK(contrast(p.changed, p.card) >= 7);
    }
}

TEST_CASE("no two materials share a pattern, except those that have none at all") {
    for (const Theme theme : themes) {
        for (const Material a : materials) {
            for (const Material b : materials) {
                const FillStyle one = fill_style(a, theme), two = fill_style(b, theme);
                if (a >= b) continue;
                CHECK_MESSAGE(!same_pattern(one, two), "materials ", int(a), " and ", int(b));
            }
        }
    }
}

TEST_CASE(
    "hatches are within what the shader has room for, and wider than the least spacing of drawing practice") {
    // Lining at 3/32 in or more (US Navy engineering-aid text): 9 px at 96 px to the inch. Overlap and gap are alarm marks, not
    // section lining, and stand closer on purpose; plies and grain are symbols of layers.
    for (const Material material : materials) {
        const FillStyle style = fill_style(material, Theme::light);
        CHECK(style.hatches.size() <= max_hatches);
        if (material == Material::overlap || material == Material::gap) continue;
        for (const Hatch& hatch : style.hatches) CHECK(hatch.spacing_px >= 9);
    }
}

TEST_CASE("adjacent parts are lined in opposite directions, and the grain turns with the board") {
    const auto angle = [](bool mirrored, bool upright, Material material) {
        Fill fill;
        fill.material = material;
        fill.mirrored = mirrored;
        fill.upright = upright;
        return fill_style(fill, Theme::light).hatches.at(0).angle_deg;
    };
    CHECK(angle(false, false, Material::end_grain) == 45);
    CHECK(angle(true, false, Material::end_grain) == 135);
    CHECK(angle(false, true, Material::long_grain) == angle(false, false, Material::long_grain) + 90);
}

TEST_CASE("the wide lines are at least twice as wide as the thin ones") {
    // A university page quoting EN ISO 128.
    CHECK(line_style(Stroke::outline, Theme::light).width_px >=
          2 * line_style(Stroke::thin, Theme::light).width_px);
    CHECK(fill_style(Material::end_grain, Theme::light).edge_px >=
          2 * fill_style(Material::end_grain, Theme::light).hatches[0].width_px);
}

TEST_CASE("overlap and gap, fit and misfit are told apart by every kind of colour vision") {
    for (const Theme theme : themes) {
        const Palette& p = palette(theme);
        for (const auto& kind : blindness) {
            CHECK(seen_apart(fill_style(Material::overlap, theme).hatch_ink,
                             fill_style(Material::gap, theme).hatch_ink, kind) > 0.1);
            CHECK(seen_apart(p.good, p.wrong, kind) > 0.1);
        }
    }
}

TEST_CASE("texts of a picture are at least 18 px, and what changed has a mark besides its colour") {
    for (const Emphasis emphasis : emphases) CHECK(annotation_style(emphasis, Theme::light).text_px >= 18);
    CHECK(annotation_style(Emphasis::changed, Theme::light).framed);
    CHECK_FALSE(annotation_style(Emphasis::strong, Theme::light).framed);
}
