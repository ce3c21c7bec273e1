#include "memory/lesson.h"

#include <array>
#include <cmath>

namespace kw {

namespace {

struct Name {
    Taught what;
    std::string_view name;
    std::string_view control;  // of the model, that holds it
};
constexpr std::array<Name, 5> names = {{{Taught::fence, "fence", "fence offset"},
                                        {Taught::height, "height", "height offset"},
                                        {Taught::kerf, "kerf", "kerf offset"},
                                        {Taught::fence_gain, "fence moves", "fence gain"},
                                        {Taught::height_gain, "height moves", "height gain"}}};

// Where less than this part of the variance was taken away, nothing was told.
constexpr double least_told = 0.02;

}  // namespace

std::string_view name_of(Taught what) {
    for (const Name& name : names)
        if (name.what == what) return name.name;
    return {};
}

std::optional<Taught> taught_named(std::string_view text) {
    for (const Name& name : names)
        if (name.name == text) return name.what;
    return std::nullopt;
}

std::vector<Lesson> lessons_of(const Group& group, const Model& model, const Belief& now) {
    std::vector<Lesson> out;
    const std::size_t n = now.size();
    for (const Name& name : names) {
        for (std::size_t c = 0; c < n; ++c) {
            const Control& control = model.controls[c];
            const double before = control.spread_mm * control.spread_mm, after = now.covariance[c * n + c];
            if (control.name != name.control || before < known_variance_mm2 ||
                after > (1.0 - least_told) * before)
                continue;
            // The normal that turns the belief before into the one after: precisions add.
            const double precision = 1.0 / std::max(after, known_variance_mm2) - 1.0 / before;
            Lesson lesson;
            lesson.what = name.what;
            lesson.machine = group.work.chosen.machine.name;
            lesson.cutter = group.work.chosen.cutter.name;
            lesson.kerf = group.work.chosen.cutter.kerf;
            lesson.value =
                (now.mean[c] / std::max(after, known_variance_mm2) - control.set_mm / before) / precision;
            lesson.spread = 1.0 / std::sqrt(precision);
            lesson.group = group.key;
            out.push_back(std::move(lesson));
        }
    }
    return out;
}

}  // namespace kw
