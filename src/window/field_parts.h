#pragma once
// What text fields and length fields share: the words above, the frame, and the reason beneath.

#include <string_view>

#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {

// The caption over a field; moves the cursor to the field itself. Nothing is drawn for an empty label.
void field_caption(Ui& ui, std::string_view label, const FieldOptions& options);
void field_frame(Ui& ui, const ImRect& box, bool focused, const FieldOptions& options);
// The unit at the end of the field; returns the room that it takes.
float field_unit(Ui& ui, const ImRect& box, std::string_view unit);
void field_reason(Ui& ui, float width, const FieldOptions& options);
void log_field(Ui& ui, const char* kind, std::string_view label, std::string_view value, const ImRect& box,
               bool cut_off = false);

}  // namespace kw::window
