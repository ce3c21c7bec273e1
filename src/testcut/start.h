#pragma once
// Where a group starts from: how its scales were set, and what is known of them before the first test cut.

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "setup/settings.h"

namespace kw {

// How far a control comes out beyond what its scale says, and by how much its moves come out too long. One sigma
// each. Nothing is learned of the machine from the job itself: this is what was known before.
struct Scale {
    double offset_mm = 0.0;
    double spread_mm = 0.0;
    double gain = 0.0;  // mm per mm
    double gain_spread = 0.0;

    bool operator==(const Scale&) const = default;
};

struct Scales {
    Scale fence, height, kerf;
    bool operator==(const Scales&) const = default;
};

// Of a machine that nothing is known of, common practice, no source: a fence or a height set by its own scale
// is a quarter of a millimetre off, more or less.
Scales usual_scales();
// Of the pin on an indexing jig, which is set by a piece as wide as the finger, or by calipers: no scale of the machine says
// where it stands. Common practice, no source.
Scale usual_pin();

// What lengths are taken with. The spreads are common practice, no source.
enum class Tool { caliper, rule };
std::string_view name_of(Tool tool);
std::optional<Tool> tool_named(std::string_view name);

// One sigma of a length read with the tool; `gap`: of a clearance or a gap, for which a caliper's owner takes a
// feeler gauge.
double spread_of(Tool tool, bool gap);

struct Start {
    Settings dial;  // what the scales were set to
    Scales scales = usual_scales();
    Tool tool = Tool::caliper;  // that readings are expected to be taken with
    // The socket of a row of fingers to which it is measured, counted from the bottom edge; 0: not told. Boards that are added later
    // don't change to which it was.
    int row_to = 0;
    int sockets_up =
        0;  // of the highest board then, by which it was judged how far boards may drift apart; 0: not told
};

}  // namespace kw
