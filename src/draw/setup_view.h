#pragma once
// A setup as the maker stands before it. The cuts of joints are seen along the feed: the fence at the left, the work
// against its right face or the spacer's, the cutter rising from the table. x = 0 is the fence's face, y = 0 the
// table. Cuts to size are seen from above: the blade at x = 0, the fence or the stop to its left. A stop is not moved by the options.
// On an indexing jig the board stands on its end before the jig's fence: x = 0 is the pin's side toward the cutter. It is shown with one socket
// over the pin and the next being cut, or where a spacer is on the pin, at its first socket.
//
// All sizes are true but the length of a board that runs out of the picture: that is broken off.

#include "draw/drawing.h"
#include "draw/setup_scene.h"

namespace kw::draw {

struct SetupViewOptions {
    bool fence_left =
        true;  // seen along the feed: the fence stands to the left of the cutter, or to its right
    bool to_far_side = false;  // of the cutter is what the fence is measured to, when a joint is cut
    bool operator==(const SetupViewOptions&) const = default;
};

// `setup` is one of work.plan's. With the fence at the right all but the words and the pencilled loop is seen in a mirror.
Drawing setup_view(const Work& work, const Setup& setup, const SetupViewOptions& options = {});
Drawing setup_view(const SetupScene& scene, const SetupViewOptions& options = {});

// "front end", "left and right ends": what touches the fence, each named once.
std::string references_text(const Setup& setup, const Words& words);

}  // namespace kw::draw
