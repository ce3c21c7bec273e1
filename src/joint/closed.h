#pragma once
// The joint closed, measured on the cut sections. Nothing here knows the formula that planned the cuts.

#include <optional>

#include "joint/joint.h"

namespace kw {

// A cut as the cutter makes it: the board's frame of section.h, depth from the face that lies down.
struct Removal {
    BoardFace down = BoardFace::inside;
    Length near;
    Length far;
    Length depth;
};

// A board of this thickness, `shown` long from its reference end, less the removals. For a receiver y = 0 is the inside
// face; for an insert the outside face.
Region cut_section(Member member, Length thickness, Length shown, const std::vector<Removal>& removals);

// The removals that a design asks of one member.
std::vector<Removal> designed_removals(const JointDesign& joint, Member member);

struct ClosedJoint {
    Region receiver;
    Region insert;   // where it stands, in the receiver's frame
    Region overlap;  // wood in the same place twice
    Region gap;      // air inside the joint

    Length slot_width;  // measured on the receiver, at its inside face
    Length slot_depth;
    Length slot_near;           // 0 for a rabbet
    Length entering;            // thickness of what enters the slot
    std::optional<Length> fit;  // slot width less entering thickness: + loose. None where the slot is open
    std::optional<Length> tongue_length;  // where the insert has a shoulder
    std::optional<Length> shoulder_gap;   // >= 0
    Length end_gap;                       // from the insert's end to the slot's floor
    Length face_step;                     // receiver's end proud of the insert's outside face
};

// Closes the joint: the insert rests against the wall that `seat` names, and goes in until a shoulder or its end touches;
// an insert without a shoulder goes in by `reach`. Returns nothing where there is no slot or nothing enters it.
std::optional<ClosedJoint> close_joint(const Region& receiver, const Region& insert, Seat seat, Length reach);

}  // namespace kw
