#include <array>

#include "checker/lines.h"
#include "checker/measure.h"

namespace checker {
namespace {

void check_mirrored(const Assembly& drawer, const char* what, const Slot& left, const Slot& right,
                    Report& report) {
    const auto same = [&](const char* measure, double left_mm, double right_mm) {
        report.same(Kind::measure, drawer.name, std::string("right side's ") + what + " " + measure, right_mm,
                    left_mm);
    };
    same("near side", left.from_mm, right.from_mm);
    same("far side", left.to_mm, right.to_mm);
    same("depth", left.depth_mm, right.depth_mm);
}

void check_outer_sizes(const Assembly& drawer, Report& report) {
    const auto same = [&](const Workpiece* piece, const char* what, double is_mm, double asked_mm) {
        report.same(Kind::list, piece->part.id, what, is_mm, asked_mm);
    };
    for (const Workpiece* side : {drawer.pieces.left, drawer.pieces.right}) {
        same(side, "a side's length", side->part.length_mm, drawer.box.depth_mm);
        same(side, "a side's width", side->part.width_mm, drawer.box.height_mm);
    }
    same(drawer.pieces.front, "the front's width", drawer.pieces.front->part.width_mm, drawer.box.height_mm);
}

struct NamedSolid {
    const char* name;
    const Solid& solid;
};

void check_overlaps(const Assembly& drawer, Report& report) {
    const std::array<NamedSolid, 5> all{{{"left side", drawer.left},
                                         {"right side", drawer.right},
                                         {"front", drawer.front},
                                         {"back", drawer.back},
                                         {"bottom", drawer.bottom}}};
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = i + 1; j < all.size(); ++j) {
            if (!overlap_more_than(all[i].solid, all[j].solid, report.tolerance_mm())) continue;
            report.say(Kind::measure, drawer.name,
                       std::string(all[i].name) + " and " + all[j].name + " are in the same place");
        }
    }
}

}  // namespace

void measure_box(const Assembly& drawer, Report& report) {
    check_mirrored(drawer, "joint with the front", drawer.left_shape.front, drawer.right_shape.front, report);
    check_mirrored(drawer, "joint with the back", drawer.left_shape.back, drawer.right_shape.back, report);
    check_mirrored(drawer, "groove", drawer.left_shape.groove, drawer.right_shape.groove, report);
    check_outer_sizes(drawer, report);
    check_overlaps(drawer, report);
}

}  // namespace checker
