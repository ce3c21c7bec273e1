#include "order/graph.h"

#include <set>

namespace kw::order {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

}  // namespace

Graph::Graph(const Problem& problem)
    : problem_(problem), successors_(problem.operations.size()), predecessors_(problem.operations.size(), 0),
      block_of_(problem.operations.size(), any) {
    for (std::size_t b = 0; b < problem.blocks.size(); ++b)
        for (const int op : problem.blocks[b].operations) block_of_[at(op)] = static_cast<int>(b);
    const std::set<std::pair<int, int>> pairs(problem.before.begin(), problem.before.end());
    for (const auto& [first, second] : pairs) successors_[at(first)].push_back(second);
    hold_back_blocks();
    for (const auto& after_it : successors_)
        for (const int op : after_it) ++predecessors_[at(op)];
}

// Work on the block's own machine that some member waits for can't be done once the block is begun: it must
// come before the first member. Without this a search could begin a block that it can never finish.
void Graph::hold_back_blocks() {
    std::vector<std::vector<int>> before(successors_.size());
    for (std::size_t op = 0; op < successors_.size(); ++op)
        for (const int next : successors_[op]) before[at(next)].push_back(static_cast<int>(op));
    for (std::size_t b = 0; b < problem_.blocks.size(); ++b) {
        const auto& members = problem_.blocks[b].operations;
        if (members.size() < 2) continue;
        const int machine = problem_.operations[at(members.front())].machine;
        std::set<int> seen(members.begin(), members.end());
        std::vector<int> todo = members;
        while (!todo.empty()) {
            const int op = todo.back();
            todo.pop_back();
            for (const int earlier : before[at(op)]) {
                if (!seen.insert(earlier).second) continue;
                todo.push_back(earlier);
                if (problem_.operations[at(earlier)].machine != machine) continue;
                for (const int member : members) successors_[at(earlier)].push_back(member);
            }
        }
    }
}

Graph::Progress Graph::start() const {
    Progress progress;
    progress.done.assign(problem_.operations.size() / 64 + 1, 0);
    progress.waiting = predecessors_;
    progress.open_block.assign(problem_.machines.size(), any);
    for (const Block& block : problem_.blocks) progress.left_in_block.push_back(static_cast<int>(block.operations.size()));
    return progress;
}

Graph::Progress Graph::after(const Progress& progress, int operation) const {
    Progress next = progress;
    next.done[at(operation) / 64] |= std::uint64_t{1} << (at(operation) % 64);
    next.work_seconds += problem_.operations[at(operation)].seconds;
    for (const int op : successors_[at(operation)]) --next.waiting[at(op)];
    const int block = block_of_[at(operation)];
    if (block == any) return next;
    const bool finished = --next.left_in_block[at(block)] == 0;
    next.open_block[at(problem_.operations[at(operation)].machine)] = finished ? any : block;
    return next;
}

std::vector<int> Graph::available(const Progress& progress) const {
    std::vector<int> operations;
    for (int op = 0; op < static_cast<int>(problem_.operations.size()); ++op) {
        if (progress.waiting[at(op)] > 0 || is_done(progress, op)) continue;
        const int open = progress.open_block[at(problem_.operations[at(op)].machine)];
        if (open == any || open == block_of_[at(op)]) operations.push_back(op);
    }
    return operations;
}

std::int64_t Graph::work_done(const Progress& progress, int and_operation) const {
    return progress.work_seconds + problem_.operations[at(and_operation)].seconds;
}

bool Graph::is_done(const Progress& progress, int operation) {
    return (progress.done[at(operation) / 64] >> (at(operation) % 64) & 1) != 0;
}

}  // namespace kw::order
