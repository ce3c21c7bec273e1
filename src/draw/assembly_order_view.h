#pragma once
// In which order a drawer is put together, and where glue is brushed.

#include "draw/drawing.h"
#include "job/assembly_order.h"
#include "length/text.h"

namespace kw::draw {

// From above, the front below, before the right side is put on. Boards are drawn thicker than they are, and numbered as they come.
Drawing assembly_order_view(const DrawerDesign& drawer, const std::vector<AssemblyStep>& steps,
                            const Locale& locale);

}  // namespace kw::draw
