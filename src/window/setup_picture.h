#pragma once
// What the picture at the saw remembers from frame to frame: since when it slides from where the machine stands, and what was
// drawn, so that it is drawn anew only for another setting.

#include <memory>
#include <string>
#include <vector>

#include "draw/part_view.h"
#include "draw/setup_slide.h"
#include "job/work.h"

namespace kw::window {

inline constexpr double slide_s = 0.18;

// The machine on its way from one setting to the next. Pure: the time is handed in.
struct SetupMotion {
    std::optional<draw::SetupScene> shown;  // nothing where no joint is cut
    std::optional<draw::SetupScene>
        before;  // as the machine stands: the picture slides from there, and its ghost stays
    double since_s = 0;
    bool slides = false;

    // What is to be seen from now on, and what the machine stands at. Nothing happens where that is seen already, and nothing slides
    // where it is the first.
    void show(const std::optional<draw::SetupScene>& scene, const std::optional<draw::SetupScene>& at_machine,
              double now_s);
    // How far it has come, 0 to 1: fast at first.
    double fraction(double now_s) const;
};

struct PartPicture {
    std::string caption;
    draw::Drawing drawing;
};

struct SetupPicture {
    std::shared_ptr<const Work> of;
    std::string step;
    draw::SetupViewOptions options;
    std::size_t first_pass = 0;  // of the boards, the one whose lie is drawn first
    SetupMotion motion;
    double fraction = 1;  // at which `section` was drawn
    draw::Drawing section;
    std::vector<PartPicture> parts;
    bool boards = false;  // are what is looked at, where there is no room for both
};

}  // namespace kw::window
