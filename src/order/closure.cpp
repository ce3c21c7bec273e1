#include "order/closure.h"

#include "order/choices.h"

namespace kw::order {

namespace {

class Closure {
public:
    Closure(const Problem& problem, const Nexts& next)
        : next_(next),
          words_(words_for(next.size())),
          options_(options_of(problem)),
          has_choices_(!problem.choices.empty()),
          before_(next.size(), Bits(words_, 0)) {
        for (const Choice& choice : problem.choices) {
            members_.emplace_back();
            for (const auto& option : choice.options) {
                members_.back().emplace_back(words_, 0);
                for (const std::size_t i : option) put(members_.back().back(), i);
            }
        }
    }

    std::vector<Bits> run() {
        std::vector<std::size_t> order = sequence(next_);
        const bool has_ring = order.size() < next_.size();
        if (has_ring) {
            order.clear();
            for (std::size_t i = 0; i < next_.size(); ++i) order.push_back(i);
        }
        // Round a ring, what was found at its end goes once more; without one, once is enough.
        while (pass(order) && has_ring) {}
        return std::move(before_);
    }

private:
    bool pass(const std::vector<std::size_t>& order) {
        bool is_more = false;
        for (const std::size_t i : order)
            for (const std::size_t target : next_[i]) {
                if (exclude_each_other(options_[i], options_[target])) continue;
                const Bits known = before_[target];
                put(before_[target], i);
                add(i, target);
                is_more = is_more || known != before_[target];
            }
        return is_more;
    }

    // What comes before `via`, and with it before the target.
    void add(std::size_t via, std::size_t target) {
        Bits& all = before_[target];
        if (!has_choices_) return put_all(all, before_[via]);
        const OptionOf &own = options_[via], &its = options_[target];
        const bool both = own.choice == no_choice || own == its;
        for (std::size_t w = 0; w < words_; ++w) {
            Word through = before_[via][w];
            if (!both) through &= members_[own.choice][own.option][w];
            all[w] |= through & ~excluded(its, w);
        }
    }

    // Operations that are never done together with those of the option.
    Word excluded(const OptionOf& option, std::size_t w) const {
        Word others = 0;
        if (option.choice == no_choice) return others;
        for (std::size_t o = 0; o < members_[option.choice].size(); ++o)
            if (o != option.option) others |= members_[option.choice][o][w];
        return others;
    }

    const Nexts& next_;
    std::size_t words_;
    std::vector<OptionOf> options_;
    bool has_choices_;
    std::vector<std::vector<Bits>> members_;  // by choice and option
    std::vector<Bits> before_;
};

}  // namespace

std::vector<std::size_t> sequence(const Nexts& next) {
    std::vector<std::size_t> waiting(next.size(), 0);
    for (const auto& targets : next)
        for (const std::size_t target : targets) ++waiting[target];
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < waiting.size(); ++i)
        if (waiting[i] == 0) order.push_back(i);
    for (std::size_t done = 0; done < order.size(); ++done)
        for (const std::size_t target : next[order[done]])
            if (--waiting[target] == 0) order.push_back(target);
    return order;
}

std::vector<Bits> close(const Problem& problem, const Nexts& next) { return Closure(problem, next).run(); }

}  // namespace kw::order
