#pragma once
// What a search that the maker has ended had come to, and how long that stands. Private to this folder.

#include "session/session.h"

namespace kw {

// What the session's work has settled, as long as the document asks for the same work: all of it does but what was told of the work, what was
// read of a drawer that is put together, and how the job is called and read. nullptr where nothing is, or something has changed.
const Settled* settled_in(const Session& session);

// Remembers for which document it is, once the session is worked out.
void note_settled(Session& session);

}  // namespace kw
