#include "command/broken_down.h"

#include <algorithm>

#include "command/job_command.h"
#include "command/write.h"
#include "job/on_hand.h"
#include "session/say_log.h"
#include "session/setup_said.h"

namespace kw {
namespace {

// What is left to break down once that was told.
std::string left_text(const Work& work) {
    const LayOut layout = lay_out(work.job, work.plan, work.standing);
    std::vector<std::string> left = layout.without_size;
    for (const LaidStock& laid : layout.stocks) left.push_back(laid.stock);
    return left.empty() ? std::string("Nothing is left to break down.\n")
                        : "Still to break down: " + work.job.locale.words().list(left) + ".\n";
}

class BrokenDownCommand : JobCommand {
public:
    using JobCommand::JobCommand;

    int run() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            const LayOut layout = lay_out(work.job, work.plan, work.standing);
            Session after = opened.session;
            bool together = false;
            for (const std::string& stock : options_.stocks) {
                if (const std::string why = why_not(work, layout, stock); !why.empty()) return refuse(why);
                after = apply(after, MarkBrokenDown{broken_down(work, layout, stock), together}, utc_now());
                if (!after.refused.empty()) return refuse(after.refused);
                together = true;
            }
            if (!save(opened, after)) return 1;
            io_.out << capital(say_last(*after.work, last_told(after.work->job.log))) << ".\n"
                    << left_text(*after.work) << next_text(*after.work);
            return 0;
        });
    }

private:
    static const LaidStock* laid_of(const LayOut& layout, const std::string& stock) {
        const auto found = std::find_if(layout.stocks.begin(), layout.stocks.end(),
                                        [&](const LaidStock& laid) { return laid.stock == stock; });
        return found == layout.stocks.end() ? nullptr : &*found;
    }

    // Of a stock that is not laid out nothing is freed, and the session says so.
    static BrokenDown broken_down(const Work& work, const LayOut& layout, const std::string& stock) {
        const LaidStock* const laid = laid_of(layout, stock);
        return laid ? broken_down_of(work.job, *laid) : BrokenDown{stock, {}, {}, {}};
    }

    static std::string why_not(const Work& work, const LayOut& layout, const std::string& stock) {
        const Locale& locale = work.job.locale;
        if (std::find(layout.without_size.begin(), layout.without_size.end(), stock) !=
            layout.without_size.end())
            return locale.words()("layout.no_size_of", stock) + "; give it `sizes`";
        const LaidStock* const laid = laid_of(layout, stock);
        if (!laid || !laid->cannot) return {};
        return laid->cannot->why.text(locale) + "; " + laid->cannot->remedy.text(locale);
    }
};

}  // namespace

int run_broken_down(const Options& options, const CommandIo& io) {
    return BrokenDownCommand(options, io).run();
}

}  // namespace kw
