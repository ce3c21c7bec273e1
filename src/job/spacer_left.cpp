#include "job/spacer_left.h"

#include <algorithm>
#include <set>

namespace kw {
namespace {

bool takes_a_spacer(const Plan& plan, const std::string& group) {
    return std::any_of(plan.setups.begin(), plan.setups.end(),
                       [&](const Setup& setup) { return setup.group == group && setup.spacer > Length{}; });
}

}  // namespace

void note_spacers_left(std::vector<RestStep>& steps, const Plan& plan,
                       const std::map<std::string, std::string>& stands,
                       const std::map<std::string, bool>& tested_last) {
    std::set<std::string> seen;
    for (RestStep& step : steps) {
        const Setup& setup = *plan.setup_with_id(step.setup);
        const auto tested = tested_last.find(setup.machine);
        const auto last = stands.find(setup.machine);
        const bool is_first = seen.insert(setup.machine).second;
        if (!is_first || last == stands.end() || tested == tested_last.end() || !tested->second) continue;
        const Setup* used = plan.setup_with_id(last->second);
        step.spacer_left =
            used && used->spacer == Length{} && setup.spacer == Length{} && takes_a_spacer(plan, used->group);
    }
}

}  // namespace kw
