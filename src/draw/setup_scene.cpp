#include "draw/setup_scene.h"

#include <algorithm>

#include "draw/setup_parts.h"
#include "draw/setup_view.h"
#include "setup/bit_passes.h"

namespace kw::draw {
namespace {

bool cuts_slot(const Group& group, const Setup& setup) {
    const Pass& pass = setup.passes.front();
    const auto& receivers = group.work.receivers;
    return std::any_of(receivers.begin(), receivers.end(), [&](const PartEnd& end) {
        return end.part == pass.part && end.reference == pass.reference;
    });
}

// What the passes of this slot before this one have taken away, as the plan has their setups.
void add_cleared(SetupScene& scene, const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group || !group->cuts_slot || group->slot_passes() < 2 || !cuts_slot(*group, setup)) return;
    std::optional<Length> from, to;
    for (const Setup& pass : work.plan.setups) {
        if (pass.id == setup.id) break;
        if (pass.group != setup.group || !cuts_slot(*group, pass)) continue;
        const Length far = pass.fence + kerf_as_put_on(work, pass);
        from = from ? min(*from, pass.fence) : pass.fence;
        to = to ? max(*to, far) : far;
    }
    if (!from) return;
    scene.fence_before = *from;
    scene.cleared = *to - *from;
}

const Part& part_of(const Work& work, const Setup& setup) {
    return *work.plan.part_with_id(setup.passes.front().part);
}

std::optional<Reference> common_reference(const Setup& setup) {
    const Reference first = setup.passes.front().reference;
    const bool all = std::all_of(setup.passes.begin(), setup.passes.end(),
                                 [&](const Pass& pass) { return pass.reference == first; });
    return all ? std::optional(first) : std::nullopt;
}

}  // namespace

ControlAt SetupScene::fence_at(CutterSide measured_to) const {
    ControlAt at = control_at(fence + fence_beyond, fence + fence_beyond + fence_scale_off);
    if (measured_to == CutterSide::far) at.truly += kerf;
    return at;
}

ControlAt SetupScene::height_at() const {
    return control_at(height + height_beyond, height + height_beyond + height_scale_off);
}

std::optional<SetupScene> setup_scene(const Work& work, const Setup& setup) {
    if (setup.stage != Stage::joint) return std::nullopt;
    SetupScene scene;
    const Stock& stock = stock_of(work, setup);
    scene.thickness = stock.thickness;
    scene.fence = setup.fence;
    scene.height = setup.height.value_or(scene.thickness);
    const std::vector<Length> heights = heights_of(work.job.shop, setup);
    scene.first_height = heights.empty() ? scene.height : heights.front();
    const SetTo set = set_to(work, setup);
    scene.kerf = set.kerf;
    scene.fence_beyond = set.dial.fence_beyond;
    scene.fence_scale_off = set.fence.scale - set.fence.truly;
    if (set.height) {
        scene.height_beyond = set.dial.height_beyond;
        scene.height_scale_off = set.height->scale - set.height->truly;
    }
    scene.spacer = setup.spacer;
    scene.sacrificial = setup.sacrificial;
    scene.nibble = setup.passes.front().nibble;
    scene.index = setup.index;
    scene.end_height = part_of(work, setup).size.width;
    scene.sockets = setup.passes.front().cuts;
    scene.down = setup.passes.front().down;
    scene.reference = common_reference(setup);
    add_cleared(scene, work, setup);
    scene.id = setup.id;
    scene.work = setup.work;
    scene.machine = setup.machine;
    scene.cutter = setup.cutter;
    scene.references = references_text(setup, work.job.locale.words());
    scene.along_edge = setup.guide == "rip fence";
    scene.stock = stock.kind;
    scene.locale = work.job.locale;
    scene.caliper = caliper_locale(work.job);
    return scene;
}

}  // namespace kw::draw
