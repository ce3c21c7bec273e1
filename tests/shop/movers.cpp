#include "shop/movers.h"

#include <algorithm>
#include <cmath>

#include "testcut/chance.h"
#include "testcut/feel.h"
#include "testcut/first_setting.h"
#include "testcut/observe.h"

namespace shop {
namespace {

constexpr int most_cuts = 20;

// What a maker without any tool says of a joint.
std::vector<std::string> words_for(TrueShop& shop, const std::map<std::string, double>& joint) {
    std::vector<std::string> out;
    if (joint.count("fit")) {
        const double fit = shop.judged(joint.at("fit"));
        for (const kw::FeelMeaning& feel : kw::feel_table())
            if (fit >= feel.low_mm && fit < feel.high_mm) out.emplace_back(feel.word);
    }
    for (const char* reading : {"fit", "shoulder_gap", "face_step"}) {
        if (!joint.count(reading)) continue;
        const double value = shop.judged(joint.at(reading));
        for (const kw::Sight& sight : kw::sight_table())
            if (sight.reading == reading && value >= sight.low_mm && value < sight.high_mm)
                out.emplace_back(sight.word);
    }
    return out;
}

// Every control where it really stands, with nothing unknown but what moves add.
kw::Model known_model(const Task& task, const TrueShop& shop, Controls at) {
    kw::Model model = kw::model_of(task.group, task.tolerances, task.partner(), {task.group.designed});
    for (kw::Control& control : model.controls) {
        const std::string& name = control.name;
        control.offset.reset();
        if (name != "other piece") control.spread_mm = 0.0;
        if (name == "fence gain" || name == "pin gain") control.set_mm = shop.gain("fence") - 1.0;
        else if (name == "height gain") control.set_mm = shop.gain("height") - 1.0;
        else if (name == "stock") control.set_mm = shop.batch_mm();
        else if (name == "slot width") control.set_mm = shop.slot().width;
        else if (name == "slot depth") control.set_mm = shop.slot().depth;
        else if (name == "lip") control.set_mm = shop.slot().lip;
        else if (control.movable || name == "kerf") control.set_mm = at.named(name);
        const bool by_hand = name == "spacer" || name == "kerf";
        if (control.movable && !by_hand) control.move_spread_mm = shop.kind().repeats_mm;
        if (control.movable && !by_hand) control.move_gain_spread = shop.kind().wobble;
    }
    return model;
}

class AllKnowing : public Mover {
public:
    AllKnowing(const Task& task, const TrueShop& shop) : task_(task), shop_(shop) {}

    kw::Settings first_setting() override { return task_.group.designed; }

    Decision look(TrueShop&, const std::map<std::string, double>&, bool) override {
        const kw::Model model =
            kw::movable_from(known_model(task_, shop_, shop_.stands()), task_.group, dial_);
        kw::AdviceOptions options;
        options.wanted_chance = task_.wanted_chance;
        const kw::Advice best = kw::advise(model, kw::belief_from_priors(model), options);
        if (best.kind == kw::AdviceKind::lock) return {true, {}, -1.0, -1.0};
        Decision decision;
        for (const kw::Move& move : best.moves)
            decision.moves.emplace_back(model.controls[move.control].name, move.by_mm);
        dial_ = kw::turned(dial_, model, best.moves);
        return decision;
    }

private:
    const Task& task_;
    const TrueShop& shop_;
    kw::Settings dial_ = task_.group.designed;
};

// Mends the first thing that is out, by what was read of it and with the one control that it is known for.
class OneAtATime : public Mover {
public:
    OneAtATime(const Task& task, const TrueShop& shop) : task_(task), reads_(shop.kind().reads) {}

    kw::Settings first_setting() override { return task_.group.designed; }

    Decision look(TrueShop& shop, const std::map<std::string, double>& joint, bool) override {
        for (const Symptom& symptom : symptoms(joint)) {
            const double value = symptom.by_feel && reads_ != Reads::caliper
                                     ? guess(shop, joint, symptom.reading)
                                     : shop.read(joint, symptom.reading);
            const double off = value - symptom.target;
            if (std::abs(off) <= symptom.limit) continue;
            const double by =
                nearest_possible(symptom, std::round(-off * symptom.sign / symptom.step) * symptom.step);
            if (by != 0.0) return {false, {{symptom.control, by}}, -1.0, -1.0};
        }
        return {true, {}, -1.0, -1.0};
    }

private:
    struct Symptom;
    // With the shims that there are; a second pass only outward.
    double nearest_possible(const Symptom& symptom, double by) {
        const kw::Model model = kw::movable_from(
            kw::model_of(task_.group, task_.tolerances, task_.partner(), {task_.group.designed}), task_.group,
            dial_);
        const std::size_t control = *kw::control_named(model, symptom.control);
        const std::vector<double>& amounts = model.controls[control].amounts_mm;
        by = std::max(by, model.controls[control].least_mm);
        if (!amounts.empty())
            by = *std::min_element(amounts.begin(), amounts.end(),
                                   [&](double a, double b) { return std::abs(a - by) < std::abs(b - by); });
        dial_ = kw::turned(dial_, model, {{control, by}});
        return by;
    }

    struct Symptom {
        const char* reading;
        const char* control;
        double sign;  // of what a mm of the control does to the reading
        double target, limit, step;
        bool by_feel;
    };

    std::vector<Symptom> symptoms(const std::map<std::string, double>& joint) const {
        const kw::JointDesign& asked = task_.group.work.chosen.joint;
        const Limits limit = task_.limits();
        const bool stack = task_.group.designed.shift == kw::Length{} &&
                           task_.group.work.chosen.cutter.kind == kw::CutterKind::dado_stack;
        std::vector<Symptom> all;
        if (task_.group.cuts_end) {
            all.push_back({"fit", "height", 1, asked.clearance.mm(), limit.fit, 0.05, true});
            if (task_.group.cuts_slot && asked.step_is_place)
                all.push_back({"lip", "fence", 1, asked.slot().near.mm(), limit.place, 0.05, false});
            else if (task_.group.cuts_slot)
                all.push_back({"face_step", "fence", 1, asked.step.mm(), limit.step, 0.05, true});
            all.push_back({"shoulder_gap", "spacer", -1, 0.0, limit.shoulder_gap, 0.05, true});
            return all;
        }
        if (joint.count("fit"))
            all.push_back({"fit", stack ? "kerf" : "shift", 1, asked.clearance.mm(), limit.fit, 0.05, true});
        if (joint.count("face_step"))
            all.push_back({"face_step", "fence", 1, asked.step.mm(), limit.step, 0.05, true});
        if (joint.count("dado_width"))
            all.push_back(
                {"width", stack ? "kerf" : "shift", 1, asked.slot().width.mm(), 2 * limit.fit, 0.05, false});
        all.push_back({"depth", "height", 1, asked.slot().depth.mm(), limit.depth, 0.05, false});
        if (!task_.group.slot_is_open())
            all.push_back({"near", "fence", 1, asked.slot().near.mm(), limit.place, 0.05, false});
        return all;
    }

    // The middle of what the word means; at the open ends, a little beyond the edge.
    static double guess(TrueShop& shop, const std::map<std::string, double>& joint,
                        const std::string& reading) {
        constexpr double beyond_mm = 0.15;
        const auto middle = [](double low, double high) {
            if (std::isinf(low)) return high - beyond_mm;
            if (std::isinf(high)) return low + beyond_mm;
            return 0.5 * (low + high);
        };
        for (const std::string& word : words_for(shop, joint)) {
            const kw::Sight* sight = kw::sight_of_word(word);
            if (sight && sight->reading == reading && reading != "fit") {
                if (word == "shoulder closed") return 0.0;
                return middle(sight->low_mm, sight->high_mm);
            }
            if (const auto feel = kw::feel_of_word(word); feel && reading == "fit")
                return middle(kw::meaning(*feel).low_mm, kw::meaning(*feel).high_mm);
        }
        return 0.0;
    }

    const Task& task_;
    Reads reads_;
    kw::Settings dial_ = task_.group.designed;
};

class ByTheProgram : public Mover {
public:
    ByTheProgram(const Task& task, const TrueShop& shop, const kw::Start& start)
        : task_(task),
          reads_(shop.kind().reads),
          start_(with_tool(start, shop.kind().reads)),
          model_(kw::model_of(task.group, task.tolerances, task.partner(), start_)),
          belief_(kw::belief_from_priors(model_)) {}

    kw::Settings first_setting() override { return start_.dial; }
    std::vector<kw::Lesson> lessons() const override { return kw::lessons_of(task_.group, model_, belief_); }

    Decision look(TrueShop& shop, const std::map<std::string, double>& joint, bool fresh_ends) override {
        belief_ = kw::predict_moves(model_, belief_, moves_);
        moves_.clear();
        if (fresh_ends) belief_ = kw::predict_fresh_ends(model_, belief_);
        kw::AdviceOptions options;
        options.wanted_chance = task_.wanted_chance;
        std::vector<kw::Observation> seen;
        if (reads_ != Reads::caliper) seen = words(shop, joint);
        for (const kw::Reading& reading : model_.readings) {
            if (!can_read(reading)) {
                options.already_read.insert(options.already_read.end(), std::size_t(options.most_times),
                                            reading.form.name);
                continue;
            }
            seen.push_back(kw::taken(reading, shop.read(joint, reading.form.name)));
            options.already_read.push_back(reading.form.name);
        }
        belief_ = kw::observe_all(belief_, seen);
        kw::Advice advice = kw::advise(model_, belief_, options);
        Decision decision;
        for (; advice.kind == kw::AdviceKind::measure; advice = kw::advise(model_, belief_, options)) {
            ++decision.asked;
            const kw::Reading& reading = *kw::reading_named(model_, advice.reading);
            belief_ = kw::observe_all(belief_, {kw::taken(reading, shop.read(joint, advice.reading))});
            options.already_read.push_back(advice.reading);
        }
        decision.chance = advice.chance_in_tolerance;
        decision.chance_after = advice.chance_after_move;
        decision.lock = advice.kind == kw::AdviceKind::lock;
        moves_ = advice.moves;
        dial_ = kw::turned(dial_, model_, moves_);
        model_ = kw::movable_from(std::move(model_), task_.group, dial_);
        for (const kw::Move& move : moves_)
            decision.moves.emplace_back(model_.controls[move.control].name, move.by_mm);
        return decision;
    }

private:
    static kw::Start with_tool(kw::Start start, Reads reads) {
        start.tool = reads == Reads::caliper ? kw::Tool::caliper : kw::Tool::rule;
        return start;
    }

    // By feel alone, a rule is taken only for what no hand can feel: how deep a slot is, and where it lies.
    bool can_read(const kw::Reading& reading) const {
        return reads_ != Reads::feel || reading.form.name == "depth" || reading.form.name == "near" ||
               reading.form.name == "width" ||
               (reading.form.name == "lip" && task_.group.work.chosen.joint.step_is_place);
    }

    std::vector<kw::Observation> words(TrueShop& shop, const std::map<std::string, double>& joint) {
        std::vector<kw::Observation> out;
        for (const std::string& word : words_for(shop, joint)) {
            if (const auto feel = kw::feel_of_word(word))
                out.push_back(kw::felt(kw::reading_named(model_, "fit")->form, *feel));
            else if (const kw::Sight* sight = kw::sight_of_word(word))
                out.push_back(kw::seen(kw::reading_named(model_, sight->reading)->form, *sight));
        }
        return out;
    }

    const Task& task_;
    Reads reads_;
    kw::Start start_;
    kw::Settings dial_ = start_.dial;
    kw::Model model_;
    kw::Belief belief_;
    std::vector<kw::Move> moves_;
};

}  // namespace

Limits Task::limits() const {
    return {tolerances.fit.mm(), tolerances.shoulder_gap.mm(), tolerances.step.mm(), tolerances.depth.mm(),
            tolerances.place.mm()};
}

kw::Settings all_knowing_dial(const Task& task, const TrueShop& shop) {
    const kw::Settings& designed = task.group.designed;
    Controls at{designed.fence.mm(), designed.height.mm(), designed.spacer.mm(), designed.kerf.mm(),
                designed.shift.mm()};
    for (const char* control : {"fence", "height", "kerf"}) at.named(control) += shop.offset(control);
    if (designed.spacer > kw::Length{}) at.spacer += shop.offset("spacer");
    at.shift *= shop.gain("shift");
    kw::Model model = known_model(task, shop, at);
    for (kw::Control& control : model.controls)
        if (control.name == "fence" || control.name == "height") control.spread_mm = shop.kind().repeats_mm;
    return kw::first_dial(model, designed);
}

std::unique_ptr<Mover> all_knowing(const Task& task, const TrueShop& shop) {
    return std::make_unique<AllKnowing>(task, shop);
}
std::unique_ptr<Mover> one_at_a_time(const Task& task, const TrueShop& shop) {
    return std::make_unique<OneAtATime>(task, shop);
}
std::unique_ptr<Mover> by_the_program(const Task& task, const TrueShop& shop, const kw::Start& start) {
    return std::make_unique<ByTheProgram>(task, shop, start);
}

Played play(const Task& task, TrueShop& shop, Mover& mover, std::vector<Said>* now,
            std::vector<Said>* after) {
    Played played;
    shop.set(mover.first_setting());
    bool fresh = true;
    // What is sawn off to have fresh ends: as far as the cut reaches, and the saw's own kerf.
    const auto cut_off = [&] {
        constexpr double trim_mm = 3.0;
        const Controls& at = shop.stands();
        const double slot = at.fence + at.shift + at.kerf, end = at.fence - at.spacer + at.kerf;
        const bool closed = task.group.cuts_slot && !task.group.slot_is_open();
        return (closed ? slot + trim_mm : 0.0) +
               (task.group.cuts_end || task.group.slot_is_open() ? end + trim_mm : 0.0);
    };
    const auto good = [&](double thickness) {
        return is_good(task.group, task.limits(),
                       joint_as_cut(task.group, shop.stands(), shop.slot(), thickness));
    };
    while (played.cuts < most_cuts) {
        ++played.cuts;
        if (fresh) {
            ++played.fresh_ends;
            played.wood_mm += cut_off();
        }
        if (played.cuts == 1) played.first_fits = good(shop.batch_mm());
        const Decision decision =
            mover.look(shop, joint_as_cut(task.group, shop.stands(), shop.slot(), shop.piece_mm()), fresh);
        played.asked += decision.asked;
        if (now && decision.chance >= 0.0) now->push_back({decision.chance, good(shop.other_piece())});
        const Controls before = shop.stands();
        for (const auto& [control, by_mm] : decision.moves) shop.move(control, by_mm);
        if (decision.lock) {
            // The first part is run. A bad one is a cut for nothing, and then the maker knows.
            played.bad_lock = !good(shop.other_piece());
            if (played.bad_lock) ++played.cuts;
            return played;
        }
        if (after && decision.chance_after >= 0.0)
            after->push_back({decision.chance_after, good(shop.other_piece())});
        fresh = !takes_all(task.group, before, shop.stands());
        if (fresh) shop.take_fresh_ends();
    }
    return played;
}

}  // namespace shop
