#pragma once
// A template for a handle's holes, true to size: its upper line goes to the face's upper edge, its upright one to the middle of its length.

#include "draw/drawing.h"
#include "length/text.h"

namespace kw::draw {

// Of one hole or two, `centres` apart.
struct HandleTemplate {
    int holes = 2;
    Length centres;
    Length below_top;

    bool operator==(const HandleTemplate&) const = default;
};

Drawing handle_template(const HandleTemplate& one, const Locale& locale);

}  // namespace kw::draw
