#pragma once
// The two searches, and what they share: the best order so far, the limits, the count.

#include <optional>

#include "order/expand.h"
#include "order/nodes.h"
#include "order/solve.h"

namespace kw::order {

inline constexpr std::int64_t no_order = std::numeric_limits<std::int64_t>::max();

// Times of changes and walks; durations are no search's business.
struct Search {
    Search(const Model& model, const Options& limits);

    Expander expander;
    const Options& options;
    std::vector<std::size_t> order;  // the best so far
    std::int64_t best_s = no_order;  // its changes and walks
    std::int64_t bound_s = 0;        // no order has less
    std::int64_t nodes = 0;
    bool stopped = false;  // by the callback, or by the clock
    State furthest;        // the most that was done before a search could not go on

    bool is_out_of_nodes() const { return nodes >= options.node_limit; }
    bool is_late() const;  // by the clock
    void ask_to_stop();    // every few hundred nodes, once there is an order
    void note_order(
        const std::vector<std::size_t>& moves);        // of all work: what is done at once follows from them
    void note_better(std::vector<std::size_t> whole);  // an order with all in it, no worse than the best
    // The partial order at `index` with one move more; `state` is where it stands, and then where it comes to. Nothing where that was the
    // last move: then the order is noted, if it is better.
    std::optional<Node> carry_on(const Nodes& nodes, std::size_t index, const Child& child, State& state);
    void note_dead_end(const State& state, std::size_t done);

private:
    std::int64_t asked_at_ = 0;
    std::optional<std::chrono::steady_clock::time_point> deadline_;
    std::size_t furthest_done_ = 0;
};

struct BeamWidth {
    std::size_t width = 1;
    bool is_patient = false;  // groups are begun as late as there is other work
    bool has_limits = true;   // without: goes through whatever the limits
};

// Partial orders of equal length side by side, the `width` with the least bounds go on. True if none was left out that could have
// been better than the best order: then that is proved, or there is none.
bool search_beam(Search& search, const BeamWidth& beam);

// The partial order with the least bound goes on first. True if it came to the end; bound_s is raised either way.
bool search_best_first(Search& search);

}  // namespace kw::order
