#pragma once
// The kinds of joint, each in a file of its own.

#include "joint/joint.h"

namespace kw {

// A dado across the receiver's inside face near its end, and a rabbet on the outside face of the insert's ends,
// which leaves a tongue on the inside half. With dado width w, clearance c, end relief g, step e:
//   rabbet depth r = T_insert - w + c        (what is left is the tongue, w - c thick)
//   lip            = r + e                   (receiver's end to the dado)
//   tongue length L = d - g                  (d: the dado's depth)
// One height for both cuts where d = r leaves web enough; otherwise, or where a depth is asked, two.
// At the back, `near` (the setback) is the least lip.
JointResult design_locking_rabbet(const JointAsk& ask);

// The insert enters as it is: slot width T_insert + c, depth d, near side at the setback; reach d - g.
// Depth left open: half of the receiver.
JointResult design_dado(const JointAsk& ask);

// A rabbet on the outside face of the insert's ends leaves a tongue on the inside half, which enters a dado narrower than the
// insert is thick: what stack is on can stay on. With dado width w, clearance c, end relief g, setback b (from the receiver's end
// to the insert's outside face, as for a dado):
//   rabbet depth r = T_insert - w + c        (what is left is the tongue, w - c thick)
//   near side      = b + r                   (receiver's end to the dado)
//   tongue length  = d - g                   (d: the dado's depth)
// One height for both cuts where d = r. Width left open: half of the insert; depth left open: half of the receiver.
JointResult design_tongue_and_dado(const JointAsk& ask);

// A rabbet on the receiver's end takes the insert: width T_insert + e, depth d. The insert rests against the rabbet's shoulder, and
// its end goes right to the rabbet's floor: that is where it is glued, and what it is clamped against, so it has no
// relief, and its length follows the depth as cut. Depth left open: half of the receiver.
JointResult design_rabbet(const JointAsk& ask);

// Both boards' ends are rabbeted on the inside face, and what is left of each, its lap, fills the other's rabbet: the insert's lap
// goes to the floor of the receiver's rabbet, and the receiver's lap covers its end, flush at the outside corner. With the receiver's
// rabbet d deep, the insert's r deep, step e:
//   insert's lap          = T_insert - r      (what is left of it)
//   receiver's rabbet     = T_insert - r + e wide (all of T_insert would leave air where the insert's rabbet is)
//   receiver's lap        = T_receiver - d    (what is seen of it from the front)
//   insert's rabbet       = d long            (its shoulder stands on the receiver's inside face, its end on the rabbet's floor)
// An open line at either would show or hold no glue, so there is no relief and no clearance. Depth left open: half of the receiver.
// r is half of the insert; of boards equally thick it is d, so that one height cuts both. Where d is half and e is nothing, all
// four are half a board, and one fence does too.
JointResult design_half_lap_corner(const JointAsk& ask);

// Both boards' ends are cut to a row of fingers, each of which fills a socket of the other board. One cutter of kerf k cuts all sockets, so
// they are as wide as it; a pin on the jig, at a gap a beside the cutter, takes the bottom edge first and then each socket as it is
// cut, so that with clearance c
//   fingers a       = k - c
//   pitch a + k     (from one socket to the next: how thick the pin is does not matter, while the board is pushed to the same side)
//   receiver's sockets at a + n (a + k): it begins with a finger at its bottom edge
//   insert's sockets   at n (a + k): it begins with a socket, by a spacer of a on the pin
// and the bottom edges are flush. Sockets are as deep as the other board is thick, and the step deeper: by so much the fingers stand
// proud, and are planed off.
JointResult design_box_joint(const JointAsk& ask);

// Along the bottom edge: width T_bottom + c, near side at the offset, depth left open: a quarter inch, but at most half of
// the thinnest board it is cut in (`receiver_thickness`); reach is the whole depth, the slack is taken off the bottom.
JointResult design_groove(const JointAsk& ask);

}  // namespace kw
