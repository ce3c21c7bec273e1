#pragma once
// The whole computation in one value: what the command line and the window both work from.

#include <memory>

#include "job/standing.h"

namespace kw {

struct Work {
    Job job;
    Design design;  // as designed
    Design standing_design;
    Standing standing;
    Plan plan;  // as everything stands
    std::vector<Affected> affected;
};

// `Work` holds the job that its designs point into: it is moved, never copied member by member.
tl::expected<std::shared_ptr<const Work>, std::vector<Problem>> work_out(Job job);

// Whether this end has gone through this setup.
bool has_run(const Work& work, const Setup& setup, const Pass& pass);
bool is_locked(const Work& work, const Setup& setup);

}  // namespace kw
