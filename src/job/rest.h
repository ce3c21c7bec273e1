#pragma once
// What is left to do, in the best order from how the machines stand now.

#include <map>

#include "job/standing.h"

namespace kw {

struct RestChange {
    std::string what;  // of its machine: "cutter", "shims", "fence", "height", "spacer"
    std::int64_t seconds = 0;
    bool operator==(const RestChange&) const = default;
};

struct RestStep {
    std::string step;                // its setup's id; `S7#2` where the setup is set a second time
    std::string setup;               // the id alone
    int ends = 0;                    // that have still to go through
    std::vector<std::size_t> open;   // which of its setup's passes they are
    std::vector<std::string> parts;  // whose ends they are, each once
    bool still_set = false;          // its machine stands so
    bool spacer_left = false;        // it takes none, and the last test cut on its machine was made with one
    bool set_again =
        false;  // it was tested, and has been torn down since: its numbers are known, and it is tested anew
    std::vector<RestChange> changes;
    std::int64_t walk_s = 0, test_s = 0, cuts_s = 0;  // what else it takes
};

struct Rest {
    bool begun = false;  // something was tested, locked or run
    std::vector<std::string>
        done;  // setups through which all has gone, in the order in which they were last used
    std::vector<RestStep> done_steps;  // the same, with what they take as planned, one after another
    std::vector<RestStep> steps;
    std::map<std::string, std::string> stands;  // by machine: the setup that was last used on it
    std::map<std::string, Length>
        sized_to;  // by machine that cut to a size last: where its fence or stop stood, if elsewhere than now planned
    std::int64_t seconds = 0;              // of what is left
    std::int64_t lower_bound_seconds = 0;  // no order of it takes less
    bool proved = false;
};

// As long as the work goes as planned the order stays. A part that was lost, or work done out of turn, has the rest put in order
// anew: what is tested or locked and still stands keeps standing until its parts have run, unless a part must first come to
// the same machine for something else.
// The step of that name, or nullptr where nothing of it is left.
const RestStep* step_named(const Rest& rest, std::string_view step);

Rest rest_of_work(const Job& job, const Design& standing_design, const Plan& plan, const Standing& standing,
                  const Watch& watch = {});

}  // namespace kw
