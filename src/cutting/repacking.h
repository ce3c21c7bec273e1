#pragma once
// The state of the search of repack.h. Private to this folder.

#include <cmath>
#include <utility>

#include "cutting/random.h"
#include "cutting/repack.h"

namespace kw::cutting {

inline constexpr std::size_t orders = 5;  // in which pieces are put in again
inline constexpr std::size_t memory =
    200;  // rounds after which a layout must be better than it was (late acceptance)
inline constexpr double tidiness = 0.02;  // what large free places are worth beside a sheet's area of pieces

struct PlaceFor {
    std::size_t sheet = 0;
    std::size_t region = 0;
    FreePlace free;
    bool is_turned = false;
    FirstCut cut = FirstCut::across;
};

class Repacking {
public:
    Repacking(const Packing& packing, const RepackGoal& goal, const Effort& effort);

    void begin_with(const std::vector<PackingTree>& begun);
    Packed run();

private:
    void measure();
    void rank();
    void round();
    void ruin();
    void ruin_sheet(std::size_t sheet, std::size_t count);
    void recreate(std::size_t order);
    bool place(int piece);
    bool open_for(int piece);
    void look(std::size_t sheet, int piece, double& least, PlaceFor& best);
    void put(const PlaceFor& place, int piece);
    void out(int piece) {
        pool_.push_back(piece);
        lost_ += packing_.pieces[static_cast<std::size_t>(piece)].value;
    }
    void touch(std::size_t sheet);
    void undo();
    void close_empty();
    void note_best();
    void take_if_complete();
    void shrink_to_goal();
    void start_history() { history_.assign(memory, objective()); }
    double objective() const;
    double worth(Ticks length, Ticks width) const {
        if (length < least_length_ || width < least_width_) return 0;
        const double area = static_cast<double>(length) * static_cast<double>(width) * per_area_;
        return area * std::sqrt(area);
    }
    void measure_places(std::size_t sheet);

    const Packing& packing_;
    const RepackGoal& goal_;
    const Effort& effort_;
    Chance chance_;
    Ticks least_length_ = 1;
    Ticks least_width_ = 1;
    double per_area_ = 1;
    double per_value_ = 1;
    std::vector<std::vector<int>> ranks_;       // by order: each piece's place in it
    std::vector<std::size_t> stocks_by_price_;  // least cost for its area first
    std::vector<Sheet> sheets_;                 // closed ones among them
    std::vector<double> worths_;                // of the free places, by sheet
    std::vector<Region> largest_;               // the longest and the widest free place of each sheet
    std::vector<int> used_;                     // sheets of each stock
    std::vector<int> pool_;                     // pieces that are out
    std::int64_t lost_ = 0;
    std::int64_t cost_ = 0;
    std::int64_t budget_ = std::numeric_limits<std::int64_t>::max();
    std::int64_t looks_ = 0;
    std::int64_t next_tell_ = 0;
    bool is_done_ = false;
    Packed best_;
    std::vector<double> history_;
    std::size_t rounds_ = 0;

    // Before this round: what it has touched, to be put back.
    std::vector<std::size_t> touched_;
    std::vector<Sheet> before_;
    std::vector<int> pool_before_;
    std::vector<int> used_before_;
    std::int64_t lost_before_ = 0;
    std::int64_t cost_before_ = 0;
    std::size_t sheets_before_ = 0;
    std::vector<int> waiting_;
    std::vector<int> tried_;  // by piece: the last recreation in which it found no place
    int recreation_ = 0;
};

}  // namespace kw::cutting
