#include "job/work.h"

#include <algorithm>

namespace kw {

tl::expected<std::shared_ptr<const Work>, std::vector<Problem>> work_out(Job job) {
    auto work = std::make_shared<Work>();
    work->job = std::move(job);
    auto designed = design(work->job);
    if (!designed) return tl::unexpected(std::move(designed.error()));
    work->design = std::move(*designed);
    work->standing = replay(work->job, work->design);
    work->standing_design = with_standing(work->design, work->standing);
    auto plan = make_plan(work->job, work->design, work->standing_design);
    if (!plan) return tl::unexpected(std::move(plan.error()));
    work->plan = std::move(*plan);
    work->affected = affected_parts(work->job, work->standing_design, work->plan, work->standing);
    return work;
}

bool has_run(const Work& work, const Setup& setup, const Pass& pass) {
    const std::string key = work_key(setup, work.design);
    return std::any_of(work.standing.ran.begin(), work.standing.ran.end(), [&](const Ran& ran) {
        return ran.work_key == key && ran.part == pass.part && ran.reference == name_of(pass.reference);
    });
}

bool is_locked(const Work& work, const Setup& setup) {
    const Group* group = work.plan.group_with_id(setup.group);
    if (!group) return false;
    const auto found = work.standing.groups.find(group->key);
    return found != work.standing.groups.end() && found->second.locked;
}

}  // namespace kw
