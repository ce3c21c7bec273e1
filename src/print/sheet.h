#pragma once
// What every page has: margins, the ruler to check the printer by, and the foot with the job's name.

#include <string>
#include <vector>

#include "print/block.h"
#include "words/words.h"

namespace kw::print {

inline constexpr double margin_mm = 12;

// The page within its margins.
Area inside_margins(Paper paper);
// What is left of that for the page's own matter, above ruler and foot.
Area body_of(Paper paper);

// 100 mm with ticks every 10 mm, beneath it 4 in with ticks by quarters, and what they are for.
Block check_ruler(const Words& words, double width_mm);

// The pages with ruler and foot, numbered; `what`: of what kind they are.
std::vector<Page> finished_pages(std::vector<Page> pages, const Words& words, const std::string& job,
                                 const std::string& what);

}  // namespace kw::print
