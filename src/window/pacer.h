#pragma once
// When to draw. A frame is drawn only if something may have changed: after an input event, at a time that somebody asked
// to be woken at, or on request. Pure bookkeeping over times in seconds: no clock, no window.

#include <limits>

namespace kw::window {

class Pacer {
public:
    static constexpr int settle_frames = 3;  // popups and focus need this many to come to rest
    static constexpr double least_frame_s = 1.0 / 60;
    static constexpr double hover_delay_s = 0.45;
    static constexpr double caret_s = 0.4;
    static constexpr double held_s = 0.05;
    static constexpr double forever = std::numeric_limits<double>::infinity();

    struct State {
        bool input_queued = false;  // the toolkit spreads fast input over frames and has some left
        bool typing = false;        // a caret blinks
        bool held = false;          // a widget is held down: it may repeat, count up or scroll
    };

    void event();
    void pointer_moved(double now_s);
    void request(int frames);
    void wake_at(double time_s);

    // To be called before a frame may be drawn; takes in what fell due.
    bool wants_frame(double now_s, const State& state);
    void drew(double now_s);

    // How long to wait for events: 0 means do not wait, `forever` that only an event can change anything.
    double wait_s(double now_s, const State& state) const;

private:
    int frames_ = settle_frames;
    double last_frame_s_ = -1;
    double hover_s_ = forever;
    double wake_s_ = forever;
    double caret_s_ = 0;
    double held_s_ = 0;
};

}  // namespace kw::window
