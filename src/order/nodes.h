#pragma once
// The partial orders that a search has met: one node for all that do the same work and leave the machines alike, kept by the cheapest.

#include "order/state.h"

namespace kw::order {

struct Node {
    std::size_t parent = 0;     // of the root: itself
    std::size_t operation = 0;  // the move that led here; what is done at once after it follows from it
    std::int64_t spent_s = 0;
    std::int64_t bound_s = 0;
    std::size_t done = 0;  // operations
    bool is_open = true;   // not expanded since it was last made cheaper
};

class Nodes {
public:
    explicit Nodes(const Model& model);

    // The node of the state, and whether it is new or was dearer until now; then `node` replaces it.
    std::pair<std::size_t, bool> meet(const State& state, const Node& node);

    void load(std::size_t index, State& state) const;
    // From the root to the node, and on by `last`.
    std::vector<std::size_t> moves_to(std::size_t index, std::size_t last) const;

    Node& operator[](std::size_t index) { return nodes_[index]; }
    const Node& operator[](std::size_t index) const { return nodes_[index]; }
    std::size_t size() const { return nodes_.size(); }

private:
    void pack(const State& state);
    std::size_t slot_of(const Word* packed) const;
    void grow();

    const Model& model_;
    std::size_t done_words_;
    std::size_t labels_;
    std::size_t words_;          // of a packed state
    std::vector<Word> packed_;   // all nodes' states
    std::vector<Word> scratch_;  // the state that is looked for
    std::vector<Node> nodes_;
    std::vector<std::size_t> table_;  // node + 1, open addressing; 0: free
};

}  // namespace kw::order
