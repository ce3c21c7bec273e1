#include "job/parts_of.h"

#include <algorithm>

namespace kw {
namespace {

const Settings& stands(const Design& design, const std::string& key) {
    const Group* group = design.group_with_key(key);
    return group->stands;
}

Length reach_as_cut(const Design& design, const ChosenJoint& chosen, const JointKeys& keys) {
    return reach_by(chosen.joint, stands(design, keys.slot),
                    keys.end.empty() ? nullptr : &stands(design, keys.end));
}

// From the receiver's end to the insert's outside face.
Length face_as_cut(const Design& design, const ChosenJoint& chosen, const JointKeys& keys,
                   Length insert_thickness) {
    const Settings& slot = stands(design, keys.slot);
    if (has_fingers(chosen.joint)) return slot.height - insert_thickness;
    if (has_lap(chosen.joint)) return far_at_end(slot) - (insert_thickness - stands(design, keys.end).height);
    if (chosen.joint.seat == Seat::far_wall) return far_at_end(slot) - insert_thickness;
    if (keys.end.empty()) return slot.fence;
    return slot.fence - stands(design, keys.end).height;
}

const std::string& stock_of(const DrawerSpec& spec, Role role) {
    switch (role) {
        case Role::front: return spec.front.stock;
        case Role::back: return spec.back.stock;
        case Role::bottom: return spec.bottom.stock;
        case Role::face: return spec.face.stock;
        case Role::side_left:
        case Role::side_right: break;
    }
    return spec.side_stock;
}

const DrawerDesign& drawer_of(const Design& design, const Part& part) {
    return *std::find_if(design.drawers.begin(), design.drawers.end(),
                         [&](const DrawerDesign& drawer) { return drawer.spec->name == part.drawer; });
}

std::string sets_length(const ChosenJoint& chosen, const JointKeys& keys) {
    const bool is_known_before = chosen.joint.sets_length && !has_row_of_its_own(chosen, keys);
    return is_known_before ? keys.slot : std::string();
}

// The groups whose locks the part's length waits for; see precedence.cpp.
std::string sets_length_of(const DrawerDesign& drawer, Role role) {
    if (role == Role::front) return sets_length(drawer.front, drawer.front_keys);
    if (role != Role::back) return {};
    const std::string own = sets_length(drawer.back, drawer.back_keys);
    return drawer.back_follows_front ? own + " | " + drawer.front_keys.slot : own;
}

// The group that sets the part's width: a back's, under which the bottom slides in.
std::string sets_width_of(const DrawerDesign& drawer, Role role) {
    const bool over_bottom = role == Role::back && drawer.spec->bottom.style == BottomStyle::slide_in;
    return over_bottom ? drawer.bottom_keys.slot : std::string();
}

std::vector<PartSize> sizes_of(const Job& job, const Design& design, const DrawerDesign& drawer) {
    const DrawerSpec& spec = *drawer.spec;
    const BottomFit fit{spec.bottom.style, job.fit.bottom_slack, drawer.seasonal_swell};
    auto sizes = size_parts(drawer.box, drawer.thickness, joints_as_cut(design, drawer), fit);
    if (spec.face.stock.empty()) return sizes;
    if (auto size = face_size(spec, job.stock_named(spec.face.stock)->thickness)) sizes.push_back(*size);
    return sizes;
}

// What goes onto the edges of this part: a drawer's faces may have a banding of their own.
std::optional<Banding> banding_of(const Job& job, const DrawerSpec& spec, Role role) {
    const std::optional<Banding>& of_stock = job.stock_named(stock_of(spec, role))->banding;
    if (role != Role::face || !spec.face.banding) return of_stock;
    const FaceBanding& own = *spec.face.banding;
    if (own.edges.empty()) return std::nullopt;
    return Banding{own.thickness.value_or(of_stock ? of_stock->thickness : Length{}), own.edges};
}

std::vector<BandedEdge> banded_of(const Banding& banding, Role role) {
    if (role == Role::face) return banding.edges;
    if (role != Role::bottom && banding.has(BandedEdge::top)) return {BandedEdge::top};
    return {};
}

PartSize grown_by_bands(PartSize size, const Part& part, int times) {
    for (const BandedEdge edge : part.banded)
        (edge == BandedEdge::left || edge == BandedEdge::right ? size.length : size.width) +=
            times * part.band;
    return size;
}

}  // namespace

Length reach_by(const JointDesign& joint, const Settings& slot, const Settings* end) {
    if (has_fingers(joint)) return (end ? *end : slot).height;
    return end ? far_at_end(*end) : slot.height - joint.end_relief;
}

PartSize Part::finished() const { return grown_by_bands(size, *this, 1); }

DrawerJoints joints_as_cut(const Design& design, const DrawerDesign& drawer) {
    const Group& bottom = *design.group_with_key(drawer.bottom_keys.slot);
    const Settings& groove = bottom.stands;
    DrawerJoints joints;
    joints.front_reach = reach_as_cut(design, drawer.front, drawer.front_keys);
    joints.back_reach = reach_as_cut(design, drawer.back, drawer.back_keys);
    joints.back_setback = face_as_cut(design, drawer.back, drawer.back_keys, drawer.thickness.back);
    joints.front_step = face_as_cut(design, drawer.front, drawer.front_keys, drawer.thickness.front);
    joints.groove_near = groove.fence;
    // Until it is tested it counts as asked: what a stack made up for it is off by is no reason to set a fence twice.
    joints.groove_width = groove == bottom.designed ? drawer.thickness.bottom + drawer.bottom.joint.clearance
                                                    : groove.kerf + groove.shift;
    joints.groove_depth = groove.height;
    return joints;
}

std::vector<Part> parts_of(const Job& job, const Design& design) {
    std::vector<Part> parts;
    for (const DrawerDesign& drawer : design.drawers) {
        const auto sizes = sizes_of(job, design, drawer);
        for (int copy = 1; copy <= drawer.spec->count; ++copy)
            for (const PartSize& size : sizes) {
                Part part{part_id(*drawer.spec, copy, size.role), drawer.spec->name, copy, size,
                          stock_of(*drawer.spec, size.role)};
                if (const auto banding = banding_of(job, *drawer.spec, size.role)) {
                    part.band = banding->thickness;
                    part.banded = banded_of(*banding, size.role);
                    part.size = grown_by_bands(size, part, -1);
                }
                parts.push_back(std::move(part));
            }
    }
    return parts;
}

std::vector<SizeCut> size_cuts_of(const Design& design, const std::vector<Part>& parts) {
    std::vector<SizeCut> cuts;
    for (const Part& part : parts) {
        const DrawerDesign& drawer = drawer_of(design, part);
        const auto add = [&](Reference from, Length size, bool lengthwise, const char* what) {
            cuts.push_back({{part.id, from},
                            size,
                            size == part.size.width ? part.size.length : part.size.width,
                            lengthwise,
                            what,
                            lengthwise ? sets_width_of(drawer, part.size.role)
                                       : sets_length_of(drawer, part.size.role)});
        };
        switch (part.size.role) {
            case Role::side_left:
            case Role::side_right:
                add(Reference::bottom_edge, part.size.width, true, "sides and fronts");
                add(Reference::front_end, part.size.length, false, "sides");
                break;
            case Role::front:
                add(Reference::bottom_edge, part.size.width, true, "sides and fronts");
                add(Reference::left_end, part.size.length, false, "fronts");
                break;
            case Role::back:
                add(Reference::bottom_edge, part.size.width, true, "backs");
                add(Reference::left_end, part.size.length, false, "backs");
                break;
            case Role::bottom:
                add(Reference::front_end, part.size.width, true, "bottoms");
                add(Reference::left_end, part.size.length, false, "bottoms");
                break;
            case Role::face:
                add(Reference::bottom_edge, part.size.width, true, "faces");
                add(Reference::left_end, part.size.length, false, "faces");
                break;
        }
    }
    return cuts;
}

}  // namespace kw
