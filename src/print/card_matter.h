#pragma once
// What a setup card says, in words and numbers, before any of it has a place on paper. Private to this folder.

#include "print/cards.h"
#include "session/setup_said.h"

namespace kw::print {

struct EndToRun {
    std::string end;  // "left end"
    bool has_run = false;
};

struct PartToRun {
    std::string part;  // "Twine 1, left side"
    std::vector<EndToRun> ends;
};

struct Caution {
    std::string text;
    bool loud = false;
};

// A board seen from above as it lies, and what it is.
struct BoardPicture {
    std::string caption;
    draw::Drawing drawing;
};

// Only where a test cut is to come first.
struct TestToMake {
    std::vector<std::string> steps;
    std::vector<std::string> readings;
};

struct CardMatter {
    std::string step;  // "Step 16 of 38"
    std::string id;    // as the command line calls the setup
    std::string machine;
    std::string what;     // "Locking rabbet: side dado"
    std::string drawers;  // "Drawer twine"
    std::vector<SetupNumber> numbers;
    std::vector<std::string> lie;   // which face lies down, and what against what
    std::vector<std::string> gear;  // guide, and cutter with its make-up
    std::string from_where;         // what the changes are changes from; empty: nothing
    SetupChanges changes;
    std::string state;  // "Locked as tested: leave it set"; empty: nothing to say
    draw::Drawing section;
    std::vector<BoardPicture> boards;  // where joints are cut
    std::string common_end;            // where all parts run by the same end or edge
    std::vector<PartToRun> parts;
    std::optional<TestToMake> test;
    bool test_on_next_page = false;
    std::vector<Caution> cautions;
};

// Of the step that stands there in the plan's sequence.
CardMatter card_matter(const Work& work, std::size_t step, const CardOptions& options);

}  // namespace kw::print
