#include "order/sets_of_options.h"

#include <algorithm>
#include <chrono>
#include <variant>

#include "order/bound.h"
#include "order/precedence.h"
#include "order/without.h"

namespace kw::order {

namespace {

constexpr std::int64_t short_look = 500;  // nodes, of each set before any gets more

struct Set {
    std::vector<std::size_t> picked;   // by choice
    std::vector<std::size_t> numbers;  // of its operations, in the whole problem
    Problem problem;
    std::int64_t bound_s = 0;
    bool is_open = true;                  // there may be an order that is better than the best
    std::vector<std::size_t> culprits{};  // in the whole problem, where it is impossible
};

// Numbered with the last choice fastest.
Set nth_set(const Problem& problem, std::size_t n) {
    Set set;
    std::vector<std::size_t> left_out;
    set.picked.resize(problem.choices.size());
    for (std::size_t c = problem.choices.size(); c-- > 0;) {
        const auto& options = problem.choices[c].options;
        set.picked[c] = n % options.size();
        n /= options.size();
        for (std::size_t o = 0; o < options.size(); ++o)
            if (o != set.picked[c]) left_out.insert(left_out.end(), options[o].begin(), options[o].end());
    }
    std::sort(left_out.begin(), left_out.end());
    for (std::size_t i = 0; i < problem.operations.size(); ++i)
        if (!std::binary_search(left_out.begin(), left_out.end(), i)) set.numbers.push_back(i);
    set.problem = without(problem, left_out);
    return set;
}

void close_as_impossible(Set& set, const std::vector<std::size_t>& operations) {
    set.is_open = false;
    for (const std::size_t i : operations) set.culprits.push_back(set.numbers[i]);
}

void find_bound(Set& set) {
    auto before = all_before(set.problem);
    if (const auto* found = std::get_if<Contradiction>(&before))
        return close_as_impossible(set, found->operations);
    const Model model = model_of(set.problem, std::get<std::vector<Bits>>(std::move(before)));
    set.bound_s = model.duration_s + Bound(model).floor(start_of(model)).total_s;
}

class Sets {
public:
    Sets(const Problem& problem, const Options& options) : options_(options) {
        const std::size_t count = sets_of_options(problem);
        for (std::size_t n = 0; n < count; ++n) {
            sets_.push_back(nth_set(problem, n));
            find_bound(sets_.back());
        }
        std::stable_sort(sets_.begin(), sets_.end(),
                         [](const Set& a, const Set& b) { return a.bound_s < b.bound_s; });
    }

    Result run() {
        // Short looks at all give an order that makes most long ones needless. Where even those are long, the likeliest must do.
        for (Set& set : sets_)
            if (!has_order() || best_.nodes < options_.node_limit) look_into(set, short_look);
        // Few are left then, and most of them are closed soon.
        for (Set& set : sets_) look_into(set, (options_.node_limit - best_.nodes) / 4);
        return finished();
    }

private:
    bool has_order() const { return !best_.order.empty(); }
    std::int64_t best_s() const { return has_order() ? best_.seconds : whatever_it_takes; }

    std::int64_t bound_of_all_s() const {
        std::int64_t least = best_s();
        for (const Set& set : sets_)
            if (set.is_open) least = std::min(least, set.bound_s);
        return least;
    }

    void look_into(Set& set, std::int64_t nodes) {
        set.is_open = set.is_open && set.bound_s < best_s();
        if (!set.is_open || stopped_ || nodes <= 0) return;
        Options limits = options_;
        limits.node_limit = nodes;
        if (options_.time_limit) limits.time_limit = time_left();
        if (options_.stop) limits.stop = [&](const Progress& progress) { return ask_to_stop(progress); };
        const Result result = solve_below(set.problem, limits, best_s());
        best_.nodes += result.nodes;
        if (result.status == Status::impossible) return close_as_impossible(set, result.culprits);
        if (!result.order.empty()) keep(set, result);
        set.is_open = result.status != Status::proved;
        set.bound_s = std::max(set.bound_s, result.lower_bound_seconds);
    }

    bool ask_to_stop(const Progress& progress) {
        const std::int64_t best = std::min(best_s(), progress.best_seconds);
        stopped_ = options_.stop({best, std::min(best, bound_of_all_s()), best_.nodes + progress.nodes});
        return stopped_;
    }

    std::chrono::milliseconds time_left() const {
        const auto spent =
            std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - began_);
        return std::max(std::chrono::milliseconds{0}, *options_.time_limit - spent);
    }

    void keep(const Set& set, const Result& result) {
        best_.seconds = result.seconds;
        best_.picked = set.picked;
        best_.order.clear();
        for (const std::size_t i : result.order) best_.order.push_back(set.numbers[i]);
    }

    Result finished() {
        const bool is_settled =
            std::none_of(sets_.begin(), sets_.end(), [](const Set& set) { return set.is_open; });
        if (!has_order() && is_settled) {
            best_.status = Status::impossible;
            best_.culprits = sets_.front().culprits;
            return std::move(best_);
        }
        best_.lower_bound_seconds = bound_of_all_s();
        best_.status = best_.lower_bound_seconds == best_s() ? Status::proved : Status::limited;
        return std::move(best_);
    }

    const Options& options_;
    const std::chrono::steady_clock::time_point began_ = std::chrono::steady_clock::now();
    std::vector<Set> sets_;
    Result best_;
    bool stopped_ = false;
};

}  // namespace

std::size_t sets_of_options(const Problem& problem) {
    std::size_t count = 1;
    for (const Choice& choice : problem.choices)
        if (count <= most_sets_to_solve) count *= choice.options.size();
    return count;
}

Result solve_each_set(const Problem& problem, const Options& options) { return Sets(problem, options).run(); }

}  // namespace kw::order
