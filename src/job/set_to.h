#pragma once
// What a maker sets at a setup, and what of it is other than the machine stands. Reckoned here alone: the numbers, the sentences and
// the pictures of a setup all say it.

#include "job/work.h"
#include "memory/preferences.h"

namespace kw {

// Whether a scale is known to be off by more than its mark is wide, so that a control is set by what the scale shows.
bool is_off(Length truly, Length scale);

// One control of a setup.
struct ControlAt {
    Length truly;           // where it is to stand, with what makes up for the cutter
    Length scale;           // what its scale shows then
    bool by_scale = false;  // it is set by that

    Length set() const { return by_scale ? scale : truly; }
};
ControlAt control_at(Length truly, Length scale);

// From where the machine stands: both as `now` is set, by the scale or truly.
struct ControlMove {
    Length from, to;
    bool by_scale = false;

    Length by() const { return to - from; }
};
ControlMove move_of(const ControlAt& before, const ControlAt& now);

struct SetTo {
    Dial dial;
    Length kerf;                      // that the cutter is believed to cut as it is put on
    ControlAt fence;                  // from the near side of the cutter
    std::optional<ControlAt> height;  // nothing where it cuts through
    Length spacer;
    bool on_jig = false;  // the fence is the gap beside a jig's pin: no scale shows it, and it has one side

    // From the side that the maker measures to; what the scale shows is from the near side all the same.
    ControlAt fence_to(CutterSide side) const;
};
SetTo set_to(const Work& work, const Setup& setup);

}  // namespace kw
