#include "session/say_ways.h"

#include "session/words.h"
#include "setup/shims.h"
#include "words/names.h"

namespace kw {
namespace {

// "1/8 in + 1/8 in"
std::string pieces(const Job& job, const Cutter& cutter, const std::vector<Length>& all) {
    std::string text;
    for (const Length piece : all) text += (text.empty() ? "" : " + ") + say_piece(job, cutter, piece);
    return text;
}

// What stands between the outer cutters, or that nothing does.
std::string say_made_up(const Job& job, const Cutter& cutter) {
    const Words& words = job.locale.words();
    const std::string chippers = pieces(job, cutter, cutter.chippers),
                      shims = pieces(job, cutter, cutter.shims), kerf = caliper_text(job, cutter.kerf);
    if (chippers.empty() && shims.empty()) return words("cutter.outer_alone", cutter.name, kerf);
    if (chippers.empty()) return words("cutter.with_shims", cutter.name, kerf, shims);
    if (shims.empty()) return words("cutter.with_chippers", cutter.name, kerf, chippers);
    return words("cutter.with_both", cutter.name, kerf, chippers, shims);
}

// "back dado (twine)"
std::string say_joint(const Words& words, const std::string& label, const std::vector<std::string>& drawers) {
    return words("way.joint", work_word(words, label), words.list(drawers, "list.comma"));
}

// With the kind of joint, where that is not what the joint goes by.
std::string say_way_of(const Job& job, const std::string& label, const ChosenJoint& way) {
    const Words& words = job.locale.words();
    const std::string said = say_way(job, way);
    return label.find(way.joint.kind) != std::string::npos
               ? said
               : words("way.of_kind", work_word(words, way.joint.kind), said);
}

}  // namespace

std::string say_piece(const Job& job, const Cutter& cutter, Length piece) {
    const auto written = cutter.as_written.find(piece);
    return written == cutter.as_written.end() ? caliper_text(job, piece) : written->second;
}

std::string say_cutter(const Job& job, const Cutter& cutter) {
    const Cutter* usual = job.shop.cutter_named(cutter.name);
    if (!usual || usual->kerf == cutter.kerf) return cutter.name;
    return say_made_up(job, cutter);
}

std::string say_cutter(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return setup.cutter;
    Cutter cutter = group->work.chosen.cutter;
    // Other shims than planned are said by themselves (see say_shims).
    if (lists_shims(cutter) && dial_of(work, setup).shims != Length{}) {
        if (cutter.chippers.empty()) return cutter.name;
        cutter.shims.clear();
        return work.job.locale.words()("cutter.chippers_alone", cutter.name,
                                       pieces(work.job, cutter, cutter.chippers));
    }
    return say_cutter(work.job, cutter);
}

std::string say_put_on(const Work& work, const Setup& setup) {
    const Length shims = dial_of(work, setup).shims;
    const std::string cutter = say_cutter(work, setup);
    return shims == Length{}
               ? cutter
               : work.job.locale.words()("put_on.cutter", cutter, say_shims(work, setup, shims));
}

std::string say_way(const Job& job, const ChosenJoint& way) {
    const int passes = planned_passes(way.joint.slot().width, way.cutter);
    return job.locale.words().counted("way.passes", passes, say_cutter(job, way.cutter));
}

std::string say_reason(const Job& job, const WayReason& reason) {
    const Words& words = job.locale.words();
    std::string ways;
    for (const WayCost& cost : reason.ways) {
        const std::string way =
            words("way.costs", say_way_of(job, reason.label, cost.way), say_cost(cost, words));
        ways = ways.empty() ? way : words("way.or", ways, way);
    }
    return words("way.reason", say_joint(words, reason.label, reason.drawers), ways);
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

std::string say_cost(const WayCost& cost, const Words& words) {
    const std::string time = minutes(cost.seconds);
    switch (cost.surety) {
        case Surety::exact: break;
        case Surety::at_most: return words("way.at_most", time);
        case Surety::at_least: return words("way.at_least", time);
        case Surety::about: return words("way.about", time);
    }
    return time;
}

std::string say_left_out(const Job& job, const LeftOut& one) {
    const Words& words = job.locale.words();
    return words("way.left_out", say_joint(words, one.label, one.drawers),
                 say_way_of(job, one.label, one.way));
}

std::string say_not_compared(const Job& job, const NotCompared& one) {
    const Words& words = job.locale.words();
    const std::string joint = say_joint(words, one.label, one.drawers), way = say_way(job, one.way);
    return one.shares ? words("way.shares_setups", joint, way) : words("way.too_many", joint, way);
}

}  // namespace kw
