#include "job/machine_use.h"

#include <algorithm>

namespace kw {

void MachineUses::note(const std::string& machine, const MachineUse& use) {
    std::vector<MachineUse>& uses = uses_[machine];
    if (uses.empty() || uses.back() != use) uses.push_back(use);
}

bool MachineUses::stands(const std::string& machine, const std::string& what) const {
    const auto uses = uses_.find(machine);
    return uses != uses_.end() && uses->second.back().what == what;
}

int MachineUses::settings(const std::string& machine) const {
    const auto uses = uses_.find(machine);
    if (uses == uses_.end()) return 0;
    int settings = 1;
    for (std::size_t i = 1; i < uses->second.size(); ++i)
        settings += uses->second[i].what == uses->second[i - 1].what ? 0 : 1;
    return settings;
}

std::vector<std::string> MachineUses::set_again(const std::string& machine, const std::string& what) const {
    const auto uses = uses_.find(machine);
    if (uses == uses_.end()) return {};
    const auto is_its = [&](const MachineUse& use) { return use.what == what; };
    const auto its = std::find_if(uses->second.rbegin(), uses->second.rend(), is_its);
    if (its == uses->second.rend()) return {};
    const auto any_since = [&](const auto& differs) {
        return std::any_of(uses->second.rbegin(), its, differs);
    };
    std::vector<std::string> controls;
    const auto other_stack = [&](const MachineUse& use) { return use.stack != its->stack; };
    // The fence goes from pass to pass by a mark of its own, which is lost with the first; and it stands at the last pass then.
    if (any_since([&](const MachineUse& use) {
            return use.is_unknown || use.dial.fence != its->dial.fence || use.dial.shift != Length{} ||
                   its->dial.shift != Length{};
        }))
        controls.insert(controls.end(), {"fence", "shift"});
    // Another cutter has another radius.
    if (any_since([&](const MachineUse& use) {
            return use.is_unknown || other_stack(use) || use.through || use.dial.height != its->dial.height;
        }))
        controls.emplace_back("height");
    if (any_since([&](const MachineUse& use) {
            return use.is_unknown ? its->dial.spacer > Length{} : use.dial.spacer != its->dial.spacer;
        }))
        controls.emplace_back("spacer");
    if (any_since([&](const MachineUse& use) {
            return use.is_unknown || other_stack(use) || use.dial.kerf != its->dial.kerf;
        }))
        controls.emplace_back("kerf");
    return controls;
}

}  // namespace kw
