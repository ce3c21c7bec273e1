#pragma once
// A corner with a row of fingers, closed, as it is seen from the outside of a side (or of the other board, where its sockets have a
// height of their own): the end of that board at the left, its bottom edge down. What of a long row is like the rest is left out.

#include "draw/drawing.h"
#include "job/work.h"

namespace kw::draw {

// What joint_view.h draws of such a group.
Drawing fingers_view(const Work& work, const Group& group, const Settings& settings);
Drawing fingers_magnified(const Work& work, const Group& group, const Settings& settings);
Drawing fingers_before_after(const Work& work, const Group& group, const Settings& before,
                             const Settings& after);

}  // namespace kw::draw
