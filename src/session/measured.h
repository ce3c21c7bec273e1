#pragma once
// Readings of a drawer's opening and of the drawer put together: where they stand in the document, by name.

#include <optional>
#include <string>
#include <vector>

#include "session/session.h"

namespace kw {

// What of a drawer is measured: its opening before, or one copy of it when it is put together and hung.
enum class Measured { opening, assembled };

// Their names, in the order in which a maker takes them.
std::vector<std::string> measured_names(Measured what);

// Where it stands: "/drawers/1/opening/survey/width_top". Nothing for a name that is none of these.
std::optional<std::string> measured_pointer(Measured what, std::size_t drawer, int copy,
                                            const std::string& name);

// The session with these readings ("width_top", a length as people write it), as one after another had been put in. An empty length takes a reading away.
// Refused with the first that can't be taken: `refused` says why, and nothing is changed.
Session with_measured(const Session& session, Measured what, const std::string& drawer, int copy,
                      const std::vector<std::pair<std::string, std::string>>& readings,
                      const std::string& time);

}  // namespace kw
