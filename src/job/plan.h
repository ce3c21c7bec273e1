#pragma once
// The plan: boxes, parts, setups and their order, with every number as the groups stand now.

#include <functional>

#include "job/design.h"

namespace kw {

struct Part {
    std::string id;
    std::string drawer;
    int copy = 1;
    PartSize size;  // as it is cut: less than finished by the bands on its edges
    std::string stock;
    Length band = {};  // how thick one is; zero: none
    std::vector<BandedEdge> banded = {};

    PartSize finished() const;
};

struct DrawerBox {
    std::string drawer;
    BoxSize size;
};

struct Plan {
    std::string job;
    std::vector<DrawerBox> boxes;
    std::vector<Part> parts;
    std::vector<Group> groups;
    std::vector<Setup> setups;          // in the order of the work
    std::vector<std::string> sequence;  // each setup's id, once
    std::int64_t seconds = 0;
    std::int64_t lower_bound_seconds = 0;
    bool proved = false;
    std::int64_t pins_s = 0;  // what the maker's pins take beyond the best order that was found without them
    std::vector<std::size_t> order;  // the setups as designed, by number, in this order
    std::vector<Note> notes;

    const Setup* setup_with_id(std::string_view id) const;
    const Group* group_with_id(std::string_view id) const;
    const Part* part_with_id(std::string_view id) const;
};

// Where a setup, or a step that sets it again (with a suffix behind '#'), stands in the sequence; the sequence's size if nowhere.
std::size_t step_of(const Plan& plan, const std::string& step);

enum class SearchMore { yes, no };

// Told now and then while an order is searched: how long the best takes that was found, and what no order can take less than.
// It answers whether that search goes on. A watch that never says no can't change what is found; after a no the best that was
// found stands, with its bound, and every search that follows for the same plan asks again.
using Watch = std::function<SearchMore(std::int64_t best_s, std::int64_t bound_s)>;

// An order of the whole work whose search was ended by the watch. It is taken without another search, as long as the same setups take the
// same time in it.
struct SettledOrder {
    std::vector<std::string> names;  // of the setups, see planned.h
    std::int64_t seconds = 0, lower_bound_seconds = 0, pins_s = 0;
};

// Whether it is taken so for this design.
bool is_settled(const Job& job, const Design& designed, const SettledOrder& settled);

// What the search for the ways of the joints has found of the whole work already.
struct FoundOrder {
    std::optional<std::int64_t> least_seconds;  // where joints could be cut in other ways: no way takes less
    std::vector<std::string> names;  // the setups in the best order, by name (see planned.h); empty: none
    std::optional<SettledOrder> settled = {};
};

// Setups and their order come from `designed`, so that a correction changes numbers and never what a setup is called; every
// number comes from `standing`, the same design with its groups as tested and locked.
// The plan takes no longer than the order that is `found`, where that is one of the same setups and keeps the pins.
tl::expected<Plan, std::vector<Problem>> make_plan(const Job& job, const Design& designed,
                                                   const Design& standing, const FoundOrder& found = {},
                                                   const Watch& watch = {});

// How a drawer's joints stand: the reach, setback and groove that its parts' sizes follow from.
DrawerJoints joints_as_cut(const Design& design, const DrawerDesign& drawer);

}  // namespace kw
