#include "setup/choose_cutter.h"

#include <algorithm>
#include <utility>

#include "joint/fingers.h"
#include "setup/make_up.h"
#include "words/names.h"

namespace kw {
namespace {

// Rough weights for the choice alone; the order of work is timed by the job's own costs.
constexpr double change_s = 900.0;
constexpr double setup_s = 150.0;
constexpr double pass_s = 20.0;
constexpr double index_s = 8.0;
constexpr int most_passes = 40;  // more is a slip of the pen in the kerf

std::optional<Message> unfit(const Machine& machine, const Cutter& cutter, const JointDesign& joint) {
    for (const Cut& cut : joint.cuts) {
        const bool at_end = cut.near == Length{};
        if (!at_end && cutter.kerf > cut.width)
            return Message::say("setup.cuts_wider", cutter.kerf, Message::shown(work_word, cut.name),
                                cut.width);
        if (cut.depth > machine.max_height)
            return Message::say("setup.raises_no_higher", machine.name, machine.max_height);
        if (passes_for(cut.width, cutter.kerf) > most_passes)
            return Message::say("setup.too_many_passes", passes_for(cut.width, cutter.kerf));
    }
    return std::nullopt;
}

std::optional<Message> unfit(const Machine* machine, const Cutter& cutter) {
    if (!machine) return Message::say("setup.no_machine_named", cutter.machine);
    if (machine->is_away) return Message::say("setup.is_away", machine->name);
    if (machine->kind == MachineKind::miter_saw) return Message::say("setup.miter_saw_cuts_no_joints");
    if (cutter.kerf > machine->max_dado_width)
        return Message::say(
            machine->kind == MachineKind::router_table ? "setup.opening_takes" : "setup.arbor_takes",
            cutter.kerf, machine->name, machine->max_dado_width);
    return std::nullopt;
}

double rough_seconds(const CutterAsk& ask, const Cutter& cutter, const JointDesign& joint) {
    const bool in_use = std::find(ask.in_use.begin(), ask.in_use.end(), cutter.name) != ask.in_use.end();
    int passes = 0, sockets = 0;
    for (const Cut& cut : joint.cuts) {
        passes += passes_for(cut.width, cutter.kerf);
        if (cut.pitch) sockets += sockets_up(cut.near, *cut.pitch, ask.up);
    }
    const double blade_penalty =
        cutter.kind == CutterKind::blade ? 1.0 : 0.0;  // ragged floor; last among equals
    return (in_use ? 0.0 : change_s) + passes * (setup_s + ask.ends * pass_s) + ask.ends * sockets * index_s +
           blade_penalty;
}

// One refusal that says of each cutter why it is out. A single reason keeps its own remedy.
Refusal refuse_all(const CutterAsk& ask, const std::vector<std::pair<std::string, Refusal>>& reasons) {
    if (reasons.empty())
        return {"cutter", Message::say("setup.no_cutter_can"), Message::say("setup.list_a_cutter")};
    const auto same_field = std::all_of(reasons.begin(), reasons.end(), [&](const auto& reason) {
        return reason.second.field == reasons.front().second.field && reason.second.field != "cutter";
    });
    if (same_field || reasons.size() == 1) return reasons.back().second;
    Refusal all{"cutter", Message::say("setup.no_cutter_can"), {}};
    for (const auto& [name, refusal] : reasons)
        all.why = all.why + Message::say("setup.and_of_cutter", name, refusal.why);
    all.remedy = Message::say(ask.named.empty() ? "setup.add_one_or_change" : "setup.name_another_or_change");
    return all;
}

// With the stack made up to the slot's width, which then is as wide as the stack. Only where the insert fills the slot: a tongue's
// thickness would have to follow.
std::optional<ChosenJoint> in_one_pass(const ChosenJoint& chosen) {
    const Cut& slot = chosen.joint.slot();
    if (chosen.joint.insert_cut() || slot.near == Length{} || slot.width == chosen.cutter.kerf)
        return std::nullopt;
    auto stack = made_up_for(chosen.cutter, slot.width);
    if (!stack || stack->kerf > chosen.machine.max_dado_width) return std::nullopt;
    ChosenJoint wide{chosen.joint, chosen.machine, std::move(*stack)};
    for (Cut& cut : wide.joint.cuts)
        if (cut.member == Member::receiver) cut.width = wide.cutter.kerf;
    return wide;
}

// Once the machine is back.
bool would_do(Machine machine, const Cutter& cutter, const std::function<JointResult(Length)>& design) {
    if (!std::exchange(machine.is_away, false) || unfit(&machine, cutter)) return false;
    const auto joint = design(cutter.kerf);
    return joint && !unfit(machine, cutter, *joint);
}

}  // namespace

tl::expected<WaysToCut, Refusal> ways_to_cut(const Shop& shop, const CutterAsk& ask,
                                             const std::function<JointResult(Length)>& design) {
    WaysToCut ways;
    double usual_s = 0.0;
    std::vector<std::pair<std::string, Refusal>> reasons;
    std::string lent;  // a machine that would do, were it here
    const auto out = [&](const Cutter& cutter, Message why) {
        reasons.emplace_back(cutter.name,
                             Refusal{"cutter", std::move(why), Message::say("setup.take_one_that_fits")});
    };
    for (const Cutter& cutter : shop.cutters) {
        if (!ask.named.empty() && cutter.name != ask.named) continue;
        const Machine* machine = shop.machine_of(cutter);
        if (auto why = unfit(machine, cutter)) {
            if (!machine || machine->kind != MachineKind::miter_saw) out(cutter, *why);
            if (machine && would_do(*machine, cutter, design)) lent = machine->name;
            continue;
        }
        auto joint = design(cutter.kerf);
        if (!joint) {
            reasons.emplace_back(cutter.name, joint.error());
            continue;
        }
        if (auto why = unfit(*machine, cutter, *joint)) {
            out(cutter, *why);
            continue;
        }
        const double seconds = rough_seconds(ask, cutter, *joint);
        if (ways.all.empty() || seconds < usual_s) {
            ways.usual = ways.all.size();
            usual_s = seconds;
        }
        ways.all.push_back({*joint, *machine, cutter});
        if (auto wide = in_one_pass(ways.all.back())) ways.all.push_back(std::move(*wide));
    }
    if (!ways.all.empty()) return ways;
    if (!ask.named.empty() && !shop.cutter_named(ask.named))
        return tl::unexpected(Refusal{"cutter", Message::say("setup.no_cutter_named", ask.named),
                                      Message::say("setup.name_one_of_cutters")});
    if (!lent.empty())
        return tl::unexpected(Refusal{"cutter", Message::say("setup.away_and_nothing_else", lent),
                                      Message::say("setup.take_back", lent)});
    return tl::unexpected(refuse_all(ask, reasons));
}

tl::expected<ChosenJoint, Refusal> choose_cutter(const Shop& shop, const CutterAsk& ask,
                                                 const std::function<JointResult(Length)>& design) {
    auto ways = ways_to_cut(shop, ask, design);
    if (!ways) return tl::unexpected(ways.error());
    return std::move(ways->all[ways->usual]);
}

}  // namespace kw
