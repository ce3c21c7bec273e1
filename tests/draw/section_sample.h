#pragma once
// A section with every material and kind of line in it, for the tests of how drawings look.

#include "draw/drawing.h"

namespace kw::draw {

inline Drawing section_sample(bool with_words = true) {
    Drawing d;
    d.title = "Dado in a side: section at the saw";
    const auto area = [&](Box box, Material material, bool mirrored = false, bool upright = false) {
        d.shapes.push_back(Fill{{rectangle(box)}, material, mirrored, upright});
    };
    area({-34, -14, 96, 0}, Material::table);
    area({-22, 0, -6.35, 38}, Material::fence);
    area({-6.35, 0, 0, 14}, Material::sacrificial_spacer);
    const Ring board{{0, 0},    {6.35, 0}, {6.35, 6.35}, {12.7, 6.35},
                     {12.7, 0}, {64, 0},   {64, 12.7},   {0, 12.7}};
    d.shapes.push_back(Fill{{board}, Material::plywood});
    area({6.35, -12, 12.7, 6.35}, Material::cutter);
    area({70, 0, 80, 22}, Material::long_grain, false, true);
    area({-34, 44, -20, 58}, Material::end_grain);
    area({-20, 44, -6, 58}, Material::end_grain, true);
    area({0, 44, 14, 58}, Material::spacer);
    d.shapes.push_back(Fill{{rectangle({20, 44, 40, 58}), rectangle({26, 48, 34, 54})}, Material::overlap});
    d.shapes.push_back(Fill{{circle({52, 51}, 7)}, Material::gap});
    d.shapes.push_back(Fill{{circle({70, 51}, 7)}, Material::removed});
    area({82, 44, 96, 58}, Material::ground);
    d.shapes.push_back(Line{{{9.525, -14}, {9.525, 12}}, Stroke::centre});
    d.shapes.push_back(Line{{{20, 34}, {60, 34}}, Stroke::hidden});
    d.shapes.push_back(Line{{{20, 30}, {40, 30}, {60, 32}}, Stroke::ghost});
    d.shapes.push_back(Line{{{60, 22}, {44, 22}}, Stroke::arrow});
    if (!with_words) return d;
    d.shapes.push_back(Dimension{{-6.35, 0}, {6.35, 0}, Side::below, -14, 0, "1/2 in", Emphasis::strong});
    d.shapes.push_back(Dimension{{6.35, 0}, {12.7, 0}, Side::below, -14, 0, "1/4 in", Emphasis::plain});
    d.shapes.push_back(Dimension{{64, 0}, {64, 12.7}, Side::right, 96, 0, "1/2 in", Emphasis::plain});
    d.shapes.push_back(
        Dimension{{12.7, 0}, {12.7, 6.35}, Side::right, 96, 1, "15/64 in +", Emphasis::changed});
    d.shapes.push_back(Dimension{{-6.35, 14}, {0, 14}, Side::above, 38, 0, "1/4 in", Emphasis::faint});
    d.shapes.push_back(Label{{40, 9}, "side", Anchor::centre, Emphasis::plain, {}});
    d.shapes.push_back(Label{{24, 26}, "face mark", Anchor::centre, Emphasis::plain, Point{20, 0.6}});
    return d;
}

}  // namespace kw::draw
