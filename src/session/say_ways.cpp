#include "session/say_ways.h"

#include "session/words.h"
#include "setup/shims.h"

namespace kw {
namespace {

std::string pieces(const Job& job, const Cutter& cutter, const char* what, const std::vector<Length>& all) {
    std::string text;
    for (const Length piece : all)
        text += (text.empty() ? std::string(what) + " " : " + ") + say_piece(job, cutter, piece);
    return text;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

// "tongue and dado, ", where that is not what the joint goes by.
std::string kind_if_another(const std::string& label, const ChosenJoint& way) {
    return label.find(way.joint.kind) != std::string::npos ? std::string() : way.joint.kind + ", ";
}

}  // namespace

std::string say_piece(const Job& job, const Cutter& cutter, Length piece) {
    const auto written = cutter.as_written.find(piece);
    return written == cutter.as_written.end() ? caliper_text(job, piece) : written->second;
}

std::string say_cutter(const Job& job, const Cutter& cutter) {
    const Cutter* usual = job.shop.cutter_named(cutter.name);
    if (!usual || usual->kerf == cutter.kerf) return cutter.name;
    const std::string chippers = pieces(job, cutter, "chippers", cutter.chippers),
                      shims = pieces(job, cutter, "shims", cutter.shims);
    const std::string both = chippers + (chippers.empty() || shims.empty() ? "" : ", ") + shims;
    return cutter.name + " made up to " + caliper_text(job, cutter.kerf) +
           (both.empty() ? " (its outer cutters alone)" : " (" + both + ")");
}

std::string say_cutter(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return setup.cutter;
    Cutter cutter = group->work.chosen.cutter;
    // Other shims than planned are said by themselves (see say_shims).
    if (lists_shims(cutter) && dial_of(work, setup).shims != Length{}) {
        if (cutter.chippers.empty()) return cutter.name;
        cutter.shims.clear();
        return cutter.name + " with " + pieces(work.job, cutter, "chippers", cutter.chippers);
    }
    return say_cutter(work.job, cutter);
}

std::string say_put_on(const Work& work, const Setup& setup) {
    const Length shims = dial_of(work, setup).shims;
    return say_cutter(work, setup) + (shims == Length{} ? "" : " " + say_shims(work, setup, shims));
}

std::string say_way(const Job& job, const ChosenJoint& way) {
    const int passes = planned_passes(way.joint.slot().width, way.cutter);
    return std::to_string(passes) + (passes == 1 ? " pass with " : " passes with ") +
           say_cutter(job, way.cutter);
}

std::string say_reason(const Job& job, const WayReason& reason) {
    std::string text = reason.label + " (" + joined(reason.drawers) + "): ";
    for (std::size_t i = 0; i < reason.ways.size(); ++i)
        text += (i == 0 ? "" : "; ") + kind_if_another(reason.label, reason.ways[i].way) +
                say_way(job, reason.ways[i].way) + ": " + say_cost(reason.ways[i]);
    return text;
}

std::string say_surety(Surety surety) {
    switch (surety) {
        case Surety::exact: return {};
        case Surety::at_most: return "at most";
        case Surety::at_least: return "at least";
        case Surety::about: return "about";
    }
    return {};
}

std::string say_cost(const WayCost& cost) {
    const std::string surety = say_surety(cost.surety);
    return surety + (surety.empty() ? "" : " ") + minutes(cost.seconds);
}

std::string say_left_out(const Job& job, const LeftOut& one) {
    return one.label + " (" + joined(one.drawers) + "): " + kind_if_another(one.label, one.way) +
           say_way(job, one.way) + " was not compared: with it the joint would have other measures";
}

std::string say_not_compared(const Job& job, const NotCompared& one) {
    return one.label + " (" + joined(one.drawers) + ") was not compared: " +
           (one.shares ? "it shares its setups with another joint"
                       : "there are more choices in this job than are gone through") +
           "; it is cut in " + say_way(job, one.way);
}

}  // namespace kw
