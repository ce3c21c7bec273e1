#pragma once
// Where a drawing goes on a page, and how large.

#include <string>

#include "print/page.h"
#include "words/words.h"

namespace kw::print {

// At the largest of the usual scales (5 : 1, 2 : 1, 1 : 1, 1 : 2 ...) at which it lies in the area with its words, in the middle;
// where it does so at none of them, at the one that it just fits at. `px_mm`: of its words, which keep their size.
Picture fitted_picture(const draw::Drawing& drawing, const Area& area, double px_mm = 0.2);

// At just this scale, its (0 mm, 0 mm) there: for what is laid on the wood.
Picture picture_at_scale(const draw::Drawing& drawing, Spot origin, double scale, double px_mm = 0.2);

// What of the page it takes with its words.
Area area_of(const Picture& picture);

// Whether two of its words lie on one another.
bool words_meet(const Picture& picture);

// "2 : 1", "1 : 2.5"
std::string scale_words(const Words& words, double scale);

}  // namespace kw::print
