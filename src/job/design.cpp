#include "job/design.h"

#include <algorithm>

#include "job/bank_checks.h"
#include "job/drawer_checks.h"
#include "job/drawer_groups.h"
#include "job/finger_notes.h"
#include "job/opening_field.h"
#include "job/seasons.h"
#include "job/unit_doubt.h"
#include "job/work_order.h"
#include "setup/make_up.h"

namespace kw {
namespace {

// A slide that is longer than its room by no more than this is told of (common practice, no source).
constexpr Length just_missed = Length::inches(1, 8);

struct Boards {
    const Stock* sides = nullptr;
    const Stock* front = nullptr;
    const Stock* back = nullptr;
    const Stock* bottom = nullptr;
    const Stock* face = nullptr;
};

// Another way to cut the same joint: no part would be of another size. A blade leaves a ragged floor: where it is not the usual way,
// it is none (common practice, no source).
bool could_as_well(const ChosenJoint& way, const ChosenJoint& usual) {
    if (way.cutter.kind == CutterKind::blade || way.joint.reach != usual.joint.reach) return false;
    if (way.joint.kind != usual.joint.kind) return way.joint.step == usual.joint.step;
    if (way.joint.cuts.size() != usual.joint.cuts.size()) return false;
    for (std::size_t i = 0; i < usual.joint.cuts.size(); ++i) {
        const Cut &a = way.joint.cuts[i], &b = usual.joint.cuts[i];
        if (a.near != b.near || a.depth != b.depth || abs(a.width - b.width) > make_up_tolerance)
            return false;
    }
    return true;
}

// Everything known while one drawer is designed; problems are gathered, so that the maker sees all of them at once.
class DrawerDesigner {
public:
    DrawerDesigner(const Job& job, const Shop& shop, std::size_t index, const Picks& picks,
                   std::vector<std::string>& cutters_in_use, Design& design, std::vector<Problem>& problems)
        : job_(job),
          shop_(shop),
          spec_(job.drawers[index]),
          at_("/drawers/" + std::to_string(index)),
          picks_(picks),
          cutters_in_use_(cutters_in_use),
          alternatives_(design.alternatives),
          left_out_(design.left_out),
          problems_(problems),
          notes_(design.notes) {}

    std::optional<DrawerDesign> run() {
        if (!find_boards() || !size_the_box()) return std::nullopt;
        const bool front = choose_front();
        const bool back = front && choose_back();
        const bool bottom = choose_bottom();
        if (!front || !back || !bottom) return std::nullopt;
        allow_for_the_season();
        for (Note& note : notes_on(made_)) notes_.push_back(std::move(note));
        for (Note& note : finger_notes(job_, made_)) notes_.push_back(std::move(note));
        for (Note& note : season_notes(job_, made_)) notes_.push_back(std::move(note));
        for (Problem& problem : check_drawer(made_, at_)) problems_.push_back(std::move(problem));
        for (Problem& problem : check_seasons(job_, made_, at_)) problems_.push_back(std::move(problem));
        return made_;
    }

private:
    bool find_boards() {
        boards_ = {find("/sides/stock", spec_.side_stock), find("/front/stock", spec_.front.stock),
                   find("/back/stock", spec_.back.stock), find("/bottom/stock", spec_.bottom.stock), nullptr};
        if (!spec_.face.stock.empty()) {
            boards_.face = find("/face/stock", spec_.face.stock);
            if (!boards_.face) return false;
        }
        if (!boards_.sides || !boards_.front || !boards_.back || !boards_.bottom) return false;
        made_.spec = &spec_;
        made_.thickness = {boards_.sides->thickness, boards_.front->thickness, boards_.back->thickness,
                           boards_.bottom->thickness};
        return true;
    }

    const Stock* find(const std::string& field, const std::string& name) {
        const Stock* stock = job_.stock_named(name);
        if (!stock)
            blame(field, {"",
                          name.empty() ? Message::say("job.no_stock_here")
                                       : Message::say("job.no_stock_named", name),
                          Message::say("job.name_one_of_stock")});
        return stock;
    }

    bool size_the_box() {
        if (spec_.box) {
            made_.box = *spec_.box;
            return true;
        }
        Length face_in_depth;
        if (spec_.face.style == FaceStyle::inset) {
            if (!boards_.face) {
                blame("/face/stock",
                      {"", Message::say("job.inset_takes_depth"), Message::say("job.say_face_stock")});
                return false;
            }
            face_in_depth = boards_.face->thickness;
        }
        const auto box = size_box(*spec_.opening, spec_.slide, boards_.sides->thickness, face_in_depth);
        if (!box) {
            const std::string& field = box.error().field;
            blame(field == "lengths" ? "/slide/lengths" : size_field(spec_, field),
                  {"", box.error().why, box.error().remedy});
            return false;
        }
        made_.box = *box;
        note_slide_just_missed(spec_.opening->depth - face_in_depth - spec_.slide.back);
        return true;
    }

    // The maker may rather plane that off somewhere.
    void note_slide_just_missed(Length room) {
        for (const Length length : spec_.slide.lengths)
            if (length > room && length - room <= just_missed)
                notes_.push_back(
                    {Level::note, spec_.name, Message::say("job.slide_just_missed", length, length - room)});
    }

    JointAsk ask_for(Length insert_thickness) const {
        JointAsk ask;
        ask.receiver_thickness = made_.thickness.sides;
        ask.insert_thickness = insert_thickness;
        ask.clearance = job_.fit.clearance;
        ask.end_relief = job_.fit.end_relief;
        ask.height = made_.box.height;
        return ask;
    }

    bool choose_front() {
        JointAsk ask = ask_for(made_.thickness.front);
        ask.step = job_.fit.step;
        ask.depth = spec_.front.depth;
        ask.slot_width = spec_.front.dado_width;
        return choose("/front/", Place::front, spec_.front.joint, spec_.front.cutter, ask, 4, made_.front);
    }

    bool choose_back() {
        JointAsk ask = ask_for(made_.thickness.back);
        const JointType* type = find_joint_type(spec_.back.joint, Place::back);
        if (type && type->runs_up && spec_.bottom.style != BottomStyle::captured) {
            blame("/bottom/style", {"", Message::say("job.fingers_above_bottom"),
                                    Message::say("job.write", in_quotes("captured"))});
            return false;
        }
        ask.near = type && type->at_the_end ? Length{} : spec_.back.setback;
        // Fingers stand proud at all corners, to be planed off together.
        if (type && type->runs_up) ask.step = job_.fit.step;
        ask.slot_width = spec_.back.dado_width;
        // Fingers go right through: no dado is as deep.
        made_.back_follows_front =
            !spec_.back.depth && type && type->depth_follows && !has_fingers(made_.front.joint);
        const Length relief = type && type->has_relief ? ask.end_relief : Length{};
        ask.depth = made_.back_follows_front ? made_.front.joint.reach + relief : spec_.back.depth;
        return choose("/back/", Place::back, spec_.back.joint, spec_.back.cutter, ask, 2, made_.back);
    }

    bool choose_bottom() {
        const bool captured = spec_.bottom.style == BottomStyle::captured;
        JointAsk ask = ask_for(made_.thickness.bottom);
        ask.receiver_thickness = min(made_.thickness.sides, made_.thickness.front);
        if (captured) ask.receiver_thickness = min(ask.receiver_thickness, made_.thickness.back);
        ask.clearance = job_.fit.groove_clearance;
        ask.near = spec_.bottom.offset;
        ask.depth =
            spec_.bottom.depth ? spec_.bottom.depth : usual_groove_depth(ask.receiver_thickness, captured);
        return choose("/bottom/", Place::bottom, spec_.bottom.joint, spec_.bottom.cutter, ask,
                      captured ? 4 : 3, made_.bottom);
    }

    // A solid bottom's grain runs from side to side, so it grows and shrinks from front to back. It is made narrow enough for the
    // dampest month; in the driest it must still be held.
    void allow_for_the_season() {
        const Stock& stock = *boards_.bottom;
        if (stock.kind != StockKind::solid) return;
        const auto season = season_of_bottom(job_, made_);
        if (!season) {
            notes_.push_back({Level::warning, spec_.name,
                              stock.species ? Message::say("job.species_unknown", *stock.species)
                                            : Message::say("job.species_missing")});
            return;
        }
        made_.seasonal_swell = season->swells;
        const Length shrink = season->shrinks;
        const Length held =
            2 * made_.bottom.joint.slot().depth - job_.fit.bottom_slack - made_.seasonal_swell - shrink;
        if (spec_.bottom.style == BottomStyle::captured && held < 2 * least_tongue)
            notes_.push_back({Level::warning, spec_.name,
                              Message::say("job.bottom_moves_in_grooves", made_.seasonal_swell + shrink,
                                           max(held, Length{}).scaled(1, 2))});
        if (spec_.bottom.style == BottomStyle::slide_in && made_.seasonal_swell + shrink > Length{})
            notes_.push_back({Level::note, spec_.name,
                              Message::say("job.fix_bottom_at_front", made_.seasonal_swell + shrink)});
    }

    bool choose(const std::string& field, Place place, const std::string& joint_name,
                const std::string& cutter, const JointAsk& ask, int ends, ChosenJoint& chosen) {
        const JointType* type = find_joint_type(joint_name, place);
        if (!type) {
            blame(field + "joint", {"", Message::say("job.no_joint_here", joint_name),
                                    Message::say("job.write", joint_names_for(place))});
            return false;
        }
        const auto ways_of = [&](const JointType& kind) {
            const CutterAsk of{cutter, cutters_in_use_, ends * spec_.count, made_.box.height};
            return ways_to_cut(shop_, of, [&](Length kerf) {
                JointAsk with_kerf = ask;
                with_kerf.kerf = kerf;
                if (kind.width_from_cutter && !ask.slot_width) with_kerf.slot_width = usual_width(ask, kerf);
                return kind.design(with_kerf);
            });
        };
        auto ways = ways_of(*type);
        if (!ways) {
            blame(field, ways.error());
            return false;
        }
        chosen = ways->all[ways->usual];
        // Whatever is picked in the end: what is usual for one joint does not hang on what was picked for another.
        cutters_in_use_.push_back(chosen.cutter.name);
        std::vector<ChosenJoint> all = std::move(ways->all);
        if (!cutter.empty()) all = {chosen};
        // Not where the bottom's groove would cross the tongue.
        const JointType* other = find_joint_type(type->or_else, place);
        if (other && spec_.bottom.style == BottomStyle::slide_in)
            if (auto others = ways_of(*other))
                for (ChosenJoint& way : others->all) all.push_back(std::move(way));
        pick(place, all, chosen);
        for (const Message& remark : chosen.joint.remarks)
            notes_.push_back({Level::warning, spec_.name, remark});
        return true;
    }

    // Among all ways, the usual one and those that could stand for it.
    void pick(Place place, const std::vector<ChosenJoint>& all, ChosenJoint& chosen) {
        Alternative alternative{{}, label_of(place, chosen.joint), {}, {}, {}, 0};
        JointWork work;
        work.insert_thickness = place == Place::front  ? made_.thickness.front
                                : place == Place::back ? made_.thickness.back
                                                       : made_.thickness.bottom;
        work.guide = guide_for(place, chosen.joint);
        const auto is_usual = [&](const ChosenJoint& way) {
            return way.joint.kind == chosen.joint.kind && way.cutter == chosen.cutter;
        };
        for (const ChosenJoint& way : all) {
            if (is_usual(way)) alternative.picked = alternative.ways.size();
            else if (!could_as_well(way, chosen)) {
                if (way.cutter.kind != CutterKind::blade) leave_out(alternative.label, way);
                continue;
            }
            work.chosen = way;
            alternative.keys.push_back(keys_of(work));
            alternative.id += alternative.keys.back().slot + " & " + alternative.keys.back().end + " | ";
            alternative.ways.push_back(way);
        }
        if (alternative.ways.size() < 2) return;
        if (const auto wanted = picks_.find(alternative.id); wanted != picks_.end())
            alternative.picked = wanted->second;
        chosen = alternative.ways[alternative.picked];
        const auto known = std::find_if(alternatives_.begin(), alternatives_.end(),
                                        [&](const Alternative& one) { return one.id == alternative.id; });
        Alternative& its =
            known == alternatives_.end() ? alternatives_.emplace_back(std::move(alternative)) : *known;
        if (its.drawers.empty() || its.drawers.back() != spec_.name) its.drawers.push_back(spec_.name);
    }

    void leave_out(const std::string& label, const ChosenJoint& way) {
        const auto known = std::find_if(left_out_.begin(), left_out_.end(), [&](const LeftOut& one) {
            return one.label == label && one.way.joint.kind == way.joint.kind &&
                   one.way.cutter == way.cutter &&
                   passes_for(one.way.joint.slot().width, way.cutter.kerf) ==
                       passes_for(way.joint.slot().width, way.cutter.kerf);
        });
        LeftOut& its = known == left_out_.end() ? left_out_.emplace_back(LeftOut{label, {}, way}) : *known;
        if (its.drawers.empty() || its.drawers.back() != spec_.name) its.drawers.push_back(spec_.name);
    }

    // A quarter inch, but no more than half of the thinnest board, and not through a tongue that crosses the groove.
    Length usual_groove_depth(Length thinnest, bool captured) const {
        Length depth = min(Length::inches(1, 4), thinnest.scaled(1, 2));
        for (const ChosenJoint* chosen : {&made_.front, &made_.back}) {
            const bool is_grooved = chosen == &made_.front || captured;
            if (!is_grooved || chosen->joint.cuts.empty() || !has_tongue(chosen->joint)) continue;
            const Length tongue = tongue_of(chosen->joint);
            if (depth > tongue + groove_past_tongue) depth = tongue;
        }
        return depth;
    }

    // The cutter's own width where that leaves tongue and lip each a third of the board, and the tongue at least as thick as
    // the groove is deep; else half of the board, or what the groove asks.
    Length usual_width(const JointAsk& ask, Length kerf) const {
        const Length third = ask.insert_thickness.scaled(1, 3);
        const Length for_groove = spec_.bottom.depth ? *spec_.bottom.depth + ask.clearance : Length{};
        if (kerf >= max(third, for_groove - groove_past_tongue) && kerf <= ask.insert_thickness - third)
            return kerf;
        return max(ask.insert_thickness.scaled(1, 2), for_groove);
    }

    // `field` ends in a slash where the refusal names the field itself.
    void blame(const std::string& field, const Refusal& refusal) {
        problems_.push_back({at_ + field + refusal.field, refusal.why, refusal.remedy});
    }

    const Job& job_;
    const Shop& shop_;
    const DrawerSpec& spec_;
    std::string at_;
    const Picks& picks_;
    std::vector<std::string>& cutters_in_use_;
    std::vector<Alternative>& alternatives_;
    std::vector<LeftOut>& left_out_;
    std::vector<Problem>& problems_;
    std::vector<Note>& notes_;
    Boards boards_;
    DrawerDesign made_;
};

// A cutter on no machine is a slip of the pen that would only show as a joint made with some other cutter.
void check_machines(const Shop& shop, std::vector<Problem>& problems) {
    for (std::size_t i = 0; i < shop.cutters.size(); ++i) {
        const Cutter& cutter = shop.cutters[i];
        if (shop.machine_of(cutter)) continue;
        problems.push_back({"/cutters/" + std::to_string(i) + "/machine",
                            Message::say("job.no_machine_for_cutter", cutter.machine, cutter.name),
                            Message::say("job.name_one_of_machines")});
    }
}

}  // namespace

const Group* Design::group_with_key(const std::string& key) const {
    const auto found =
        std::find_if(groups.begin(), groups.end(), [&](const Group& group) { return group.key == key; });
    return found == groups.end() ? nullptr : &*found;
}

std::string part_id(const DrawerSpec& drawer, int copy, Role role) {
    return drawer.name + "." + std::to_string(copy) + "." + std::string(name_of(role));
}

bool has_part(const Design& design, std::string_view id) {
    for (const DrawerDesign& drawer : design.drawers) {
        const std::string& name = drawer.spec->name;
        if (id.substr(0, name.size()) != name) continue;
        for (int copy = 1; copy <= drawer.spec->count; ++copy)
            for (const Role role :
                 {Role::front, Role::back, Role::side_left, Role::side_right, Role::bottom, Role::face})
                if (part_id(*drawer.spec, copy, role) == id) return true;
    }
    return false;
}

tl::expected<Design, std::vector<Problem>> design(const Job& job, const Picks& picks) {
    std::vector<Problem> problems;
    Design made;
    const Shop shop = with_implied_blades(job.shop);
    check_machines(job.shop, problems);
    std::vector<std::string> cutters_in_use;
    for (std::size_t i = 0; i < job.drawers.size(); ++i) {
        const std::size_t so_far = problems.size();
        DrawerDesigner designer(job, shop, i, picks, cutters_in_use, made, problems);
        if (auto drawer = designer.run()) made.drawers.push_back(std::move(*drawer));
        ask_about_units(job, i, so_far, problems);
    }
    for (std::size_t i = 0; i < job.banks.size(); ++i)
        for (Problem& problem : check_bank(job, made.drawers, job.banks[i], "/banks/" + std::to_string(i)))
            problems.push_back(std::move(problem));
    if (!problems.empty()) return tl::unexpected(std::move(problems));
    for (const BankSpec& bank : job.banks)
        for (Note& note : notes_on(job, made.drawers, bank)) made.notes.push_back(std::move(note));
    ask_about_units(job, made.notes);
    std::vector<Group> groups;
    for (DrawerDesign& drawer : made.drawers) add_all_groups(job, drawer, groups);
    made.groups = merge_groups(groups);
    lead_rows(made.groups, keys_begun(job.log));
    return made;
}

}  // namespace kw
