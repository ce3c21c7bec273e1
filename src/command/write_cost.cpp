#include <map>

#include "command/breaking.h"
#include "command/table.h"
#include "command/write.h"
#include "session/words.h"
#include "setup/bit_passes.h"

namespace kw {
namespace {

using Share = std::pair<std::string, std::int64_t>;

// `runs`: how often each end goes through.
std::vector<Share> parts_of(const RestStep& step, const Setup& setup, std::size_t runs) {
    std::vector<Share> parts;
    if (step.walk_s > 0) parts.emplace_back("walk", step.walk_s);
    for (const RestChange& change : step.changes)
        parts.emplace_back(control_at_setup(setup, change.what), change.seconds);
    if (step.test_s > 0) parts.emplace_back("test cut", step.test_s);
    std::string cuts = step.ends == 1 ? "1 cut" : std::to_string(step.ends) + " cuts";
    if (runs > 1) cuts += " in " + std::to_string(runs) + " passes";
    parts.emplace_back(std::move(cuts), step.cuts_s);
    return parts;
}

// The kind that a part of a step is summed under.
std::string kind_of(const std::string& part) {
    return part.ends_with("cuts") || part.ends_with("passes") || part == "1 cut" ? "cuts" : part;
}

}  // namespace

std::string cost_text(const Work& work, const LayOut& layout) {
    Table table({Align::left, Align::left, Align::right, Align::left});
    std::map<std::string, std::int64_t> kinds;
    std::int64_t all = 0;
    for (const RestStep& step : work.rest.steps) {
        std::string words;
        std::int64_t sum = 0;
        const Setup& setup = *work.plan.setup_with_id(step.setup);
        const std::size_t runs = heights_of(work.job.shop, setup).size();
        for (const auto& [what, seconds] : parts_of(step, setup, runs)) {
            words += (words.empty() ? "" : " + ") + what + " " + clock_text(seconds);
            kinds[kind_of(what)] += seconds;
            sum += seconds;
        }
        all += sum;
        table.row({step.step, setup.work, clock_text(sum), words});
    }
    std::string by_kind;
    for (const auto& [kind, seconds] : kinds)
        by_kind += (by_kind.empty() ? "" : ", ") + kind + " " + clock_text(seconds);
    const std::string before = breaking_cost_text(work, layout);
    return "What it takes, in minutes and seconds" +
           std::string(work.rest.begun ? ", from how the machines stand now" : "") + "\n" + table.text() +
           "\nIn all " + clock_text(all) + ": " + by_kind + "\n" +
           (work.rest.proved
                ? "No order of this work takes less with the machines as assigned.\n"
                : "No order of it takes less than " + clock_text(work.rest.lower_bound_seconds) + ".\n") +
           (before.empty() ? before : "\n" + before);
}

}  // namespace kw
