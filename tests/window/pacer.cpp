#include "window/pacer.h"

#include <doctest/doctest.h>

using namespace kw::window;

namespace {

// Draws as the loop does until nothing is due at this moment; returns how many frames that took. Time moves on a frame's
// length with each.
int draw_all(Pacer& pacer, double& now_s, const Pacer::State& state = {}) {
    int frames = 0;
    for (int i = 0; i < 1000; ++i) {
        if (pacer.wants_frame(now_s, state)) {
            pacer.drew(now_s);
            ++frames;
        }
        const double wait = pacer.wait_s(now_s, state);
        if (wait > Pacer::least_frame_s * 1.5) return frames;
        now_s += wait;
    }
    return -1;
}

}  // namespace

TEST_CASE("an event draws a few frames, and then nothing is drawn until the next event") {
    Pacer pacer;
    double now = 1;
    draw_all(pacer, now);
    CHECK(pacer.wait_s(now, {}) == Pacer::forever);
    now += 1000;
    CHECK_FALSE(pacer.wants_frame(now, {}));
    pacer.event();
    CHECK(pacer.wait_s(now, {}) == 0);
    CHECK(draw_all(pacer, now) == Pacer::settle_frames);
    CHECK(pacer.wait_s(now, {}) == Pacer::forever);
}

TEST_CASE("input that the toolkit still holds back starts the count of settling frames anew") {
    Pacer pacer;
    double now = 1;
    draw_all(pacer, now);
    pacer.event();
    for (int i = 0; i < 20; ++i) {
        now += Pacer::least_frame_s;
        REQUIRE(pacer.wants_frame(now, {.input_queued = true}));
        pacer.drew(now);
    }
    CHECK(draw_all(pacer, now) == Pacer::settle_frames - 1);
}

TEST_CASE("steady motion is drawn at sixty frames a second at most, but a single event at once") {
    Pacer pacer;
    double now = 1;
    draw_all(pacer, now);
    now += 5;
    int frames = 0;
    const double end = now + 1;
    for (; now < end; now += 0.001) {
        pacer.pointer_moved(now);
        if (!pacer.wants_frame(now, {})) continue;
        pacer.drew(now);
        if (++frames == 1) CHECK(now < end - 0.9995);
    }
    CHECK(frames <= 61);
    CHECK(frames >= 50);
}

TEST_CASE("a resting pointer gets one late look for what appears on hovering") {
    Pacer pacer;
    double now = 1;
    draw_all(pacer, now);
    now += 5;
    pacer.pointer_moved(now);
    draw_all(pacer, now);
    const double wait = pacer.wait_s(now, {});
    CHECK(wait < Pacer::hover_delay_s);
    now += wait;
    CHECK(draw_all(pacer, now) == Pacer::settle_frames);
    CHECK(pacer.wait_s(now, {}) == Pacer::forever);
}

TEST_CASE("a caret, a held button and an alarm wake the loop, each in its time") {
    Pacer pacer;
    double now = 1;
    draw_all(pacer, now);
    now += 5;
    CHECK(pacer.wants_frame(now, {.typing = true}));
    pacer.drew(now);
    CHECK(pacer.wait_s(now, {.typing = true}) == doctest::Approx(Pacer::caret_s));
    CHECK(pacer.wants_frame(now + 0.1, {.held = true}));
    pacer.drew(now + 0.1);
    CHECK(pacer.wait_s(now + 0.1, {.held = true}) == doctest::Approx(Pacer::held_s));
    now += 1;
    pacer.wake_at(now + 3);
    pacer.wake_at(now + 9);
    CHECK(pacer.wait_s(now, {}) == doctest::Approx(3));
    now += 3;
    CHECK(draw_all(pacer, now) == Pacer::settle_frames);
}
