#include "command/measured.h"

#include <algorithm>

#include "command/job_command.h"
#include "command/write.h"

namespace kw {
namespace {

class MeasuredCommand : JobCommand {
public:
    using JobCommand::JobCommand;

    int run(Measured what) const {
        return with_work([&](const Opened& opened) {
            const int copy = std::max(1, options_.copy);
            std::vector<std::pair<std::string, std::string>> readings;
            for (const std::string& one : options_.readings) {
                const std::size_t equals = one.find('=');
                if (equals == std::string::npos) return refuse("--read: `" + one + "`: write NAME=LENGTH");
                readings.emplace_back(one.substr(0, equals), one.substr(equals + 1));
            }
            Session after = opened.session;
            if (!options_.drawer.empty())
                after = with_measured(after, what, options_.drawer, copy, readings, utc_now());
            if (!after.refused.empty()) return refuse(after.refused);
            if (!is_made(opened, after) || (options_.save && !save(opened, after))) return 1;
            if (options_.order) {
                io_.out << assembly_order_text(*after.work, options_.drawer,
                                               readings.empty() ? options_.copy : copy);
                return 0;
            }
            io_.out << (what == Measured::opening ? survey_text(*after.work, options_.drawer)
                                                  : assembly_text(*after.work, options_.drawer,
                                                                  readings.empty() ? options_.copy : copy));
            if (!readings.empty())
                io_.out << (options_.save ? "\nKept in the job.\n"
                                          : "\nNot kept: --save keeps the readings in the job.\n");
            return 0;
        });
    }
};

}  // namespace

int run_measured(Measured what, const Options& options, const CommandIo& io) {
    return MeasuredCommand(options, io).run(what);
}

}  // namespace kw
