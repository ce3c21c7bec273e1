#include "joint/joint.h"

#include <algorithm>
#include <cassert>

#include "joint/kinds.h"

namespace kw {

const Cut& JointDesign::slot() const {
    const auto found =
        std::find_if(cuts.begin(), cuts.end(), [](const Cut& cut) { return cut.member == Member::receiver; });
    assert(found != cuts.end() && "every joint has a slot");
    return *found;
}

const Cut* JointDesign::insert_cut() const {
    const auto found =
        std::find_if(cuts.begin(), cuts.end(), [](const Cut& cut) { return cut.member == Member::insert; });
    return found == cuts.end() ? nullptr : &*found;
}

Length least_web(Length thickness) { return thickness.scaled(1, 3); }

std::optional<Refusal> check_web(Length receiver_thickness, Length depth, const char* field) {
    const Length most = receiver_thickness - least_web(receiver_thickness);
    if (depth <= most) return std::nullopt;
    return Refusal{field,
                   Message::say("joint.web_too_thin", depth, receiver_thickness - depth, receiver_thickness),
                   Message::say("joint.at_most_deep", most)};
}

const std::vector<JointType>& joint_types() {
    static const std::vector<JointType> types = {
        {.name = "locking rabbet",
         .places = {Place::front, Place::back},
         .width_from_cutter = true,
         .has_relief = true,
         .design = design_locking_rabbet},
        {.name = "dado",
         .places = {Place::back},
         .has_relief = true,
         .depth_follows = true,
         .design = design_dado},
        {.name = "tongue and dado",
         .places = {Place::back},
         .width_from_cutter = true,
         .has_relief = true,
         .depth_follows = true,
         .design = design_tongue_and_dado},
        {.name = "least time",
         .places = {Place::back},
         .has_relief = true,
         .depth_follows = true,
         .or_else = "tongue and dado",
         .design = design_dado},
        {.name = "rabbet",
         .places = {Place::front, Place::back},
         .at_the_end = true,
         .depth_follows = true,
         .design = design_rabbet},
        {.name = "half lap corner",
         .places = {Place::front},
         .at_the_end = true,
         .design = design_half_lap_corner},
        {.name = "box joint",
         .places = {Place::front, Place::back},
         .at_the_end = true,
         .width_is_cutter = true,
         .runs_up = true,
         .design = design_box_joint},
        {.name = "groove", .places = {Place::bottom}, .design = design_groove},
    };
    return types;
}

const JointType* find_joint_type(std::string_view name, Place place) {
    for (const JointType& type : joint_types()) {
        const bool fits = std::find(type.places.begin(), type.places.end(), place) != type.places.end();
        if (fits && type.name == name) return &type;
    }
    return nullptr;
}

Message joint_names_for(Place place) {
    Message names;
    for (const JointType& type : joint_types()) {
        if (std::find(type.places.begin(), type.places.end(), place) == type.places.end()) continue;
        names = names + (names.empty() ? Message() : Message::say("list.or")) + in_quotes(type.name);
    }
    return names;
}

}  // namespace kw
