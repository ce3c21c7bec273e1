#pragma once
// What is right about a plan, worked out from the plan alone: nothing here asks the program how it came about. The first thing that
// is wrong, in words; nothing where all is right.

#include <optional>
#include <string>

#include "cutting/boards.h"
#include "cutting/panel_value.h"
#include "cutting/sheets.h"

namespace laid {

using Wrong = std::optional<std::string>;

Wrong wrong_with(const kw::cutting::BoardJob& job, const kw::cutting::BoardPlan& plan);
Wrong wrong_with(const kw::cutting::SheetJob& job, const kw::cutting::SheetPlan& plan);
Wrong wrong_with(const kw::cutting::PanelJob& job, const kw::cutting::PanelPlan& plan);

// Whether cuts from edge to edge, each a kerf wide, set these apart: found by splitting them again and again, wherever nothing is in the
// way. A cut that parts some of them never keeps others together, so that the first one found will do.
bool can_be_set_apart(const std::vector<kw::cutting::Rectangle>& pieces, kw::Length kerf);

}  // namespace laid
