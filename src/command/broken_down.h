#pragma once
// `ran --stock`: boards or sheets that were broken down. Private to this folder.

#include "command/options.h"

namespace kw {

int run_broken_down(const Options& options, const CommandIo& io);

}  // namespace kw
