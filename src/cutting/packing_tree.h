#pragma once
// What lies on one sound region, as cuts: a group is a rectangle cut straight through into children side by side, and each child
// is a piece or a group that is cut the other way. What a group's children leave over is one free place at its end, since children
// can change places. Private to this folder.

#include <cstddef>
#include <vector>

#include "cutting/packing.h"

namespace kw::cutting {

struct TreeNode {
    Ticks length = 0;
    Ticks width = 0;
    Ticks rest = 0;        // of a group: what is free behind its children, in their direction
    int parent = -1;       // the root has none
    int first_child = -1;  // of a group
    int next = -1;         // the parent's next child
    int piece = -1;        // a group has none
    bool is_turned = false;
    bool is_along = true;  // of a group: the children lie one behind the other along the length
    bool is_used = true;

    bool is_group() const { return piece < 0; }
};

struct FreePlace {
    Ticks length = 0;
    Ticks width = 0;
    int group = 0;
};

// Which way a place is cut first to fit a piece in: across it, next to the piece, or along it, above the piece.
enum class FirstCut { across, along };

class PackingTree {
public:
    PackingTree() = default;
    explicit PackingTree(Region region);

    const std::vector<TreeNode>& nodes() const { return nodes_; }  // the root first; unused ones among them
    const std::vector<FreePlace>& places() const { return places_; }
    bool is_empty() const { return nodes_[0].first_child < 0; }

    // The piece must fit. Lists the places anew.
    void insert(const FreePlace& place, int piece, Region size, bool is_turned, FirstCut cut);
    // For a layout that is known already: a group of `size` at the end of the parent's children, a piece likewise. They must fit the
    // parent, and be as wide as it is across its direction. The places are listed by list_places().
    int add_group(int parent, Region size, bool is_along);
    void add_piece(int parent, Region size, int piece, bool is_turned);
    // Takes out a node with all that hangs on it, and writes the pieces to `pieces`. The places are listed by list_places().
    void remove(int node, std::vector<int>& pieces);
    // Rests that are narrower than `least_width` or shorter than `least_length` hold no piece.
    void list_places();
    void set_least(Ticks length, Ticks width) { least_length_ = length, least_width_ = width; }

private:
    int add(TreeNode node);
    void unlink(int node);
    void drop(int node, std::vector<int>& pieces);
    void tidy(int group);
    void lift_only_child(int group);
    Ticks& along_of(int node, bool is_along) {
        TreeNode& at = nodes_[static_cast<std::size_t>(node)];
        return is_along ? at.length : at.width;
    }
    TreeNode& at(int node) { return nodes_[static_cast<std::size_t>(node)]; }

    std::vector<TreeNode> nodes_;
    std::vector<FreePlace> places_;
    int unused_ = -1;  // the first unused node; the others by `next`
    Ticks least_length_ = 1;
    Ticks least_width_ = 1;
};

}  // namespace kw::cutting
