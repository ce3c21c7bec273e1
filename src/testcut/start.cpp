#include "testcut/start.h"

namespace kw {

Scales usual_scales() {
    constexpr Scale usual{0.0, 0.25, 0.0, 0.03};
    constexpr Scale kerf{0.0, 0.08, 0.0, 0.0};
    return {usual, usual, kerf};
}

Scale usual_pin() { return {0.0, 0.15, 0.0, 0.03}; }

std::string_view name_of(Tool tool) { return tool == Tool::caliper ? "caliper" : "rule"; }

std::optional<Tool> tool_named(std::string_view name) {
    for (const Tool tool : {Tool::caliper, Tool::rule})
        if (name_of(tool) == name) return tool;
    return std::nullopt;
}

double spread_of(Tool tool, bool gap) {
    if (tool == Tool::rule) return 0.25;
    return gap ? 0.03 : 0.05;
}

}  // namespace kw
