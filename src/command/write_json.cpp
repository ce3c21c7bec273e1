#include "command/breaking.h"
#include "command/write.h"
#include "session/say_ways.h"
#include "setup/bit_passes.h"

namespace kw {
namespace {

Json box_json(const DrawerBox& box) {
    return {{"drawer", box.drawer},
            {"width_mm", box.size.width.mm()},
            {"height_mm", box.size.height.mm()},
            {"depth_mm", box.size.depth.mm()}};
}

Json part_json(const Part& part) {
    Json json = {{"id", part.id},
                 {"drawer", part.drawer},
                 {"copy", part.copy},
                 {"role", name_of(part.size.role)},
                 {"length_mm", part.size.length.mm()},
                 {"width_mm", part.size.width.mm()},
                 {"thickness_mm", part.size.thickness.mm()},
                 {"stock", part.stock}};
    if (part.banded.empty()) return json;
    json["band_mm"] = part.band.mm();
    for (const BandedEdge edge : part.banded) json["banded"].push_back(name_of(edge));
    return json;
}

Json setup_json(const Work& work, const Setup& setup) {
    Json passes = Json::array();
    for (const Pass& pass : setup.passes) {
        // On a jig the board stands on its end.
        passes.push_back({{"part", pass.part},
                          {"reference", name_of(setup.index ? Reference::bottom_edge : pass.reference)},
                          {"down", setup.index ? name_of(pass.reference) : name_of(pass.down)},
                          {"nibble", pass.nibble}});
        if (setup.index) passes.back()["cuts"] = pass.cuts;
    }
    Json heights = Json::array();
    for (const Length height : heights_of(work.job.shop, setup)) heights.push_back(height.mm());
    Json json = {{"id", setup.id},
                 {"group", setup.group},  // empty for rips and crosscuts
                 {"work", setup.work},
                 {"machine", setup.machine},
                 {"cutter", setup.cutter},
                 {"make_up_mm", setup.make_up.mm()},
                 {"put_on", say_put_on(work, setup)},
                 {"kerf_mm", setup.kerf.mm()},
                 {"fence_mm", setup.fence.mm()},
                 {"height_mm", setup.height ? Json(setup.height->mm()) : Json()},
                 {"heights_mm", heights},
                 {"spacer_mm", setup.spacer.mm()},
                 {"sacrificial", setup.sacrificial},
                 {"guide", setup.guide},
                 {"test_cut", setup.test_cut},
                 {"passes", passes}};
    if (setup.index) json["index_mm"] = setup.index->mm();
    return json;
}

Json parts_list(const Work& work) {
    Json parts = Json::array();
    for (const Part& part : work.plan.parts) parts.push_back(part_json(part));
    return parts;
}

Json notes_json(const Work& work, std::vector<Note> all) {
    Json notes = Json::array();
    all.insert(all.end(), work.plan.notes.begin(), work.plan.notes.end());
    for (const Note& note : all)
        notes.push_back({{"level", note.level == Level::note ? "note" : "warning"},
                         {"about", note.about},
                         {"text", note.text.text(work.job.locale)}});
    for (const Affected& affected : work.affected)
        notes.push_back({{"level", "warning"},
                         {"about", affected.part},
                         {"text", affected.said().text(work.job.locale)}});
    return notes;
}

Json rest_json(const Rest& rest) {
    Json steps = Json::array();
    for (const RestStep& step : rest.steps) {
        Json changes = Json::array();
        for (const RestChange& change : step.changes) changes.push_back(change.what);
        steps.push_back({{"step", step.step},
                         {"setup", step.setup},
                         {"ends", step.ends},
                         {"still_set", step.still_set},
                         {"set_again", step.set_again},
                         {"changes", changes}});
    }
    return {{"seconds", rest.seconds},
            {"lower_bound_seconds", rest.lower_bound_seconds},
            {"proved", rest.proved},
            {"steps", steps}};
}

Json reasons_json(const Work& work) {
    Json reasons = Json::array();
    for (const WayReason& reason : work.reasons) {
        Json ways = Json::array();
        for (const WayCost& cost : reason.ways)
            ways.push_back({{"way", say_way(work.job, cost.way)},
                            {"cutter", cost.way.cutter.name},
                            {"make_up_mm", cost.way.cutter.kerf.mm()},
                            {"adds_seconds", cost.seconds},
                            {"adds", cost.surety == Surety::exact ? "exactly" : say_surety(cost.surety)},
                            {"picked", cost.picked}});
        reasons.push_back({{"joint", reason.label}, {"drawers", reason.drawers}, {"ways", ways}});
    }
    return reasons;
}

Json not_compared_json(const Work& work) {
    Json all = Json::array();
    for (const NotCompared& one : work.not_compared)
        all.push_back({{"joint", one.label},
                       {"drawers", one.drawers},
                       {"way", say_way(work.job, one.way)},
                       {"why", one.shares ? "shared setups" : "too many choices"}});
    for (const LeftOut& one : work.design.left_out)
        all.push_back({{"joint", one.label},
                       {"drawers", one.drawers},
                       {"way", say_way(work.job, one.way)},
                       {"why", "other measures"}});
    return all;
}

Json settings_json(const Settings& settings) {
    Json json = {{"fence_mm", settings.fence.mm()},
                 {"height_mm", settings.height.mm()},
                 {"spacer_mm", settings.spacer.mm()},
                 {"kerf_mm", settings.kerf.mm()}};
    if (settings.shift > Length{}) json["shift_mm"] = settings.shift.mm();
    return json;
}

Json optional_json(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

const char* name_of_advice(AdviceKind kind) {
    switch (kind) {
        case AdviceKind::lock: return "lock";
        case AdviceKind::move: return "move";
        case AdviceKind::measure: return "measure";
    }
    return "";
}

}  // namespace

std::string plan_json(const Work& work, const LayOut& layout, const std::vector<Note>& of_files) {
    const Plan& plan = work.plan;
    Json json = {{"format", "kerfwright-plan"}, {"version", 1}, {"job", plan.job}};
    for (const DrawerBox& box : plan.boxes) json["boxes"].push_back(box_json(box));
    json["parts"] = parts_list(work);
    json["breaking_down"] = breaking_json(work, layout);
    for (const Setup& setup : plan.setups) json["setups"].push_back(setup_json(work, setup));
    json["sequence"] = plan.sequence;
    if (work.rest.begun) json["rest"] = rest_json(work.rest);
    json["seconds"] = plan.seconds;
    json["lower_bound_seconds"] = plan.lower_bound_seconds;
    json["proved"] = plan.proved;
    json["pins_seconds"] = plan.pins_s;
    json["reasons"] = reasons_json(work);
    json["not_compared"] = not_compared_json(work);
    json["notes"] = notes_json(work, of_files);
    return to_text(json);
}

std::string parts_json(const Work& work) {
    return to_text({{"format", "kerfwright-parts"},
                    {"version", 1},
                    {"job", work.plan.job},
                    {"parts", parts_list(work)}});
}

namespace {

Json moves_json(const std::vector<SaidMove>& moves) {
    Json list = Json::array();
    for (const SaidMove& move : moves)
        list.push_back({{"control", move.control}, {"by_mm", move.by.mm()}, {"say", move.say}});
    return list;
}

}  // namespace

std::string fit_json(const FitReport& report) {
    Json spread;
    for (const auto& [control, sigma] : report.spread_mm) spread[control + "_mm"] = sigma;
    Json json = {{"setup", report.setup},
                 {"group", report.group},
                 {"test", report.test},
                 {"locked", report.locked},
                 {"now", settings_json(report.now)},
                 {"spread", spread},
                 {"moves", moves_json(report.moves)},
                 {"retry", report.retry == Retry::same_ends ? "same ends" : "fresh end"},
                 {"chance_in_tolerance", report.chance_in_tolerance},
                 {"chance_after_move", report.chance_after_move},
                 {"advice", name_of_advice(report.advice)},
                 {"after",
                  {{"fit_mm", optional_json(report.fit_mm)},
                   {"shoulder_gap_mm", optional_json(report.shoulder_gap_mm)},
                   {"face_step_mm", optional_json(report.face_step_mm)}}}};
    if (report.row_mm) json["after"]["row_mm"] = *report.row_mm;
    if (report.advice == AdviceKind::measure) {
        json["measure"] = report.measure;
        json["unread"] = moves_json(report.unread);  // for who can't take that reading
    }
    return to_text(json);
}

}  // namespace kw
