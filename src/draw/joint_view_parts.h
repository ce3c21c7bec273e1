#pragma once
// What all pictures of closed joints need.

#include "draw/wood.h"
#include "job/work.h"

namespace kw::draw {

// Of a stock that goes by this name, as it is seen cut.
Material wood_of(const Work& work, const std::string& stock_name, Grain grain);

// "clearances × 5"
std::string times_text(const Words& words, int times);

// Above the picture, or so far below it.
void add_caption(Drawing& drawing, const std::string& text, std::optional<double> below_mm = {});

// Two pictures that are exaggerated equally beside each other, or one above the other. `clear_mm`: from them down to what is said of both.
Drawing side_by_side(const Work& work, Drawing first, Drawing second, int times, bool stacked = false,
                     double clear_mm = 0);

}  // namespace kw::draw
