#include "session/settled.h"

namespace kw {
namespace {

Json searched_of(const Json& document) {
    Json out = document;
    for (const char* name : {"log", "name", "reading"}) out.erase(name);
    for (Json& drawer : out["drawers"])
        if (drawer.is_object()) drawer.erase("assembled");
    return out;
}

}  // namespace

const Settled* settled_in(const Session& session) {
    const bool stands = session.settled_for && session.work && session.work->settled &&
                        *session.settled_for == searched_of(session.document);
    return stands ? &*session.work->settled : nullptr;
}

void take_work_of(Session& session, const Session& other) {
    session.work = other.work;
    session.settled_for = other.settled_for;
}

void note_settled(Session& session) {
    session.settled_for =
        session.work->settled ? std::make_shared<const Json>(searched_of(session.document)) : nullptr;
}

}  // namespace kw
