#pragma once
// The outside source for small problems: every order there is, priced by the words of problem.h and nothing
// else. Written apart from the solver, and without any of its ideas.

#include <map>
#include <optional>

#include "order/problem.h"

namespace ord {

class Brute {
public:
    explicit Brute(const kw::order::Problem& problem);

    // Tries all orders, up to about 8 operations. Nothing where none keeps the rules.
    std::optional<std::int64_t> least_seconds();

    // The same, but never goes on twice from the same work done, the same machines and no less time: up to
    // about 14 operations.
    std::optional<std::int64_t> least_seconds_remembering();

    // Of one order; nothing where it breaks a rule.
    std::optional<std::int64_t> seconds_of(const std::vector<std::size_t>& order);

private:
    // All ways to pick one option of each choice from this one on; work that is left out is nobody's business.
    void pick(std::size_t choice, std::size_t left_out);

    // Whether all is there that must be, with one option of each choice; the others are taken for done.
    bool keeps_choices(const std::vector<std::size_t>& order);

    void go_on(std::size_t count, std::int64_t spent);

    bool was_here_for_no_more(std::int64_t spent);

    bool all_before_are_done(std::size_t i) const;

    // Its time; nothing where it would disturb a group.
    std::optional<std::int64_t> run(std::size_t i);

    static std::int64_t setting(const kw::order::Attribute& attribute, int from, int value);

    static void lose_what_hangs_on(const kw::order::Machine& machine, std::size_t a, std::vector<bool>& lost);

    bool is_disturbed(std::size_t i, const std::vector<bool>& touched) const;

    const kw::order::Problem& problem_;
    std::optional<std::size_t> at_;
    std::vector<std::vector<int>> stands_;
    std::vector<bool> done_;
    std::optional<std::int64_t> best_;
    bool remembers_ = false;
    std::map<std::vector<int>, std::int64_t> cheapest_;
};

}  // namespace ord
