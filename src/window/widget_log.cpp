#include "window/widget_log.h"

#include <cmath>

namespace kw::window {
namespace {

std::string whole(double value) { return std::to_string(static_cast<long long>(std::llround(value))); }

std::string line_of(const LoggedWidget& w) {
    std::string line = w.kind + " \"" + w.label + "\"";
    if (!w.value.empty()) line += " = \"" + w.value + "\"";
    line += " at " + whole(w.box.left) + "," + whole(w.box.top) + " size " + whole(w.box.right - w.box.left) +
            "x" + whole(w.box.bottom - w.box.top);
    if (w.chosen) line += " chosen";
    if (!w.enabled) line += " disabled";
    if (w.cut_off) line += " CUT OFF";
    return line + "\n";
}

}  // namespace

const LoggedWidget* WidgetLog::find(std::string_view label) const {
    const LoggedWidget* any = nullptr;
    for (const LoggedWidget& widget : widgets) {
        if (widget.label != label && widget.value != label) continue;
        if (widget.pressable) return &widget;
        if (!any) any = &widget;
    }
    return any;
}

std::string dump(const WidgetLog& log) {
    std::string text;
    for (const LoggedWidget& widget : log.widgets) text += line_of(widget);
    return text;
}

}  // namespace kw::window
