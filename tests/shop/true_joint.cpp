#include "shop/true_joint.h"

#include <algorithm>
#include <cmath>

namespace shop {
namespace {

struct Span {
    double near, far, depth;
};

Span slot_of(const kw::Group& group, const Controls& at) {
    if (group.slot_is_open()) return {0.0, at.fence - at.spacer + at.kerf, at.height};
    return {at.fence, at.fence + at.shift + at.kerf, at.height};
}

Span end_of(const Controls& at) { return {0.0, at.fence - at.spacer + at.kerf, at.height}; }

bool covers(const Span& wide, const Span& narrow) {
    constexpr double hair = 1e-9;
    return wide.near <= narrow.near + hair && wide.far >= narrow.far - hair &&
           wide.depth >= narrow.depth - hair;
}

bool within(double value, double target, double limit) { return std::abs(value - target) <= limit; }

// From the bottom edge to the far wall of the last whole socket: so many fingers and sockets.
int sockets_in_row(const kw::Group& group) {
    const double pitch = group.designed.fence.mm() + group.designed.kerf.mm();
    return static_cast<int>(group.work.receivers.front().up.mm() / pitch);
}

}  // namespace

double& Controls::named(const std::string& control) {
    if (control == "fence") return fence;
    if (control == "height") return height;
    if (control == "spacer") return spacer;
    if (control == "kerf") return kerf;
    return shift;
}

std::map<std::string, double> joint_as_cut(const kw::Group& group, const Controls& at, const TrueSlot& other,
                                           double thickness) {
    std::map<std::string, double> out{{"stock_thickness", thickness}};
    if (kw::has_fingers(group.work.chosen.joint)) {
        out["depth"] = at.height;
        out["face_step"] = at.height - thickness;
        if (!group.cuts_slot) return out;
        out["socket_width"] = at.kerf;
        out["finger_width"] = at.fence;
        out["fit"] = at.kerf - at.fence;
        out["row"] = sockets_in_row(group) * (at.fence + at.kerf);
        return out;
    }
    if (group.cuts_end && group.slot_is_open()) {
        const Span slot = slot_of(group, at), end = end_of(at);
        const double width = group.cuts_slot ? slot.far : other.width,
                     depth = group.cuts_slot ? slot.depth : other.depth;
        out["width"] = width;
        out["depth"] = depth;
        out["lap_thickness"] = thickness - end.depth;
        out["lap_length"] = end.far;
        out["shoulder_gap"] = std::max(0.0, end.far - depth);
        out["open_at_the_end"] = std::max(0.0, depth - end.far);
        out["face_step"] = width - (thickness - end.depth);
        return out;
    }
    if (group.cuts_end) {
        const Span own = slot_of(group, at);
        const TrueSlot slot = group.cuts_slot ? TrueSlot{own.far - own.near, own.depth, own.near} : other;
        const Span end = end_of(at);
        out["dado_width"] = slot.width;
        out["dado_depth"] = slot.depth;
        out["lip"] = slot.lip;
        out["tongue_thickness"] = thickness - end.depth;
        out["tongue_length"] = end.far;
        out["fit"] = slot.width - (thickness - end.depth);
        out["shoulder_gap"] = std::max(0.0, end.far - slot.depth);
        out[group.work.chosen.joint.step_is_place ? "setback" : "face_step"] = slot.lip - end.depth;
        return out;
    }
    const Span slot = slot_of(group, at);
    out["width"] = slot.far - slot.near;
    out["depth"] = slot.depth;
    out["near"] = slot.near;
    if (group.slot_is_open()) out["face_step"] = slot.far - thickness;
    else if (!group.work.chosen.joint.insert_cut()) out["fit"] = slot.far - slot.near - thickness;
    if (group.work.chosen.joint.insert_cut()) {
        out["dado_width"] = out["width"];
        out["dado_depth"] = out["depth"];
        out["lip"] = out["near"];
    }
    return out;
}

bool is_good(const kw::Group& group, const Limits& limits, const std::map<std::string, double>& joint) {
    const kw::JointDesign& asked = group.work.chosen.joint;
    const auto at = [&](const char* name) { return joint.at(name); };
    if (kw::has_fingers(asked))
        return (!group.cuts_slot || within(at("fit"), asked.clearance.mm(), limits.fit)) &&
               within(at("face_step"), asked.step.mm(), limits.step);
    if (group.cuts_end && group.slot_is_open())
        return at("shoulder_gap") <= limits.shoulder_gap && at("open_at_the_end") <= limits.shoulder_gap &&
               within(at("face_step"), asked.step.mm(), limits.step);
    if (group.cuts_end) {
        // A tongue up to 0.6 mm shorter than asked only adds to the relief at its end.
        const double reach_short = at("dado_depth") - at("tongue_length") - asked.end_relief.mm();
        return within(at("fit"), asked.clearance.mm(), limits.fit) &&
               at("shoulder_gap") <= limits.shoulder_gap && reach_short <= 0.6 &&
               (asked.step_is_place ? within(at("setback"), asked.step.mm(), limits.place)
                                    : within(at("face_step"), asked.step.mm(), limits.step));
    }
    if (!within(at("depth"), asked.slot().depth.mm(), limits.depth)) return false;
    if (group.slot_is_open()) return within(at("face_step"), asked.step.mm(), limits.step);
    if (!within(at("near"), asked.slot().near.mm(), limits.place)) return false;
    if (asked.insert_cut()) return within(at("width"), asked.slot().width.mm(), 2.0 * limits.fit);
    return within(at("fit"), asked.clearance.mm(), limits.fit);
}

bool takes_all(const kw::Group& group, const Controls& old, const Controls& next) {
    // A row elsewhere, or of another pitch, is another row.
    if (kw::has_fingers(group.work.chosen.joint))
        return next.height >= old.height && next.fence == old.fence && next.kerf == old.kerf;
    return (!group.cuts_slot || covers(slot_of(group, next), slot_of(group, old))) &&
           (!group.cuts_end || covers(end_of(next), end_of(old)));
}

}  // namespace shop
