// The blanks, and what the plan's passes make of them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checker/plan.h"
#include "checker/report.h"
#include "checker/solid.h"

namespace checker {

// A part lies in its own frame: axis 0 along its length (from the left end, or a side's front end), axis 1 along its width (from
// the bottom edge, or a bottom's front edge), axis 2 into it from the inside face.
inline constexpr int along = 0;
inline constexpr int up = 1;
inline constexpr int into = 2;

struct Workpiece {
    PlanPart part;
    Solid wood;
};

// Where a pass goes: the axis it is measured along, and whether from the axis' high end.
struct Reference {
    int axis = 0;
    bool from_high = false;
};

// None where a part of that role has no such end or edge.
std::optional<Reference> find_reference(const std::string& role, const std::string& reference);

// The blocks that one pass of a setup with a height takes out of a part: one, or a row of them, through the whole thickness, where the
// board stands on its end. None where the pass itself is in bad form.
std::vector<Block> taken_by(const PlanPart& part, const Setup& setup, const Pass& pass);

// The end or edge that a pass works at: its reference, or the end that stands on the table.
std::string worked_at(const Setup& setup, const Pass& pass);

// All parts, cut by all setups that have a height. Through cuts must leave the listed size. Whatever is in bad form goes into the
// report and is left out.
std::vector<Workpiece> make_workpieces(const Plan& plan, Report& report);

}  // namespace checker
