#pragma once
// From the opening in the case to the outside of the drawer box.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "length/message.h"

namespace kw {

struct Opening {
    Length width;  // the least of the places measured
    Length height;
    Length depth;  // from the front of the case or face frame to the inside of the back
};

struct BoxSize {  // outside measures
    Length width;
    Length height;
    Length depth;
    bool operator==(const BoxSize&) const = default;
};

enum class SlideKind { side_mount, bottom_corner, undermount, wooden_runner };

// The names used in job files: "side mount", "bottom corner", "undermount", "wooden runner".
std::string_view name_of(SlideKind kind);
std::optional<SlideKind> slide_kind_named(std::string_view name);
const std::vector<SlideKind>& slide_kinds();

// What the slide takes from the opening. `side` is per side and runs to the outside of the box; for an undermount
// slide it runs to the INSIDE of the box (21 mm a side: inside width = opening - 42 mm).
struct Slide {
    SlideKind kind = SlideKind::side_mount;
    Length side;
    Length top;
    Length bottom;
    Length back;
    std::vector<Length> lengths;  // those that can be had; empty: the depth is not tied to a length
    Length take_up;               // how much more than `side` each slide takes without a shim
    std::string note = {};        // of the maker's own, from the sheet that came with it
    Length setback = Length::inches(
        1,
        8);  // its front end behind the front of the case, or of an inset face's back (common practice, no source)
    std::optional<Length> middle = {};  // above the box's bottom edge; nothing: at half its height

    bool operator==(const Slide&) const = default;
};

// Defaults by kind; the slide maker's sheet wins over each of them. Widths: see each kind in box.cpp.
Slide usual_slide(SlideKind kind);

enum class FaceStyle { none, overlay, inset };

// Sizes the box. `side_thickness` matters to undermount slides; `face_in_depth` is what an inset face takes
// off the depth (nothing for an overlay). Refuses with the field `width`, `height`, `depth` or `lengths`.
tl::expected<BoxSize, Refusal> size_box(const Opening& opening, const Slide& slide, Length side_thickness,
                                        Length face_in_depth);

}  // namespace kw
