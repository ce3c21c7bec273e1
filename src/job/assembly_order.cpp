#include "job/assembly_order.h"

#include "job/seasons.h"

namespace kw {
namespace {

class Order {
public:
    Order(const Job& job, const DrawerDesign& drawer, Length diagonal)
        : job_(job), drawer_(drawer), diagonal_(diagonal) {
        const Stock* bottom = job.stock_named(drawer.spec->bottom.stock);
        is_solid_ = bottom && bottom->kind == StockKind::solid;
        if (const auto season = season_of_bottom(job, drawer)) moves_ = season->swells + season->shrinks;
    }

    std::vector<AssemblyStep> steps() {
        dry_fit();
        first_side();
        if (is_captured()) put_bottom_in(between);
        second_side();
        clamp();
        if (!is_captured()) put_bottom_in(from_behind);
        say(Message::say("together.outsides"));
        if (drawer_.spec->face.style != FaceStyle::none)
            say(Message::say("together.hang_face"), {Role::face});
        return steps_;
    }

private:
    bool is_captured() const { return drawer_.spec->bottom.style == BottomStyle::captured; }
    static bool is_open(const JointDesign& joint) { return joint.slot().near == Length{}; }

    void say(Message text, std::vector<Role> puts = {}, std::vector<GlueSpot> glue = {}) {
        steps_.push_back({std::move(text), std::move(puts), std::move(glue)});
    }

    void dry_fit() {
        say(Message::say("together.dry_fit", diagonal_, job_.fit.bottom_slack,
                         job_.fit.bottom_slack + drawer_.seasonal_swell));
        say(Message::say("together.insides"));
    }

    // "the walls of its dado 1/4 wide", "the floor and the shoulder of its rabbet 1/2 wide"
    static Message slot_words(const JointDesign& joint) {
        if (has_fingers(joint)) return Message::say("together.on_fingers");
        return Message::say(is_open(joint)                ? "together.in_rabbet"
                            : joint.end_relief > Length{} ? "together.on_walls"
                                                          : "together.in_dado",
                            joint.slot().width);
    }

    void first_side() {
        const JointDesign &front = drawer_.front.joint, &back = drawer_.back.joint;
        say(Message::say("together.first_side", slot_words(front), slot_words(back),
                         Message::say(is_captured() ? "together.bottom_edges" : "together.top_edges")),
            {Role::side_left, Role::front, Role::back}, {{false, false}, {true, false}});
    }

    void second_side() {
        const bool has_relief =
            drawer_.front.joint.end_relief > Length{} && drawer_.back.joint.end_relief > Length{};
        say(Message::say(has_relief ? "together.second_glue_cheeks" : "together.second_glue"), {},
            {{false, true}, {true, true}});
        say(Message::say("together.second_side"), {Role::side_right});
    }

    void clamp() {
        const bool fingered = has_fingers(drawer_.front.joint) || has_fingers(drawer_.back.joint);
        say(Message::say(fingered ? "together.clamp_fingers" : "together.clamp"));
        if (is_open(drawer_.front.joint) || is_open(drawer_.back.joint)) say(Message::say("together.pin"));
    }

    // What is said of a bottom that doesn't move, of a solid one, and of one that is known to move so far.
    struct BottomWords {
        const char *still, *solid, *moving;
    };
    void put_bottom_in(const BottomWords& words) {
        say(Message::say(!is_solid_          ? words.still
                         : moves_ > Length{} ? words.moving
                                             : words.solid,
                         moves_),
            {Role::bottom});
    }
    static constexpr BottomWords between = {"together.bottom_between_still", "together.bottom_between_solid",
                                            "together.bottom_between_moving"};
    static constexpr BottomWords from_behind = {"together.bottom_from_behind_still",
                                                "together.bottom_from_behind_solid",
                                                "together.bottom_from_behind_moving"};

    const Job& job_;
    const DrawerDesign& drawer_;
    Length diagonal_;
    bool is_solid_ = false;
    Length moves_;  // over the year, where its species is known
    std::vector<AssemblyStep> steps_;
};

}  // namespace

std::vector<AssemblyStep> assembly_order(const Job& job, const DrawerDesign& drawer, Length diagonal) {
    return Order(job, drawer, diagonal).steps();
}

}  // namespace kw
