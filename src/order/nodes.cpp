#include "order/nodes.h"

#include <algorithm>

namespace kw::order {

namespace {

constexpr std::size_t labels_per_word = 4;
constexpr std::size_t first_table = 1024;  // a power of two, like all sizes of the table

}  // namespace

Nodes::Nodes(const Model& model)
    : model_(model),
      done_words_(model.words()),
      labels_(model.views.size()),
      words_(done_words_ + (labels_ + labels_per_word - 1) / labels_per_word),
      scratch_(words_, 0),
      table_(first_table, 0) {}

void Nodes::pack(const State& state) {
    std::copy(state.done.begin(), state.done.end(), scratch_.begin());
    std::fill(scratch_.begin() + static_cast<std::ptrdiff_t>(done_words_), scratch_.end(), 0);
    for (std::size_t v = 0; v < labels_; ++v)
        scratch_[done_words_ + v / labels_per_word] |= Word{state.label[v]} << (16 * (v % labels_per_word));
}

void Nodes::load(std::size_t index, State& state) const {
    const Word* packed = packed_.data() + index * words_;
    state.done.assign(packed, packed + done_words_);
    state.label.resize(labels_);
    for (std::size_t v = 0; v < labels_; ++v)
        state.label[v] = static_cast<Label>(
            packed[done_words_ + v / labels_per_word] >> (16 * (v % labels_per_word)) & 0xFFFF);
    state.spent_s = nodes_[index].spent_s;
    state.picked = picked_by(model_, state.done);
}

// Where the table has the state, or the free place for it.
std::size_t Nodes::slot_of(const Word* packed) const {
    Word hash = 0;
    for (std::size_t w = 0; w < words_; ++w) {
        hash = (hash ^ packed[w]) * 0x9E3779B97F4A7C15U;
        hash ^= hash >> 32;
    }
    const std::size_t wrap = table_.size() - 1;
    std::size_t slot = static_cast<std::size_t>(hash) & wrap;
    while (table_[slot] != 0) {
        const Word* other = packed_.data() + (table_[slot] - 1) * words_;
        if (std::equal(packed, packed + words_, other)) break;
        slot = (slot + 1) & wrap;
    }
    return slot;
}

void Nodes::grow() {
    table_.assign(table_.size() * 2, 0);
    for (std::size_t i = 0; i < nodes_.size(); ++i) table_[slot_of(packed_.data() + i * words_)] = i + 1;
}

std::pair<std::size_t, bool> Nodes::meet(const State& state, const Node& node) {
    pack(state);
    const std::size_t slot = slot_of(scratch_.data());
    if (table_[slot] != 0) {
        const std::size_t index = table_[slot] - 1;
        if (nodes_[index].spent_s <= node.spent_s) return {index, false};
        nodes_[index] = node;
        return {index, true};
    }
    packed_.insert(packed_.end(), scratch_.begin(), scratch_.end());
    nodes_.push_back(node);
    table_[slot] = nodes_.size();
    if (2 * nodes_.size() > table_.size()) grow();
    return {nodes_.size() - 1, true};
}

std::vector<std::size_t> Nodes::moves_to(std::size_t index, std::size_t last) const {
    std::vector<std::size_t> moves{last};
    for (; nodes_[index].parent != index; index = nodes_[index].parent)
        moves.push_back(nodes_[index].operation);
    std::reverse(moves.begin(), moves.end());
    return moves;
}

}  // namespace kw::order
