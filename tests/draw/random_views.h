#pragma once
// Random jobs, and what is set up for them.

#include <doctest/doctest.h>

#include <random>

#include "draw/view_job.h"

namespace random_views {

inline view_job::Wanted random_wanted(std::mt19937& dice) {
    const auto roll = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(dice); };
    view_job::Wanted wanted = roll(0, 1) ? view_job::metric() : view_job::Wanted{};
    wanted.side = kw::Length::micrometres(roll(115, 190) * 100);
    wanted.front = kw::Length::micrometres(roll(115, 190) * 100);
    wanted.bottom = kw::Length::micrometres(roll(66, 75) * 100);
    wanted.groove_depth = kw::Length::micrometres(3000);  // less than any tongue here is thick
    wanted.kerf = kw::Length::micrometres(roll(30, 65) * 100);
    wanted.kind = roll(0, 1) ? kw::StockKind::plywood : kw::StockKind::solid;
    return wanted;
}

// Every setup of some random jobs, cuts to size among them.
template <class Check>
void for_setups(Check check) {
    std::mt19937 dice(20);
    for (int round = 0; round < 25; ++round) {
        // The plain job first: its spacer is one that the cutter runs into.
        const auto work = view_job::work(round == 0 ? view_job::Wanted{} : random_wanted(dice));
        for (const kw::Setup& setup : work->plan.setups) {
            CAPTURE(setup.work);
            check(*work, setup);
        }
    }
}

template <class Check>
void for_joint_setups(Check check) {
    for_setups([&](const kw::Work& work, const kw::Setup& setup) {
        if (setup.stage == kw::Stage::joint) check(work, setup);
    });
}

}  // namespace random_views
