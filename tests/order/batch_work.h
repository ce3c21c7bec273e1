#pragma once
// Problems shaped like a batch of drawers: few stock thicknesses shared by many drawers, lengths and widths
// of their own.

#include "random_work.h"

namespace ord {

struct Batch {
    std::size_t drawers = 3;
    std::size_t operations_each = 10;  // the first so many of what a drawer asks for, at most 11
    int sizes = 6;                     // different widths and lengths
    int stocks = 2;                    // different thicknesses, and so different joints
};

namespace batch {

// Minutes that a change takes: common practice, no source. A new cutter loses fence and height.
inline Machine with_cutter(std::int64_t cutter_s, std::int64_t walk_s) {
    Machine machine;
    machine.walk_s = walk_s;
    machine.attributes = {{cutter_s, {180}, {1, 2}}, {120, {}, {}}, {90, {}, {}}, {20, {}, {}}};
    machine.start = {0, kw::order::unknown, kw::order::unknown, 0};
    return machine;
}

inline Machine stop_saw() {
    Machine machine;
    machine.walk_s = 30;
    machine.attributes = {{60, {}, {}}};
    machine.start = {kw::order::unknown};
    return machine;
}

enum : std::size_t { saw, router, chop };

inline Operation cut(std::size_t machine, std::vector<int> needs, Random& random, bool is_tested = false) {
    return {machine, std::move(needs), random.between(1, 4) * 30 + (is_tested ? 240 : 0)};
}

// Values of fences and heights below 1000 are sizes, above they belong to a joint.
inline void add_drawer(Problem& problem, const Batch& batch, std::vector<Group>& joints, Random& random) {
    const int width = random.between(1, batch.sizes);
    const int side = random.between(1, batch.sizes);
    const int front = random.between(1, batch.sizes);
    const std::size_t stock = random.below(static_cast<std::size_t>(batch.stocks));
    const int joint = 1000 + static_cast<int>(stock);
    const std::size_t first = problem.operations.size();
    const std::vector<Operation> all{
        cut(saw, {0, width, 900, 0}, random),                              // 0 rip
        cut(chop, {side}, random),                                         // 1 sides to length
        cut(saw, {1, joint, joint, 0}, random, true),                      // 2 dado in the sides, locked here
        cut(chop, {front}, random),                                        // 3 fronts to length
        cut(saw, {1, joint, joint, 1 + static_cast<int>(stock)}, random),  // 4 the fronts' ends
        cut(router, {0, joint, joint, 0}, random, true),                   // 5 tongue
        cut(saw, {1, 2000, 2000, 0}, random),                              // 6 groove for the bottom
        cut(saw, {0, width + 100, 900, 0}, random),                        // 7 back to width
        cut(saw, {0, side + 200, 900, 0}, random),                         // 8 bottom to width
        cut(chop, {front + 200}, random),                                  // 9 bottom to length
        cut(saw, {1, joint + 500, joint, 0}, random),  // 10 the dado's second pass, fence out
    };
    constexpr std::pair<std::size_t, std::size_t> sequence[] = {
        {0, 1}, {1, 2}, {2, 3}, {3, 4}, {3, 5}, {0, 6}, {6, 7}, {4, 8}, {5, 8}, {8, 9}, {4, 10}};
    const std::size_t count = std::min(batch.operations_each, all.size());
    problem.operations.insert(problem.operations.end(), all.begin(),
                              all.begin() + static_cast<std::ptrdiff_t>(count));
    for (const auto& [a, b] : sequence)
        if (b < count) problem.precedences.push_back({first + a, first + b});
    for (const std::size_t own : {std::size_t{2}, std::size_t{4}, std::size_t{10}})
        if (own < count) joints[stock].operations.push_back(first + own);
}

}  // namespace batch

inline Problem batch_problem(const Batch& shape, Random& random) {
    Problem problem;
    problem.machines = {batch::with_cutter(900, 20), batch::with_cutter(240, 30), batch::stop_saw()};
    std::vector<Group> joints(static_cast<std::size_t>(shape.stocks), Group{{}, {0, 1, 2}, false});
    for (std::size_t d = 0; d < shape.drawers; ++d) batch::add_drawer(problem, shape, joints, random);
    for (const Group& joint : joints)
        if (!joint.operations.empty()) problem.groups.push_back(joint);
    return problem;
}

}  // namespace ord
