#include "session/say_ways.h"

#include "session/words.h"

namespace kw {
namespace {

std::string pieces(const Job& job, const char* what, const std::vector<Length>& all) {
    std::string text;
    // Chippers go by what is stamped on them, shims are read by caliper.
    for (const Length piece : all)
        text += (text.empty() ? std::string(what) + " " : " + ") +
                (std::string(what) == "chippers" ? show_with_unit(piece, job.graduation)
                                                 : caliper_text(job, piece));
    return text;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
    return text;
}

}  // namespace

std::string say_cutter(const Job& job, const Cutter& cutter) {
    const Cutter* usual = job.shop.cutter_named(cutter.name);
    if (!usual || usual->kerf == cutter.kerf) return cutter.name;
    const std::string chippers = pieces(job, "chippers", cutter.chippers),
                      shims = pieces(job, "shims", cutter.shims);
    const std::string both = chippers + (chippers.empty() || shims.empty() ? "" : ", ") + shims;
    return cutter.name + " made up to " + caliper_text(job, cutter.kerf) +
           (both.empty() ? " (its outer cutters alone)" : " (" + both + ")");
}

std::string say_cutter(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    return group ? say_cutter(work.job, group->work.chosen.cutter) : setup.cutter;
}

std::string say_way(const Job& job, const ChosenJoint& way) {
    const int passes = passes_for(way.joint.slot().width, way.cutter.kerf);
    return (way.joint.insert_cut() ? way.joint.kind + ", " : std::string()) + std::to_string(passes) +
           (passes == 1 ? " pass with " : " passes with ") + say_cutter(job, way.cutter);
}

std::string say_reason(const Job& job, const WayReason& reason) {
    std::string text = reason.label + " (" + joined(reason.drawers) + "): ";
    for (std::size_t i = 0; i < reason.ways.size(); ++i)
        text +=
            (i == 0 ? "" : "; ") + say_way(job, reason.ways[i].way) + ": " + minutes(reason.ways[i].seconds);
    return text;
}

}  // namespace kw
