#pragma once
// Rows of sockets along two upright ends, and the corner that they close to. Nothing here but same_width and the counts knows the
// formula that planned the rows.
//
// Frame of an end: x runs up the end from the bottom edge, y into the board from its end.

#include <vector>

#include "joint/joint.h"

namespace kw {

// A cutter that differs from the width asked by no more than this is meant (common practice, no source).
inline constexpr Length same_width = Length::micrometres(500);

// A last socket or finger thinner than this is none: no machine tells it from nothing.
inline constexpr Length splinter = Length::micrometres(2);

// No row repeats by less: a log may hold any nonsense, and no board has sockets without end (no blade is as thin; common practice, no
// source).
inline constexpr Length least_pitch = Length::micrometres(500);

// Sockets of a row that begins at `near` and repeats by `pitch`, or by least_pitch where that is more, up a board of this height. The
// last may run out at the top edge.
int sockets_up(Length near, Length pitch, Length height);
// Of these, those that are whole: a board on the jig's pin stands by them.
int whole_sockets_up(Length near, Length width, Length pitch, Length height);

// What stands or is open at the top edge where a row ends: the last finger's width, or the last socket's.
struct RowTop {
    bool is_finger = false;
    Length width;
};
RowTop top_of_row(Length near, Length width, Length pitch, Length height);

// One row, as a jig cuts it.
struct SocketRow {
    Length near;   // the first socket's near side
    Length width;  // of a socket
    Length pitch;
    Length depth;
};

// The end of a board of this height as far in as `shown`.
Region fingered_end(const SocketRow& row, Length height, Length shown);

// The corner seen from the receiver's outside: its own end, and the insert's fingers as they come through, each as high as it was cut and
// as thick as its board.
struct ClosedFingers {
    Region receiver;
    Region insert;
    Region overlap;  // wood in the same place twice
    Region gap;      // air in the sockets, under the plane of the receiver's end
    Length proud;    // the receiver's fingers, of the insert's outside face
};

// The insert's inside face lies on the floors of the receiver's sockets, and it stands `slid` up from flush at the bottom edges.
ClosedFingers close_fingers(const Region& receiver, const Region& insert, Length insert_thickness,
                            Length slid = {});

}  // namespace kw
