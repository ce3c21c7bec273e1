#include "order/path_layers.h"

#include <algorithm>
#include <numeric>

#include "order/assignment.h"

namespace kw::order {

namespace {

struct Partial {
    Path::Set done{};
    std::int64_t spent_s = 0;
    std::int64_t penalties = 0;  // of what is left
    std::int64_t bound_s = 0;
    std::uint32_t parent = 0;  // in the layer before
    std::uint8_t last = 0;
};

struct Trace {
    std::uint32_t parent = 0;
    std::uint8_t last = 0;
};

// The partial orders of one length, one for all that have done the same and end alike: the cheapest.
class Layer {
public:
    Layer() : table_(first_table, 0) {}

    void meet(const Partial& partial) {
        const std::size_t slot = slot_of(partial);
        if (table_[slot] == 0) {
            partials.push_back(partial);
            table_[slot] = static_cast<std::uint32_t>(partials.size());
            if (2 * partials.size() > table_.size()) grow();
            return;
        }
        Partial& known = partials[table_[slot] - 1];
        if (partial.spent_s >= known.spent_s) return;
        known = partial;
    }

    std::vector<Partial> partials;

private:
    static constexpr std::size_t first_table = 256;

    std::size_t slot_of(const Partial& partial) const {
        Word hash = partial.last;
        for (const Word word : partial.done) {
            hash = (hash ^ word) * 0x9E3779B97F4A7C15U;
            hash ^= hash >> 29;
        }
        std::size_t slot = static_cast<std::size_t>(hash) & (table_.size() - 1);
        while (table_[slot] != 0) {
            const Partial& other = partials[table_[slot] - 1];
            if (other.last == partial.last && other.done[0] == partial.done[0] &&
                other.done[1] == partial.done[1])
                break;
            slot = (slot + 1) & (table_.size() - 1);
        }
        return slot;
    }

    void grow() {
        table_.assign(table_.size() * 2, 0);
        for (std::size_t i = 0; i < partials.size(); ++i)
            table_[slot_of(partials[i])] = static_cast<std::uint32_t>(i + 1);
    }

    std::vector<std::uint32_t> table_;  // index + 1, open addressing; 0: free
};

class Plans {  // assignments of a layer
public:
    explicit Plans(std::size_t side) : side_(side) {}
    Assignment::Plan operator[](std::size_t i) {
        if (rows_.size() < (i + 1) * side_) {
            rows_.resize((i + 1) * side_);
            prices_.resize((i + 1) * side_);
        }
        return {rows_.data() + i * side_, prices_.data() + i * side_};
    }
    void clear() {
        rows_.clear();
        prices_.clear();
    }

private:
    std::size_t side_;
    std::vector<std::uint8_t> rows_;
    std::vector<std::int64_t> prices_;
};

class Layers {
public:
    Layers(Search& search, const PathFloor& floor, std::size_t width, Assignments& assigns)
        : search_(search),
          path_(floor.without_dear_steps()),
          floor_(floor),
          width_(width),
          assigns_(assigns),
          assignment_(path_),
          plans_(path_.side()),
          next_plans_(path_.side()) {
        for (std::size_t i = 0; i < path_.count; ++i) put(all_, i);
    }

    bool run() {
        Partial start;
        start.last = static_cast<std::uint8_t>(path_.count);
        start.penalties = floor_.all_penalties();
        start.bound_s = assignment_.start(plans_[0]);
        layer_ = {start};
        for (std::size_t done = 0; done < path_.count; ++done) {
            if (!go_on(done)) return false;
            if (layer_.empty()) break;
        }
        if (left_out_s_ >= search_.best_s) return true;
        search_.bound_s = std::max(search_.bound_s, left_out_s_);
        return false;
    }

private:
    bool is_over() {
        search_.ask_to_stop();
        return search_.stopped || search_.is_out_of_nodes();
    }

    // From the layer with so many done to the next.
    bool go_on(std::size_t done) {
        Layer next;
        for (std::size_t p = 0; p < layer_.size(); ++p) {
            if (layer_[p].bound_s < search_.best_s) expand(p, next);
        }
        narrow(next.partials, 2 * width_);
        next_layer_.clear();
        next_plans_.clear();
        for (Partial& partial : next.partials) {
            if (is_over()) return false;
            ++search_.nodes;
            if (partial.bound_s >= search_.best_s) continue;
            if (assigns_.is_used) assign(partial);
            if (partial.bound_s < search_.best_s) next_layer_.push_back(partial);
        }
        settle_layer();
        if (done + 1 == path_.count) note_orders();
        return true;
    }

    void assign(Partial& partial) {
        const std::int64_t left_s = assignment_.go_on(partial.done, partial.last, plans_[partial.parent],
                                                      next_plans_[next_layer_.size()]);
        partial.bound_s = std::max(partial.bound_s, partial.spent_s + left_s);
        ++assigns_.asked;
        if (partial.bound_s >= search_.best_s) ++assigns_.pruned;
    }

    void expand(std::size_t p, Layer& next) {
        const Partial& partial = layer_[p];
        const std::size_t at_once = done_at_once(partial);
        if (at_once < path_.count) return go_on_with(p, at_once, next);
        for (std::size_t w = 0; w < partial.done.size(); ++w)
            each_in(all_[w] & ~partial.done[w], w * 64, [&](std::size_t i) {
                if (path_.is_ready(i, partial.done)) go_on_with(p, i, next);
            });
    }

    void go_on_with(std::size_t p, std::size_t i, Layer& next) const {
        const Partial& partial = layer_[p];
        const std::int64_t step_s = path_.from_to(partial.last, i);
        if (step_s >= Path::never) return;
        Partial child = partial;
        put(child.done, i);
        child.spent_s += step_s;
        child.penalties -= floor_.penalty(i);
        child.last = static_cast<std::uint8_t>(i);
        child.parent = static_cast<std::uint32_t>(p);
        const std::int64_t left_s = floor_.left_s(child.done, i, child.penalties);
        if (left_s >= Path::never) return;
        child.bound_s = std::max(child.spent_s + left_s, partial.bound_s);
        if (child.bound_s < search_.best_s) next.meet(child);
    }

    // Work that needs no change is done before any other, where the machine is orderly.
    std::size_t done_at_once(const Partial& partial) const {
        if (!path_.is_orderly || partial.last == path_.count) return path_.count;
        std::size_t i = 0;
        while (i < path_.count && (has(partial.done, i) || path_.twin[i] != path_.twin[partial.last] ||
                                   !path_.is_ready(i, partial.done)))
            ++i;
        return i;
    }

    template <class Partials>
    void narrow(Partials& partials, std::size_t width) {
        if (partials.size() <= width) return;
        const auto place = partials.begin() + static_cast<std::ptrdiff_t>(width);
        std::nth_element(partials.begin(), place, partials.end(), comes_first);
        for (auto out = place; out != partials.end(); ++out)
            left_out_s_ = std::min(left_out_s_, out->bound_s);
        partials.resize(width);
        // In an order that hangs on no library's way of doing it.
        std::sort(partials.begin(), partials.end(), comes_first);
    }

    static bool comes_first(const Partial& a, const Partial& b) {
        if (a.bound_s != b.bound_s) return a.bound_s < b.bound_s;
        if (a.spent_s != b.spent_s) return a.spent_s > b.spent_s;
        return std::pair(a.done, a.last) < std::pair(b.done, b.last);
    }

    // The best `width` become the layer.
    void settle_layer() {
        std::vector<std::uint32_t> by_bound(next_layer_.size());
        std::iota(by_bound.begin(), by_bound.end(), std::uint32_t{0});
        if (by_bound.size() > width_) {
            const auto place = by_bound.begin() + static_cast<std::ptrdiff_t>(width_);
            std::nth_element(by_bound.begin(), place, by_bound.end(),
                             [this](std::uint32_t a, std::uint32_t b) {
                                 return comes_first(next_layer_[a], next_layer_[b]);
                             });
            for (auto out = place; out != by_bound.end(); ++out)
                left_out_s_ = std::min(left_out_s_, next_layer_[*out].bound_s);
            by_bound.resize(width_);
            std::sort(by_bound.begin(), by_bound.end());
        }
        layer_.clear();
        plans_.clear();
        traces_.emplace_back();
        for (const std::uint32_t i : by_bound) {
            if (assigns_.is_used) {
                const Assignment::Plan from = next_plans_[i], to = plans_[layer_.size()];
                std::copy(from.row_of, from.row_of + path_.side(), to.row_of);
                std::copy(from.price, from.price + path_.side(), to.price);
            }
            layer_.push_back(next_layer_[i]);
            traces_.back().push_back({next_layer_[i].parent, next_layer_[i].last});
        }
    }

    void note_orders() {
        for (std::size_t p = 0; p < layer_.size(); ++p) {
            if (layer_[p].spent_s >= search_.best_s) continue;
            std::vector<std::size_t> order;
            std::size_t at = p;
            for (std::size_t l = traces_.size(); l-- > 0; at = traces_[l][at].parent)
                order.push_back(traces_[l][at].last);
            std::reverse(order.begin(), order.end());
            search_.note_better(std::move(order));
        }
    }

    Search& search_;
    const Path& path_;  // without steps that are in no better order
    const PathFloor& floor_;
    Path::Set all_{};
    std::size_t width_;
    Assignments& assigns_;
    Assignment assignment_;
    std::vector<Partial> layer_;
    std::vector<Partial> next_layer_;
    Plans plans_;
    Plans next_plans_;
    std::vector<std::vector<Trace>> traces_;
    std::int64_t left_out_s_ = no_order;  // the least bound of what was left out
};

}  // namespace

bool search_layers(Search& search, const PathFloor& floor, std::size_t width, Assignments& assigns) {
    return Layers(search, floor, width, assigns).run();
}

}  // namespace kw::order
