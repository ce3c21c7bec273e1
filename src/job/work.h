#pragma once
// The whole computation in one value: what the command line and the window both work from.

#include <map>
#include <memory>
#include <string>

#include "job/elsewhere.h"
#include "job/rest.h"
#include "job/ways.h"
#include "memory/memory.h"

namespace kw {

// What a search for the ways and the order has come to that was ended by its watch.
struct Settled {
    FoundWays ways;
    SettledOrder order;
};

struct Work {
    Job job;        // its stock as what was broken down has left it, see on_hand.h
    Design design;  // as designed
    Design standing_design;
    Standing standing;
    std::vector<WayReason> reasons;         // why joints are cut the way they are, where there is a choice
    std::vector<NotCompared> not_compared;  // where there is one, and it was not looked into
    Plan plan;  // as everything stands; its sequence: what is done, then what is left
    // Of the plan's groups that no test cut has told of, by key: how the scales are to be set for the first one. Searched once, since
    // what is said of each step asks for it, and the window says it in every frame.
    std::map<std::string, Start> first_starts;
    Rest rest;
    std::vector<Affected> affected;
    std::vector<Elsewhere> elsewhere;  // begun on machines that are away
    std::optional<Settled> settled;    // where the search for ways and order was ended
    Memory memory;                     // what the shop has learned from other work
    std::string day;                   // today
};

// `Work` holds the job that its designs point into: it is moved, never copied member by member.
// `day`: ISO 8601, the date first; what was learned ages to that day. `settled`: of a job that differs in nothing on which the search
// depends; it stands then, and is not searched for again.
tl::expected<std::shared_ptr<const Work>, std::vector<Problem>> work_out(Job job, Memory memory = {},
                                                                         std::string day = {},
                                                                         const Watch& watch = {},
                                                                         const Settled* settled = nullptr);

// How a group's scales are to be set for its first cut, and what is known of them; of a tested one, how they were. `group` is one of
// work.plan's.
Start start_of(const Work& work, const Group& group);

// What the scales are to show for this setup: the settings of the plan less what they are known to be off by.
struct Dial {
    Length fence, height, spacer;
    Length shims;  // that a stack is to be put on with beyond its own make-up; negative: to be left out
    // How far beyond the plan fence and height are meant to stand for a first cut, to make up for what is known of the cutter.
    Length fence_beyond, height_beyond;
};
Dial dial_of(const Work& work, const Setup& setup);

// How wide the cutter of this setup is believed to cut as it is put on: with what the shop knows of its kerf, and with the shims that
// it is put on with, also before the first test cut. `setup` is one of work.plan's.
Length kerf_as_put_on(const Work& work, const Setup& setup);

// What the group's locks have taught, of all groups that are tested and locked.
std::vector<Lesson> lessons_of(const Work& work);

// Whether this end has gone through this setup.
bool has_run(const Work& work, const Setup& setup, const Pass& pass);
bool is_locked(const Work& work, const Setup& setup);
// Locked, with parts still to run, and its machine was used for something else since: it is to be set again, and tested.
bool is_torn_down(const Work& work, const Setup& setup);

}  // namespace kw
