#pragma once
// The parts laid out, and pages written, aside: a large job's layout takes longer than a frame.

#include <atomic>
#include <memory>
#include <mutex>
#include <vector>

#include "window/aside.h"
#include "window/printing.h"
#include "window/screen.h"

namespace kw::window {

class PagesAside {
public:
    explicit PagesAside(bool in_a_thread);
    // A layout that is still searched for ends with what it has; pages that were asked for are written.
    ~PagesAside();
    PagesAside(const PagesAside&) = delete;
    PagesAside& operator=(const PagesAside&) = delete;

    // Asks for the layout of this work unless it was asked for last, and answers what is there: of an older work until it is done.
    ShownLayOut layout_of(const std::shared_ptr<const Work>& work);
    void print(const std::shared_ptr<const Work>& work, const Preferences& preferences, print::PagesOf what,
               print::Paper paper, const std::filesystem::path& job);
    // What has been written, or could not be, since this was asked last, and of which work.
    struct Done {
        std::shared_ptr<const Work> of;
        print::PagesOf what;
        Printed printed;
    };
    std::vector<Done> take_printed();

    // See Aside.
    void turn();
    void finish();

private:
    // What both sides of the thread know.
    struct Shared {
        std::mutex mutex;
        std::shared_ptr<const Work> asked;  // to be laid out, last
        ShownLayOut done;
        std::vector<Done> printed;
        std::atomic<bool> is_ending = false;
    };
    void begin();

    bool in_a_thread_;
    std::shared_ptr<Shared> shared_ = std::make_shared<Shared>();
    std::unique_ptr<Aside> aside_;  // begins with the first thing asked for
};

}  // namespace kw::window
