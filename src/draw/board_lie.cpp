#include "draw/board_lie.h"

#include <cassert>

namespace kw::draw {
namespace {

// In the drawer: x to the right of one who stands before it, y to the rear, z up.
struct Direction {
    int x = 0, y = 0, z = 0;
    bool operator==(const Direction&) const = default;
    Direction operator-() const { return {-x, -y, -z}; }
};

Direction cross(Direction a, Direction b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

// From the middle of the board to this end or edge.
Direction direction_of(Reference reference) {
    switch (reference) {
        case Reference::left_end: return {-1, 0, 0};
        case Reference::right_end: return {1, 0, 0};
        case Reference::front_end: return {0, -1, 0};
        case Reference::rear_end: return {0, 1, 0};
        case Reference::bottom_edge: return {0, 0, -1};
        case Reference::top_edge: break;
    }
    return {0, 0, 1};
}

Direction outward(Role role) {
    switch (role) {
        case Role::side_left: return {-1, 0, 0};
        case Role::side_right: return {1, 0, 0};
        case Role::back: return {0, 1, 0};
        case Role::bottom: return {0, 0, -1};
        case Role::front:
        case Role::face: break;
    }
    return {0, -1, 0};
}

Reference reference_at(Direction direction) {
    for (const Reference reference : {Reference::left_end, Reference::right_end, Reference::front_end,
                                      Reference::rear_end, Reference::bottom_edge})
        if (direction_of(reference) == direction) return reference;
    return Reference::top_edge;
}

}  // namespace

BoardLie board_lie(Role role, Reference at_fence, BoardFace down, bool fence_left) {
    const Direction fence = direction_of(at_fence);
    const Direction up = down == BoardFace::inside ? outward(role) : -outward(role);
    assert(cross(up, fence) != Direction{});  // a face is no end
    // Right, away from the maker and up are a right-handed frame.
    const Direction right = fence_left ? -fence : fence;
    const Direction away = cross(up, right);
    return {down == BoardFace::inside ? BoardFace::outside : BoardFace::inside, at_fence,
            reference_at(-fence), reference_at(away), reference_at(-away)};
}

StandingLie standing_lie(Role role, Reference down, bool pin_left) {
    const Direction up = -direction_of(down), pin = direction_of(Reference::bottom_edge);
    assert(cross(up, pin) != Direction{});  // an end, not an edge
    const Direction right = pin_left ? -pin : pin;
    const Direction away = cross(up, right);
    return {outward(role) == -away ? BoardFace::outside : BoardFace::inside, down, reference_at(up)};
}

Reference end_at_left(Role role) {
    const Direction away = -outward(role), up = direction_of(Reference::top_edge);
    assert(cross(away, up) != Direction{});  // a bottom lies
    return reference_at(-cross(away, up));
}

}  // namespace kw::draw
