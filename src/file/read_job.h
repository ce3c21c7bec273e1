#pragma once
// A job file's JSON as a job. What is missing gets its default; what is wrong is said, all of it at once.

#include "file/fields.h"

namespace kw {

inline constexpr int job_version = 1;

tl::expected<Job, std::vector<Problem>> read_job(const Json& json);

// The same with all that can be read of it, and the fields that were asked for. `json` is an object.
Job read_job(const Json& json, std::vector<Problem>& problems, Asked* asked);

// Machines, cutters and times, which stand in a shop's file as they do in a job.
void read_what_shops_share(Fields& fields, Job& job);

// Names of graduations in job files: "1/64 in", "0.1 mm" and so on.
const std::vector<std::pair<std::string_view, Graduation>>& graduation_names();
std::string_view name_of(Graduation graduation);
std::optional<Graduation> graduation_named(std::string_view name);
// All of them, for messages.
std::vector<std::string_view> graduation_choice();

}  // namespace kw
