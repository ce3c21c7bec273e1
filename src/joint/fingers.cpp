#include "joint/fingers.h"

#include <algorithm>

namespace kw {
namespace {

// How deep the sockets are: where the wood begins, at its farthest, up the end.
Length floor_of(const Region& end, const Rect& box) {
    Length floor;
    for (const Ring& ring : end)
        for (const Point& corner : ring)
            if (corner.y < box.top) floor = max(floor, corner.y);
    return floor;
}

int times_in(Length room, Length pitch) {
    return static_cast<int>(room.ticks() / max(pitch, least_pitch).ticks());
}

}  // namespace

int sockets_up(Length near, Length pitch, Length height) {
    const Length room = height - splinter - near;
    if (room <= Length{}) return 0;
    return times_in(room - Length::from_ticks(1), pitch) + 1;
}

int whole_sockets_up(Length near, Length width, Length pitch, Length height) {
    const Length room = height - near - width;
    return room < Length{} ? 0 : times_in(room, pitch) + 1;
}

RowTop top_of_row(Length near, Length width, Length pitch, Length height) {
    const int sockets = sockets_up(near, pitch, height);
    if (sockets == 0) return {true, height};
    const Length begins = near + (sockets - 1) * pitch;
    const Length above = height - begins - width;
    return above > splinter ? RowTop{true, above} : RowTop{false, min(height - begins, width)};
}

Region fingered_end(const SocketRow& row, Length height, Length shown) {
    std::vector<Rect> sockets;
    for (int i = 0; i < sockets_up(row.near, row.pitch, height); ++i) {
        const Length near = row.near + i * row.pitch;
        sockets.push_back({near, Length{}, near + row.width, row.depth});
    }
    return subtract(to_region(Rect{Length{}, Length{}, height, shown}), sockets);
}

ClosedFingers close_fingers(const Region& receiver, const Region& insert, Length insert_thickness,
                            Length slid) {
    const Rect box = bounds(receiver).value_or(Rect{});
    const Length floor = floor_of(receiver, box);
    ClosedFingers closed;
    closed.receiver = receiver;
    closed.proud = floor - insert_thickness;
    for (const Span& finger : solid_along_x(insert, hair)) {
        const Rect through{finger.first + slid, closed.proud, finger.second + slid, floor};
        closed.insert = unite(closed.insert, to_region(through));
    }
    closed.overlap = intersect(closed.receiver, closed.insert);
    const Rect corner{box.left, max(closed.proud, Length{}), box.right, floor};
    closed.gap = subtract(subtract(to_region(corner), closed.receiver), closed.insert);
    return closed;
}

}  // namespace kw
