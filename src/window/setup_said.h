#pragma once
// What the page at the saw says of a setting: the numbers to set, and what to do to the machine.

#include <memory>
#include <string>
#include <vector>

#include "session/setup_said.h"

namespace kw::window {

struct SetupSaid {
    std::shared_ptr<const Work> of;
    std::string step;
    CutterSide measured_to = CutterSide::near;
    std::vector<SetupNumber> numbers;
    SetupChanges changes;
    std::string cutter;             // as it is put on
    std::vector<std::string> test;  // what to cut in scrap
};

}  // namespace kw::window
