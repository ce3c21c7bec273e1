#include "order/path.h"

#include <algorithm>

#include "order/state.h"

namespace kw::order {

namespace {

bool is_path(const Model& model) {
    if (model.count < 2 || model.count > Path::most || !model.groups.empty()) return false;
    const std::size_t machine = model.works.front().machine;
    const Mask needs = model.works.front().needs;
    const Shop& shop = model.shops[machine];
    bool is_given = false;
    for (std::size_t v = shop.first_view; v < shop.first_view + shop.attributes; ++v)
        is_given = is_given || model.views[v].from_to.is_given();
    return is_given && std::all_of(model.works.begin(), model.works.end(), [&](const Work& work) {
               return work.machine == machine && work.needs == needs;
           });
}

Path::Set set_of(const Bits& bits) {
    Path::Set set{};
    std::copy(bits.begin(), bits.end(), set.begin());
    return set;
}

// Whether `to` can be the very next after `from`: it need not come before, and nothing must come between.
bool can_follow(const Path& path, std::size_t from, std::size_t to) {
    return from != to && !has(path.before[from], to) && !intersect(path.after[from], path.before[to]);
}

std::int64_t seconds_after(const Model& model, const Path& path, std::size_t from, std::size_t to) {
    if (!can_follow(path, from, to)) return Path::never;
    std::vector<Label> stands = start_of(model).label;
    set_labels(model, move_of(model, stands, from), stands);
    return move_of(model, stands, to).cost_s;
}

std::size_t first_alike(const Model& model, std::size_t operation) {
    std::size_t first = 0;
    while (model.works[first].label != model.works[operation].label) ++first;
    return first;
}

}  // namespace

std::int64_t Path::seconds_of(const std::vector<std::size_t>& order) const {
    std::int64_t sum = 0;
    std::size_t at = count;
    for (const std::size_t operation : order) {
        sum += from_to(at, operation);
        at = operation;
    }
    return sum;
}

std::optional<Path> path_of(const Model& model) {
    if (!model.choices.empty()) return std::nullopt;
    if (!is_path(model)) return std::nullopt;
    Path path;
    path.count = model.count;
    path.is_orderly = model.shops[model.works.front().machine].orderly;
    path.seconds.assign(path.side() * path.side(), Path::never);
    path.after.resize(path.count);
    for (std::size_t i = 0; i < path.count; ++i) {
        path.before.push_back(set_of(model.before[i]));
        path.twin.push_back(first_alike(model, i));
        each(model.before[i], [&](std::size_t first) { put(path.after[first], i); });
    }
    const State start = start_of(model);
    const std::size_t end = path.count;
    for (std::size_t i = 0; i < path.count; ++i) {
        std::int64_t* row = path.seconds.data() + i * path.side();
        for (std::size_t j = 0; j < path.count; ++j) row[j] = seconds_after(model, path, i, j);
        if (count(path.after[i]) == 0) row[end] = 0;
        if (count(path.before[i]) == 0)
            path.seconds[path.count * path.side() + i] = move_of(model, start.label, i).cost_s;
    }
    return path;
}

}  // namespace kw::order
