#pragma once
// Which field of a job file an opening's size comes of. Private to this folder.

#include <string>

#include "job/job.h"

namespace kw {

// Of a drawer's "width", "height" or "depth": "/opening/width", or where a reading of the survey is the least,
// "/opening/survey/width_top"; of a drawer whose box is given, "/box/width".
std::string size_field(const DrawerSpec& drawer, const std::string& size);

}  // namespace kw
