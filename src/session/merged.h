#pragma once
// One job changed in two places at once: in the window, and by the command line or an editor in its file.

#include <string>
#include <tl/expected.hpp>

#include "session/session.h"

namespace kw {

// What both have made of `base`: each field as it is where it was changed. Things that have names (drawers, boards, cutters) are told
// apart by them, whatever their sequence, and what both have added alike is one; any other list is one field. The log is a list of facts: those that were added to
// either are in it, `theirs` first, and those that were taken back in either are not. Where both have changed one field, and
// otherwise: its JSON pointer.
tl::expected<Json, std::string> merged(const Json& base, const Json& theirs, const Json& mine);

// The session with what its file says now, `theirs`, where it was `base` when both were the same. The way back goes on: to the documents
// as they were, each with what came into the file meanwhile, as far back as that can be. The work stays as it was (see worked_out).
tl::expected<Session, std::string> taken_up(Session session, const Json& base, const Json& theirs);

}  // namespace kw
