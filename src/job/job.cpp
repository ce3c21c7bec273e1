#include "job/job.h"

#include <algorithm>

namespace kw {

const Stock* Job::stock_named(std::string_view name_wanted) const {
    const auto found =
        std::find_if(stock.begin(), stock.end(), [&](const Stock& item) { return item.name == name_wanted; });
    return found == stock.end() ? nullptr : &*found;
}

std::string copy_name(std::string_view drawer, int copy) {
    return std::string(drawer) + " " + std::to_string(copy);
}
std::string copy_name(const DrawerSpec& drawer, int copy) {
    return drawer.count == 1 ? drawer.name : copy_name(drawer.name, copy);
}

Locale caliper_locale(const Job& job) {
    return job.locale.with(job.unit == Unit::inch ? Graduation::in_001 : Graduation::mm_0_01);
}

}  // namespace kw
