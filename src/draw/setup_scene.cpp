#include "draw/setup_scene.h"

#include <algorithm>

#include "draw/setup_parts.h"
#include "draw/setup_view.h"

namespace kw::draw {
namespace {

// The fence of this slot's first pass, where `setup` is a later one.
std::optional<Length> first_fence(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group || !group->cuts_slot || group->slot_passes() < 2) return std::nullopt;
    const Pass& pass = setup.passes.front();
    const auto& receivers = group->work.receivers;
    const bool slot = std::any_of(receivers.begin(), receivers.end(), [&](const PartEnd& end) {
        return end.part == pass.part && end.reference == pass.reference;
    });
    if (!slot || setup.fence <= group->stands.fence) return std::nullopt;
    return group->stands.fence;
}

// As far as the passes before this one reached.
Length cleared_to(const Work& work, const Setup& setup) {
    const Group& group = *work.plan.group_with_id(setup.group);
    Length to = group.stands.fence;
    for (int pass = 0; pass < group.slot_passes(); ++pass) {
        const Length fence = fence_of_pass(group.stands, pass, group.slot_passes());
        if (fence < setup.fence) to = fence + group.stands.kerf;
    }
    return to;
}

std::optional<Reference> common_reference(const Setup& setup) {
    const Reference first = setup.passes.front().reference;
    const bool all = std::all_of(setup.passes.begin(), setup.passes.end(),
                                 [&](const Pass& pass) { return pass.reference == first; });
    return all ? std::optional(first) : std::nullopt;
}

}  // namespace

std::optional<SetupScene> setup_scene(const Work& work, const Setup& setup) {
    if (setup.stage != Stage::joint) return std::nullopt;
    SetupScene scene;
    const Stock& stock = stock_of(work, setup);
    scene.thickness = stock.thickness;
    scene.fence = setup.fence;
    scene.height = setup.height.value_or(scene.thickness);
    scene.kerf = kerf_as_put_on(work, setup);
    scene.spacer = setup.spacer;
    scene.sacrificial = setup.sacrificial;
    scene.nibble = setup.passes.front().nibble;
    scene.down = setup.passes.front().down;
    scene.reference = common_reference(setup);
    if (const auto first = first_fence(work, setup)) {
        scene.fence_before = *first;
        scene.cleared = cleared_to(work, setup) - *first;
    }
    scene.id = setup.id;
    scene.work = setup.work;
    scene.machine = setup.machine;
    scene.cutter = setup.cutter;
    scene.references = references_text(setup);
    scene.along_edge = setup.guide == "rip fence";
    scene.stock = stock.kind;
    scene.graduation = work.job.graduation;
    scene.caliper = caliper_graduation(work.job);
    return scene;
}

}  // namespace kw::draw
