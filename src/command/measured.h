#pragma once
// `survey` and `assemble`. Private to this folder.

#include "command/options.h"
#include "session/measured.h"

namespace kw {

// Readings of an opening, or of a drawer put together: what they say, kept or not. The exit status.
int run_measured(Measured what, const Options& options, const CommandIo& io);

}  // namespace kw
