#pragma once
// Pages as SVG text (SVG 1.1, W3C): one file in which the pages lie under each other, each at its true size, so that a
// browser prints one a sheet. The same pages give the same text, byte for byte, on every machine.

#include <string>
#include <vector>

#include "print/page.h"

namespace kw::print {

// The pages are of one paper.
std::string write_svg(const std::vector<Page>& pages);

}  // namespace kw::print
