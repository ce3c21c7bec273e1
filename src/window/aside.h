#pragma once
// Work that must not hold up a frame, done one task after another. Where there are threads, in one of its own; where there are
// none, a task at a time whenever the window has nothing else to do.

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace kw::window {

class Aside {
public:
    using Task = std::function<void()>;

    explicit Aside(bool in_a_thread);
    // All that was asked for is done first.
    ~Aside();
    Aside(const Aside&) = delete;
    Aside& operator=(const Aside&) = delete;

    void post(Task task);
    // Without a thread: does the next task, if there is one. With one there is nothing to do here.
    void turn();
    // Returns when all that was asked for is done.
    void finish();

private:
    void run();

    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<Task> tasks_;
    bool is_running_ = false;  // a task
    bool is_ending_ = false;
    std::thread thread_;
};

}  // namespace kw::window
