#include "checker/shapes.h"

#include <array>
#include <string>

namespace checker {
namespace {

// Lines run this far under a face: anything shallower is no joint, and is found as a stray cut.
constexpr double skin_mm = 0.02;

struct Named {
    std::string name;
    Block block;
};

Point middle_of(const Workpiece& piece) {
    return {piece.part.length_mm / 2, piece.part.width_mm / 2, piece.part.thickness_mm / 2};
}

double depth_at(const Workpiece& piece, Point point) {
    const auto wood = wood_along(piece.wood, into, point);
    return wood.empty() ? piece.part.thickness_mm : wood.front().from;
}

// The gaps that a line just under the inside face meets on its way over the whole part.
std::vector<Slot> slots_along(const Workpiece& piece, int axis, Point line) {
    line[into] = skin_mm;
    const auto a = static_cast<std::size_t>(axis);
    std::vector<Slot> slots;
    double at = 0;
    const auto close = [&](double to) {
        if (to - at < nothing_mm) return;
        line[a] = (at + to) / 2;
        slots.push_back({at, to, depth_at(piece, line)});
    };
    for (const Span& wood : wood_along(piece.wood, axis, line)) {
        close(wood.from);
        at = wood.to;
    }
    close(piece.wood.hull.high[a]);
    return slots;
}

Block slot_block(const Workpiece& piece, int axis, const Slot& slot) {
    Block block = piece.wood.hull;
    block.low[static_cast<std::size_t>(axis)] = slot.from_mm;
    block.high[static_cast<std::size_t>(axis)] = slot.to_mm;
    block.high[into] = slot.depth_mm;
    return block;
}

// The part must be its blank less the shape, and nothing else.
void compare(const Workpiece& piece, const std::vector<Named>& shape, Report& report) {
    std::vector<Block> blocks;
    for (const Named& feature : shape) blocks.push_back(feature.block);
    for (const Named& feature : shape) {
        if (leaves_more_than(feature.block, piece.wood.cuts, report.tolerance_mm()))
            report.say(Kind::measure, piece.part.id, "wood is left in the " + feature.name);
    }
    for (const Block& cut : piece.wood.cuts) {
        Block inside = cut;
        for (std::size_t i = 0; i < 3; ++i) {
            inside.low[i] = std::max(inside.low[i], piece.wood.hull.low[i]);
            inside.high[i] = std::min(inside.high[i], piece.wood.hull.high[i]);
        }
        if (leaves_more_than(inside, blocks, report.tolerance_mm()))
            report.say(Kind::measure, piece.part.id, "a pass cuts where no joint is");
    }
}

std::optional<Slot> find_groove(const Workpiece& piece, bool wanted, Report& report) {
    const auto slots = slots_along(piece, up, middle_of(piece));
    const std::size_t asked = wanted ? 1 : 0;
    if (slots.size() != asked) {
        report.say(Kind::measure, piece.part.id,
                   std::to_string(slots.size()) + " grooves in its height, asked " + std::to_string(asked));
    }
    if (slots.size() != 1) return std::nullopt;
    return slots.front();
}

// The end at the line's near (low) or far side. `at` is just inside the end.
std::optional<End> find_end(const Workpiece& piece, bool high, Report& report) {
    const double length = piece.part.length_mm;
    const double thickness = piece.part.thickness_mm;
    Point line = middle_of(piece);
    line[up] = clear_of_groove_mm(piece.part.width_mm);
    line[along] = high ? length - skin_mm : skin_mm;
    const auto tongue = wood_along(piece.wood, into, line);
    if (tongue.size() != 1) {
        report.say(Kind::measure, piece.part.id, "an end has no tongue, or two");
        return std::nullopt;
    }
    End end{tongue.front().from, tongue.front().to, 0};
    const bool rabbet_outside = end.tongue_to_mm < thickness - nothing_mm;
    const bool rabbet_inside = end.tongue_from_mm > nothing_mm;
    if (rabbet_outside && rabbet_inside) {
        report.say(Kind::measure, piece.part.id, "an end is rabbeted on both faces");
        return std::nullopt;
    }
    if (!rabbet_outside && !rabbet_inside) return end;
    line[into] = rabbet_outside ? thickness - skin_mm : skin_mm;
    const auto behind = wood_along(piece.wood, along, line);
    if (behind.empty()) {
        report.say(Kind::measure, piece.part.id, "nothing is left between its rabbets");
        return std::nullopt;
    }
    end.shoulder_mm = high ? length - behind.back().to : behind.front().from;
    return end;
}

Block rabbet_block(const Workpiece& piece, const End& end, bool high) {
    Block block = piece.wood.hull;
    if (high) block.low[along] = block.high[along] - end.shoulder_mm;
    else block.high[along] = end.shoulder_mm;
    if (end.tongue_from_mm > nothing_mm) block.high[into] = end.tongue_from_mm;
    else block.low[into] = end.tongue_to_mm;
    return block;
}

// Just under the outside face, where no groove is, and just inside the end.
Sockets find_sockets(const Workpiece& piece, bool high, Report& report) {
    const double length = piece.part.length_mm;
    Point line = middle_of(piece);
    line[into] = piece.part.thickness_mm - skin_mm;
    line[along] = high ? length - skin_mm : skin_mm;
    Sockets sockets;
    double at = 0;
    const auto close = [&](double to) {
        if (to - at < nothing_mm) return;
        Point into_it = line;
        into_it[up] = (at + to) / 2;
        const auto wood = wood_along(piece.wood, along, into_it);
        if (wood.empty()) report.say(Kind::measure, piece.part.id, "a socket goes through all of it");
        else sockets.push_back({at, to, high ? length - wood.back().to : wood.front().from});
    };
    for (const Span& wood : wood_along(piece.wood, up, line)) {
        close(wood.from);
        at = wood.to;
    }
    close(piece.part.width_mm);
    if (sockets.empty()) report.say(Kind::measure, piece.part.id, "an end has no sockets");
    return sockets;
}

void add_sockets(std::vector<Named>& shape, const Workpiece& piece, const Sockets& sockets, bool high) {
    for (const Slot& socket : sockets) {
        Block block = piece.wood.hull;
        block.low[up] = socket.from_mm;
        block.high[up] = socket.to_mm;
        if (high) block.low[along] = block.high[along] - socket.depth_mm;
        else block.high[along] = socket.depth_mm;
        shape.push_back({high ? "high end's sockets" : "low end's sockets", block});
    }
}

}  // namespace

std::optional<SideShape> find_fingered_side(const Workpiece& side, Report& report) {
    const auto groove = find_groove(side, true, report);
    const Sockets front = find_sockets(side, false, report), back = find_sockets(side, true, report);
    if (!groove || front.empty() || back.empty()) return std::nullopt;
    std::vector<Named> shape{{"groove", slot_block(side, up, *groove)}};
    add_sockets(shape, side, front, false);
    add_sockets(shape, side, back, true);
    compare(side, shape, report);
    const double thickness = side.part.thickness_mm, length = side.part.length_mm;
    return SideShape{{0, front.front().depth_mm, thickness},
                     {length - back.front().depth_mm, length, thickness},
                     *groove,
                     front,
                     back};
}

std::optional<CrossShape> find_fingered_cross(const Workpiece& part, bool with_groove, Report& report) {
    const auto groove = find_groove(part, with_groove, report);
    const Sockets left = find_sockets(part, false, report), right = find_sockets(part, true, report);
    if (left.empty() || right.empty() || groove.has_value() != with_groove) return std::nullopt;
    std::vector<Named> shape;
    if (groove) shape.push_back({"groove", slot_block(part, up, *groove)});
    add_sockets(shape, part, left, false);
    add_sockets(shape, part, right, true);
    compare(part, shape, report);
    const End whole{0, part.part.thickness_mm, 0};
    return CrossShape{whole, whole, groove, left, right};
}

double clear_of_groove_mm(double width_mm) { return width_mm * 0.75; }

std::optional<SideShape> find_side_shape(const Workpiece& side, Report& report) {
    const auto groove = find_groove(side, true, report);
    Point line = middle_of(side);
    line[up] = clear_of_groove_mm(side.part.width_mm);
    const auto slots = slots_along(side, along, line);
    if (slots.size() != 2) {
        report.say(Kind::measure, side.part.id,
                   std::to_string(slots.size()) + " joints along its inside face, asked 2");
    }
    if (!groove || slots.size() != 2) return std::nullopt;
    compare(side,
            {{"joint with the front", slot_block(side, along, slots[0])},
             {"joint with the back", slot_block(side, along, slots[1])},
             {"groove", slot_block(side, up, *groove)}},
            report);
    return SideShape{slots[0], slots[1], *groove};
}

std::optional<CrossShape> find_cross_shape(const Workpiece& part, bool with_groove, Report& report) {
    const auto groove = find_groove(part, with_groove, report);
    const auto left = find_end(part, false, report);
    const auto right = find_end(part, true, report);
    if (!left || !right || groove.has_value() != with_groove) return std::nullopt;
    std::vector<Named> shape;
    if (left->shoulder_mm > 0) shape.push_back({"left rabbet", rabbet_block(part, *left, false)});
    if (right->shoulder_mm > 0) shape.push_back({"right rabbet", rabbet_block(part, *right, true)});
    if (groove) shape.push_back({"groove", slot_block(part, up, *groove)});
    compare(part, shape, report);
    return CrossShape{*left, *right, groove};
}

}  // namespace checker
