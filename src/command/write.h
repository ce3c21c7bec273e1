#pragma once
// What the commands answer: text for people, JSON for programs, CSV for spreadsheets.

#include <string>

#include "job/lay_out.h"
#include "memory/preferences.h"
#include "session/measured.h"

namespace kw {

// `layout`: its parts on boards and sheets, for the breaking-down. `of_files`: what is to be told of the files themselves. `measured_to`: the
// side of the cutter to which the fence is measured.
std::string plan_text(const Work& work, const LayOut& layout, const std::vector<Note>& of_files = {},
                      CutterSide measured_to = CutterSide::near);
// What is left, one line a step: what goes through it, and what is changed at its machine first. Empty before work has begun.
std::string rest_text(const Work& work);
// The next of that, and how much there is: for who has just told that something is done.
std::string next_text(const Work& work);
// The setups in order, one line each, and how much longer all of it takes than before.
std::string order_text(const Work& before, const Work& after);
// What is pinned first and last, and which machines are lent out.
std::string pins_text(const Work& work);
// Why a machine can't be lent out. `problems`: of the job without it.
std::string cannot_lend(const Job& job, const std::string& machine, const std::vector<Problem>& problems);
// Why joints are cut the way they are, one line each; empty where there was no choice.
std::string reasons_text(const Work& work);
// What each step that is left takes, line by line, and all of them together; and what the breaking-down takes.
std::string cost_text(const Work& work, const LayOut& layout);
std::string plan_json(const Work& work, const LayOut& layout, const std::vector<Note>& of_files = {});
std::string parts_text(const Work& work);
std::string parts_json(const Work& work);
std::string parts_csv(const Work& work);
std::string fit_text(const Work& work, const FitReport& report);
std::string fit_json(const FitReport& report);
// Each opening as it was measured and what that says; each drawer put together, likewise. Of one drawer, or with no name of all; `copy` 0: each.
std::string survey_text(const Work& work, const std::string& drawer);
std::string assembly_text(const Work& work, const std::string& drawer, int copy);
// In which order each drawer is put together, and where glue goes. `drawer`: empty for all; `copy`: 0 for all, and those that are alike once.
std::string assembly_order_text(const Work& work, const std::string& drawer, int copy);
// Every name of a reading that `survey` and `assemble` take, and what it is read of.
std::string measured_words(Measured what);
// Every word and sign that `fit` takes.
std::string fit_words();

}  // namespace kw
