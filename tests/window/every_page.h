#pragma once
// Every page of the program, and the state in which the window shows it.

#include <string>

#include "window/screen.h"

namespace kw::window {

struct Page {
    const char* name;
    Where place;
    DrawersTab tab = DrawersTab::drawers;
    SawTab saw_tab = SawTab::picture;
    Over over = Over::none;
    int first_question = -1;
    JobTab job_tab = JobTab::stages;
    bool is_open = false;  // what the page keeps folded
};

inline constexpr Page every_page[] = {
    {"drawers", Where::drawers},
    {"stock", Where::drawers, DrawersTab::stock},
    {"machines", Where::drawers, DrawersTab::shop},
    {"fit", Where::drawers, DrawersTab::fit},
    {"order", Where::order},
    {"job", Where::job},
    {"saw", Where::saw},
    {"joint closed", Where::saw, DrawersTab::drawers, SawTab::closed},
    {"test cut", Where::saw, DrawersTab::drawers, SawTab::test},
    {"log", Where::saw, DrawersTab::drawers, SawTab::log},
    {"keys", Where::saw, DrawersTab::drawers, SawTab::picture, Over::keys},
    {"options", Where::saw, DrawersTab::drawers, SawTab::picture, Over::preferences},
    {"survey", Where::drawers, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::stages, true},
    {"faces", Where::job, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::faces},
    {"layout", Where::job, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::layout},
    {"print", Where::job, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::print},
    {"put together", Where::job, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::together},
    {"order of assembly", Where::job, DrawersTab::drawers, SawTab::picture, Over::none, -1, JobTab::together,
     true},
    {"first question", Where::drawers, DrawersTab::drawers, SawTab::picture, Over::none, 1},
};

// `step`: at the saw.
inline UiState state_at(const Page& page, const std::string& step, const Preferences& preferences = {}) {
    UiState state;
    state.preferences = preferences;
    state.place = page.place;
    state.tab = page.tab;
    state.saw_tab = page.saw_tab;
    state.over = page.over;
    state.job_tab = page.job_tab;
    state.survey_open = page.is_open && page.place == Where::drawers;
    state.assembly_order_open = page.is_open && page.place == Where::job;
    state.first_question = page.first_question;
    state.setup = step;
    return state;
}

// The first step that is tested before it runs.
inline std::string tested_step(const Work& work) {
    for (const std::string& step : work.plan.sequence)
        if (const Setup* setup = work.plan.setup_with_id(step.substr(0, step.find('#')));
            setup && setup->test_cut)
            return step;
    return {};
}

}  // namespace kw::window
