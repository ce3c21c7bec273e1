#pragma once
// `layout`. Private to this folder.

#include "command/options.h"

namespace kw {

// The job's parts laid out on boards and sheets. The exit status.
int run_layout(const Options& options, const CommandIo& io);

}  // namespace kw
