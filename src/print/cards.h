#pragma once
// Setup cards to lay beside the machine: one for each step of the order of work, in that order. They say what the page at the
// saw says, in the job's language.

#include "job/lay_out.h"
#include "job/work.h"
#include "memory/preferences.h"
#include "print/page.h"

namespace kw::print {

struct CardOptions {
    CutterSide measured_to = CutterSide::near;  // where the fence is measured to
    bool fence_left = true;                     // on which side of the cutter it is drawn
};

// Two cards a page where both have room, each on half of it; a card with a test cut or many parts has a page of its own. Parts
// for which a page has no room go on on the next. A step that sets a setup again has a card of its own, with what runs then.
// Where the layout has something to break down, that comes first.
std::vector<Page> setup_cards(const Work& work, Paper paper, const CardOptions& options = {},
                              const LayOut& layout = {});

}  // namespace kw::print
