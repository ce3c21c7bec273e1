#include <algorithm>
#include <queue>

#include "order/search.h"

namespace kw::order {

namespace {

struct Entry {
    std::int64_t bound_s = 0;
    std::size_t done = 0;
    std::size_t node = 0;
};

// Least bound first, then the most work done, then the first met.
struct ComesLater {
    bool operator()(const Entry& a, const Entry& b) const {
        if (a.bound_s != b.bound_s) return a.bound_s > b.bound_s;
        return a.done != b.done ? a.done < b.done : a.node > b.node;
    }
};

class BestFirst {
public:
    explicit BestFirst(Search& search)
        : search_(search), expander_(search.expander), nodes_(expander_.model()) {}

    bool run() {
        State start = expander_.start();
        meet(start, {0, 0, start.spent_s, expander_.bound_s(start), count(start.done), true});
        while (!queue_.empty() && queue_.top().bound_s < search_.best_s) {
            const Entry entry = queue_.top();
            search_.bound_s = std::max(search_.bound_s, entry.bound_s);
            search_.ask_to_stop();
            if (search_.stopped || search_.is_out_of_nodes()) return false;
            queue_.pop();
            Node& node = nodes_[entry.node];
            if (!node.is_open || node.bound_s != entry.bound_s) continue;
            node.is_open = false;
            expand(entry.node);
        }
        search_.bound_s = search_.best_s;
        return true;
    }

private:
    void meet(const State& state, const Node& node) {
        const auto [index, is_better] = nodes_.meet(state, node);
        if (is_better) queue_.push({node.bound_s, node.done, index});
    }

    void expand(std::size_t index) {
        nodes_.load(index, state_);
        const std::vector<Child>& children = expander_.children(state_);
        if (children.empty()) search_.note_dead_end(state_, nodes_[index].done);
        for (const Child& child : children)
            if (child.bound_s < search_.best_s) follow(index, child);
    }

    void follow(std::size_t index, const Child& child) {
        next_ = state_;
        if (const auto node = search_.carry_on(nodes_, index, child, next_)) meet(next_, *node);
    }

    Search& search_;
    Expander& expander_;
    Nodes nodes_;
    std::priority_queue<Entry, std::vector<Entry>, ComesLater> queue_;
    State state_;
    State next_;
};

}  // namespace

bool search_best_first(Search& search) { return BestFirst(search).run(); }

}  // namespace kw::order
