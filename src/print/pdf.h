#pragma once
// Pages as PDF, by the cairo library. It is loaded when the first page is written: a maker who prints nothing pays nothing
// for it. The fonts are handed in and embedded, so that no machine's own fonts have a say.

#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "length/message.h"
#include "print/page.h"

namespace kw::print {

// The bytes of two OpenType files.
struct PrintFonts {
    std::string regular;
    std::string strong;
};

// The file's bytes. There is no date in it: the same pages give the same bytes with the same versions of cairo and zlib.
// Refuses where the library is not to be had, or a font can't be read.
tl::expected<std::string, Message> write_pdf(const std::vector<Page>& pages, const PrintFonts& fonts);

}  // namespace kw::print
