#include "order/solve.h"

#include <algorithm>
#include <map>
#include <memory>

#include "order/graph.h"
#include "order/state.h"

namespace kw::order {
namespace {

struct Trail {  // the order so far, shared by all states that came from it
    int operation;
    std::shared_ptr<const Trail> before;
};

struct Node {
    Graph::Progress progress;
    Machines machines;
    std::int64_t seconds = 0;
    std::shared_ptr<const Trail> trail;
};

struct Candidate {
    std::size_t parent;
    int operation;
    std::int64_t seconds;
};

std::vector<int> order_of(const std::shared_ptr<const Trail>& last) {
    std::vector<int> order;
    for (const Trail* trail = last.get(); trail; trail = trail->before.get()) order.push_back(trail->operation);
    std::reverse(order.begin(), order.end());
    return order;
}

std::vector<Candidate> candidates_of(const Problem& problem, const Graph& graph, const std::vector<Node>& layer) {
    std::vector<Candidate> candidates;
    for (std::size_t i = 0; i < layer.size(); ++i)
        for (const int op : graph.available(layer[i].progress))
            candidates.push_back({i, op, layer[i].seconds + layer[i].machines.step_to(problem, op).total()});
    // The work itself must be done at some time: only what it costs beyond that ranks a candidate.
    std::stable_sort(candidates.begin(), candidates.end(), [&](const Candidate& a, const Candidate& b) {
        const auto beyond = [&](const Candidate& c) { return c.seconds - graph.work_done(layer[c.parent].progress, c.operation); };
        return beyond(a) < beyond(b);
    });
    return candidates;
}

class Search {
public:
    Search(const Problem& problem, const Options& options) : problem_(problem), graph_(problem) {
        const auto n = std::max<std::int64_t>(1, static_cast<std::int64_t>(problem.operations.size()));
        width_ = static_cast<std::size_t>(std::clamp<std::int64_t>(options.effort / (n * n), 1, 4000));
    }

    Result run() {
        Result result;
        result.lower_bound_seconds = lower_bound(problem_);
        std::vector<Node> layer = {Node{graph_.start(), Machines(problem_), 0, nullptr}};
        for (std::size_t done = 0; done < problem_.operations.size(); ++done) {
            const auto candidates = candidates_of(problem_, graph_, layer);
            if (candidates.empty()) return dead_end(result, layer.front());
            layer = next_layer(layer, candidates);
        }
        const auto best = std::min_element(layer.begin(), layer.end(),
                                           [](const Node& a, const Node& b) { return a.seconds < b.seconds; });
        result.order = order_of(best->trail);
        result.seconds = best->seconds;
        const bool proved = complete_ || result.seconds == result.lower_bound_seconds;
        if (proved) result.lower_bound_seconds = result.seconds;
        result.status = proved ? Status::proved : Status::limited;
        return result;
    }

private:
    std::vector<Node> next_layer(const std::vector<Node>& layer, const std::vector<Candidate>& candidates) {
        std::vector<Node> next;
        std::map<std::vector<std::uint64_t>, std::vector<std::size_t>> with_done;
        for (const Candidate& candidate : candidates) {
            const Node& parent = layer[candidate.parent];
            Node node{graph_.after(parent.progress, candidate.operation), parent.machines, candidate.seconds, nullptr};
            node.machines.take(problem_, candidate.operation);
            auto& twins = with_done[node.progress.done];
            const auto twin = std::find_if(twins.begin(), twins.end(),
                                           [&](std::size_t i) { return next[i].machines == node.machines; });
            if (twin != twins.end()) {
                if (node.seconds < next[*twin].seconds) {
                    node.trail = std::make_shared<const Trail>(Trail{candidate.operation, parent.trail});
                    next[*twin] = std::move(node);
                }
                continue;
            }
            if (next.size() == width_) {
                complete_ = false;
                break;
            }
            node.trail = std::make_shared<const Trail>(Trail{candidate.operation, parent.trail});
            twins.push_back(next.size());
            next.push_back(std::move(node));
        }
        return next;
    }

    Result dead_end(Result result, const Node& node) const {
        result.status = Status::impossible;
        for (int op = 0; op < static_cast<int>(problem_.operations.size()); ++op)
            if (!Graph::is_done(node.progress, op)) result.culprits.push_back(op);
        return result;
    }

    const Problem& problem_;
    Graph graph_;
    std::size_t width_;
    bool complete_ = true;
};

}  // namespace

Result solve(const Problem& problem, const Options& options) { return Search(problem, options).run(); }

}  // namespace kw::order
