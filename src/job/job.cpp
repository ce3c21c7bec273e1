#include "job/job.h"

#include <algorithm>

namespace kw {

const Stock* Job::stock_named(std::string_view name_wanted) const {
    const auto found =
        std::find_if(stock.begin(), stock.end(), [&](const Stock& item) { return item.name == name_wanted; });
    return found == stock.end() ? nullptr : &*found;
}

Locale caliper_locale(const Job& job) {
    return job.locale.with(job.unit == Unit::inch ? Graduation::in_001 : Graduation::mm_0_01);
}

}  // namespace kw
