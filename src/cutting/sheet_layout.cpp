#include "cutting/sheet_layout.h"

#include <algorithm>

namespace kw::cutting {
namespace {

class LayoutWriter {
public:
    LayoutWriter(const Sheet& sheet, const SoundWay& way, const Scale& scale)
        : sheet_(sheet), way_(way), scale_(scale) {
        layout_.sheet = sheet.stock;
    }

    SheetLayout write() {
        write_way(0);
        const auto area = [](const Rectangle& r) { return r.length.mm() * r.width.mm(); };
        std::stable_sort(layout_.offcuts.begin(), layout_.offcuts.end(),
                         [&area](const Rectangle& a, const Rectangle& b) { return area(a) > area(b); });
        return std::move(layout_);
    }

private:
    Rectangle wood(const Spot& spot) const {
        const auto length = [](Ticks ticks) { return Length::from_ticks(ticks); };
        return {length(spot.x + scale_.trim), length(spot.y + scale_.trim), length(spot.length - scale_.kerf),
                length(spot.width - scale_.kerf)};
    }
    bool is_wood(const Spot& spot) const { return spot.length > scale_.kerf && spot.width > scale_.kerf; }
    CutNode& node(int index) { return layout_.cuts[static_cast<std::size_t>(index)]; }

    int add(const Spot& spot, CutUse use) {
        CutNode added;
        added.area = wood(spot);
        added.use = use;
        layout_.cuts.push_back(added);
        return static_cast<int>(layout_.cuts.size()) - 1;
    }

    int add_cut(const Spot& spot, bool is_across, Ticks at) {
        const int index = add(spot, CutUse::cut);
        node(index).direction = is_across ? CutDirection::crosscut : CutDirection::rip;
        node(index).fence = Length::from_ticks(at - scale_.kerf);
        return index;
    }

    int write_free(const Spot& spot) {
        if (!is_wood(spot)) return -1;
        const int index = add(spot, CutUse::offcut);
        const Rectangle area = node(index).area;
        if (area.length < scale_.least_offcut_length || area.width < scale_.least_offcut_width)
            node(index).use = CutUse::waste;
        else layout_.offcuts.push_back(area);
        return index;
    }

    int write_way(int index) {
        const SoundNode& sound = way_.nodes[static_cast<std::size_t>(index)];
        if (sound.region >= 0) {
            const PackingTree& tree = sheet_.regions[static_cast<std::size_t>(sound.region)];
            return is_wood(sound.spot) ? write_group(tree, 0, sound.spot) : -1;
        }
        if (!sound.is_cut) return is_wood(sound.spot) ? add(sound.spot, CutUse::waste) : -1;
        const bool has_first = is_wood(way_.nodes[static_cast<std::size_t>(sound.first)].spot);
        const bool has_second = is_wood(way_.nodes[static_cast<std::size_t>(sound.second)].spot);
        if (!has_first && !has_second) return add(sound.spot, CutUse::waste);
        const int cut = add_cut(sound.spot, sound.is_across, sound.at);
        const int first = has_first ? write_way(sound.first) : -1;
        const int second = has_second ? write_way(sound.second) : -1;
        // Waste with a defect in it is cut no further.
        const auto is_waste = [this](int part) { return part < 0 || node(part).use == CutUse::waste; };
        if (is_waste(first) && is_waste(second)) {
            layout_.cuts.resize(static_cast<std::size_t>(cut));
            return add(sound.spot, CutUse::waste);
        }
        // Where the blade takes all of the first part, the edge is trimmed: the fence is set to what stays.
        if (!has_first)
            node(cut).fence = sound.is_across ? node(second).area.length : node(second).area.width;
        node(cut).cut_off = first;
        node(cut).remainder = second;
        return cut;
    }

    // The longest or widest first, so that what has one setting comes one after another.
    static std::vector<int> children_of(const PackingTree& tree, const TreeNode& group) {
        std::vector<int> children;
        for (int c = group.first_child; c >= 0; c = tree.nodes()[static_cast<std::size_t>(c)].next)
            children.push_back(c);
        std::stable_sort(children.begin(), children.end(), [&](int a, int b) {
            const TreeNode& x = tree.nodes()[static_cast<std::size_t>(a)];
            const TreeNode& y = tree.nodes()[static_cast<std::size_t>(b)];
            return group.is_along ? x.length > y.length : x.width > y.width;
        });
        return children;
    }

    int write_node(const PackingTree& tree, int index, const Spot& spot) {
        const TreeNode& at = tree.nodes()[static_cast<std::size_t>(index)];
        if (at.is_group()) return write_group(tree, index, spot);
        const int piece = add(spot, CutUse::piece);
        node(piece).piece = static_cast<std::size_t>(at.piece);
        node(piece).is_turned = at.is_turned;
        node(piece).placed = layout_.pieces.size();
        layout_.pieces.push_back({node(piece).piece, node(piece).area, at.is_turned});
        return piece;
    }

    int write_group(const PackingTree& tree, int index, Spot rest) {
        const TreeNode& group = tree.nodes()[static_cast<std::size_t>(index)];
        int root = -1;
        int last_cut = -1;
        const auto hang = [this, &root, &last_cut](int part) {
            if (last_cut >= 0) node(last_cut).remainder = part;
            if (root < 0) root = part;
        };
        for (const int child : children_of(tree, group)) {
            const TreeNode& at = tree.nodes()[static_cast<std::size_t>(child)];
            const Ticks size = group.is_along ? at.length : at.width;
            if (size == (group.is_along ? rest.length : rest.width)) {
                hang(write_node(tree, child, rest));
                return root;
            }
            Spot part = rest;
            (group.is_along ? part.length : part.width) = size;
            const int cut = add_cut(rest, group.is_along, size);
            hang(cut);
            const int cut_off = write_node(tree, child, part);
            node(cut).cut_off = cut_off;
            last_cut = cut;
            (group.is_along ? rest.x : rest.y) += size;
            (group.is_along ? rest.length : rest.width) -= size;
        }
        hang(write_free(rest));
        return root;
    }

    const Sheet& sheet_;
    const SoundWay& way_;
    const Scale& scale_;
    SheetLayout layout_;
};

}  // namespace

SheetLayout layout_of(const Sheet& sheet, const SoundWay& way, const Scale& scale) {
    return LayoutWriter(sheet, way, scale).write();
}

}  // namespace kw::cutting
