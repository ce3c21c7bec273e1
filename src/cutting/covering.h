#pragma once
// A linear program that grows: as few patterns as cover a demand, in parts where need be. Private to this folder.

#include <cstddef>
#include <vector>

namespace kw::cutting {

using Counts = std::vector<double>;  // how many of each kind a pattern has

// Dantzig's simplex method, revised (from memory), with all of the inverse kept: there are as many rows as kinds of pieces, a hundred or
// so. Doubles: whoever takes a bound from the prices makes sure of it by himself (see pattern_bound.cpp).
class Covering {
public:
    // `alone[i]`: how many of i one pattern of nothing else has; above zero.
    Covering(std::vector<double> demand, std::vector<double> alone);

    // What one more of each kind would cost; none below zero once cover() is done.
    std::vector<double> prices() const;
    double cost() const;
    // Takes patterns in for as long as one of `patterns` lessens the cost.
    void cover(const std::vector<Counts>& patterns);

    struct Use {
        std::size_t pattern = 0;  // its index
        double amount = 0;
    };
    // The patterns that are used; the rest of the demand is covered by kinds alone.
    std::vector<Use> uses() const;

private:
    bool enter(const Counts& column, double cost, int name);
    void give_back_surplus();

    std::size_t rows_;
    std::vector<double> alone_;
    std::vector<double> inverse_;  // by rows
    std::vector<double> amounts_;  // of the basis
    std::vector<double> costs_;
    std::vector<int> names_;  // below zero: no pattern that was taken in
};

// What a pattern is worth at prices.
double worth_of(const Counts& pattern, const std::vector<double>& prices);

}  // namespace kw::cutting
