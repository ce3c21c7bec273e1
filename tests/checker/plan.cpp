#include "checker/plan.h"

#include <stdexcept>

namespace checker {
namespace {

std::string text_or_none(const Json& value) { return value.is_null() ? "" : value.get<std::string>(); }

double number_or_zero(const Json& value) { return value.is_null() ? 0 : value.get<double>(); }

PlanBox read_box(const Json& entry) {
    return {entry.at("drawer"), entry.at("width_mm"), entry.at("height_mm"), entry.at("depth_mm")};
}

PlanPart read_part(const Json& entry) {
    return {entry.at("id"),        entry.at("drawer"),   entry.at("copy"),         entry.at("role"),
            entry.at("length_mm"), entry.at("width_mm"), entry.at("thickness_mm"), entry.at("stock")};
}

Pass read_pass(const Json& entry) {
    return {entry.at("part"), entry.at("reference"), text_or_none(entry.at("down")), entry.at("nibble"),
            entry.value("cuts", 1)};
}

Setup read_setup(const Json& entry) {
    Setup setup;
    setup.id = entry.at("id");
    setup.group = entry.at("group");
    setup.work = entry.at("work");
    setup.machine = entry.at("machine");
    setup.cutter = text_or_none(entry.at("cutter"));
    setup.guide = entry.at("guide");
    setup.fence_mm = entry.at("fence_mm");
    if (!entry.at("height_mm").is_null()) setup.height_mm = entry.at("height_mm").get<double>();
    setup.kerf_mm = setup.through() ? number_or_zero(entry.at("kerf_mm")) : entry.at("kerf_mm").get<double>();
    if (entry.contains("heights_mm")) setup.heights_mm = entry.at("heights_mm").get<std::vector<double>>();
    setup.spacer_mm = number_or_zero(entry.at("spacer_mm"));
    setup.sacrificial = entry.at("sacrificial");
    if (entry.contains("index_mm")) setup.index_mm = entry.at("index_mm").get<double>();
    static_cast<void>(entry.at("test_cut").get<bool>());
    for (const Json& pass : entry.at("passes")) setup.passes.push_back(read_pass(pass));
    return setup;
}

void read_notes(const Json& notes) {
    for (const Json& note : notes) {
        for (const char* field : {"level", "about", "text"})
            static_cast<void>(note.at(field).get<std::string>());
    }
}

}  // namespace

Plan read_plan(const Json& plan) {
    if (plan.at("format") != "kerfwright-plan" || plan.at("version") != 1)
        throw std::invalid_argument("not a plan of version 1");
    static_cast<void>(plan.at("job").get<std::string>());
    Plan read;
    for (const Json& entry : plan.at("boxes")) read.boxes.push_back(read_box(entry));
    for (const Json& entry : plan.at("parts")) read.parts.push_back(read_part(entry));
    for (const Json& entry : plan.at("setups")) read.setups.push_back(read_setup(entry));
    for (const Json& entry : plan.at("sequence")) read.sequence.push_back(entry);
    read.seconds = plan.at("seconds");
    read.lower_bound_seconds = plan.at("lower_bound_seconds");
    read.proved = plan.at("proved");
    read_notes(plan.at("notes"));
    return read;
}

}  // namespace checker
