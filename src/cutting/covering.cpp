#include "cutting/covering.h"

namespace kw::cutting {

constexpr double nothing = 1e-9;

Covering::Covering(const std::vector<double>& demand, const std::vector<double>& alone)
    : rows_(demand.size()),
      inverse_(rows_ * rows_, 0),
      amounts_(rows_, 0),
      costs_(rows_, 1),
      names_(rows_, -1) {
    for (std::size_t i = 0; i < rows_; ++i) {
        inverse_[i * rows_ + i] = 1 / alone[i];
        amounts_[i] = demand[i] / alone[i];
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

bool Covering::enter(const std::vector<double>& column, double cost, int name) {
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
        if (names_[b] >= 0) uses.push_back({names_[b], amounts_[b]});
    return uses;
}

bool Covering::improve(const std::vector<double>& pattern, int name) {
    if (!enter(pattern, 1, name)) return false;
    give_back_surplus();
    return true;
}

}  // namespace kw::cutting
