#include "window/pacer.h"

#include <algorithm>

namespace kw::window {

void Pacer::event() { request(settle_frames); }

void Pacer::pointer_moved(double now_s) {
    event();
    hover_s_ = now_s + hover_delay_s;
}

void Pacer::request(int frames) { frames_ = std::max(frames_, frames); }

void Pacer::wake_at(double time_s) { wake_s_ = std::min(wake_s_, time_s); }

bool Pacer::wants_frame(double now_s, const State& state) {
    if (state.input_queued) request(settle_frames);
    if (now_s >= hover_s_) {
        hover_s_ = forever;
        request(settle_frames);
    }
    if (now_s >= wake_s_) {
        wake_s_ = forever;
        request(settle_frames);
    }
    if (state.typing && now_s >= caret_s_) {
        caret_s_ = now_s + caret_s;
        request(1);
    }
    if (state.held && now_s >= held_s_) {
        held_s_ = now_s + held_s;
        request(1);
    }
    return frames_ > 0 && (last_frame_s_ < 0 || now_s - last_frame_s_ >= least_frame_s - 1e-4);
}

void Pacer::drew(double now_s) {
    last_frame_s_ = now_s;
    if (frames_ > 0) --frames_;
}

double Pacer::wait_s(double now_s, const State& state) const {
    const bool due = frames_ > 0 || state.input_queued;
    double next = due ? last_frame_s_ + least_frame_s : std::min(hover_s_, wake_s_);
    if (!due && state.typing) next = std::min(next, caret_s_);
    if (!due && state.held) next = std::min(next, held_s_);
    return std::max(0.0, next - now_s);
}

}  // namespace kw::window
