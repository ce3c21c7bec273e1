#pragma once
// What is worked with at a test cut: the joint, what is said of it, and what has been put in.

#include "session/test_cut.h"
#include "window/screen.h"

namespace kw::window {

struct Bench {
    Screen& screen;
    const Work& work;
    const Setup& setup;
    FitReport report;
    TestDraft& draft;
};

bool anything_in(const TestDraft& draft);
bool on_fresh_ends(const Bench& bench);
// What the maker says was moved since the cut before; nothing where it is what was advised. False while an entry does not read.
bool take_moves(Bench& bench, TestCut& cut);
// What has been put in, as it goes into the log; nothing while an entry does not read.
std::optional<TestCut> cut_of(Bench& bench);

// The card for what is read, felt and seen.
void draw_entry(Bench& bench);

}  // namespace kw::window
