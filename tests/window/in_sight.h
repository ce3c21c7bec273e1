#pragma once
// What a maker at the window has in sight, and the way to a test cut.

#include "window/every_page.h"
#include "window/maker.h"

namespace kw::window {

inline bool whole_in_sight(const LoggedWidget& widget) {
    return widget.seen.bottom - widget.seen.top > widget.box.bottom - widget.box.top - 1;
}

// To the first step that is tested before it runs.
inline void go_to_test(Maker& maker) {
    maker.app().state().place = Where::saw;
    maker.app().state().setup = tested_step(maker.work());
    REQUIRE_FALSE(maker.app().state().setup.empty());
    maker.redraw();
}

inline const LoggedWidget* toast_in(const WidgetLog& log) {
    for (const LoggedWidget& widget : log.widgets)
        if (widget.kind == "toast") return &widget;
    return nullptr;
}

}  // namespace kw::window
