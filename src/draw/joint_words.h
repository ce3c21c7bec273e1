#pragma once
// What is written on a closed joint: its sizes, and where it is not as asked. All in the frame of section.h, before the
// picture is turned.

#include "draw/drawing.h"
#include "draw/joint_cuts.h"
#include "length/text.h"

namespace kw::draw {

// "loose by 0.004 in", "overlap 0.002 in"
std::string fit_text(Length fit, const Locale& locale);

// Whether the length is not just nothing in this reading: "end short 0 in" tells nobody anything.
bool can_be_read(Length length, const Locale& locale);

// Words, and what they point at.
struct Pointed {
    std::string text;
    Point at;
};

// One under the other at the side of the window where they are anchored: what points highest stands highest.
void add_column(Drawing& drawing, std::vector<Pointed> errors, const Box& window, Anchor anchor);

// "loose by 0.004 in", "overlap 0.002 in", "shoulder gap 0.003 in": only what is not zero, in that order, then the end
// gap and the step.
std::vector<std::string> joint_errors(const ClosedJoint& joint, const JointCuts& cuts, const Locale& locale);

// Labels for these, pointing into `drawn`, which is `joint` exaggerated. `window` is what is seen.
void add_errors(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn, const JointCuts& cuts,
                const Box& window, const Locale& locale);

// The same, one under the other on one side of the joint: what points highest stands highest.
void add_errors_left(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn,
                     const JointCuts& cuts, const Box& window, const Locale& locale);
void add_errors_right(Drawing& drawing, const ClosedJoint& joint, const ClosedJoint& drawn,
                      const JointCuts& cuts, const Box& window, const Locale& locale);

// Place, width and depth of the slot, which goes by its cut's name.
void add_slot_sizes(Drawing& drawing, const ClosedJoint& joint, const std::string& slot_name,
                    const Box& window, const Locale& locale);

}  // namespace kw::draw
