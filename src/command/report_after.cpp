#include "command/report_after.h"

namespace kw {

std::optional<FitReport> report_after(const Work& before, const Work& after, const std::string& setup) {
    const std::string id = setup.substr(0, setup.find('#'));
    const Setup* was = before.plan.setup_with_id(id);
    const Group* group = was ? before.plan.group_with_id(was->group) : nullptr;
    if (!group) return std::nullopt;
    const auto is_its = [&](const Setup& one) {
        const Group* its = after.plan.group_with_id(one.group);
        return its && its->key == group->key;
    };
    const Setup* same = after.plan.setup_with_id(id);
    if (same && is_its(*same)) return fit_report(after, setup);
    for (const Setup& one : after.plan.setups)
        if (is_its(one)) return fit_report(after, one.id);
    return std::nullopt;
}

}  // namespace kw
