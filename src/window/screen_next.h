#pragma once
// What there is to do next, and how far each stage of the work has come. Computed from the plan and its log.

#include <string>
#include <vector>

#include "window/screen.h"

namespace kw::window {

struct NextThing {
    std::string step;  // empty: all is cut
    SawTab tab = SawTab::picture;
    std::size_t number = 0;  // of the step, from 1
    std::string what;        // "Test cut, locking rabbet: side dado"; "Lock it, groove"; "4 to run, groove"
};
NextThing next_thing(const Words& words, const Work& work);
void open_step(Screen& screen, const std::string& step, SawTab tab = SawTab::picture);
// Where it leads. All is cut: to the whole work.
void go_to_next(Screen& screen);
// Whether that is what is shown.
bool is_at_next(const Screen& screen, const NextThing& next);

// A stage of the work, in the order in which a maker goes through them.
struct JobStage {
    std::string name;    // "Rip to width"
    std::string counts;  // the text for how many of how many: "job.cuts_done"
    int done = 0;
    int of = 0;
    std::int64_t left_s = 0;  // at the machines
    std::string next = {};    // the first step of it that is left; empty: none
    Where place = Where::saw;
};
std::vector<JobStage> job_stages(const Screen& screen);

// "Step 12", as it is called everywhere in the window.
std::string step_name(const Words& words, const Plan& plan, const std::string& step);

}  // namespace kw::window
