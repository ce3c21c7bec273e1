#include <algorithm>

#include "order/search.h"

namespace kw::order {

namespace {

// Of much work that could be next, most would be left out of the next layer anyway: a narrow beam goes on with no more than so many of
// the cheapest. A patient one must see them all.
constexpr std::size_t most_tried = 32;

class Beam {
public:
    Beam(Search& search, const BeamWidth& beam)
        : search_(search),
          expander_(search.expander),
          beam_(beam),
          nodes_(expander_.model()),
          layers_(expander_.model().count) {}

    bool run() {
        State start = expander_.start();
        const std::size_t done = count(start.done);
        nodes_.meet(start, {0, 0, start.spent_s, expander_.bound_s(start), done, true});
        layers_[done].push_back(0);
        for (auto& layer : layers_) {
            narrow(layer);
            for (const std::size_t index : layer) {
                if (is_over()) return false;
                if (nodes_[index].bound_s < search_.best_s) expand(index);
            }
        }
        return is_complete_;
    }

private:
    bool is_over() {
        if (!beam_.has_limits) return false;
        search_.ask_to_stop();
        return search_.stopped || search_.is_out_of_nodes();
    }

    void narrow(std::vector<std::size_t>& layer) {
        std::sort(layer.begin(), layer.end(), [this](std::size_t a, std::size_t b) {
            return std::pair(nodes_[a].bound_s, a) < std::pair(nodes_[b].bound_s, b);
        });
        if (layer.size() <= beam_.width) return;
        is_complete_ = is_complete_ && nodes_[layer[beam_.width]].bound_s >= search_.best_s;
        layer.resize(beam_.width);
    }

    void expand(std::size_t index) {
        nodes_.load(index, state_);
        const std::vector<Child>& children = expander_.children(state_, most());
        search_.nodes += static_cast<std::int64_t>(expander_.left_out());
        is_complete_ = is_complete_ && expander_.left_out() == 0;
        if (children.empty()) search_.note_dead_end(state_, nodes_[index].done);
        const bool wait =
            beam_.is_patient && std::any_of(children.begin(), children.end(), [this](const Child& child) {
                return expander_.is_patient(state_, child.move.operation);
            });
        for (const Child& child : children) {
            if (child.bound_s >= search_.best_s) continue;
            if (wait && !expander_.is_patient(state_, child.move.operation)) is_complete_ = false;
            else follow(index, child);
        }
    }

    std::size_t most() const {
        return beam_.is_patient ? Expander::no_limit : std::max(beam_.width, most_tried);
    }

    void follow(std::size_t index, const Child& child) {
        next_ = state_;
        const auto node = search_.carry_on(nodes_, index, child, next_);
        if (!node) return;
        const std::size_t known = nodes_.size();
        const std::size_t met = nodes_.meet(next_, *node).first;
        if (met == known) layers_[node->done].push_back(met);
    }

    Search& search_;
    Expander& expander_;
    BeamWidth beam_;
    Nodes nodes_;
    std::vector<std::vector<std::size_t>> layers_;  // by the number of operations done
    bool is_complete_ = true;
    State state_;
    State next_;
};

}  // namespace

bool search_beam(Search& search, const BeamWidth& beam) { return Beam(search, beam).run(); }

}  // namespace kw::order
