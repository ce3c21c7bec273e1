#include "testcut/joint_model.h"

#include <algorithm>
#include <map>

namespace kw {
namespace {

// How far a control stands from what its scale says before anything was cut, and what a move of it adds. One sigma, mm.
// Common practice, no source.
struct Habit {
    double spread_mm;
    double move_spread_mm;
    double move_gain_spread;
    double effort;
};
constexpr Habit fence_habit{0.25, 0.03, 0.03, 1.0};
constexpr Habit height_habit{0.25, 0.03, 0.03, 1.0};
constexpr Habit shift_habit{0.15, 0.03, 0.03, 1.2};
constexpr Habit spacer_habit{0.10, 0.02, 0.02, 1.5};
constexpr Habit kerf_habit{0.08, 0.02, 0.05, 4.0};  // shims mean taking the stack off
constexpr Habit stock_habit{0.05, 0.0, 0.0, 0.0};
constexpr double partner_spread_mm = 0.04;  // of a slot that was tested and locked before

constexpr double caliper_mm = 0.05;
constexpr double feeler_mm = 0.03;
constexpr double spacer_step_mm = 0.05;  // a slip of paper on the spacer
constexpr double shim_step_mm = 0.05;    // the thinnest shim of a stack
constexpr double short_tongue_mm = 0.6;  // a tongue shorter than asked only adds to the end relief

using Weights = std::map<std::string, double>;

class Builder {
public:
    void control(const std::string& name, Length set, const Habit& habit, bool movable,
                 double resolution_mm) {
        model_.controls.push_back({name, set.mm(), habit.spread_mm, movable, resolution_mm,
                                   habit.move_spread_mm, habit.move_gain_spread, habit.effort});
    }
    void known(const std::string& name, Length set, double spread_mm) {
        model_.controls.push_back({name, set.mm(), spread_mm, false, 0.0, 0.0, 0.0, 0.0});
    }
    void reading(const std::string& name, const Weights& weights, double spread_mm = caliper_mm,
                 ReadingKind kind = ReadingKind::plain) {
        model_.readings.push_back({form(name, weights), spread_mm, kind});
    }
    void outcome(const std::string& name, const Weights& weights, Length target, double below_mm,
                 double above_mm) {
        model_.outcomes.push_back({form(name, weights), target.mm(), below_mm, above_mm});
    }
    void either_way(const std::string& name, const Weights& weights, Length target, Length tolerance) {
        outcome(name, weights, target, tolerance.mm(), tolerance.mm());
    }
    Model done() const { return model_; }

private:
    Form form(const std::string& name, const Weights& weights) const {
        Form out{name, std::vector<double>(model_.controls.size(), 0.0), 0.0};
        for (std::size_t i = 0; i < model_.controls.size(); ++i) {
            const auto weight = weights.find(model_.controls[i].name);
            if (weight != weights.end()) out.weights[i] = weight->second;
        }
        return out;
    }
    Model model_;
};

void add_machine_controls(Builder& build, const Group& group) {
    const Settings& set = group.designed;
    const Machine& machine = group.work.chosen.machine;
    const bool stack = group.work.chosen.cutter.kind == CutterKind::dado_stack;
    const bool has_spacer = group.cuts_end || set.spacer > Length{};
    build.control("fence", set.fence, fence_habit, true, machine.fence_step.mm());
    build.control("height", set.height, height_habit, true, machine.height_step.mm());
    if (has_spacer) build.control("spacer", set.spacer, spacer_habit, true, spacer_step_mm);
    build.control("kerf", set.kerf, kerf_habit, stack && group.cuts_slot && set.shift == Length{},
                  shim_step_mm);
    if (set.shift > Length{})
        build.control("shift", set.shift, shift_habit, group.cuts_slot, machine.fence_step.mm());
    build.control("stock", group.work.insert_thickness, stock_habit, false, 0.0);
}

const Weights reach = {{"fence", 1}, {"kerf", 1}, {"spacer", -1}};

Weights plus(Weights sum, const Weights& more, double times = 1.0) {
    for (const auto& [name, weight] : more) sum[name] += times * weight;
    return sum;
}

// Slot and tongue by one height, or the tongue alone with the slot known from its own group.
Model tongue_model(const Group& group, const GroupTolerances& tolerance, const Group* partner) {
    const JointDesign& joint = group.work.chosen.joint;
    Builder build;
    add_machine_controls(build, group);
    Weights slot_width = {{"kerf", 1}, {"shift", 1}};
    Weights slot_depth = {{"height", 1}};
    Weights lip = {{"fence", 1}};
    if (partner) {
        build.known("slot width", partner->stands.kerf + partner->stands.shift, partner_spread_mm);
        build.known("slot depth", partner->stands.height, partner_spread_mm);
        build.known("lip", partner->stands.fence, partner_spread_mm);
        slot_width = {{"slot width", 1}};
        slot_depth = {{"slot depth", 1}};
        lip = {{"lip", 1}};
    }
    const Weights tongue = {{"stock", 1}, {"height", -1}};
    const Weights fit = plus(slot_width, tongue, -1.0);
    const Weights shoulder = plus(reach, slot_depth, -1.0);
    const Weights step = plus(lip, {{"height", -1}});
    build.reading("stock_thickness", {{"stock", 1}});
    build.reading("dado_width", slot_width);
    build.reading("dado_depth", slot_depth);
    build.reading("lip", lip);
    build.reading("tongue_thickness", tongue);
    build.reading("tongue_length", reach);
    build.reading("fit", fit, feeler_mm);
    build.reading("shoulder_gap", shoulder, feeler_mm, ReadingKind::at_least_zero);
    build.reading("face_step", step);
    build.either_way("fit", fit, joint.clearance, tolerance.fit);
    build.outcome("shoulder_gap", shoulder, -joint.end_relief, short_tongue_mm,
                  (joint.end_relief + tolerance.shoulder_gap).mm());
    build.either_way("face_step", step, joint.step, tolerance.step);
    return build.done();
}

Model slot_model(const Group& group, const GroupTolerances& tolerance) {
    const JointDesign& joint = group.work.chosen.joint;
    Builder build;
    add_machine_controls(build, group);
    const Weights width = {{"kerf", 1}, {"shift", 1}};
    const Weights fit = plus(width, {{"stock", -1}});
    build.reading("stock_thickness", {{"stock", 1}});
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
        build.reading("fit", fit, feeler_mm);
        build.either_way("fit", fit, joint.clearance, tolerance.fit);
    }
    build.either_way("depth", {{"height", 1}}, joint.slot().depth, tolerance.depth);
    build.either_way("near", {{"fence", 1}}, joint.slot().near, tolerance.place);
    return build.done();
}

Model open_model(const Group& group, const GroupTolerances& tolerance) {
    const JointDesign& joint = group.work.chosen.joint;
    Builder build;
    add_machine_controls(build, group);
    const Weights step = plus(reach, {{"stock", -1}});
    build.reading("stock_thickness", {{"stock", 1}});
    build.reading("width", reach);
    build.reading("depth", {{"height", 1}});
    build.reading("face_step", step);
    build.either_way("face_step", step, joint.step, tolerance.step);
    build.either_way("depth", {{"height", 1}}, joint.slot().depth, tolerance.depth);
    return build.done();
}

}  // namespace

Model model_of(const Group& group, const GroupTolerances& tolerances, const Group* partner) {
    if (group.cuts_end) return tongue_model(group, tolerances, group.cuts_slot ? nullptr : partner);
    return group.slot_is_open() ? open_model(group, tolerances) : slot_model(group, tolerances);
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

Settings settings_by(const Model& model, const Settings& designed, const Belief& belief) {
    Settings settings = designed;
    const auto take = [&](const char* name, Length& value) {
        if (const auto control = control_named(model, name))
            value = Length::nearest_mm(belief.mean[*control]);
    };
    take("fence", settings.fence);
    take("height", settings.height);
    take("spacer", settings.spacer);
    take("kerf", settings.kerf);
    take("shift", settings.shift);
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
