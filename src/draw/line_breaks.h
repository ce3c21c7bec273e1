#pragma once
// Where a line of text may not end.

#include <string_view>

namespace kw::draw {

// Whether these two words, one after the other, are of one length: a whole number and its fraction, a number and its unit, or
// either and the mark of what was rounded ("10", "1/16", "in", "+"), also with a full stop or the like behind.
bool of_one_length(std::string_view before, std::string_view after);

}  // namespace kw::draw
