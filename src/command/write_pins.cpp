#include <algorithm>

#include "command/write.h"
#include "job/pins.h"

namespace kw {
namespace {

// "S36  rip to width: bottoms" of each setup that goes by this name; its name where none does any more.
std::string pin_text(const Work& work, const std::string& pin) {
    std::string out;
    for (const Setup& setup : work.plan.setups)
        if (pin_name(setup, work.design) == pin) out += "  " + setup.id + "  " + setup.work + "\n";
    if (!out.empty()) return out;
    const std::string away = away_with(pin, work.job.shop);
    return "  (" + (away.empty() ? "no longer planned" : "again when `" + away + "` is back") + ")  " + pin +
           "\n";
}

std::string pins_text(const Work& work, const std::string& title, const std::vector<std::string>& pins) {
    std::string out = pins.empty() ? "" : title + "\n";
    for (const std::string& pin : pins) out += pin_text(work, pin);
    return out;
}

// "`twine`, `hand tools` and `seed trays`"
std::string listed(const std::vector<std::string>& names) {
    std::string out;
    for (std::size_t i = 0; i < names.size(); ++i)
        out += std::string(i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + "`" + names[i] + "`";
    return out;
}

}  // namespace

std::string pins_text(const Work& work) {
    std::string out = pins_text(work, "Wanted first", work.job.pins.first) +
                      pins_text(work, "Wanted last", work.job.pins.last);
    std::string away;
    for (const Machine& machine : work.job.shop.machines)
        if (machine.is_away) away += "  " + machine.name + "\n";
    if (!away.empty()) out += "Lent out\n" + away;
    return out.empty() ? "Nothing is pinned, and every machine is here.\n" : out;
}

std::string cannot_lend(const Job& job, const std::string& machine, const std::vector<Problem>& problems) {
    std::vector<std::string> drawers;
    for (std::size_t i = 0; i < job.drawers.size(); ++i)
        if (std::any_of(problems.begin(), problems.end(), [&](const Problem& problem) {
                return problem.pointer.rfind("/drawers/" + std::to_string(i) + "/", 0) == 0;
            }))
            drawers.push_back(job.drawers[i].name);
    return "`" + machine + "` can't be lent out: " +
           (drawers.empty() ? std::string("the rest of the shop can't do the work without it")
                            : "nothing else in the shop cuts the joints of " + listed(drawers) +
                                  " as they are asked for") +
           ". List another machine, with a cutter on it that can, or leave `" + machine + "` here";
}

}  // namespace kw
