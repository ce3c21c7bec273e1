#include "checker/workpiece.h"

#include <algorithm>
#include <map>

namespace checker {
namespace {

bool is_side(const std::string& role) { return role == "side_left" || role == "side_right"; }

// Ends by role, as the contract lists them. The contract names none for bottoms and faces: these are let have all of them.
bool has_end(const std::string& role, const std::string& reference) {
    const bool of_side = reference == "front end" || reference == "rear end";
    if (is_side(role)) return of_side;
    return role == "front" || role == "back" ? !of_side : true;
}

bool is_board(const std::string& role) { return role == "front" || role == "back" || is_side(role); }

void check_through_cut(const PlanPart& part, const Setup& setup, const Reference& reference, Report& report) {
    const bool crosscut = reference.axis == along;
    report.same(Kind::setup, setup.id + " on " + part.id, crosscut ? "crosscut length" : "ripped width",
                setup.near_mm(), crosscut ? part.length_mm : part.width_mm);
}

void run_pass(const Setup& setup, const Pass& pass, Workpiece& piece, Report& report) {
    const auto reference = find_reference(piece.part.role, pass.reference);
    if (!reference) {
        report.say(Kind::form, setup.id + " on " + pass.part, "a part of this kind has no " + pass.reference);
        return;
    }
    if (setup.through()) {
        check_through_cut(piece.part, setup, *reference, report);
        return;
    }
    const auto blocks = taken_by(piece.part, setup, pass);
    piece.wood.cuts.insert(piece.wood.cuts.end(), blocks.begin(), blocks.end());
    if (blocks.empty())
        report.say(Kind::form, setup.id + " on " + pass.part, "no face is called " + pass.down);
}

Solid blank(const PlanPart& part) {
    return {{{0, 0, 0}, {part.length_mm, part.width_mm, part.thickness_mm}}, {}};
}

}  // namespace

std::optional<Reference> find_reference(const std::string& role, const std::string& reference) {
    static const std::map<std::string, Reference> all{
        {"left end", {along, false}}, {"right end", {along, true}}, {"front end", {along, false}},
        {"rear end", {along, true}},  {"bottom edge", {up, false}}, {"top edge", {up, true}},
    };
    // A bottom and a face lie with their length across, so that "front end" and "rear end" are ends of its width.
    static const std::map<std::string, Reference> panel{{"front end", {up, false}},
                                                        {"rear end", {up, true}},
                                                        {"front edge", {up, false}},
                                                        {"rear edge", {up, true}}};
    if (!is_board(role)) {
        if (const auto found = panel.find(reference); found != panel.end()) return found->second;
    }
    const auto found = all.find(reference);
    if (found == all.end()) return std::nullopt;
    if (found->second.axis == along && !has_end(role, reference)) return std::nullopt;
    return found->second;
}

std::string worked_at(const Setup& setup, const Pass& pass) {
    return setup.index_mm ? pass.down : pass.reference;
}

namespace {

// Each as far from the edge as the one before and the index more, as deep as the height from the end.
std::vector<Block> row_of(const PlanPart& part, const Setup& setup, const Pass& pass, const Reference& edge) {
    const auto end = find_reference(part.role, pass.down);
    if (!end || end->axis != along || edge.axis != up) return {};
    std::vector<Block> row;
    for (int i = 0; i < pass.cuts; ++i) {
        Block block{{0, 0, 0}, {part.length_mm, part.width_mm, part.thickness_mm}};
        const double from = setup.near_mm() + i * *setup.index_mm;
        const double to = from + setup.kerf_mm;
        block.low[up] = std::max(0.0, edge.from_high ? part.width_mm - to : from);
        block.high[up] = std::min(part.width_mm, edge.from_high ? part.width_mm - from : to);
        if (end->from_high) block.low[along] = part.length_mm - *setup.height_mm;
        else block.high[along] = *setup.height_mm;
        row.push_back(block);
    }
    return row;
}

}  // namespace

std::vector<Block> taken_by(const PlanPart& part, const Setup& setup, const Pass& pass) {
    const auto reference = find_reference(part.role, pass.reference);
    if (!reference || !setup.height_mm) return {};
    if (setup.index_mm) return row_of(part, setup, pass, *reference);
    if (pass.down != "inside" && pass.down != "outside") return {};
    Block block{{0, 0, 0}, {part.length_mm, part.width_mm, part.thickness_mm}};
    const auto axis = static_cast<std::size_t>(reference->axis);
    const double size = block.high[axis];
    const double from = pass.nibble ? 0 : std::max(0.0, setup.near_mm());
    const double to = std::min(size, setup.far_mm());
    block.low[axis] = reference->from_high ? size - to : from;
    block.high[axis] = reference->from_high ? size - from : to;
    if (pass.down == "inside") block.high[into] = *setup.height_mm;
    else block.low[into] = part.thickness_mm - *setup.height_mm;
    return {block};
}

std::vector<Workpiece> make_workpieces(const Plan& plan, Report& report) {
    std::vector<Workpiece> pieces;
    std::map<std::string, std::size_t> by_id;
    for (const PlanPart& part : plan.parts) {
        if (!by_id.emplace(part.id, pieces.size()).second)
            report.say(Kind::list, part.id, "two parts have this id");
        pieces.push_back({part, blank(part)});
    }
    for (const Setup& setup : plan.setups) {
        for (const Pass& pass : setup.passes) {
            const auto found = by_id.find(pass.part);
            if (found == by_id.end()) report.say(Kind::form, setup.id, "no part is called " + pass.part);
            else run_pass(setup, pass, pieces[found->second], report);
        }
    }
    return pieces;
}

}  // namespace checker
