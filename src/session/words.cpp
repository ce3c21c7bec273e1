#include "session/words.h"

#include <cmath>

#include "session/test_cut.h"

namespace kw {
namespace {

// Turns of the handwheel to the eighth, where the maker has measured what a turn does.
std::string say_turns(const Machine& machine, Length by) {
    if (!machine.height_per_turn || *machine.height_per_turn <= Length{}) return {};
    const double turns = abs(by).mm() / machine.height_per_turn->mm();
    const auto eighths = static_cast<std::int64_t>(std::lround(turns * 8.0));
    if (eighths == 0) return ", less than 1/16 turn";
    return ", about " + show(Length::inches(eighths, 8), Graduation::in_64) +
           (eighths <= 8 ? " turn" : " turns");
}

}  // namespace

std::string minutes(std::int64_t seconds) {
    const std::int64_t whole = (seconds + 30) / 60;
    return whole < 60 ? std::to_string(whole) + " min"
                      : std::to_string(whole / 60) + " h " + std::to_string(whole % 60) + " min";
}

std::string say_move(const Job& job, const Group& group, const std::string& control, Length by) {
    const std::string amount = show_with_unit(abs(by), caliper_graduation(job));
    const bool more = by > Length{};
    const bool bit = group.work.chosen.cutter.kind == CutterKind::bit;
    if (control == "height")
        return (more ? "raise the " : "lower the ") + std::string(bit ? "bit " : "blade ") + amount +
               say_turns(group.work.chosen.machine, by);
    if (control == "fence")
        return "move the fence " + amount + (more ? " away from the cutter" : " toward the cutter");
    if (control == "spacer") return "make the spacer " + amount + (more ? " thicker" : " thinner");
    if (control == "shift")
        return "move the fence " + amount + (more ? " farther" : " less far") + " for the last pass";
    return (more ? "add " : "take out ") + amount + " of shims in the stack";
}

namespace {

std::string percent(double chance) { return std::to_string(std::lround(chance * 100.0)) + " %"; }

}  // namespace

std::string say_unread(const FitReport& report) {
    std::string moves;
    for (const SaidMove& move : report.unread) moves += (moves.empty() ? "" : ", and ") + move.say;
    return moves.empty() ? moves
                         : "If you can't: " + moves + " (" + percent(report.chance_after_move) + " then)";
}

std::string say_advice(const FitReport& report) {
    if (report.locked) return "Locked.";
    if (report.test == 0) return "Not tested yet. Cut the joint in scrap of the same stock, and measure it.";
    switch (report.advice) {
        case AdviceKind::lock:
            return "Lock it: " + percent(report.chance_in_tolerance) +
                   " likely that all of it is in tolerance.";
        case AdviceKind::measure:
            return "Measure the " + plain_name(report.measure) +
                   " before you move anything: it would tell most. As it stands, " +
                   percent(report.chance_in_tolerance) + " likely to be in tolerance.";
        case AdviceKind::move: break;
    }
    return "Make the moves, then " +
           std::string(report.retry == Retry::same_ends ? "cut the same test ends again"
                                                        : "cut a fresh end") +
           ": " + percent(report.chance_after_move) + " likely to be in tolerance then.";
}

}  // namespace kw
