#include "cutting/covering.h"

#include <utility>

namespace kw::cutting {

namespace {

constexpr double nothing = 1e-9;
constexpr double gain = 1e-7;  // a pattern worth less than that above its cost is not taken in

}  // namespace

Covering::Covering(std::vector<double> demand, std::vector<double> alone)
    : rows_(demand.size()),
      alone_(std::move(alone)),
      inverse_(rows_ * rows_, 0),
      amounts_(rows_, 0),
      costs_(rows_, 1),
      names_(rows_, -1) {
    for (std::size_t i = 0; i < rows_; ++i) {
        inverse_[i * rows_ + i] = 1 / alone_[i];
        amounts_[i] = demand[i] / alone_[i];
    }
}

std::vector<double> Covering::prices() const {
    std::vector<double> prices(rows_, 0);
    for (std::size_t b = 0; b < rows_; ++b)
        if (costs_[b] > 0)
            for (std::size_t i = 0; i < rows_; ++i) prices[i] += costs_[b] * inverse_[b * rows_ + i];
    return prices;
}

double Covering::cost() const {
    double sum = 0;
    for (std::size_t b = 0; b < rows_; ++b) sum += costs_[b] * amounts_[b];
    return sum;
}

bool Covering::enter(const Counts& column, double cost, int name) {
    std::vector<double> change(rows_, 0);
    for (std::size_t b = 0; b < rows_; ++b)
        for (std::size_t i = 0; i < rows_; ++i) change[b] += inverse_[b * rows_ + i] * column[i];
    std::size_t leaves = rows_;
    double most = 0;
    for (std::size_t b = 0; b < rows_; ++b) {
        if (change[b] <= nothing) continue;
        const double amount = amounts_[b] / change[b];
        if (leaves == rows_ || amount < most) leaves = b, most = amount;
    }
    if (leaves == rows_) return false;
    const double pivot = change[leaves];
    for (std::size_t i = 0; i < rows_; ++i) inverse_[leaves * rows_ + i] /= pivot;
    for (std::size_t b = 0; b < rows_; ++b) {
        if (b == leaves || change[b] == 0) continue;
        amounts_[b] -= change[b] * most;
        if (amounts_[b] < 0) amounts_[b] = 0;
        for (std::size_t i = 0; i < rows_; ++i)
            inverse_[b * rows_ + i] -= change[b] * inverse_[leaves * rows_ + i];
    }
    amounts_[leaves] = most;
    costs_[leaves] = cost;
    names_[leaves] = name;
    return true;
}

// A kind whose price is below zero may be made in surplus.
void Covering::give_back_surplus() {
    for (std::size_t round = 0; round < 2 * rows_; ++round) {
        const std::vector<double> now = prices();
        std::size_t least = 0;
        for (std::size_t i = 1; i < rows_; ++i)
            if (now[i] < now[least]) least = i;
        if (now[least] >= -nothing) return;
        std::vector<double> surplus(rows_, 0);
        surplus[least] = -1;
        if (!enter(surplus, 0, -1)) return;
    }
}

std::vector<Covering::Use> Covering::uses() const {
    std::vector<Use> uses;
    for (std::size_t b = 0; b < rows_; ++b)
        if (names_[b] >= 0) uses.push_back({static_cast<std::size_t>(names_[b]), amounts_[b]});
    return uses;
}

// A kind alone is a pattern as well, and is looked at again as the others are.
void Covering::cover(const std::vector<Counts>& patterns) {
    const std::size_t most_rounds = 20 * rows_ + 100;  // enough, and an end where rounding goes in circles
    for (std::size_t round = 0; round < most_rounds; ++round) {
        const std::vector<double> now = prices();
        double most = 1 + gain;
        int best = -1;
        for (std::size_t p = 0; p < patterns.size(); ++p) {
            const double worth = worth_of(patterns[p], now);
            if (worth > most) most = worth, best = static_cast<int>(p);
        }
        std::size_t dearest = rows_;
        for (std::size_t i = 0; i < rows_; ++i)
            if (now[i] * alone_[i] > most) most = now[i] * alone_[i], dearest = i;
        if (dearest < rows_) {
            Counts alone(rows_, 0);
            alone[dearest] = alone_[dearest];
            if (!enter(alone, 1, -1)) return;
        } else if (best < 0 || !enter(patterns[static_cast<std::size_t>(best)], 1, best)) {
            return;
        }
        give_back_surplus();
    }
}

double worth_of(const Counts& pattern, const std::vector<double>& prices) {
    double worth = 0;
    for (std::size_t i = 0; i < pattern.size(); ++i) worth += pattern[i] * prices[i];
    return worth;
}

}  // namespace kw::cutting
