#pragma once
// What the machines were used for, as the log tells it: the one place that says what still stands, and what has to be set by hand
// again.

#include <map>
#include <string>
#include <vector>

#include "setup/settings.h"

namespace kw {

// A machine as it was set once.
struct MachineUse {
    std::string what;         // the key of the group, or the stage, that it was set for
    std::string stack;        // the cutter that was on it, whatever its shims
    Settings dial;            // `kerf` with the shims
    bool through = false;     // a cut to size, for which the cutter stands higher than the board is thick
    bool is_unknown = false;  // how it was set is not known: every control may have been touched

    bool operator==(const MachineUse&) const = default;
};

class MachineUses {
public:
    void note(const std::string& machine, const MachineUse& use);

    // Whether nothing else was done on the machine since it was last used for that.
    bool stands(const std::string& machine, const std::string& what) const;

    // How often the machine has been set for something else than before, so far.
    int settings(const std::string& machine) const;

    // The controls that something else was done with since the machine was last used for that: to set by hand again.
    std::vector<std::string> set_again(const std::string& machine, const std::string& what) const;

private:
    std::map<std::string, std::vector<MachineUse>> uses_;  // by machine, in turn
};

}  // namespace kw
