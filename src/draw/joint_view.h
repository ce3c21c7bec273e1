#pragma once
// The joint closed, in section. Ends are seen from above: the receiver across the top, its end at the left, its inside
// face down, the insert coming up into it. Edges (grooves) are seen along the edge: the receiver upright, its edge
// down, the insert coming in from the right. A row of fingers is seen from outside instead: see fingers_view.h.

#include "draw/drawing.h"
#include "job/work.h"

namespace kw::draw {

// As `settings` of this group cut it; group.stands where none are given. The sizes are true.
Drawing joint_view(const Work& work, const Group& group, const Settings& settings);
Drawing joint_view(const Work& work, const Group& group);

// Close around the tongue, with its errors drawn several times as large: see exaggerated() in joint_cuts.h. The words
// say how many times, and the sizes in them are the true ones.
Drawing joint_magnified(const Work& work, const Group& group, const Settings& settings);
Drawing joint_magnified(const Work& work, const Group& group);

// Two magnified joints side by side, equally exaggerated: as the settings were, and as they will be.
Drawing joint_before_after(const Work& work, const Group& group, const Settings& before,
                           const Settings& after);

}  // namespace kw::draw
