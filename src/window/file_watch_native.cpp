#ifndef __EMSCRIPTEN__

#include "window/platform.h"

#ifdef __linux__
#include <poll.h>
#include <sys/eventfd.h>
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <thread>
#endif

namespace kw::window::platform {

#ifdef __linux__

// Sleeps in the kernel until the folder says that something in it was closed after writing, or renamed. The folder and not the file: who
// saves with care puts another file in its place.
class FileWatch {
public:
    FileWatch(const std::filesystem::path& path, std::function<void()> written)
        : name_(path.filename().string()), written_(std::move(written)) {
        const std::filesystem::path folder = path.has_parent_path() ? path.parent_path() : ".";
        if (news_ < 0 || end_ < 0) return;
        if (::inotify_add_watch(news_, folder.c_str(), IN_CLOSE_WRITE | IN_MOVED_TO) < 0) return;
        thread_ = std::thread([this] { run(); });
    }
    ~FileWatch() {
        const std::uint64_t one = 1;
        // A counter that stands at zero takes a one at once.
        while (thread_.joinable() && ::write(end_, &one, sizeof one) < 0 && errno == EINTR) {}
        if (thread_.joinable()) thread_.join();
        if (news_ >= 0) ::close(news_);
        if (end_ >= 0) ::close(end_);
    }
    FileWatch(const FileWatch&) = delete;
    FileWatch& operator=(const FileWatch&) = delete;

    bool is_watching() const { return thread_.joinable(); }

private:
    void run() {
        for (;;) {
            std::array<pollfd, 2> on{{{news_, POLLIN, 0}, {end_, POLLIN, 0}}};
            const int ready = ::poll(on.data(), on.size(), -1);
            if (ready < 0 && errno == EINTR) continue;
            if (ready < 0 || on[1].revents != 0 || (on[0].revents & ~POLLIN) != 0) return;
            if (is_of_file()) written_();
        }
    }

    // Takes what the folder said; whether any of it was of the file.
    bool is_of_file() {
        alignas(inotify_event) std::array<char, 4096> said{};
        const ssize_t size = ::read(news_, said.data(), said.size());
        bool found = false;
        for (ssize_t at = 0; at < size;) {
            inotify_event event{};
            std::memcpy(&event, said.data() + at, sizeof event);
            const char* name = said.data() + at + sizeof event;
            found = found || (event.mask & IN_Q_OVERFLOW) != 0 || (event.len > 0 && name_ == name);
            at += ssize_t(sizeof event) + event.len;
        }
        return found;
    }

    std::string name_;
    std::function<void()> written_;
    int news_ = ::inotify_init1(IN_CLOEXEC), end_ = ::eventfd(0, EFD_CLOEXEC);
    std::thread thread_;
};

std::shared_ptr<FileWatch> watch_file(const std::filesystem::path& path, std::function<void()> written) {
    // Of a link, what it points to: that is what is written.
    std::error_code none;
    const std::filesystem::path file = std::filesystem::canonical(path, none);
    auto watch = std::make_shared<FileWatch>(none ? path : file, std::move(written));
    return watch->is_watching() ? watch : nullptr;
}

#else

class FileWatch {};
std::shared_ptr<FileWatch> watch_file(const std::filesystem::path&, std::function<void()>) { return nullptr; }

#endif

}  // namespace kw::window::platform

#endif
