#include "order/without.h"

namespace kw::order {

namespace {

constexpr std::size_t gone = static_cast<std::size_t>(-1);

// Each operation's number in what is left.
std::vector<std::size_t> numbers(const Problem& problem, const std::vector<std::size_t>& operations) {
    std::vector<std::size_t> number(problem.operations.size(), 0);
    for (const std::size_t i : operations) number[i] = gone;
    std::size_t next = 0;
    for (std::size_t& one : number)
        if (one != gone) one = next++;
    return number;
}

std::vector<std::size_t> left_of(const std::vector<std::size_t>& operations,
                                 const std::vector<std::size_t>& number) {
    std::vector<std::size_t> left;
    for (const std::size_t i : operations)
        if (number[i] != gone) left.push_back(number[i]);
    return left;
}

}  // namespace

Problem without(const Problem& problem, const std::vector<std::size_t>& operations) {
    const std::vector<std::size_t> number = numbers(problem, operations);
    Problem left;
    left.machines = problem.machines;
    left.start_machine = problem.start_machine;
    for (std::size_t i = 0; i < number.size(); ++i)
        if (number[i] != gone) left.operations.push_back(problem.operations[i]);
    for (const auto& [first, then] : problem.precedences)
        if (number[first] != gone && number[then] != gone)
            left.precedences.push_back({number[first], number[then]});
    for (const Group& group : problem.groups) {
        Group its{left_of(group.operations, number), group.held, group.begun};
        if (!its.operations.empty()) left.groups.push_back(std::move(its));
    }
    for (const Choice& choice : problem.choices) {
        Choice its;
        for (const auto& option : choice.options)
            if (auto some = left_of(option, number); !some.empty()) its.options.push_back(std::move(some));
        if (its.options.size() > 1) left.choices.push_back(std::move(its));
    }
    return left;
}

}  // namespace kw::order
