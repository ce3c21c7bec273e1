#pragma once
// `faces`. Private to this folder.

#include "command/options.h"

namespace kw {

// The faces of the job's banks, with the marks for one tape. The exit status.
int run_faces(const Options& options, const CommandIo& io);

}  // namespace kw
