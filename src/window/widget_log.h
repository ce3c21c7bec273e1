#pragma once
// What a frame put on the screen, for tests: they find a widget by its label, press real input at its middle, and check
// sizes, overlaps, cut-off words and contrast. Nothing is logged unless a test hangs a log into the Ui.

#include <string>
#include <string_view>
#include <vector>

#include "draw/layout.h"

namespace kw::window {

struct LoggedWidget {
    std::string kind;      // "button", "tick", "number", "text", ...
    std::string label;     // the words on it
    std::string value;     // what it shows or holds, if that is not the label
    draw::PixelBox box;    // in device pixels
    draw::PixelBox drawn;  // of a picture: what is drawn, without its words; device pixels
    draw::PixelBox seen;   // the part that no scroll region hides; empty if all of it is hidden
    bool pressable = false;
    bool enabled = true;
    bool chosen = false;        // ticked, switched on, the current one
    bool cut_off = false;       // words did not fit and were shortened
    bool hint_cut_off = false;  // as of what stands in an empty field
    double text_px = 0;         // em, in paper pixels
    double contrast = 0;        // of the words on their ground, 1 to 21; 0 if there are none
};

struct WidgetLog {
    std::vector<LoggedWidget> widgets;

    // The first widget with this label (or value) that can be pressed; else the first with it at all; else nothing.
    const LoggedWidget* find(std::string_view label) const;
};

// One line for each widget: kind, label, value, place. The golden files of screens are made of these.
std::string dump(const WidgetLog& log);

}  // namespace kw::window
