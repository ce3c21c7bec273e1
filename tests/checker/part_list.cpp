#include "checker/part_list.h"

#include <cmath>

namespace checker {
namespace {

std::string copy_name(const std::string& drawer, int copy) { return drawer + " " + std::to_string(copy); }

const Workpiece* find_piece(const std::vector<Workpiece>& all, const std::string& drawer, int copy,
                            const std::string& role, Report& report) {
    const Workpiece* found = nullptr;
    int count = 0;
    for (const Workpiece& piece : all) {
        if (piece.part.drawer != drawer || piece.part.copy != copy || piece.part.role != role) continue;
        found = &piece;
        ++count;
    }
    if (count == 1) return found;
    report.say(Kind::list, copy_name(drawer, copy), std::to_string(count) + " parts are its " + role);
    return nullptr;
}

const AskedBoard* board_of(const AskedDrawer& drawer, const std::string& role) {
    if (role == "side_left" || role == "side_right") return &drawer.sides;
    if (role == "front") return &drawer.front.board;
    if (role == "back") return &drawer.back.board;
    if (role == "bottom") return &drawer.bottom.board;
    if (role == "face" && drawer.face.board) return &*drawer.face.board;
    return nullptr;
}

void check_board(const PlanPart& part, const AskedDrawer& drawer, Report& report) {
    const AskedBoard* board = board_of(drawer, part.role);
    if (board == nullptr) {
        if (part.role != "filler" && part.role != "face")
            report.say(Kind::list, part.id, "no role is " + part.role);
        return;
    }
    if (part.stock != board->stock)
        report.say(Kind::list, part.id, "it is of " + part.stock + ", not " + board->stock);
    report.same(Kind::list, part.id, "thickness", part.thickness_mm, board->thickness_mm);
}

// The contract does not say which way a face's length runs.
void check_face_size(const PlanPart& part, const AskedFace& face, Report& report) {
    if (!face.across_mm || !face.high_mm) return;
    const bool upright =
        report.equal(part.length_mm, *face.high_mm) && report.equal(part.width_mm, *face.across_mm);
    if (upright) return;
    report.same(Kind::list, part.id, "a face's size across", part.length_mm, *face.across_mm);
    report.same(Kind::list, part.id, "a face's height", part.width_mm, *face.high_mm);
}

// A face with no stock named may come with the drawer or not.
void check_faces(const Plan& plan, const AskedDrawer& drawer, int copy, Report& report) {
    int count = 0;
    for (const PlanPart& part : plan.parts) {
        if (part.drawer != drawer.name || part.copy != copy || part.role != "face") continue;
        ++count;
        check_face_size(part, drawer.face, report);
    }
    const int most = drawer.face.style == "none" ? 0 : 1;
    const int least = drawer.face.board ? most : 0;
    if (count < least || count > most)
        report.say(Kind::list, copy_name(drawer.name, copy), std::to_string(count) + " faces");
}

}  // namespace

const PlanBox* check_box(const Plan& plan, const AskedDrawer& drawer, Report& report) {
    const PlanBox* found = nullptr;
    int count = 0;
    for (const PlanBox& box : plan.boxes) {
        if (box.drawer != drawer.name) continue;
        found = &box;
        ++count;
    }
    if (count != 1) {
        report.say(Kind::list, drawer.name, "it has " + std::to_string(count) + " boxes");
        return nullptr;
    }
    report.within(Kind::list, drawer.name, "box width", found->width_mm, drawer.width_mm);
    report.within(Kind::list, drawer.name, "box height", found->height_mm, drawer.height_mm);
    report.within(Kind::list, drawer.name, "box depth", found->depth_mm, drawer.depth_mm);
    return found;
}

std::optional<Pieces> find_pieces(const std::vector<Workpiece>& all, const AskedDrawer& drawer, int copy,
                                  Report& report) {
    const auto find = [&](const char* role) { return find_piece(all, drawer.name, copy, role, report); };
    const Pieces pieces{find("side_left"), find("side_right"), find("front"), find("back"), find("bottom")};
    const bool complete = pieces.left != nullptr && pieces.right != nullptr && pieces.front != nullptr &&
                          pieces.back != nullptr && pieces.bottom != nullptr;
    if (!complete) return std::nullopt;
    return pieces;
}

void check_parts(const Plan& plan, const Asked& asked, Report& report) {
    for (const PlanPart& part : plan.parts) {
        const AskedDrawer* drawer = find_named(asked.drawers, part.drawer);
        if (drawer == nullptr || part.copy < 1 || part.copy > drawer->count)
            report.say(Kind::list, part.id, "no drawer was asked that it belongs to");
        else check_board(part, *drawer, report);
    }
    for (const PlanBox& box : plan.boxes) {
        if (find_named(asked.drawers, box.drawer) == nullptr)
            report.say(Kind::list, box.drawer, "no such drawer");
    }
    for (const AskedDrawer& drawer : asked.drawers) {
        for (int copy = 1; copy <= drawer.count; ++copy) check_faces(plan, drawer, copy, report);
    }
}

}  // namespace checker
