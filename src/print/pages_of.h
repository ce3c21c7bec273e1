#pragma once
// All that can be printed of a job, by its name.

#include "job/lay_out.h"
#include "job/work.h"
#include "memory/preferences.h"
#include "print/page.h"

namespace kw::print {

enum class PagesOf { cards, labels, parts, layout, templates };

// Letter for a job in inches, A4 for one in millimetres.
Paper usual_paper(const Job& job);

// How the maker reads the fence is the preferences'; `layout` is looked at for its own pages, and for the first of the cards.
bool needs_layout(PagesOf what);
std::vector<Page> pages_of(PagesOf what, const Work& work, const LayOut& layout,
                           const Preferences& preferences, Paper paper);

}  // namespace kw::print
