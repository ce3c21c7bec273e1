#pragma once
// One corner with a row of fingers as given settings cut it, ready to be closed and drawn: a board seen from its outside, and the
// fingers of the other one as they come through it.

#include "job/work.h"
#include "joint/fingers.h"

namespace kw::draw {

struct FingerCuts {
    SocketRow seen;      // of the board that is seen from its outside
    SocketRow entering;  // of the other
    Length height;       // of both, from the bottom edge up
    Length entering_thickness;
    Length step;               // asked
    bool insert_seen = false;  // it is the insert's outside that is seen
};

// `settings` stand for `group`, and with them its partner's row. Seen is the side; where the group cuts the other board's sockets alone,
// that board, since there its height shows.
FingerCuts finger_cuts(const Work& work, const Group& group, const Settings& settings);

// The boards are `shown` long.
ClosedFingers closed(const FingerCuts& cuts, Length shown);

// A socket less the finger in it: + loose.
Length fit_of(const FingerCuts& cuts);
// How far the seen board's fingers stand out beyond the other's outside.
inline Length proud_of(const FingerCuts& cuts) { return cuts.seen.depth - cuts.entering_thickness; }

// The same corner with its fit and the error of its step `times` as large. The pitch stays.
FingerCuts exaggerated(const FingerCuts& cuts, int times);
int fitting_exaggeration(const FingerCuts& cuts);

}  // namespace kw::draw
