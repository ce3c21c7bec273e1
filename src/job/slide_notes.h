#pragma once
// Where the slides of a drawer go, in a sentence.

#include <optional>

#include "drawer/slide_place.h"
#include "job/plan.h"

namespace kw {

// Nothing for a drawer whose box is given: it has no opening.
std::optional<SlidePlace> slide_place_of(const Job& job, const Plan& plan, const DrawerSpec& drawer);

// "screw its slides to the case 1/8 in behind its front, ...".
Message say_slide_place(const SlidePlace& place);

}  // namespace kw
