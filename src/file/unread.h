#pragma once
// Fields that nothing reads: another program's, or misspelt ones. They are kept in any case.

#include "file/fields.h"

namespace kw {

// Each field that was not asked for when the document was read: its pointer, "nothing here is called "hieght"", and as what would do
// "did you mean "height"?", where a field that is read there is near it. Those that begin with `x-`, `_` or `$` are other programs' own,
// and say nothing. What is no object has none.
std::vector<Problem> unread_in_job(const Json& job);
std::vector<Problem> unread_in_shop(const Json& shop);

}  // namespace kw
