#include "checker/naive_plan.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

#include "checker/asked.h"
#include "checker/naive_setups.h"
#include "checker/written_length.h"

namespace checker {
namespace {

// All sizes of one drawer, by the formulas of the trade. mm.
struct Sizes {
    double width = 0, height = 0, depth = 0;
    double groove_near = 0, groove_width = 0, groove_depth = 0;
    double dado_width = 0, front_depth = 0, rabbet_depth = 0;
    double back_depth = 0, setback = 0;
};

class NaivePlanner {
public:
    NaivePlanner(const Json& job, NaiveWays ways) : job_(job), asked_(read_asked(job)), ways_(ways) {}

    Json plan() {
        plan_ = {{"format", "kerfwright-plan"}, {"version", 1}, {"job", job_.value("name", "")}};
        plan_["boxes"] = Json::array();
        plan_["parts"] = Json::array();
        for (const AskedDrawer& drawer : asked_.drawers) drawer_plan(drawer);
        setups_.write(plan_);
        plan_["seconds"] = 1000;
        plan_["lower_bound_seconds"] = 500;
        plan_["proved"] = false;
        plan_["notes"] = Json::array();
        return plan_;
    }

private:
    // ---- cutters

    bool fits_arbor(const AskedCutter& cutter) const {
        const AskedMachine* machine = find_named(asked_.machines, cutter.machine);
        return machine != nullptr && machine->kind != "miter saw" &&
               cutter.kerf_mm.value() <= machine->max_dado_width_mm.value_or(1000) + 1e-9;
    }

    // The named cutter, else the widest that is no wider than the cut.
    const AskedCutter& cutter_for(const std::string& named, double width) const {
        const AskedCutter* best = named.empty() ? nullptr : find_named(asked_.cutters, named);
        if (best != nullptr) return *best;
        for (const AskedCutter& cutter : asked_.cutters) {
            if (!fits_arbor(cutter) || *cutter.kerf_mm > width + 1e-7) continue;
            if (best == nullptr || *cutter.kerf_mm > *best->kerf_mm) best = &cutter;
        }
        if (best == nullptr) throw std::runtime_error("no cutter is narrow enough");
        return *best;
    }

    // At an end a cutter may be wider than the cut, and runs in the spacer.
    const AskedCutter& cutter_at_end(const std::string& named, double width) const {
        return cutter_for(named, std::max(width, 5.0));
    }

    // For two fingers and two sockets at least.
    const AskedCutter& cutter_for_fingers(const AskedDrawer& drawer) const {
        return cutter_for(drawer.front.cutter, drawer.height_mm.high / 4);
    }

    const AskedCutter& blade() const {
        for (const AskedCutter& cutter : asked_.cutters) {
            const AskedMachine* machine = find_named(asked_.machines, cutter.machine);
            if (cutter.kind == "blade" && machine != nullptr && machine->kind == "table saw") return cutter;
        }
        throw std::runtime_error("no blade rips");
    }

    // Empty where the job doesn't say: a miter saw has one all the same.
    std::string blade_on(const std::string& machine) const {
        for (const AskedCutter& cutter : asked_.cutters)
            if (cutter.kind == "blade" && cutter.machine == machine) return cutter.name;
        return "";
    }

    // ---- sizes

    double groove_depth(const AskedDrawer& drawer) const {
        double thinnest = std::min(drawer.sides.thickness_mm, drawer.front.board.thickness_mm);
        if (drawer.captured) thinnest = std::min(thinnest, drawer.back.board.thickness_mm);
        return drawer.bottom.depth_mm.value_or(std::min(thinnest / 3, 6.0));
    }

    // A dado in one pass if that leaves a tongue worth having, else about half the board.
    double dado_width(const AskedPart& tongued, double groove) const {
        if (tongued.dado_width_mm) return *tongued.dado_width_mm;
        const double thickness = tongued.board.thickness_mm;
        const AskedCutter& widest = cutter_for(tongued.cutter, 0.62 * thickness);
        const double kerf = *widest.kerf_mm;
        if (kerf >= 0.34 * thickness && kerf - asked_.fit.clearance_mm > groove + 0.4) return kerf;
        return thickness / 2 + asked_.fit.clearance_mm;
    }

    Sizes sizes(const AskedDrawer& drawer) const {
        Sizes s;
        s.width = drawer.width_mm.high;
        s.height = drawer.height_mm.high;
        s.depth = drawer.depth_mm.high;
        s.groove_near = drawer.bottom.offset_mm.value_or(10);
        s.groove_width = drawer.bottom.board.thickness_mm + asked_.fit.groove_clearance_mm;
        s.groove_depth = groove_depth(drawer);
        const double side = drawer.sides.thickness_mm;
        if (drawer.front.joint == "locking rabbet") {
            s.dado_width = dado_width(drawer.front, s.groove_depth);
            s.rabbet_depth = drawer.front.board.thickness_mm - s.dado_width + asked_.fit.clearance_mm;
            const bool one_height = s.rabbet_depth <= side * 2 / 3;
            s.front_depth = drawer.front.depth_mm.value_or(one_height ? s.rabbet_depth : side / 2);
        } else {
            s.front_depth = drawer.front.depth_mm.value_or(side / 2);
            const double front = drawer.front.board.thickness_mm;
            s.rabbet_depth = std::abs(front - side) < 1e-9 ? s.front_depth : front / 2;  // of a half lap
        }
        s.back_depth = drawer.back.depth_mm.value_or(std::min(s.front_depth, side / 2));
        const double back = drawer.back.board.thickness_mm;
        if (drawer.back.joint == "rabbet") s.setback = 0;
        else if (drawer.back.joint == "box joint") s.setback = asked_.fit.step_mm;
        else s.setback = drawer.back.setback_mm.value_or(std::max(inch_mm, back));
        return s;
    }

    // ---- parts

    void part(const AskedDrawer& drawer, int copy, const char* role, double length, double width,
              const AskedBoard& board) {
        plan_["parts"].push_back({{"id", id(drawer, copy, role)},
                                  {"drawer", drawer.name},
                                  {"copy", copy},
                                  {"role", role},
                                  {"length_mm", six_decimals(length)},
                                  {"width_mm", six_decimals(width)},
                                  {"thickness_mm", six_decimals(board.thickness_mm)},
                                  {"stock", board.stock}});
    }

    static std::string id(const AskedDrawer& drawer, int copy, const std::string& role) {
        return drawer.name + "." + std::to_string(copy) + "." + role;
    }

    void drawer_plan(const AskedDrawer& drawer) {
        const Sizes s = sizes(drawer);
        plan_["boxes"].push_back({{"drawer", drawer.name},
                                  {"width_mm", six_decimals(s.width)},
                                  {"height_mm", six_decimals(s.height)},
                                  {"depth_mm", six_decimals(s.depth)}});
        for (int copy = 1; copy <= drawer.count; ++copy) {
            sides(drawer, copy, s);
            front(drawer, copy, s);
            back(drawer, copy, s);
            bottom(drawer, copy, s);
            const AskedFace& face = drawer.face;
            if (face.board && face.across_mm)
                part(drawer, copy, "face", *face.across_mm, *face.high_mm, *face.board);
        }
    }

    void cut_to_size(NaiveSetups::Stage rip, NaiveSetups::Stage crosscut, const std::string& name,
                     double length, double width, const char* end) {
        setups_.rip(rip, name, width, blade());
        for (const AskedMachine& machine : asked_.machines) {
            if (machine.kind != "miter saw") continue;
            setups_.crosscut(crosscut, name, length, end, machine.name, blade_on(machine.name));
            return;
        }
        setups_.crosscut(crosscut, name, length, end, blade().machine, blade().name);
    }

    void groove(const AskedDrawer& drawer, const std::string& name, const Sizes& s) {
        setups_.add(
            NaiveSetups::grooves, "rip fence",
            {name, "bottom edge", "inside", s.groove_near, s.groove_near + s.groove_width, s.groove_depth},
            cutter_for(drawer.bottom.cutter, s.groove_width));
    }

    void sides(const AskedDrawer& drawer, int copy, const Sizes& s) {
        for (const char* role : {"side_left", "side_right"}) {
            const std::string name = id(drawer, copy, role);
            part(drawer, copy, role, s.depth, s.height, drawer.sides);
            cut_to_size(NaiveSetups::rips, NaiveSetups::side_lengths, name, s.depth, s.height, "front end");
            front_joint_in_side(drawer, name, s);
            back_joint_in_side(drawer, name, s);
            groove(drawer, name, s);
        }
    }

    void in_side(const std::string& name, const char* end, double from, double to, double height,
                 const AskedCutter& cutter) {
        setups_.add(NaiveSetups::side_joints, "miter gauge", {name, end, "inside", from, to, height}, cutter);
    }

    // The sides begin with a finger at the bottom edge, front and back with a socket.
    void fingers(const AskedDrawer& drawer, const std::string& name, const char* end, double depth) {
        const AskedCutter& cutter = cutter_for_fingers(drawer);
        const double finger = *cutter.kerf_mm - asked_.fit.clearance_mm;
        const std::string at = end;
        const bool in_side = at == "front end" || at == "rear end";
        setups_.row(in_side ? NaiveSetups::side_joints : NaiveSetups::end_joints,
                    {name, at, "", in_side ? finger : 0, 0, depth}, finger, drawer.height_mm.high, cutter);
    }

    void front_joint_in_side(const AskedDrawer& drawer, const std::string& name, const Sizes& s) {
        const double step = asked_.fit.step_mm;
        if (drawer.front.joint == "box joint") {
            fingers(drawer, name, "front end", drawer.front.board.thickness_mm + step);
            return;
        }
        if (drawer.front.joint == "rabbet") {
            const double length = drawer.front.board.thickness_mm + step;
            in_side(name, "front end", 0, length, s.front_depth, cutter_for(drawer.front.cutter, length));
            return;
        }
        if (drawer.front.joint == "half lap corner") {
            const double length = drawer.front.board.thickness_mm - s.rabbet_depth + step;
            in_side(name, "front end", 0, length, s.front_depth, cutter_at_end(drawer.front.cutter, length));
            return;
        }
        const double lip = s.rabbet_depth + step;
        in_side(name, "front end", lip, lip + s.dado_width, s.front_depth,
                cutter_for(drawer.front.cutter, s.dado_width));
    }

    // How thick the back's tongue is: all of it, or what is asked, or what fits a dado of one pass.
    double back_tongue(const AskedDrawer& drawer, const Sizes& s) const {
        const double thickness = drawer.back.board.thickness_mm;
        if (drawer.back.joint == "tongue and dado")
            return dado_width(drawer.back, s.groove_depth) - asked_.fit.clearance_mm;
        if (!ways_.tongued_back || drawer.back.joint != "dado") return thickness;
        return std::min(thickness,
                        *cutter_for(drawer.back.cutter, 0.7 * thickness).kerf_mm - asked_.fit.clearance_mm);
    }

    void back_joint_in_side(const AskedDrawer& drawer, const std::string& name, const Sizes& s) {
        const double thickness = drawer.back.board.thickness_mm;
        if (drawer.back.joint == "box joint") {
            fingers(drawer, name, "rear end", thickness + asked_.fit.step_mm);
            return;
        }
        if (drawer.back.joint == "rabbet") {
            in_side(name, "rear end", 0, thickness, s.back_depth, cutter_for(drawer.back.cutter, thickness));
            return;
        }
        const double tongue = back_tongue(drawer, s);
        const double near = s.setback + thickness - tongue;
        const double width = tongue + asked_.fit.clearance_mm;
        in_side(name, "rear end", near, near + width, s.back_depth, cutter_for(drawer.back.cutter, width));
    }

    // Into a dado less the relief; into a rabbet or over a lap all the way.
    double reach(const std::string& joint, double depth) const {
        return joint == "rabbet" || joint == "half lap corner" ? depth : depth - asked_.fit.end_relief_mm;
    }

    void rabbet_ends(const std::string& name, double length, double depth, const AskedCutter& cutter,
                     const char* down = "outside") {
        for (const char* end : {"left end", "right end"})
            setups_.add(NaiveSetups::end_joints, "miter gauge", {name, end, down, 0, length, depth}, cutter);
    }

    void front(const AskedDrawer& drawer, int copy, const Sizes& s) {
        const std::string name = id(drawer, copy, "front");
        const bool fingered = drawer.front.joint == "box joint";
        const double tongue = fingered ? drawer.sides.thickness_mm + asked_.fit.step_mm
                                       : reach(drawer.front.joint, s.front_depth);
        const double length = s.width - 2 * drawer.sides.thickness_mm + 2 * tongue;
        part(drawer, copy, "front", length, s.height, drawer.front.board);
        cut_to_size(NaiveSetups::rips, NaiveSetups::other_lengths, name, length, s.height, "left end");
        if (drawer.front.joint == "locking rabbet")
            rabbet_ends(name, tongue, s.rabbet_depth, cutter_for(drawer.front.cutter, s.dado_width));
        if (fingered)
            for (const char* end : {"left end", "right end"}) fingers(drawer, name, end, tongue);
        if (drawer.front.joint == "half lap corner")
            rabbet_ends(name, tongue, s.rabbet_depth, cutter_at_end(drawer.front.cutter, tongue), "inside");
        groove(drawer, name, s);
    }

    void back(const AskedDrawer& drawer, int copy, const Sizes& s) {
        const std::string name = id(drawer, copy, "back");
        const bool fingered = drawer.back.joint == "box joint";
        const double entering = fingered ? drawer.sides.thickness_mm + asked_.fit.step_mm
                                         : reach(drawer.back.joint, s.back_depth);
        const double length = s.width - 2 * drawer.sides.thickness_mm + 2 * entering;
        const double width = drawer.captured ? s.height : s.height - s.groove_near - s.groove_width;
        part(drawer, copy, "back", length, width, drawer.back.board);
        const auto rip = drawer.captured ? NaiveSetups::rips : NaiveSetups::back_widths;
        cut_to_size(rip, NaiveSetups::other_lengths, name, length, width, "left end");
        const double tongue = back_tongue(drawer, s);
        const double thickness = drawer.back.board.thickness_mm;
        if (fingered) {
            for (const char* end : {"left end", "right end"}) fingers(drawer, name, end, entering);
        } else if (tongue < thickness) {
            rabbet_ends(name, entering, thickness - tongue,
                        cutter_for(drawer.back.cutter, tongue + asked_.fit.clearance_mm));
        }
        if (drawer.captured) groove(drawer, name, s);
    }

    void bottom(const AskedDrawer& drawer, int copy, const Sizes& s) {
        const double slack = asked_.fit.bottom_slack_mm;
        const double across = s.width - 2 * drawer.sides.thickness_mm + 2 * s.groove_depth - slack;
        const double proud = s.setback;
        const double front_floor = asked_.fit.step_mm + drawer.front.board.thickness_mm - s.groove_depth;
        double reach = s.depth - proud;
        if (drawer.captured) reach += s.groove_depth - drawer.back.board.thickness_mm;
        const double deep = reach - front_floor - slack;
        part(drawer, copy, "bottom", across, deep, drawer.bottom.board);
        cut_to_size(NaiveSetups::bottoms, NaiveSetups::bottoms, id(drawer, copy, "bottom"), across, deep,
                    "left end");
    }

    const Json& job_;
    Asked asked_;
    NaiveWays ways_;
    Json plan_;
    NaiveSetups setups_;
};

}  // namespace

Json naive_plan(const Json& job, NaiveWays ways) { return NaivePlanner(job, ways).plan(); }

}  // namespace checker
