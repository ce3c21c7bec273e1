#pragma once
// What a maker sees on a closed joint that is off in one way, as a picture to be tapped: no words, no sizes.

#include "draw/drawing.h"
#include "job/work.h"
#include "testcut/feel.h"

namespace kw::draw {

// The group's joint as designed, but for what `sight` says; magnified.
Drawing symptom_view(const Work& work, const Group& group, const Sight& sight);

}  // namespace kw::draw
