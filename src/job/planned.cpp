#include "job/planned.h"

#include "job/parts_of.h"
#include "job/precedence.h"

namespace kw {
namespace {

std::string name_of_sizing(const Setup& setup) {
    const Pass& first = setup.passes.front();
    return setup.machine + "|" + setup.work + "|" + std::to_string(setup.fence.ticks()) + "|" + first.part +
           "|" + std::string(name_of(first.reference));
}

}  // namespace

std::optional<Planned> planned_of(const Job& job, const Design& design) {
    auto sizing = sizing_setups(with_implied_blades(job.shop), size_cuts_of(design, parts_of(job, design)));
    if (!sizing) return std::nullopt;
    Planned planned{std::move(*sizing), {}, {}};
    for (const Setup& setup : planned.setups) planned.names.push_back(name_of_sizing(setup));
    for (const Group& group : design.groups) {
        const std::string all =
            group.key + "|" + std::to_string(group.work.receivers.size() + group.work.inserts.size());
        for (Setup& setup : setups_of(group)) {
            planned.names.push_back(all + "|" + setup.work);
            planned.setups.push_back(std::move(setup));
        }
    }
    planned.before = precedence_of(design, planned.setups).before;
    return planned;
}

}  // namespace kw
