#include "draw/joint_words.h"

#include <algorithm>

#include "words/names.h"

namespace kw::draw {
namespace {

void add_led(Drawing& drawing, Point at, std::string text, Anchor anchor, Point target) {
    drawing.shapes.push_back(Label{at, std::move(text), anchor, Emphasis::strong, target});
}

std::string step_text(Length step, const Locale& locale) {
    const char* key = step > Length{} ? "draw.end_proud" : "draw.end_short";
    return locale.words()(key, show_with_unit(abs(step), locale));
}

// A setback or an offset is a place, given by its dimension; a step is one only where the end should be near flush.
bool has_step(const ClosedJoint& joint, const JointCuts& cuts, const Locale& locale) {
    const bool at_the_end = (cuts.end && !cuts.step_is_place) || cuts.slot.near == Length{};
    return at_the_end && can_be_read(joint.face_step, locale);
}

bool has_fit(const ClosedJoint& joint, const Locale& locale) {
    return joint.fit && can_be_read(*joint.fit, locale);
}
bool has_shoulder_gap(const ClosedJoint& joint, const Locale& locale) {
    return joint.shoulder_gap && *joint.shoulder_gap > Length{} && can_be_read(*joint.shoulder_gap, locale);
}
bool has_end_gap(const ClosedJoint& joint, const Locale& locale) {
    return joint.end_gap > Length{} && can_be_read(joint.end_gap, locale);
}

// The wall at which the tongue does not rest, halfway up, in the middle of what lies between.
Point fit_point(const ClosedJoint& drawn, const JointCuts& cuts) {
    const double play = drawn.fit.value_or(Length{}).mm();
    const double near = drawn.slot_near.mm(), far = near + drawn.slot_width.mm();
    const double x = cuts.seat == Seat::near_wall ? far - play / 2 : near + play / 2;
    return {x, 0.45 * drawn.slot_depth.mm()};
}

// Between shoulder and inside face, beside the tongue.
Point shoulder_point(const ClosedJoint& drawn, const JointCuts& cuts) {
    // Beside a lap, on the inside.
    if (cuts.end && cuts.end->down == BoardFace::inside)
        return {(drawn.face_step + drawn.entering).mm() + 0.6 * cuts.end->depth.mm(),
                -0.5 * drawn.shoulder_gap->mm()};
    const double left = std::max(0.0, drawn.face_step.mm());
    return {left + 0.4 * (drawn.slot_near.mm() - left), -0.5 * drawn.shoulder_gap->mm()};
}

Point end_gap_point(const ClosedJoint& drawn) {
    return {drawn.slot_near.mm() + 0.5 * drawn.entering.mm(),
            (drawn.slot_depth - drawn.end_gap.scaled(1, 2)).mm()};
}

Point step_point(const ClosedJoint& drawn, const Box& window) {
    return {drawn.face_step.mm() / 2, 0.19 * window.bottom_mm};
}

std::string shoulder_text(const ClosedJoint& joint, const Locale& locale) {
    return locale.words()("draw.shoulder_gap", show_with_unit(*joint.shoulder_gap, locale));
}

std::string end_gap_text(const ClosedJoint& joint, const Locale& locale) {
    return locale.words()("draw.end_gap", show_with_unit(joint.end_gap, locale));
}

std::vector<Pointed> pointed_errors(const ClosedJoint& joint, const ClosedJoint& drawn, const JointCuts& cuts,
                                    const Box& window, const Locale& locale) {
    std::vector<Pointed> errors;
    if (has_fit(joint, locale)) errors.push_back({fit_text(*joint.fit, locale), fit_point(drawn, cuts)});
    if (has_end_gap(joint, locale)) errors.push_back({end_gap_text(joint, locale), end_gap_point(drawn)});
    if (has_shoulder_gap(joint, locale))
        errors.push_back({shoulder_text(joint, locale), shoulder_point(drawn, cuts)});
    if (has_step(joint, cuts, locale))
        errors.push_back({step_text(joint.face_step, locale), step_point(drawn, window)});
    return errors;
}

}  // namespace

std::string fit_text(Length fit, const Locale& locale) {
    const char* key = fit < Length{} ? "draw.overlap" : "draw.loose";
    return locale.words()(key, show_with_unit(abs(fit), locale));
}

bool can_be_read(Length length, const Locale& locale) {
    const std::string shown = show(abs(length), locale);
    return shown != "0" && shown.rfind("0 ", 0) != 0;  // nor with a mark behind it
}

void add_column(Drawing& drawing, std::vector<Pointed> errors, const Box& window, Anchor anchor) {
    std::sort(errors.begin(), errors.end(),
              [](const Pointed& a, const Pointed& b) { return a.at.y_mm > b.at.y_mm; });
    const double height = window.top_mm - window.bottom_mm, aside = 0.06 * height;
    const double x = anchor == Anchor::right ? window.left_mm - aside : window.right_mm + aside;
    const double step = height / static_cast<double>(errors.size() + 1);
    double y = window.top_mm;
    for (Pointed& error : errors) add_led(drawing, {x, y -= step}, std::move(error.text), anchor, error.at);
}

std::vector<std::string> joint_errors(const ClosedJoint& joint, const JointCuts& cuts, const Locale& locale) {
    std::vector<std::string> texts;
    if (has_fit(joint, locale)) texts.push_back(fit_text(*joint.fit, locale));
    if (has_shoulder_gap(joint, locale)) texts.push_back(shoulder_text(joint, locale));
    if (has_end_gap(joint, locale)) texts.push_back(end_gap_text(joint, locale));
    if (has_step(joint, cuts, locale)) texts.push_back(step_text(joint.face_step, locale));
    return texts;
}

void add_errors(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn, const JointCuts& cuts,
                const Box& window, const Locale& locale) {
    const double low = 0.62 * window.bottom_mm;
    const double far = (drawn.slot_near + drawn.slot_width).mm();
    const double right = far + 0.25 * (window.right_mm - far);
    const auto right_of = [&](double y, std::string text, Point target) {
        add_led(drawing, {right, y}, std::move(text), Anchor::left, target);
    };
    const auto left_of = [&](double y, std::string text, Point target) {
        add_led(drawing, {window.left_mm, y}, std::move(text), Anchor::right, target);
    };
    if (has_fit(joint, locale)) right_of(low, fit_text(*joint.fit, locale), fit_point(drawn, cuts));
    if (has_shoulder_gap(joint, locale))
        left_of(low, shoulder_text(joint, locale), shoulder_point(drawn, cuts));
    if (has_end_gap(joint, locale)) right_of(1.6 * low, end_gap_text(joint, locale), end_gap_point(drawn));
    if (has_step(joint, cuts, locale))
        left_of(1.6 * low, step_text(joint.face_step, locale), step_point(drawn, window));
}

void add_errors_left(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn,
                     const JointCuts& cuts, const Box& window, const Locale& locale) {
    add_column(drawing, pointed_errors(joint, drawn, cuts, window, locale), window, Anchor::right);
}

void add_errors_right(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn,
                      const JointCuts& cuts, const Box& window, const Locale& locale) {
    add_column(drawing, pointed_errors(joint, drawn, cuts, window, locale), window, Anchor::left);
}

void add_slot_sizes(Drawing& drawing, const ClosedJoint& joint, const std::string& slot_name,
                    const Box& window, const Locale& locale) {
    const double near = joint.slot_near.mm(), far = near + joint.slot_width.mm(),
                 depth = joint.slot_depth.mm();
    // As the readings of a test cut are called.
    const Words& words = locale.words();
    const char* near_key = joint.tongue_length ? "draw.lip" : "draw.near";
    if (joint.slot_near > Length{})
        drawing.shapes.push_back(Dimension{{0, 0},
                                           {near, depth},
                                           Side::above,
                                           window.top_mm,
                                           0,
                                           words(near_key, show_with_unit(joint.slot_near, locale)),
                                           Emphasis::plain});
    drawing.shapes.push_back(
        Dimension{{near, depth},
                  {far, depth},
                  Side::above,
                  window.top_mm,
                  0,
                  words("draw.slot", work_word(words, slot_name), show_with_unit(joint.slot_width, locale)),
                  Emphasis::plain});
    drawing.shapes.push_back(Dimension{{far, 0},
                                       {far, depth},
                                       Side::right,
                                       window.right_mm + 2.5,
                                       0,
                                       words("draw.deep", show_with_unit(joint.slot_depth, locale)),
                                       Emphasis::plain});
}

}  // namespace kw::draw
