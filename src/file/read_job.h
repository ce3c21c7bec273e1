#pragma once
// A job file's JSON as a job. What is missing gets its default; what is wrong is said, all of it at once.

#include "file/fields.h"

namespace kw {

inline constexpr int job_version = 1;

tl::expected<Job, std::vector<Problem>> read_job(const Json& json);

// Names of graduations in job files: "1/64 in", "0.1 mm" and so on.
const std::vector<std::pair<std::string_view, Graduation>>& graduation_names();

}  // namespace kw
