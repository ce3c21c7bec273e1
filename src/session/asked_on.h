#pragma once
// What was asked of one plan, said of another. Setups are numbered anew with every order: what the maker pressed is a setup that does
// certain work for certain parts, whatever its number is now.

#include <optional>

#include "session/session.h"

namespace kw {

// The same action in the numbers of `now`; nothing where the setup, or one of its ends, is no longer there. Actions that name no
// setup of `seen` stay as they are.
std::optional<Action> asked_on(const Action& action, const Plan& seen, const Plan& now);

}  // namespace kw
