#pragma once
// What the page at the saw says of a setting: the numbers to set, and what to do to the machine.

#include <memory>
#include <string>
#include <vector>

#include "job/work.h"
#include "memory/preferences.h"

namespace kw::window {

// One number to set.
struct SetupNumber {
    std::string caption;
    std::string value;  // empty: the note says it all
    std::string unit;
    std::string was;  // at the machine; empty: the same
    std::string note;
};

// One sentence each; and what to leave as it is.
struct SetupChanges {
    std::vector<std::string> change;
    std::string leave;  // empty: nothing stays
};

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
