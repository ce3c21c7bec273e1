#pragma once
// The layout as pages to take to the sheets: what to buy first, then a board or sheet each, with its picture, its parts and its cuts.

#include "job/lay_out.h"
#include "job/work.h"
#include "print/page.h"

namespace kw::print {

std::vector<Page> layout_pages(const Work& work, const LayOut& layout, Paper paper);

}  // namespace kw::print
