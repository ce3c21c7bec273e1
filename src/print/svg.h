#pragma once
// Pages as SVG text (SVG 1.1, W3C): one file in which the pages lie under each other without a gap, each at its true size, with the
// paper's size told to whoever prints it (CSS @page). The same pages give the same text, byte for byte, on every machine.

#include <string>
#include <vector>

#include "print/page.h"

namespace kw::print {

// The pages are of one paper.
std::string write_svg(const std::vector<Page>& pages);

}  // namespace kw::print
