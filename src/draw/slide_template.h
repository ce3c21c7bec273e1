#pragma once
// A template for a slide's screws, true to size: its left edge goes to the front of the case, its lower edge to the floor of the opening.

#include "draw/drawing.h"
#include "drawer/slide_place.h"
#include "length/text.h"

namespace kw::draw {

Drawing slide_template(const SlidePlace& place, const Locale& locale);

}  // namespace kw::draw
