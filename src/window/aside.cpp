#include "window/aside.h"

#include "window/platform.h"

namespace kw::window {

Aside::Aside(bool in_a_thread) {
    if (in_a_thread) thread_ = std::thread([this] { run(); });
}

Aside::~Aside() {
    finish();
    if (!thread_.joinable()) return;
    {
        const std::lock_guard lock(mutex_);
        is_ending_ = true;
    }
    changed_.notify_all();
    thread_.join();
}

void Aside::post(Task task) {
    {
        const std::lock_guard lock(mutex_);
        tasks_.push_back(std::move(task));
    }
    changed_.notify_all();
}

void Aside::turn() {
    if (thread_.joinable() || tasks_.empty()) return;
    const Task task = std::move(tasks_.front());
    tasks_.pop_front();
    task();
}

void Aside::finish() {
    if (!thread_.joinable()) {
        while (!tasks_.empty()) turn();
        return;
    }
    std::unique_lock lock(mutex_);
    changed_.wait(lock, [&] { return tasks_.empty() && !is_running_; });
}

void Aside::run() {
    platform::step_back();
    std::unique_lock lock(mutex_);
    for (;;) {
        changed_.wait(lock, [&] { return is_ending_ || !tasks_.empty(); });
        if (tasks_.empty()) return;
        Task task = std::move(tasks_.front());
        tasks_.pop_front();
        is_running_ = true;
        lock.unlock();
        task();
        task = nullptr;  // what it held goes here, not in a frame
        lock.lock();
        is_running_ = false;
        changed_.notify_all();
    }
}

}  // namespace kw::window
