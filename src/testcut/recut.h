#pragma once
// A cut only removes wood. Whether another setting can be cut over an old one, by the sections themselves.

#include "setup/group.h"

namespace kw {

enum class Fate {
    fine,   // as it is: the same wood is gone
    recut,  // the new cut takes away all that the old one did, and more
    lost,   // the old cut took wood that should be there
};

// What becomes of an end of this member cut with `old` settings, when `wanted` ones are right. `alike` is how far
// two cuts may differ and still be the same.
Fate fate_of(const Group& group, Member member, const Settings& old, const Settings& wanted, Length alike);

// Whether the test ends of all the members that the group cuts can be cut again.
bool same_ends_will_do(const Group& group, const Settings& old, const Settings& wanted);

}  // namespace kw
