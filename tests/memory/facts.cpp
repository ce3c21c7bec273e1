// What a shop remembers: facts of the trade (common practice, no source), and the arithmetic against Eigen.
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>

#include "memory/memory.h"

using namespace kw;

namespace {

const Machine saw = usual_machine("saw", MachineKind::table_saw);
const Cutter stack{"quarter stack", CutterKind::dado_stack, "saw", Length::inches(1, 4)};
const Cutter wide{"half stack", CutterKind::dado_stack, "saw", Length::inches(1, 2)};

Lesson lesson(Taught what, const Cutter& cutter, double value, double spread, const char* day) {
    Lesson out;
    out.what = what;
    out.machine = "saw";
    out.cutter = cutter.name;
    out.kerf = cutter.kerf;
    out.value = value;
    out.spread = spread;
    out.tests = 2;
    out.time = out.began = day;
    out.group = "a groove";
    return out;
}

}  // namespace

TEST_CASE("a shop that has locked nothing expects what is usual of any machine") {
    const Scales usual = usual_scales();
    const Scales none = scales_for({}, saw, stack, "2026-05-01");
    CHECK(none.fence.offset_mm == 0.0);
    CHECK(none.fence.spread_mm == doctest::Approx(usual.fence.spread_mm).epsilon(0.02));
    CHECK(none.height.spread_mm == doctest::Approx(usual.height.spread_mm).epsilon(0.02));
    CHECK(none.kerf.spread_mm == doctest::Approx(usual.kerf.spread_mm).epsilon(0.02));
    CHECK(none.height.gain_spread == doctest::Approx(usual.height.gain_spread).epsilon(0.02));
}

TEST_CASE("a fence found 0.4 mm out twice is expected there, and surer with each time") {
    Memory memory;
    double spread = scales_for(memory, saw, stack, "2026-05-01").fence.spread_mm;
    for (const char* day : {"2026-05-01", "2026-05-02", "2026-05-03"}) {
        memory.lessons.push_back(lesson(Taught::fence, stack, 0.4, 0.04, day));
        const Scale fence = scales_for(memory, saw, stack, "2026-05-03").fence;
        CHECK(fence.spread_mm < spread);
        spread = fence.spread_mm;
    }
    CHECK(scales_for(memory, saw, stack, "2026-05-03").fence.offset_mm == doctest::Approx(0.4).epsilon(0.05));
}

TEST_CASE(
    "with another cutter the machine's own part stays, the cutter's does not: height is dropped more than "
    "the fence") {
    Memory memory;
    for (const Taught what : {Taught::fence, Taught::height, Taught::height_gain, Taught::kerf})
        memory.lessons.push_back(
            lesson(what, stack, what == Taught::height_gain ? 0.05 : 0.4, 0.01, "2026-05-01"));
    const Scales same = scales_for(memory, saw, stack, "2026-05-01");
    const Scales other = scales_for(memory, saw, wide, "2026-05-01");
    CHECK(same.fence.offset_mm == doctest::Approx(0.4).epsilon(0.02));
    CHECK(same.height.offset_mm == doctest::Approx(0.4).epsilon(0.02));
    CHECK(other.fence.offset_mm > 0.5 * same.fence.offset_mm);
    CHECK(other.height.offset_mm < 0.25 * same.height.offset_mm);
    CHECK(other.fence.spread_mm > same.fence.spread_mm);
    // The handwheel does not know which cutter is on; a kerf is its cutter's alone.
    CHECK(other.height.gain == doctest::Approx(same.height.gain).epsilon(1e-6));
    CHECK(other.kerf.offset_mm == 0.0);
}

TEST_CASE("another make-up of a stack is another cutter") {
    Memory memory;
    memory.lessons.push_back(lesson(Taught::kerf, stack, 0.1, 0.01, "2026-05-01"));
    Cutter shimmed = stack;
    shimmed.kerf += Length::inches(10, 1000);
    CHECK(scales_for(memory, saw, stack, "2026-05-01").kerf.offset_mm > 0.09);
    CHECK(scales_for(memory, saw, shimmed, "2026-05-01").kerf.offset_mm == 0.0);
}

TEST_CASE("what was learned ages: a year later it is less sure, and never less than if nothing was learned") {
    Memory memory;
    memory.lessons.push_back(lesson(Taught::fence, stack, 0.4, 0.04, "2026-05-01"));
    const double fresh = scales_for(memory, saw, stack, "2026-05-01").fence.spread_mm;
    const double old = scales_for(memory, saw, stack, "2027-05-01").fence.spread_mm;
    const double ancient = scales_for(memory, saw, stack, "2096-05-01").fence.spread_mm;
    CHECK(old > fresh);
    CHECK(ancient > old);
    CHECK(ancient <= usual_scales().fence.spread_mm * 1.02);
}

TEST_CASE(
    "lessons with two cutters, of one day, are joined as a linear Gaussian is (Eigen, information form)") {
    Memory memory;
    const std::vector<std::tuple<int, double, double>> told = {
        {1, 0.30, 0.05}, {2, 0.10, 0.03}, {1, 0.34, 0.08}};
    for (const auto& [which, value, spread] : told)
        memory.lessons.push_back(
            lesson(Taught::fence, which == 1 ? stack : wide, value, spread, "2026-05-01"));
    // Parts: the machine's own (0.20), the stack's and the wide one's (0.15 each); mounting adds 0.015 each time.
    Eigen::Matrix3d information = Eigen::Vector3d(1 / 0.04, 1 / 0.0225, 1 / 0.0225).asDiagonal();
    Eigen::Vector3d pull = Eigen::Vector3d::Zero();
    for (const auto& [which, value, spread] : told) {
        Eigen::Vector3d form(1.0, which == 1 ? 1.0 : 0.0, which == 2 ? 1.0 : 0.0);
        const double noise = spread * spread + 0.015 * 0.015;
        information += form * form.transpose() / noise;
        pull += form * value / noise;
    }
    const Eigen::Matrix3d covariance = information.inverse();
    const Eigen::Vector3d mean = covariance * pull;
    const Eigen::Vector3d form(1.0, 0.0, 1.0);
    const Scale fence = scales_for(memory, saw, wide, "2026-05-01").fence;
    CHECK(fence.offset_mm == doctest::Approx(form.dot(mean)).epsilon(1e-9));
    CHECK(fence.spread_mm ==
          doctest::Approx(std::sqrt(form.dot(covariance * form) + 0.015 * 0.015)).epsilon(1e-9));
}

TEST_CASE("a maker's word replaces what was learned, and what is forgotten is as if it had never been") {
    Memory memory;
    memory.lessons.push_back(lesson(Taught::fence, stack, 0.4, 0.04, "2026-05-01"));
    memory.lessons.push_back(lesson(Taught::height, stack, 0.2, 0.04, "2026-05-01"));
    const auto all = believed(memory, "2026-05-02");
    REQUIRE(all.size() == 2);
    CHECK(all[0].tests == 2);
    CHECK(all[0].since == "2026-05-01");
    const Memory corrected = correct(memory, all[0], -0.1, "2026-05-02T10:00:00Z");
    CHECK(scales_for(corrected, saw, stack, "2026-05-02").fence.offset_mm ==
          doctest::Approx(-0.1).epsilon(0.05));
    CHECK(scales_for(corrected, saw, stack, "2026-05-02").height ==
          scales_for(memory, saw, stack, "2026-05-02").height);
    CHECK(scales_for(forget(memory, all[0]), saw, stack, "2026-05-02").fence ==
          scales_for({}, saw, stack, "2026-05-02").fence);
}

TEST_CASE("a group locked again teaches once; a lock taken back teaches nothing") {
    const std::vector<Lesson> first = {lesson(Taught::fence, stack, 0.4, 0.04, "2026-05-01")};
    std::vector<Lesson> again = first;
    again[0].value = 0.45;
    Memory memory = relearn({}, {}, first);
    CHECK(memory.lessons == first);
    memory = relearn(memory, first, again);
    CHECK(memory.lessons == again);
    CHECK(relearn(memory, again, {}).lessons.empty());
    // What was forgotten does not come back with the lock of another joint.
    std::vector<Lesson> more = again;
    more.push_back(lesson(Taught::height, stack, 0.2, 0.04, "2026-05-02"));
    const Memory forgetful = forget(memory, believed(memory, "2026-05-02").front());
    CHECK(relearn(forgetful, again, more).lessons == std::vector<Lesson>{more.back()});
}

TEST_CASE("how long moves come out is forgotten of the machine, whichever cutter taught it") {
    Memory memory;
    memory.lessons = {lesson(Taught::height_gain, stack, 0.05, 0.01, "2026-05-01"),
                      lesson(Taught::height_gain, wide, 0.05, 0.01, "2026-05-02")};
    const auto all = believed(memory, "2026-05-02");
    REQUIRE(all.size() == 1);
    CHECK(all[0].tests == 4);
    CHECK(forget(memory, all[0]).lessons.empty());
}
