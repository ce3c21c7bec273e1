#include "draw/joint_view.h"

#include <algorithm>

#include "draw/board_marks.h"
#include "draw/fingers_view.h"
#include "draw/joint_view_parts.h"
#include "draw/joint_words.h"
#include "draw/turned.h"
#include "draw/wood.h"
#include "words/names.h"

namespace kw::draw {
namespace {

Length shown_for(const JointCuts& cuts) {
    return 4 * (cuts.slot.far + cuts.receiver_thickness + cuts.insert_thickness);
}

// The whole corner. Its left and upper edges lie outside of the wood.
Box corner_window(const JointCuts& cuts) {
    const double t = cuts.insert_thickness.mm(), far = cuts.slot.far.mm();
    return {-1, -1.5 * std::max(t, 9.0), far + std::max(1.5 * t, 12.0), cuts.receiver_thickness.mm() + 1};
}

// Tongue and slot, with the board's end where it is not far away; of a tongue with a shoulder, the insert's whole thickness.
Box close_window(const JointCuts& cuts) {
    const double near = cuts.slot.near.mm(), far = cuts.slot.far.mm(), w = far - near;
    const double depth = cuts.slot.depth.mm(), web = cuts.receiver_thickness.mm() - depth;
    const double shown = cuts.end ? std::max(0.8 * w, near - cuts.step.mm() + 0.25 * w) : 0.8 * w;
    const double left = near > std::max(1.6 * w, shown) ? near - shown : -0.25 * w;
    // A lap's shoulder is beyond the slot.
    const bool is_lap = cuts.end && cuts.end->down == BoardFace::inside;
    const double right =
        is_lap ? std::max(far, (cuts.step + cuts.insert_thickness).mm()) + 0.3 * w : far + 0.8 * w;
    return {left, -0.9 * std::max(w, depth), right, depth + 0.55 * web};
}

bool is_edge(const Group& group) { return group.work.guide == "rip fence"; }

WoodLook receiver_look(const Work& work, const Group& group) {
    return {wood_of(work, group.work.receiver_stock, is_edge(group) ? Grain::across : Grain::along), false,
            false};
}

// It stands at a right angle to the receiver: grain, plies and lining turn with it.
WoodLook insert_look(const Work& work, const Group& group) {
    return {wood_of(work, group.work.insert_stock, Grain::along), false, true};
}

void add_region(Drawing& drawing, const Region& region, const Box& window, Material material) {
    const Region seen = intersect(region, to_region(rect_of(window)));
    if (!is_empty(seen))
        drawing.shapes.push_back(Fill{rings_of(seen, shifted(0, 0)), material, false, false, true});
}

Breaks breaks_at(const Box& window) {
    const Rect exact = rect_of(window);
    return {exact.left.mm(), exact.right.mm(), exact.bottom.mm(), exact.top.mm()};
}

void add_joint(Drawing& drawing, const Work& work, const Group& group, const ClosedJoint& joint,
               const Box& window) {
    const Region frame = to_region(rect_of(window));
    const auto add = [&](const Region& board, const WoodLook& look) {
        add_wood(drawing, rings_of(intersect(board, frame), shifted(0, 0)), look, breaks_at(window));
    };
    add(joint.receiver, receiver_look(work, group));
    add(joint.insert, insert_look(work, group));
    add_region(drawing, joint.gap, window, Material::gap);
    add_region(drawing, joint.overlap, window, Material::overlap);
}

// The receiver alone, where nothing enters its slot.
void add_receiver(Drawing& drawing, const Work& work, const Group& group, const JointCuts& cuts,
                  const Box& window) {
    const Region receiver =
        cut_section(Member::receiver, cuts.receiver_thickness, shown_for(cuts), {cuts.slot});
    add_wood(drawing, rings_of(intersect(receiver, to_region(rect_of(window))), shifted(0, 0)),
             receiver_look(work, group), breaks_at(window));
}

bool holds(const Box& window, Point p) {
    return p.x_mm > window.left_mm && p.x_mm < window.right_mm && p.y_mm > window.bottom_mm &&
           p.y_mm < window.top_mm;
}

// The marked face of each board is the one that is marked at the machine: the receiver's inside is y = 0, and the insert's outside
// stands the step away from the receiver's end. Of the edges only one that is seen on end is in the picture.
void add_marks(Drawing& drawing, const Group& group, const JointCuts& cuts, const ClosedJoint& joint,
               const Box& window) {
    static_assert(marked_face == BoardFace::inside);
    const double receiver = cuts.receiver_thickness.mm(), insert = cuts.insert_thickness.mm();
    const double most = 0.2 * std::min(window.right_mm - window.left_mm, window.top_mm - window.bottom_mm);
    const double high = std::min(0.55 * receiver, most), insert_high = std::min(0.55 * insert, most);
    const MarkPlace on_receiver{{window.right_mm - 0.6 * high, 0}, {0, high}};
    const MarkPlace on_insert{{joint.face_step.mm() + insert, window.bottom_mm + 0.6 * insert_high},
                              {-insert_high, 0}};
    for (const MarkPlace& place : {on_receiver, on_insert})
        if (holds(window, place.at)) add_face_mark(drawing, place);
    const MarkPlace on_edge{{0, 0.6 * std::min(receiver, window.top_mm)}, {0.5 * high, 0}};
    const Reference edge =
        group.work.receivers.empty() ? marked_edge : group.work.receivers.front().reference;
    if (is_edge(group) && edge == marked_edge && holds(window, on_edge.at)) add_edge_mark(drawing, on_edge);
}

std::string title_of(const Work& work, const Group& group, const JointCuts& cuts, const ClosedJoint& joint) {
    const Words& words = work.job.locale.words();
    std::vector<std::string> all{words("draw.closed", work_word(words, group.work.label))};
    for (std::string& error : joint_errors(joint, cuts, caliper_locale(work.job)))
        all.push_back(std::move(error));
    return words.list(all, "list.comma");
}

// Words that stand beside a joint on its right when it is turned start there, and do not straddle their point.
Drawing stood(const Group& group, Drawing drawing) {
    if (!is_edge(group)) return drawing;
    drawing = turned_left(std::move(drawing));
    for (Shape& shape : drawing.shapes)
        if (auto* label = std::get_if<Label>(&shape)) label->anchor = Anchor::left;
    return drawing;
}

std::string empty_title(const Work& work, const Group& group) {
    const Words& words = work.job.locale.words();
    return words("draw.nothing_enters", work_word(words, group.work.label));
}

using AddErrors = decltype(&add_errors);

Drawing magnified(const Work& work, const Group& group, const JointCuts& cuts, int times, const Box& window,
                  AddErrors add_words, bool with_marks) {
    const auto joint = closed(cuts, shown_for(cuts));
    const auto drawn = closed(exaggerated(cuts, times), shown_for(cuts));
    Drawing drawing;
    if (!joint || !drawn) {
        drawing.title = empty_title(work, group);
        add_receiver(drawing, work, group, cuts, window);
        return drawing;
    }
    const Words& words = work.job.locale.words();
    drawing.title = words("draw.at_scale", title_of(work, group, cuts, *joint), times_text(words, times));
    add_joint(drawing, work, group, *drawn, window);
    if (with_marks) add_marks(drawing, group, cuts, *drawn, window);
    add_words(drawing, *joint, *drawn, cuts, window, caliper_locale(work.job));
    return drawing;
}

}  // namespace

Drawing joint_view(const Work& work, const Group& group, const Settings& settings) {
    if (has_fingers(group.work.chosen.joint)) return fingers_view(work, group, settings);
    const JointCuts cuts = joint_cuts(work, group, settings);
    const Box window = corner_window(cuts);
    Drawing drawing;
    const auto joint = closed(cuts, shown_for(cuts));
    if (joint) {
        drawing.title = title_of(work, group, cuts, *joint);
        add_joint(drawing, work, group, *joint, window);
        add_marks(drawing, group, cuts, *joint, window);
        drawing.close_up = close_window(cuts);
        add_slot_sizes(drawing, *joint, group.slot().name, window, work.job.locale);
        add_errors(drawing, *joint, *joint, cuts, window, caliper_locale(work.job));
    } else {
        drawing.title = empty_title(work, group);
        add_receiver(drawing, work, group, cuts, window);
    }
    return stood(group, std::move(drawing));
}

Drawing joint_view(const Work& work, const Group& group) { return joint_view(work, group, group.stands); }

Drawing joint_magnified(const Work& work, const Group& group, const Settings& settings) {
    if (has_fingers(group.work.chosen.joint)) return fingers_magnified(work, group, settings);
    const JointCuts cuts = joint_cuts(work, group, settings);
    const int times = fitting_exaggeration(cuts);
    Drawing drawing = stood(group, magnified(work, group, cuts, times, close_window(cuts), add_errors, true));
    add_caption(drawing, times_text(work.job.locale.words(), times));
    return drawing;
}

Drawing joint_magnified(const Work& work, const Group& group) {
    return joint_magnified(work, group, group.stands);
}

Drawing joint_before_after(const Work& work, const Group& group, const Settings& before,
                           const Settings& after) {
    if (has_fingers(group.work.chosen.joint)) return fingers_before_after(work, group, before, after);
    const JointCuts was = joint_cuts(work, group, before), is = joint_cuts(work, group, after);
    const int times = std::min(fitting_exaggeration(was), fitting_exaggeration(is));
    // Ends stand side by side with their words outside, edges one above the other with their words at the right.
    const bool stacked = is_edge(group);
    const Words& words = work.job.locale.words();
    const auto picture = [&](const JointCuts& cuts, const std::string& caption, AddErrors add_words) {
        Drawing drawing =
            stood(group, magnified(work, group, cuts, times, close_window(was), add_words, false));
        add_caption(drawing, caption);
        return drawing;
    };
    Drawing first = picture(was, words("draw.before"), stacked ? add_errors : add_errors_left);
    Drawing second = picture(is, words("draw.after"), stacked ? add_errors : add_errors_right);
    return side_by_side(work, std::move(first), std::move(second), times, stacked);
}

}  // namespace kw::draw
