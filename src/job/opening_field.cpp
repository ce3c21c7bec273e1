#include "job/opening_field.h"

namespace kw {

std::string size_field(const DrawerSpec& drawer, const std::string& size) {
    if (drawer.box || !drawer.opening) return "/box/" + size;
    const Opening& opening = *drawer.opening;
    const Length value = size == "width" ? opening.width : size == "height" ? opening.height : opening.depth;
    const auto place = place_that_read(drawer.survey, drawer.frame.value_or(FrameStandsIn{}), size, value);
    return place ? "/opening/survey/" + std::string(name_of(*place)) : "/opening/" + size;
}

}  // namespace kw
