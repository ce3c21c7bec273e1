#include "draw/fingers_view.h"

#include <algorithm>
#include <cmath>

#include "draw/board_lie.h"
#include "draw/board_marks.h"
#include "draw/finger_cuts.h"
#include "draw/joint_view_parts.h"
#include "draw/joint_words.h"
#include "words/names.h"

namespace kw::draw {
namespace {

// A stretch of the row that is seen, and how far down it is drawn.
struct Stretch {
    Length from, to;
    double down_mm = 0;
};

// What is seen: into the board from its end, and up the row. In the picture x runs into the board, and y up.
struct FingerWindow {
    double left_mm = 0, right_mm = 0;
    std::vector<Stretch> stretches;

    double top_mm() const { return stretches.back().to.mm() - stretches.back().down_mm; }
    Box box() const { return {left_mm, 0, right_mm, top_mm()}; }
};

double right_of(const FingerCuts& cuts) {
    const double depth = cuts.seen.depth.mm();
    return depth + std::max(1.1 * depth, 0.6 * cuts.seen.pitch.mm());
}

// Both boards are broken off where only the board that is seen has wood.
Length middle_of_finger(const FingerCuts& cuts, int finger) {
    const Length end = cuts.seen.near + finger * cuts.seen.pitch;
    return end - (cuts.seen.pitch - cuts.seen.width).scaled(1, 2);
}

// So many that they stand as high as this share of the depth, and no fewer than `least`: thin fingers would be a low picture.
int fingers_as_high(const FingerCuts& cuts, double share, int least) {
    return std::max(least, static_cast<int>(std::ceil(share * cuts.seen.depth.mm() / cuts.seen.pitch.mm())));
}

int fingers_below_break(const FingerCuts& cuts) {
    return fingers_as_high(cuts, 1.6, cuts.seen.near > Length{} ? 2 : 3);
}

FingerWindow row_window(const FingerCuts& cuts) {
    FingerWindow window{-0.3 * cuts.seen.depth.mm(), right_of(cuts), {}};
    const int fingers = sockets_up(cuts.seen.near, cuts.seen.pitch, cuts.height);
    const Length low = middle_of_finger(cuts, fingers_below_break(cuts)),
                 high = middle_of_finger(cuts, fingers - 1);
    if (high - low < cuts.seen.pitch) {
        window.stretches = {{Length{}, cuts.height, 0}};
        return window;
    }
    const Length between = cuts.seen.pitch.scaled(2, 5);
    window.stretches = {{Length{}, low, 0}, {high, cuts.height, (high - low - between).mm()}};
    return window;
}

FingerWindow up_to(const FingerCuts& cuts, int finger, double right_mm) {
    const Length top = min(middle_of_finger(cuts, finger), cuts.height);
    return {-0.3 * cuts.seen.depth.mm(), right_mm, {{Length{}, top, 0}}};
}

FingerWindow close_window(const FingerCuts& cuts) {
    return up_to(cuts, fingers_as_high(cuts, 0.7, cuts.seen.near > Length{} ? 1 : 2), right_of(cuts));
}

// Of two pictures side by side each is narrow, and may be higher.
FingerWindow narrow_window(const FingerCuts& cuts) {
    return up_to(cuts, fingers_as_high(cuts, 1.2, 2), 1.35 * cuts.seen.depth.mm());
}

Region seen_in(const Region& region, const FingerWindow& window, const Stretch& stretch) {
    return intersect(region, to_region(Rect{stretch.from, Length::nearest_mm(window.left_mm), stretch.to,
                                            Length::nearest_mm(window.right_mm)}));
}

// Up the row is up in the picture.
Placing placed_in(const Stretch& stretch) {
    return [down = stretch.down_mm](const kw::Point& p) { return Point{p.y.mm(), p.x.mm() - down}; };
}

const std::string& stock_seen(const Group& group, const FingerCuts& cuts) {
    return cuts.insert_seen ? group.work.insert_stock : group.work.receiver_stock;
}
const std::string& stock_entering(const Group& group, const FingerCuts& cuts) {
    return cuts.insert_seen ? group.work.receiver_stock : group.work.insert_stock;
}

// A face shows its grain also where it is plywood's.
Material face_of(const Work& work, const std::string& stock) {
    const Material wood = wood_of(work, stock, Grain::along);
    return wood == Material::plywood ? Material::long_grain : wood;
}

void add_stretch(Drawing& drawing, const Work& work, const Group& group, const FingerCuts& cuts,
                 const ClosedFingers& closed, const FingerWindow& window, const Stretch& stretch) {
    const auto place = placed_in(stretch);
    Breaks breaks;
    breaks.right_mm = Length::nearest_mm(window.right_mm).mm();
    if (stretch.from > Length{}) breaks.bottom_mm = stretch.from.mm() - stretch.down_mm;
    if (stretch.to < cuts.height) breaks.top_mm = stretch.to.mm() - stretch.down_mm;
    add_wood(drawing, rings_of(seen_in(closed.receiver, window, stretch), place),
             {face_of(work, stock_seen(group, cuts)), false, false}, breaks);
    // Its ends: plies run along its faces, and lining against that of the other board.
    add_wood(drawing, rings_of(seen_in(closed.insert, window, stretch), place),
             {wood_of(work, stock_entering(group, cuts), Grain::across), true, true}, {});
    const auto add = [&](const Region& region, Material material) {
        const Region seen = seen_in(region, window, stretch);
        if (!is_empty(seen))
            drawing.shapes.push_back(Fill{rings_of(seen, place), material, false, false, true});
    };
    add(closed.gap, Material::gap);
    add(closed.overlap, Material::overlap);
}

// The bottom edge is the marked one; the marked face is not seen.
void add_finger_marks(Drawing& drawing, const FingerCuts& cuts, const FingerWindow& window) {
    const double floor = cuts.seen.depth.mm(), wide = window.right_mm - floor;
    const double high = std::min(0.9 * wide, 0.7 * window.stretches.front().to.mm());
    const Point at{floor + 0.55 * wide, 0};
    add_face_mark(drawing, {at, {0, high}}, true);
    add_edge_mark(drawing, {at, {0, 0.3 * high}});
}

void add_corner(Drawing& drawing, const Work& work, const Group& group, const FingerCuts& cuts,
                const FingerWindow& window, bool with_marks) {
    const ClosedFingers drawn = closed(cuts, Length::nearest_mm(2 * window.right_mm));
    for (const Stretch& stretch : window.stretches)
        add_stretch(drawing, work, group, cuts, drawn, window, stretch);
    if (with_marks) add_finger_marks(drawing, cuts, window);
}

// Between a socket and the lowest finger in it: that lies against the upper wall, since the bottom edges are flush.
Point fit_point(const FingerCuts& drawn) {
    const Length wall =
        drawn.seen.near > Length{} ? drawn.seen.near : drawn.seen.pitch - drawn.entering.width;
    return {0.5 * drawn.seen.depth.mm(), wall.mm() + fit_of(drawn).mm() / 2};
}

// The middle of a row's lowest finger.
double lowest_finger_mm(const SocketRow& row) {
    return row.near > Length{} ? row.near.mm() / 2 : (row.width + row.pitch).mm() / 2;
}

// Between the seen board's end and the other's outside.
Point proud_point(const FingerCuts& drawn) {
    return {proud_of(drawn).mm() / 2, lowest_finger_mm(drawn.seen)};
}

std::vector<Pointed> finger_errors(const FingerCuts& cuts, const FingerCuts& drawn, const Locale& locale) {
    std::vector<Pointed> errors;
    const Length fit = fit_of(cuts), proud = proud_of(cuts);
    if (can_be_read(fit, locale)) errors.push_back({fit_text(fit, locale), fit_point(drawn)});
    if (can_be_read(proud, locale))
        errors.push_back({locale.words()(proud > Length{} ? "draw.proud" : "draw.short",
                                         show_with_unit(abs(proud), locale)),
                          proud_point(drawn)});
    return errors;
}

// In a title nothing points at the fingers.
std::vector<std::string> errors_in_title(const FingerCuts& cuts, const Locale& locale) {
    std::vector<std::string> errors;
    const Length fit = fit_of(cuts), proud = proud_of(cuts);
    if (can_be_read(fit, locale)) errors.push_back(fit_text(fit, locale));
    if (can_be_read(proud, locale))
        errors.push_back(locale.words()(proud > Length{} ? "draw.fingers_proud" : "draw.fingers_short",
                                        show_with_unit(abs(proud), locale)));
    return errors;
}

void add_row_sizes(Drawing& drawing, const FingerCuts& cuts, const FingerWindow& window,
                   const Locale& locale) {
    const SocketRow& row = cuts.seen;
    const double left = window.left_mm, depth = row.depth.mm();
    const int sockets = sockets_up(row.near, row.pitch, cuts.height);
    const auto add = [&](Length from, Length to, const char* key, double down, bool spare) {
        drawing.shapes.push_back(Dimension{{0, from.mm() - down},
                                           {0, to.mm() - down},
                                           Side::left,
                                           left,
                                           0,
                                           locale.words()(key, show_with_unit(to - from, locale)),
                                           Emphasis::plain,
                                           {},
                                           spare});
    };
    // One of each, as far apart as they are seen, so that their words stand clear of each other.
    const bool begins_with_finger = row.near > Length{};
    const Length up = (std::min(fingers_below_break(cuts), sockets) - 1) * row.pitch;
    const Length wide = row.pitch - row.width, finger = begins_with_finger ? Length{} : up - wide;
    add(finger, finger + wide, "draw.finger", 0, false);
    const Length socket = begins_with_finger ? row.near + up : Length{};
    add(socket, min(socket + row.width, cuts.height), "draw.socket", 0, true);  // the cutter's width
    const RowTop top = top_of_row(row.near, row.width, row.pitch, cuts.height);
    const Length whole = top.is_finger ? wide : row.width;
    if (whole - top.width > splinter)
        add(cuts.height - top.width, cuts.height, top.is_finger ? "draw.last_finger" : "draw.last_socket",
            window.stretches.back().down_mm, true);
    drawing.shapes.push_back(Dimension{{0, 0},
                                       {depth, 0},
                                       Side::below,
                                       0,
                                       0,
                                       locale.words()("draw.deep", show_with_unit(row.depth, locale)),
                                       Emphasis::plain});
}

// A board whose end is at the left where its outside is seen, as the picture has it.
std::string seen_board(const Work& work, const std::vector<PartEnd>& ends) {
    for (const PartEnd& end : ends) {
        const Part* part = work.plan.part_with_id(end.part);
        if (part && end_at_left(part->size.role) == end.reference)
            return role_word(work.job.locale.words(), name_of(part->size.role));
    }
    return {};
}

std::string fingers_title(const Work& work, const Group& group, const FingerCuts& cuts) {
    const Words& words = work.job.locale.words();
    std::vector<std::string> all{words("draw.closed", work_word(words, group.work.label))};
    const std::string board = seen_board(work, cuts.insert_seen ? group.work.inserts : group.work.receivers);
    if (!board.empty()) all.push_back(words("draw.from_outside", board));
    for (std::string& error : errors_in_title(cuts, caliper_locale(work.job)))
        all.push_back(std::move(error));
    return words.list(all, "list.comma");
}

Drawing fingers_at(const Work& work, const Group& group, const FingerCuts& cuts, int times,
                   const FingerWindow& window, Anchor anchor, bool with_marks) {
    const Words& words = work.job.locale.words();
    const FingerCuts drawn = exaggerated(cuts, times);
    Drawing drawing;
    drawing.title = words("draw.at_scale", fingers_title(work, group, cuts), times_text(words, times));
    add_corner(drawing, work, group, drawn, window, with_marks);
    add_column(drawing, finger_errors(cuts, drawn, caliper_locale(work.job)), window.box(), anchor);
    return drawing;
}

}  // namespace

Drawing fingers_view(const Work& work, const Group& group, const Settings& settings) {
    const FingerCuts cuts = finger_cuts(work, group, settings);
    const FingerWindow window = row_window(cuts);
    Drawing drawing;
    drawing.title = fingers_title(work, group, cuts);
    add_corner(drawing, work, group, cuts, window, true);
    drawing.close_up = close_window(cuts).box();
    add_row_sizes(drawing, cuts, window, work.job.locale);
    add_column(drawing, finger_errors(cuts, cuts, caliper_locale(work.job)), window.box(), Anchor::left);
    return drawing;
}

Drawing fingers_magnified(const Work& work, const Group& group, const Settings& settings) {
    const FingerCuts cuts = finger_cuts(work, group, settings);
    const int times = fitting_exaggeration(cuts);
    Drawing drawing = fingers_at(work, group, cuts, times, close_window(cuts), Anchor::left, true);
    add_caption(drawing, times_text(work.job.locale.words(), times));
    return drawing;
}

Drawing fingers_before_after(const Work& work, const Group& group, const Settings& before,
                             const Settings& after) {
    const FingerCuts was = finger_cuts(work, group, before), is = finger_cuts(work, group, after);
    const int times = std::min(fitting_exaggeration(was), fitting_exaggeration(is));
    const Words& words = work.job.locale.words();
    const auto picture = [&](const FingerCuts& cuts, const char* caption, Anchor anchor) {
        Drawing drawing = fingers_at(work, group, cuts, times, narrow_window(was), anchor, false);
        add_caption(drawing, std::string(words.text(caption)));
        return drawing;
    };
    Drawing first = picture(was, "draw.before", Anchor::right);
    Drawing second = picture(is, "draw.after", Anchor::left);
    // No break line keeps what is said of both off the bottom edges.
    const double clear = 0.25 * was.seen.width.mm();
    return side_by_side(work, std::move(first), std::move(second), times, false, clear);
}

}  // namespace kw::draw
