#include "testcut/joint_model.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "joint/fingers.h"
#include "setup/shims.h"

namespace kw {
namespace {

// What a move of a control adds, whatever its length and per mm, anew each time. One sigma. Common practice, no source.
struct Habit {
    double move_spread_mm;
    double move_gain_spread;
    double effort;
};
constexpr Habit spacer_habit{0.02, 0.02, 1.5};
constexpr Habit kerf_habit{0.02, 0.05, 5.0};  // shims mean taking the stack off
constexpr double needless_shims = 8.0;        // where height and fence do the same
constexpr double shift_effort = 1.2;          // the fence, by the distance from another mark
constexpr double wobble = 0.01;               // of a handwheel or a fence, per mm
constexpr double spacer_spread_mm = 0.10;     // what a spacer is off by that was not measured
constexpr double stock_spread_mm = 0.05;      // of a batch, about what was typed in
constexpr double partner_spread_mm = 0.04;    // of a slot that was tested and locked before

constexpr double pin_step_mm = 0.01;  // as finely as a caliper shows where a pin stands
constexpr Length row_grows =
    Length::micrometres(250);              // at most, with each socket, by a pin or a cutter that is off
constexpr double index_spread_mm = 0.005;  // of a board set over by one socket

constexpr double spacer_step_mm = 0.05;  // a slip of paper on the spacer
constexpr double short_tongue_mm = 0.6;  // a tongue shorter than asked only adds to the end relief

// A second pass is another stop of the fence for the whole batch, and each end goes through once more: against shims, which
// cost what they cost however many drawers there are. Where there are no shims it is the only way, and is never too dear.
double second_pass_effort(int ends) { return std::min(shift_effort + ends / 3.0, 2.0 * kerf_habit.effort); }

using Weights = std::map<std::string, double>;

class Builder {
public:
    explicit Builder(Tool tool) : tool_(tool) {}
    std::size_t control(Control control) {
        model_.controls.push_back(std::move(control));
        return model_.controls.size() - 1;
    }
    std::size_t fixed(const std::string& name, double value, double spread) {
        return control({name, value, spread, false});
    }
    void reading(const std::string& name, const Weights& weights, bool gap = false,
                 ReadingKind kind = ReadingKind::plain) {
        model_.readings.push_back({form(name, weights), spread_of(tool_, gap), kind});
    }
    // What one of the cuts takes away on this side, and must go on taking.
    void removes(const Weights& weights) { model_.removed.push_back(form("removed", weights)); }
    void outcome(const std::string& name, const Weights& weights, Length target, double below_mm,
                 double above_mm) {
        model_.outcomes.push_back({form(name, weights), target.mm(), below_mm, above_mm});
    }
    void either_way(const std::string& name, const Weights& weights, Length target, Length tolerance) {
        outcome(name, weights, target, tolerance.mm(), tolerance.mm());
    }
    Model done() { return std::move(model_); }

private:
    Form form(const std::string& name, const Weights& weights) const {
        Form out{name, std::vector<double>(model_.controls.size(), 0.0), 0.0};
        for (std::size_t i = 0; i < model_.controls.size(); ++i) {
            const auto weight = weights.find(model_.controls[i].name);
            if (weight != weights.end()) out.weights[i] = weight->second;
        }
        return out;
    }
    Tool tool_;
    Model model_;
};

void add_machine_controls(Builder& build, const Group& group, const Start& start) {
    const Settings& dial = start.dial;
    const Scales& scales = start.scales;
    const Machine& machine = group.work.chosen.machine;
    // A stack whose shims nobody has listed is not known to have any.
    const bool shims = lists_shims(group.work.chosen.cutter);
    // Both rabbets of a half lap are as often cut without one. That of a row is a finger of the other board.
    const bool in_row = has_fingers(group.work.chosen.joint);
    const bool has_spacer = !in_row && ((group.cuts_end && !group.slot_is_open()) || dial.spacer > Length{});
    // A pin is no scale of the machine: nothing is learned of that by it.
    const std::string where = in_row ? "pin" : "fence";
    const std::size_t fence_gain = build.fixed(where + " gain", scales.fence.gain, scales.fence.gain_spread);
    const std::size_t height_gain = build.fixed("height gain", scales.height.gain, scales.height.gain_spread);
    const std::size_t fence_offset =
        build.fixed(where + " offset", scales.fence.offset_mm, scales.fence.spread_mm);
    const std::size_t height_offset =
        build.fixed("height offset", scales.height.offset_mm, scales.height.spread_mm);
    const std::size_t kerf_offset = build.fixed("kerf offset", scales.kerf.offset_mm, scales.kerf.spread_mm);
    const double fence_repeats = 0.5 * machine.fence_repeats.mm(),
                 height_repeats = 0.5 * machine.height_repeats.mm();
    build.control({"fence", dial.fence.mm() + scales.fence.offset_mm, fence_repeats, true,
                   in_row ? std::min(pin_step_mm, machine.fence_step.mm()) : machine.fence_step.mm(),
                   fence_repeats, wobble, 1.0, fence_gain, fence_offset});
    build.control({"height", dial.height.mm() + scales.height.offset_mm, height_repeats, true,
                   machine.height_step.mm(), height_repeats, wobble, 1.0, height_gain, height_offset});
    if (has_spacer)
        build.control({"spacer", dial.spacer.mm(), spacer_spread_mm, true, spacer_step_mm,
                       spacer_habit.move_spread_mm, spacer_habit.move_gain_spread, spacer_habit.effort});
    build.control({"kerf", dial.kerf.mm() + scales.kerf.offset_mm, 0.0,
                   shims && group.cuts_slot && dial.shift == Length{}, 0.0, kerf_habit.move_spread_mm,
                   kerf_habit.move_gain_spread, group.cuts_end || in_row ? needless_shims : kerf_habit.effort,
                   std::nullopt, kerf_offset});
    // From one mark of the fence to another: what the scale is off by is the same at both. A slot of one pass gets a second one
    // where that is less work than other shims.
    const bool second_pass = group.cuts_slot && !group.cuts_end && !group.slot_is_open() && !in_row;
    if (dial.shift > Length{} || second_pass)
        build.control({"shift", dial.shift.mm(),
                       dial.shift > Length{} ? std::numbers::sqrt2 * fence_repeats : 0.0, group.cuts_slot,
                       machine.fence_step.mm(), fence_repeats, wobble, 0.0, fence_gain});
    // The batch, the piece that is tested, and any other piece of it: what fits one must fit all.
    build.fixed("stock", entering_thickness(group).mm(), stock_spread_mm);
    const double uneven_mm = group.work.insert_uneven.mm();
    Control piece{"piece", 0.0, uneven_mm, false};
    piece.of_test_ends = true;
    build.control(piece);
    build.fixed("other piece", 0.0, uneven_mm);
}

const Weights tested_stock = {{"stock", 1}, {"piece", 1}};
const Weights any_stock = {{"stock", 1}, {"other piece", 1}};
const Weights reach = {{"fence", 1}, {"kerf", 1}, {"spacer", -1}};

Weights plus(Weights sum, const Weights& more, double times = 1.0) {
    for (const auto& [name, weight] : more) sum[name] += times * weight;
    return sum;
}

// What must not come back where slot and end are cut. A row that begins or repeats elsewhere is another row.
void add_removed(Builder& build, const Group& group) {
    build.removes({{"height", 1}});
    if (has_fingers(group.work.chosen.joint)) {
        for (const char* control : {"fence", "kerf"})
            for (const double way : {1.0, -1.0}) build.removes({{control, way}});
        return;
    }
    if (group.cuts_slot && !group.slot_is_open()) {
        build.removes({{"fence", -1}});
        build.removes({{"fence", 1}, {"kerf", 1}, {"shift", 1}});
    }
    if (group.cuts_end || group.slot_is_open()) build.removes(reach);
}

// Slot and tongue by one height, or the tongue alone with the slot known from its own group.
void tongue_model(Builder& build, const Group& group, const GroupTolerances& tolerance,
                  const Group* partner) {
    const JointDesign& joint = group.work.chosen.joint;
    Weights slot_width = {{"kerf", 1}, {"shift", 1}};
    Weights slot_depth = {{"height", 1}};
    Weights lip = {{"fence", 1}};
    if (partner) {
        build.fixed("slot width", (partner->stands.kerf + partner->stands.shift).mm(), partner_spread_mm);
        build.fixed("slot depth", partner->stands.height.mm(), partner_spread_mm);
        build.fixed("lip", partner->stands.fence.mm(), partner_spread_mm);
        slot_width = {{"slot width", 1}};
        slot_depth = {{"slot depth", 1}};
        lip = {{"lip", 1}};
    }
    const auto tongue = [](const Weights& stock) { return plus(stock, {{"height", -1}}); };
    const auto fit = [&](const Weights& stock) { return plus(slot_width, tongue(stock), -1.0); };
    const Weights shoulder = plus(reach, slot_depth, -1.0);
    const Weights step = plus(lip, {{"height", -1}});
    build.reading("stock_thickness", tested_stock);
    build.reading("dado_width", slot_width);
    build.reading("dado_depth", slot_depth);
    build.reading("lip", lip);
    build.reading("tongue_thickness", tongue(tested_stock));
    build.reading("tongue_length", reach);
    build.reading("fit", fit(tested_stock), true);
    build.reading("shoulder_gap", shoulder, true, ReadingKind::at_least_zero);
    // Where the insert only stands somewhere, `lip` says where; no finger feels a step.
    if (!joint.step_is_place) build.reading("face_step", step);
    build.either_way("fit", fit(any_stock), joint.clearance, tolerance.fit);
    build.outcome("shoulder_gap", shoulder, -joint.end_relief, short_tongue_mm,
                  (joint.end_relief + tolerance.shoulder_gap).mm());
    build.either_way("face_step", step, joint.step, joint.step_is_place ? tolerance.place : tolerance.step);
}

// Two rabbets at two ends, by one setting, or the insert's alone with the receiver's known from its own group. What opens at the
// shoulder or at the lap's end is seen, so neither may be off by more than the other.
void lap_model(Builder& build, const Group& group, const GroupTolerances& tolerance, const Group* partner) {
    const JointDesign& joint = group.work.chosen.joint;
    Weights width = reach;
    Weights depth = {{"height", 1}};
    if (partner) {
        build.fixed("slot width", far_at_end(partner->stands).mm(), partner_spread_mm);
        build.fixed("slot depth", partner->stands.height.mm(), partner_spread_mm);
        width = {{"slot width", 1}};
        depth = {{"slot depth", 1}};
    }
    const auto lap = [](const Weights& stock) { return plus(stock, {{"height", -1}}); };
    const Weights shoulder = plus(reach, depth, -1.0);
    build.reading("stock_thickness", tested_stock);
    build.reading("width", width);
    build.reading("depth", depth);
    build.reading("lap_thickness", lap(tested_stock));
    build.reading("lap_length", reach);
    build.reading("shoulder_gap", shoulder, true, ReadingKind::at_least_zero);
    build.reading("face_step", plus(width, lap(tested_stock), -1.0));
    build.either_way("shoulder_gap", shoulder, Length{}, tolerance.shoulder_gap);
    build.either_way("face_step", plus(width, lap(any_stock), -1.0), joint.step, tolerance.step);
}

// Both boards' rows are set over by the same fingers and sockets, so that what these are off by is the same at each; but no two boards
// are set over quite alike, and that adds up as the root of their number. Of two boards: of scrap as far up as its row is measured, of
// the drawers' as far as the highest.
void add_drift(Builder& build, int row_to, int most) {
    const auto drift_mm = [](int sockets) { return index_spread_mm * std::sqrt(2.0 * sockets); };
    Control drift{"drift", 0.0, drift_mm(row_to), false};
    drift.of_test_ends = true;
    build.control(drift);
    build.fixed("other drift", 0.0, drift_mm(most));
}

void fingers_model(Builder& build, const Group& group, const GroupTolerances& tolerance, const Start& start) {
    const JointDesign& joint = group.work.chosen.joint;
    const Weights fit = {{"kerf", 1}, {"fence", -1}};
    // From the bottom edge: what begins with a socket has a finger less below the far wall of its last.
    const int last = row_to(group, start);
    const double sockets = last, fingers = group.cuts_slot ? last : last - 1;
    add_drift(build, last, start.sockets_up > 0 ? start.sockets_up : most_sockets(group));
    build.reading("stock_thickness", tested_stock);
    build.reading("socket_width", {{"kerf", 1}});
    build.reading("finger_width", {{"fence", 1}});
    if (last > 0) build.reading("row", {{"fence", fingers}, {"kerf", sockets}});
    build.reading("fit", plus(fit, {{"drift", -1}}), true);
    build.either_way("fit", plus(fit, {{"other drift", -1}}), joint.clearance, tolerance.fit);
    const Weights proud = {{"height", 1}};
    build.reading("depth", {{"height", 1}});
    build.reading("face_step", plus(proud, tested_stock, -1.0));
    build.either_way("face_step", plus(proud, any_stock, -1.0), joint.step, tolerance.step);
}

void slot_model(Builder& build, const Group& group, const GroupTolerances& tolerance) {
    const JointDesign& joint = group.work.chosen.joint;
    const Weights width = {{"kerf", 1}, {"shift", 1}};
    build.reading("stock_thickness", tested_stock);
    build.reading("width", width);
    build.reading("depth", {{"height", 1}});
    build.reading("near", {{"fence", 1}});
    if (joint.insert_cut()) {
        // The slot of a joint whose tongue has a height of its own: its width is what will be fitted.
        build.reading("dado_width", width);
        build.reading("dado_depth", {{"height", 1}});
        build.reading("lip", {{"fence", 1}});
        build.either_way("width", width, joint.slot().width, tolerance.fit + tolerance.fit);
    } else {
        build.reading("fit", plus(width, tested_stock, -1.0), true);
        build.either_way("fit", plus(width, any_stock, -1.0), joint.clearance, tolerance.fit);
    }
    build.either_way("depth", {{"height", 1}}, joint.slot().depth, tolerance.depth);
    build.either_way("near", {{"fence", 1}}, joint.slot().near, tolerance.place);
}

void open_model(Builder& build, const Group& group, const GroupTolerances& tolerance) {
    const JointDesign& joint = group.work.chosen.joint;
    build.reading("stock_thickness", tested_stock);
    build.reading("width", reach);
    build.reading("depth", {{"height", 1}});
    if (has_lap(joint)) {
        // What it comes to is seen when the lap has been cut, which can still make up for it.
        build.either_way("width", reach, joint.slot().width, tolerance.step);
    } else {
        build.reading("face_step", plus(reach, tested_stock, -1.0));
        build.either_way("face_step", plus(reach, any_stock, -1.0), joint.step, tolerance.step);
    }
    build.either_way("depth", {{"height", 1}}, joint.slot().depth, tolerance.depth);
}

}  // namespace

int most_sockets(const Group& group) {
    int most = 0;
    for (const auto* ends : {&group.work.receivers, &group.work.inserts})
        for (const PartEnd& end : *ends)
            most = std::max(most, sockets_up(group.designed.fence, *group.slot().pitch, end.up));
    return most;
}

int row_to(const Group& group, const Start& start) {
    if (start.row_to > 0) return start.row_to;
    Length least;
    for (const auto* ends : {&group.work.receivers, &group.work.inserts})
        for (const PartEnd& end : *ends)
            if (least == Length{} || end.up < least) least = end.up;
    // By a pin or a cutter that is off, a row grows by as much with each socket: the last must be there all the same.
    const Settings& s = group.designed;
    const Length near = group.cuts_slot ? s.fence : Length{};
    return whole_sockets_up(near + row_grows, s.kerf, s.fence + s.kerf + row_grows, least);
}

Scales scales_of(const Group& group, Scales machine) {
    if (has_fingers(group.work.chosen.joint)) machine.fence = usual_pin();
    return machine;
}

Model model_of(const Group& group, const GroupTolerances& tolerances, const Group* partner,
               const Start& start) {
    Builder build(start.tool);
    add_machine_controls(build, group, start);
    const Group* other = group.cuts_slot ? nullptr : partner;
    if (has_fingers(group.work.chosen.joint)) fingers_model(build, group, tolerances, start);
    else if (group.cuts_end && has_lap(group.work.chosen.joint)) lap_model(build, group, tolerances, other);
    else if (group.cuts_end) tongue_model(build, group, tolerances, other);
    else if (group.slot_is_open()) open_model(build, group, tolerances);
    else slot_model(build, group, tolerances);
    add_removed(build, group);
    return movable_from(build.done(), group, start.dial);
}

Model movable_from(Model model, const Group& group, const Settings& dial) {
    const Cutter& cutter = group.work.chosen.cutter;
    for (Control& control : model.controls) {
        if (control.name == "shift") {
            control.least_mm = std::min(0.0, -dial.shift.mm());
            control.effort =
                dial.shift > Length{} ? shift_effort : second_pass_effort(int(group.work.receivers.size()));
        }
        if (control.name != "kerf" || !lists_shims(cutter)) continue;
        const Length in_now = shims_in(cutter) + dial.kerf - group.designed.kerf;
        control.amounts_mm = {0.0};
        for (const Length sum : shim_sums(cutter))
            if (sum != in_now) control.amounts_mm.push_back((sum - in_now).mm());
        std::sort(control.amounts_mm.begin(), control.amounts_mm.end());
    }
    return model;
}

std::optional<std::size_t> control_named(const Model& model, std::string_view name) {
    for (std::size_t i = 0; i < model.controls.size(); ++i)
        if (model.controls[i].name == name) return i;
    return std::nullopt;
}

const Reading* reading_named(const Model& model, std::string_view name) {
    const auto found = std::find_if(model.readings.begin(), model.readings.end(),
                                    [&](const Reading& reading) { return reading.form.name == name; });
    return found == model.readings.end() ? nullptr : &*found;
}

Length* setting_named(Settings& settings, std::string_view control) {
    if (control == "fence") return &settings.fence;
    if (control == "height") return &settings.height;
    if (control == "spacer") return &settings.spacer;
    if (control == "kerf") return &settings.kerf;
    return control == "shift" ? &settings.shift : nullptr;
}

Settings turned(Settings dial, const Model& model, const std::vector<Move>& moves) {
    for (const Move& move : moves)
        if (Length* setting = setting_named(dial, model.controls[move.control].name))
            *setting += Length::nearest_mm(move.by_mm);
    return dial;
}

Settings settings_by(const Model& model, const Settings& designed, const Belief& belief) {
    Settings settings = designed;
    for (std::size_t c = 0; c < model.controls.size(); ++c)
        if (Length* setting = setting_named(settings, model.controls[c].name))
            *setting = Length::nearest_mm(belief.mean[c]);
    return settings;
}

double spread_of(const Model& model, const Belief& belief, std::string_view control) {
    const auto index = control_named(model, control);
    if (!index) return 0.0;
    Form form{std::string(control), std::vector<double>(model.controls.size(), 0.0), 0.0};
    form.weights[*index] = 1.0;
    return marginal(belief, form).sd_mm;
}

}  // namespace kw
