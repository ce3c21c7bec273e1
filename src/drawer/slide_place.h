#pragma once
// Where a slide is screwed to the case and to the box.

#include <optional>

#include "drawer/box.h"

namespace kw {

struct SlidePlace {
    Length behind_front;  // from the front of the case to the slide's front end
    Length
        above_floor;  // from the floor of the opening to the slide's middle (bottom corner: to the box's bottom edge)
    std::optional<Length>
        above_edge;  // from the box's bottom edge to the slide's middle; nothing where it goes under the box

    bool operator==(const SlidePlace&) const = default;
};

// The slide's middle is at half the box's height, where its `middle` says nothing else; a bottom-corner slide goes by the box's bottom
// edge, a concealed one lies on the floor. An inset face sets it back by its own thickness: `face_in_depth`. The slide maker's sheet wins.
SlidePlace slide_place(const Slide& slide, const BoxSize& box, Length face_in_depth);

}  // namespace kw
