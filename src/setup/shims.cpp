#include "setup/shims.h"

#include <algorithm>

namespace kw {
namespace {

constexpr Length chipper = Length::inches(1, 8);

struct MadeUp {
    Length sum;
    std::vector<Length> of;
};

// One shim more at a time: each sum that there was, without it and with it. Of two ways to one sum the one with fewer shims stays.
std::vector<MadeUp> all_made_up(const Cutter& cutter) {
    std::vector<Length> owned = cutter.shims;
    owned.insert(owned.end(), cutter.spares.begin(), cutter.spares.end());
    std::sort(owned.begin(), owned.end(), std::greater<>());
    const Length most = max(chipper, shims_in(cutter));
    std::vector<MadeUp> all = {{}};
    for (const Length shim : owned) {
        std::vector<MadeUp> more = all;
        for (MadeUp with : all) {
            with.sum += shim;
            with.of.push_back(shim);
            if (with.sum <= most) more.push_back(std::move(with));
        }
        std::stable_sort(more.begin(), more.end(),
                         [](const MadeUp& a, const MadeUp& b) { return a.sum < b.sum; });
        all.clear();
        for (MadeUp& one : more) {
            if (all.empty() || one.sum - all.back().sum >= alike) all.push_back(std::move(one));
            else if (one.of.size() < all.back().of.size()) all.back() = std::move(one);
        }
    }
    return all;
}

}  // namespace

bool lists_shims(const Cutter& cutter) {
    return cutter.kind == CutterKind::dado_stack && !(cutter.shims.empty() && cutter.spares.empty());
}

Length shims_in(const Cutter& cutter) {
    Length sum;
    for (const Length shim : cutter.shims) sum += shim;
    return sum;
}

std::vector<Length> shim_sums(const Cutter& cutter) {
    std::vector<Length> sums;
    for (const MadeUp& one : all_made_up(cutter)) sums.push_back(one.sum);
    return sums;
}

std::vector<Length> shims_for(const Cutter& cutter, Length thickness) {
    for (const MadeUp& one : all_made_up(cutter))
        if (abs(one.sum - thickness) < alike) return one.of;
    return {};
}

}  // namespace kw
