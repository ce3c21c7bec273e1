#pragma once
// The group that a setup belongs to, and how it stands before something is told of it. Private to this folder.

#include "session/test_cut.h"

namespace kw {

struct TestedGroup {
    const Setup* setup;
    const Group* group;  // as it stands
    const Group* designed;
    const GroupStanding* standing;
    Start start;
    Model model;
    std::vector<std::string>
        set_again;  // controls that have been set by hand since it was tested, or since the row that it follows was
};

tl::expected<TestedGroup, Refusal> find_group(const Work& work, const std::string& setup);

std::vector<std::string> names_of_readings(const Model& model);

// As the controls are believed to stand when the readings are taken: after the moves that were made.
Belief before_reading(const TestedGroup& found, const TestCut& cut);

// Where the controls stand by that belief; of a row of fingers, in the row that it follows.
Settings settings_of(const Work& work, const TestedGroup& found, const Belief& belief);

}  // namespace kw
