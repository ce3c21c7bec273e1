#include "cutting/packing_tree.h"

namespace kw::cutting {

PackingTree::PackingTree(Region region) {
    TreeNode root;
    root.length = region.length;
    root.width = region.width;
    root.rest = region.length;
    nodes_.push_back(root);
    list_places();
}

int PackingTree::add(TreeNode node) {
    int index = unused_;
    if (index >= 0) {
        unused_ = at(index).next;
    } else {
        index = static_cast<int>(nodes_.size());
        nodes_.emplace_back();
    }
    TreeNode& parent = at(node.parent);
    node.next = parent.first_child;
    parent.first_child = index;
    parent.rest -= parent.is_along ? node.length : node.width;
    at(index) = node;
    return index;
}

int PackingTree::add_group(int parent, Region size, bool is_along) {
    TreeNode group;
    group.parent = parent;
    group.length = size.length;
    group.width = size.width;
    group.is_along = is_along;
    group.rest = is_along ? size.length : size.width;
    return add(group);
}

void PackingTree::add_piece(int parent, Region size, int piece, bool is_turned) {
    TreeNode leaf;
    leaf.parent = parent;
    leaf.length = size.length;
    leaf.width = size.width;
    leaf.piece = piece;
    leaf.is_turned = is_turned;
    add(leaf);
}

void PackingTree::insert(const FreePlace& place, int piece, Region size, bool is_turned, FirstCut cut) {
    int group = place.group;
    // A cut across makes a child of a group that lies along the length, and a cut along one of a group across it. A group of the
    // other direction gives its whole rest to one that is cut as asked.
    const bool is_along = cut == FirstCut::across;
    if (at(group).is_along != is_along && (is_along ? size.width < place.width : size.length < place.length))
        group = add_group(group, {place.length, place.width}, is_along);
    const bool along = at(group).is_along;
    const bool fills = along ? size.width == place.width : size.length == place.length;
    if (!fills) {
        const Region strip = along ? Region{size.length, place.width} : Region{place.length, size.width};
        group = add_group(group, strip, !along);
    }
    add_piece(group, size, piece, is_turned);
    list_places();
}

void PackingTree::unlink(int node) {
    TreeNode& parent = at(at(node).parent);
    parent.rest += parent.is_along ? at(node).length : at(node).width;
    int* link = &parent.first_child;
    while (*link != node) link = &at(*link).next;
    *link = at(node).next;
}

void PackingTree::drop(int node, std::vector<int>& pieces) {
    if (at(node).is_group()) {
        for (int child = at(node).first_child; child >= 0;) {
            const int next = at(child).next;
            drop(child, pieces);
            child = next;
        }
    } else {
        pieces.push_back(at(node).piece);
    }
    at(node).is_used = false;
    at(node).next = unused_;
    unused_ = node;
}

void PackingTree::remove(int node, std::vector<int>& pieces) {
    const int parent = at(node).parent;
    unlink(node);
    drop(node, pieces);
    tidy(parent);
}

// A group that has lost a child may be nothing but a free part of its parent, or be wider than what is left in it.
void PackingTree::tidy(int group) {
    while (group > 0) {
        const int parent = at(group).parent;
        if (at(group).first_child < 0) {
            unlink(group);
            std::vector<int> none;
            drop(group, none);
            group = parent;
            continue;
        }
        const bool is_along = at(group).is_along;
        if (at(group).rest < (is_along ? least_length_ : least_width_)) {
            // What all children leave free at their ends is free for the parent.
            Ticks slack = std::numeric_limits<Ticks>::max();
            for (int child = at(group).first_child; child >= 0; child = at(child).next)
                slack = at(child).is_group() ? (at(child).rest < slack ? at(child).rest : slack) : 0;
            if (slack > 0) {
                along_of(group, !is_along) -= slack;
                at(parent).rest += slack;
                for (int child = at(group).first_child; child >= 0; child = at(child).next) {
                    along_of(child, !is_along) -= slack;
                    at(child).rest -= slack;
                }
            }
            if (at(group).rest == 0) lift_only_child(group);
        }
        return;
    }
}

// A group that is all one child: the child's children lie as the parent's do.
void PackingTree::lift_only_child(int group) {
    const int child = at(group).first_child;
    if (at(child).next >= 0 || !at(child).is_group()) return;
    const int parent = at(group).parent;
    unlink(group);
    for (int grandchild = at(child).first_child; grandchild >= 0;) {
        const int next = at(grandchild).next;
        TreeNode& moved = at(grandchild);
        moved.parent = parent;
        moved.next = at(parent).first_child;
        at(parent).first_child = grandchild;
        at(parent).rest -= at(parent).is_along ? moved.length : moved.width;
        grandchild = next;
    }
    at(child).first_child = -1;
    std::vector<int> none;
    drop(group, none);
}

void PackingTree::list_places() {
    places_.clear();
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
        const TreeNode& node = nodes_[i];
        if (!node.is_used || !node.is_group() || node.rest == 0) continue;
        const Ticks length = node.is_along ? node.rest : node.length;
        const Ticks width = node.is_along ? node.width : node.rest;
        if (length >= least_length_ && width >= least_width_)
            places_.push_back({length, width, static_cast<int>(i)});
    }
}

}  // namespace kw::cutting
