#pragma once
// A linear program that grows: as few patterns as cover a demand, in parts where need be. Private to this folder.

#include <cstddef>
#include <vector>

namespace kw::cutting {

// Dantzig's simplex method, revised (from memory), with all of the inverse kept: there are as many rows as kinds of pieces, a hundred or
// so. Doubles: whoever takes a bound from the prices makes sure of it by himself (see pattern_bound.cpp).
class Covering {
public:
    // `alone[i]`: how many of i one pattern of nothing else has; above zero.
    Covering(const std::vector<double>& demand, const std::vector<double>& alone);

    // What one more of each kind would cost; none below zero once improve() is done.
    std::vector<double> prices() const;
    double cost() const;
    // Takes a pattern in where it lessens the cost: how many of each kind it has. False: it can't be taken in.
    bool improve(const std::vector<double>& pattern, int name);

    struct Use {
        int name = -1;
        double amount = 0;
    };
    // The patterns taken in that are used; the rest of the demand is covered by kinds alone.
    std::vector<Use> uses() const;

private:
    bool enter(const std::vector<double>& column, double cost, int name);
    void give_back_surplus();

    std::size_t rows_;
    std::vector<double> inverse_;  // by rows
    std::vector<double> amounts_;  // of the basis
    std::vector<double> costs_;
    std::vector<int> names_;  // below zero: no pattern that was taken in
};

}  // namespace kw::cutting
