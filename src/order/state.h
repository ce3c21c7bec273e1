#pragma once
// Where all machines stand, and what the next operation costs from there. Private to this folder.

#include "order/problem.h"

namespace kw::order {

class Machines {
public:
    explicit Machines(const Problem& problem);

    Step step_to(const Problem& problem, int operation) const;
    void take(const Problem& problem, int operation);

    bool operator==(const Machines&) const = default;

private:
    std::vector<std::vector<int>> stands_;
    int last_machine_ = any;
};

}  // namespace kw::order
