// The words of problem.h, one after another.
#include "brute/brute.h"

namespace ord {

Brute::Brute(const kw::order::Problem& problem) : problem_(problem), at_(problem.start_machine) {
    for (const auto& machine : problem.machines) stands_.push_back(machine.start);
    done_.resize(problem.operations.size(), false);
}

std::optional<std::int64_t> Brute::least_seconds() {
    pick(0, 0);
    return best_;
}

std::optional<std::int64_t> Brute::least_seconds_remembering() {
    remembers_ = true;
    return least_seconds();
}

std::optional<std::int64_t> Brute::seconds_of(const std::vector<std::size_t>& order) {
    std::int64_t spent = 0;
    if (!keeps_choices(order)) return std::nullopt;
    for (const std::size_t i : order) {
        if (done_[i] || !all_before_are_done(i)) return std::nullopt;
        const std::optional<std::int64_t> cost = run(i);
        if (!cost) return std::nullopt;
        spent += *cost;
    }
    return spent;
}

void Brute::pick(std::size_t choice, std::size_t left_out) {
    if (choice == problem_.choices.size()) {
        cheapest_.clear();
        return go_on(left_out, 0);
    }
    const auto& options = problem_.choices[choice].options;
    for (std::size_t picked = 0; picked < options.size(); ++picked) {
        std::size_t count = left_out;
        for (std::size_t o = 0; o < options.size(); ++o)
            for (const std::size_t i : options[o]) {
                done_[i] = o != picked;
                count += o != picked;
            }
        pick(choice + 1, count);
    }
}

bool Brute::keeps_choices(const std::vector<std::size_t>& order) {
    std::vector<int> times(done_.size(), 0);
    for (const std::size_t i : order) times[i] += 1;
    std::vector<bool> must(done_.size(), true);
    for (const auto& choice : problem_.choices) {
        int begun = 0;
        for (const auto& option : choice.options) {
            const bool is_picked = times[option[0]] > 0;
            begun += is_picked;
            for (const std::size_t i : option) must[i] = is_picked;
        }
        if (begun != 1) return false;
    }
    for (std::size_t i = 0; i < done_.size(); ++i) {
        if (times[i] != (must[i] ? 1 : 0)) return false;
        done_[i] = !must[i];
    }
    return true;
}

void Brute::go_on(std::size_t count, std::int64_t spent) {
    if (best_ && spent >= *best_) return;
    if (count == done_.size()) {
        best_ = spent;
        return;
    }
    if (remembers_ && was_here_for_no_more(spent)) return;
    for (std::size_t i = 0; i < done_.size(); ++i) {
        if (done_[i] || !all_before_are_done(i)) continue;
        const auto stood = stands_;
        const auto was_at = at_;
        if (const auto cost = run(i)) {
            go_on(count + 1, spent + *cost);
            done_[i] = false;
        }
        at_ = was_at;
        stands_ = stood;
    }
}

bool Brute::was_here_for_no_more(std::int64_t spent) {
    std::vector<int> key{at_ ? static_cast<int>(*at_) : -1};
    for (const auto& stand : stands_) key.insert(key.end(), stand.begin(), stand.end());
    key.insert(key.end(), done_.begin(), done_.end());
    const auto [known, is_new] = cheapest_.try_emplace(key, spent);
    if (!is_new && known->second <= spent) return true;
    known->second = spent;
    return false;
}

bool Brute::all_before_are_done(std::size_t i) const {
    for (const auto& [first, then] : problem_.precedences)
        if (then == i && !done_[first]) return false;
    return true;
}

std::optional<std::int64_t> Brute::run(std::size_t i) {
    const auto& operation = problem_.operations[i];
    const auto& machine = problem_.machines[operation.machine];
    std::vector<int>& stands = stands_[operation.machine];
    std::vector<bool> touched(stands.size(), false), lost(stands.size(), false);
    for (std::size_t a = 0; a < stands.size(); ++a) {
        if (operation.needs[a] < 0 || operation.needs[a] == stands[a]) continue;
        touched[a] = true;
        lose_what_hangs_on(machine, a, lost);
    }
    for (std::size_t a = 0; a < stands.size(); ++a) touched[a] = touched[a] || lost[a];
    if (is_disturbed(i, touched)) return std::nullopt;
    std::int64_t cost = operation.duration_s;
    if (at_ && *at_ != operation.machine) cost += machine.walk_s;
    for (std::size_t a = 0; a < stands.size(); ++a) {
        if (!touched[a]) continue;
        const int from = lost[a] ? -1 : stands[a];
        stands[a] = operation.needs[a];
        if (operation.needs[a] >= 0) cost += setting(machine.attributes[a], from, operation.needs[a]);
    }
    at_ = operation.machine;
    done_[i] = true;
    return cost;
}

std::int64_t Brute::setting(const kw::order::Attribute& attribute, int from, int value) {
    const auto& table = attribute.change_from_to_s;
    if (from >= 0 && from < static_cast<int>(table.size())) {
        const auto& row = table[static_cast<std::size_t>(from)];
        if (value < static_cast<int>(row.size())) return row[static_cast<std::size_t>(value)];
    }
    for (std::size_t v = 0; v < attribute.change_to_s.size(); ++v)
        if (static_cast<int>(v) == value) return attribute.change_to_s[v];
    return attribute.change_s;
}

void Brute::lose_what_hangs_on(const kw::order::Machine& machine, std::size_t a, std::vector<bool>& lost) {
    for (const std::size_t b : machine.attributes[a].invalidates) {
        if (lost[b]) continue;
        lost[b] = true;
        lose_what_hangs_on(machine, b, lost);
    }
}

bool Brute::is_disturbed(std::size_t i, const std::vector<bool>& touched) const {
    for (const auto& group : problem_.groups) {
        if (problem_.operations[group.operations[0]].machine != problem_.operations[i].machine) continue;
        bool own = false, some_done = group.begun, some_left = false;
        for (const std::size_t member : group.operations) {
            own = own || member == i;
            (done_[member] ? some_done : some_left) = true;
        }
        if (own || !some_done || !some_left) continue;
        for (const std::size_t a : group.held)
            if (touched[a]) return true;
    }
    return false;
}

}  // namespace ord
