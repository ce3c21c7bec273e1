#pragma once
// What stands where when a joint is cut, as a value: all that its picture needs of the plan. So two of them can be kept from two
// plans, and the picture can go from one to the other.

#include <optional>
#include <string>

#include "job/set_to.h"

namespace kw::draw {

// Lengths from the fence's face and from the table.
struct SetupScene {
    Length thickness;
    Length fence;
    Length height;
    Length first_height;  // of a bit that comes up in passes, else the height
    Length kerf;          // that is believed of the cutter as it is put on
    // How far fence and height are to stand beyond, to make up for the cutter, and what their scales show beyond that.
    Length fence_beyond, fence_scale_off, height_beyond, height_scale_off;
    Length spacer;
    Length cleared;  // of this slot already, from `fence_before`: 0 before its first pass
    Length fence_before;
    bool nibble = false;
    bool sacrificial = false;
    // On an indexing jig, whose pin is the fence: by how much the board is set over, how far its end reaches from the bottom edge,
    // and how many sockets are cut in it.
    std::optional<Length> index = std::nullopt;
    Length end_height;
    int sockets = 1;
    BoardFace down = BoardFace::inside;
    std::optional<Reference>
        reference;  // what touches the fence, where it is the same for all that go through

    std::string id;  // of the setup
    std::string work;
    std::string machine;
    std::string cutter;
    std::string references;   // in words
    bool along_edge = false;  // an edge runs along the fence; otherwise an end touches it
    StockKind stock = StockKind::plywood;
    Locale locale;
    Locale caliper = Graduation::in_001;

    Length far() const { return fence + kerf; }
    // As the maker sets them.
    ControlAt fence_at(CutterSide measured_to) const;
    ControlAt height_at() const;
    bool operator==(const SetupScene&) const = default;
};

// Of a cut at a joint; nothing for a cut to size. `setup` is one of work.plan's.
std::optional<SetupScene> setup_scene(const Work& work, const Setup& setup);

}  // namespace kw::draw
