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

// Setups on an indexing jig: of boards equally thick, and of others, whose sockets have a height of their own.
template <class Check>
void for_jig_setups(Check check) {
    std::mt19937 dice(21);
    for (int round = 0; round < 16; ++round) {
        view_job::Wanted wanted = round == 0 ? view_job::Wanted{} : random_wanted(dice);
        wanted.front_joint = "box joint";
        if (round % 2 == 0) wanted.front = wanted.side;
        if (round % 3 == 0) wanted.back_joint = "box joint";
        const auto work = view_job::work(wanted);
        for (const kw::Setup& setup : work->plan.setups) {
            CAPTURE(setup.work);
            if (setup.index) check(*work, setup);
        }
    }
}

// Those that lie on the table, and have a fence.
template <class Check>
void for_joint_setups(Check check) {
    for_setups([&](const kw::Work& work, const kw::Setup& setup) {
        if (setup.stage == kw::Stage::joint) check(work, setup);
    });
}

template <class Check>
void for_joint_and_jig_setups(Check check) {
    for_joint_setups(check);
    for_jig_setups(check);
}

}  // namespace random_views
