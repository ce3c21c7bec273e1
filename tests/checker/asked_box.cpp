#include "checker/asked_box.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace checker {
namespace {

// Concealed undermount slides: inside width = opening less 42 mm (box makers' published sheets). The other clearances here are
// common practice, no source.
constexpr double undermount_mm = 42;
constexpr Range side_mount_mm{inch_mm / 2, inch_mm / 2 + inch_mm / 32};
constexpr double runner_mm = inch_mm / 16;
constexpr double most_movement_mm = 5;  // what a season may take off a runner's drawer: no box moves more

struct Clearances {
    double top_mm = 0;
    double bottom_mm = 0;
};

class BoxFromOpening {
public:
    BoxFromOpening(const Json& drawer, Unit bare)
        : opening_(drawer.at("opening")), slide_(drawer.at("slide")), bare_(bare), kind_(slide_.at("kind")) {}

    Range width_mm(double side_thickness_mm) const {
        const double opening = of_opening("width");
        if (kind_ == "undermount") return exactly(opening - undermount_mm + 2 * side_thickness_mm);
        if (const auto side = of_slide("side")) return exactly(opening - 2 * *side);
        if (kind_ == "wooden runner") return {opening - runner_mm - most_movement_mm, opening - runner_mm};
        return {opening - 2 * side_mount_mm.high, opening - 2 * side_mount_mm.low};
    }

    Range height_mm() const {
        const double opening = of_opening("height");
        const auto usual = usual_clearances();
        const auto top = of_slide("top");
        const auto bottom = of_slide("bottom");
        if (usual) return exactly(opening - top.value_or(usual->top_mm) - bottom.value_or(usual->bottom_mm));
        if (top && bottom) return exactly(opening - *top - *bottom);
        return {opening / 2, opening};
    }

    Range depth_mm(double face_in_case_mm) const {
        const double inside = of_opening("depth") - face_in_case_mm;
        const auto back = of_slide("back");
        if (!slide_.contains("lengths")) return back ? exactly(inside - *back) : Range{inside / 2, inside};
        return {longest_within(inside - back.value_or(0)), longest_within(inside)};
    }

private:
    static Range exactly(double value_mm) { return {value_mm, value_mm}; }

    double of_opening(const char* field) const { return read_length_mm(opening_.at(field), bare_); }
    std::optional<double> of_slide(const char* field) const {
        if (!slide_.contains(field)) return std::nullopt;
        return read_length_mm(slide_.at(field), bare_);
    }

    std::optional<Clearances> usual_clearances() const {
        if (kind_ == "undermount") return Clearances{inch_mm / 4, inch_mm * 9 / 16};
        if (kind_ == "wooden runner") return Clearances{inch_mm * 3 / 32, inch_mm / 32};
        return std::nullopt;
    }

    double longest_within(double limit_mm) const {
        double longest = 0;
        for (const Json& entry : slide_.at("lengths")) {
            const double length = read_length_mm(entry, bare_);
            if (length <= limit_mm + 1e-6) longest = std::max(longest, length);
        }
        return longest;
    }

    const Json& opening_;
    const Json& slide_;
    Unit bare_;
    std::string kind_;
};

}  // namespace

AskedBox asked_box(const Json& drawer, Unit bare, double side_thickness_mm, double face_in_case_mm) {
    if (drawer.contains("box")) {
        const auto given = [&](const char* field) {
            const double value = read_length_mm(drawer.at("box").at(field), bare);
            return Range{value, value};
        };
        return {given("width"), given("height"), given("depth")};
    }
    const BoxFromOpening box(drawer, bare);
    return {box.width_mm(side_thickness_mm), box.height_mm(), box.depth_mm(face_in_case_mm)};
}

}  // namespace checker
