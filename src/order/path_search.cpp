#include "order/path_search.h"

#include <algorithm>

#include "order/path_improve.h"
#include "order/path_layers.h"

namespace kw::order {

namespace {

constexpr std::size_t first_width = 100;
constexpr std::size_t wider_by = 32;
constexpr std::size_t most_memory = std::size_t{1} << 30;  // bytes
constexpr std::int64_t first_rounds = 500;
constexpr std::int64_t first_steps = 20'000'000;  // of walks
constexpr std::int64_t steps_per_node = 300;
// An assignment takes about as long as three partial orders without: it must leave out about one in three to be worth it.
constexpr std::int64_t worth_one_in = 3;

// A round of improvement counts as a node.
void improve_path(Search& search, PathImprover& improver, std::int64_t rounds) {
    for (; rounds > 0; --rounds) {
        if (improver.best_s() < search.best_s) search.note_better(improver.best());
        search.ask_to_stop();
        if (search.stopped || search.is_out_of_nodes() || search.best_s <= search.bound_s) return;
        improver.go_on();
        ++search.nodes;
    }
    if (improver.best_s() < search.best_s) search.note_better(improver.best());
}

}  // namespace

bool search_path(Search& search, const Path& path) {
    PathImprover improver(path, nearest_first(path));
    // There may be an order already that it has to beat.
    if (improver.best_s() < search.best_s) search.note_better(improver.best());
    improve_path(search, improver, first_rounds);
    PathFloor floor(path);
    floor.raise(search.best_s, first_steps);
    search.bound_s = std::max(search.bound_s, std::min(floor.whole_s(), search.best_s));
    const std::size_t widest = std::max(first_width, most_memory / (path.side() * 18 + 128));
    Assignments assigns;
    for (std::size_t width = first_width;; width = std::min(widest, width * wider_by)) {
        if (search.best_s <= search.bound_s) return true;
        const std::int64_t before = search.nodes;
        if (search_layers(search, floor, width, assigns)) return true;
        if (search.stopped || search.is_out_of_nodes()) return false;
        improve_path(search, improver, 1000 + (search.nodes - before) / 32);
        if (search.stopped || search.is_out_of_nodes()) return false;
        if (width == widest) return false;
        assigns.is_used = assigns.pruned * worth_one_in >= assigns.asked;
        floor.raise_remembering(search.best_s,
                                std::max(first_steps, steps_per_node * (search.nodes - before)),
                                [&search] { return search.is_late(); });
        search.bound_s = std::max(search.bound_s, std::min(floor.whole_s(), search.best_s));
    }
}

}  // namespace kw::order
