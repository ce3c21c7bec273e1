#include "window/pages_aside.h"

#include <exception>
#include <utility>

#include "window/platform.h"

namespace kw::window {

ShownLayOut shown_lay_out(const std::shared_ptr<const Work>& work, LayOut layout) {
    auto breaking = std::make_shared<const BreakingDown>(breaking_down(work->job, work->plan, layout));
    return {work, std::make_shared<const LayOut>(std::move(layout)), std::move(breaking)};
}

PagesAside::PagesAside(bool in_a_thread) : in_a_thread_(in_a_thread) {}

PagesAside::~PagesAside() { shared_->is_ending = true; }

void PagesAside::begin() {
    if (!aside_) aside_ = std::make_unique<Aside>(in_a_thread_);
}

ShownLayOut PagesAside::layout_of(const std::shared_ptr<const Work>& work) {
    {
        const std::lock_guard lock(shared_->mutex);
        if (shared_->asked == work) return shared_->done;
        shared_->asked = work;
    }
    begin();
    aside_->post([work, shared = shared_] {
        const auto is_unwanted = [&] {
            const std::lock_guard lock(shared->mutex);
            return shared->is_ending || shared->asked != work;
        };
        if (is_unwanted()) return;
        bool is_cut_short = false;
        cutting::Effort effort;
        effort.watch = [&](std::int64_t, std::int64_t) {
            is_cut_short = is_cut_short || is_unwanted();
            return is_cut_short ? cutting::Searching::stop : cutting::Searching::on;
        };
        ShownLayOut shown;
        try {
            shown = shown_lay_out(work, lay_out(work->job, work->plan, work->standing, effort));
        } catch (const std::exception&) {}
        const std::lock_guard lock(shared->mutex);
        if (!is_cut_short && shown.layout) shared->done = std::move(shown);
        // Asked for once more it is begun anew.
        else if (is_cut_short && shared->asked == work) shared->asked.reset();
        platform::post_wake_up();
    });
    const std::lock_guard lock(shared_->mutex);
    return shared_->done;
}

void PagesAside::print(const std::shared_ptr<const Work>& work, const Preferences& preferences,
                       print::PagesOf what, print::Paper paper, const std::filesystem::path& job) {
    begin();
    aside_->post([=, shared = shared_] {
        Printed printed;
        try {
            printed = print_beside(*work, preferences, what, paper, job);
        } catch (const std::exception& error) { printed.said = error.what(); }
        const std::lock_guard lock(shared->mutex);
        shared->printed.push_back({work, what, std::move(printed)});
        platform::post_wake_up();
    });
}

std::vector<PagesAside::Done> PagesAside::take_printed() {
    const std::lock_guard lock(shared_->mutex);
    return std::exchange(shared_->printed, {});
}

void PagesAside::turn() {
    if (aside_) aside_->turn();
}

void PagesAside::finish() {
    if (aside_) aside_->finish();
}

}  // namespace kw::window
