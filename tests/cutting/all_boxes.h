#pragma once
// Every way there is to cut a few pieces from one rectangle, tried: for each set of pieces, the smallest boxes that cuts from edge to edge
// can set it apart in. A box of a set is a box of one part beside or above a box of the rest.

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "cutting/cuts.h"

namespace laid {

struct BoxPiece {
    kw::Length length;
    kw::Length width;
    bool may_turn = false;
};

// Sets are bits: piece 0 is 1, piece 1 is 2 ...
class AllBoxes {
public:
    // A kerf is added to each piece: a rectangle that is a kerf longer and wider holds them.
    AllBoxes(const std::vector<BoxPiece>& pieces, kw::Length kerf)
        : boxes_(std::size_t{1} << pieces.size()), kerf_(kerf) {
        for (std::size_t set = 1; set < boxes_.size(); ++set) {
            for (std::size_t p = 0; p < pieces.size(); ++p)
                if (set == std::size_t{1} << p) add_single(set, pieces[p]);
            for (std::size_t part = (set - 1) & set; part > 0; part = (part - 1) & set)
                if (part < (set ^ part)) join(set, part, set ^ part);
        }
    }

    bool fit(std::size_t set, kw::Length length, kw::Length width) const {
        for (const Box& box : boxes_[set])
            if (box.length <= length + kerf_ && box.width <= width + kerf_) return true;
        return set == 0;
    }
    std::size_t sets() const { return boxes_.size(); }

private:
    struct Box {
        kw::Length length;
        kw::Length width;
    };

    void add_single(std::size_t set, const BoxPiece& piece) {
        add(set, {piece.length + kerf_, piece.width + kerf_});
        if (piece.may_turn) add(set, {piece.width + kerf_, piece.length + kerf_});
    }
    void join(std::size_t set, std::size_t a, std::size_t b) {
        for (const Box& one : boxes_[a])
            for (const Box& two : boxes_[b]) {
                add(set, {one.length + two.length, kw::max(one.width, two.width)});
                add(set, {kw::max(one.length, two.length), one.width + two.width});
            }
    }
    void add(std::size_t set, const Box& box) {
        for (const Box& other : boxes_[set])
            if (other.length <= box.length && other.width <= box.width) return;
        std::vector<Box> kept{box};
        for (const Box& other : boxes_[set])
            if (box.length > other.length || box.width > other.width) kept.push_back(other);
        boxes_[set] = std::move(kept);
    }

    std::vector<std::vector<Box>> boxes_;
    kw::Length kerf_;
};

}  // namespace laid
