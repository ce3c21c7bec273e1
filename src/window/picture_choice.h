#pragma once
// A picture with a word beneath, to be tapped: chosen, or not.

#include "draw/drawing.h"
#include "window/ui.h"

namespace kw::window {

// One tap chooses it, another lets it go. True if `chosen` changed. Width in device pixels; as high as the picture and its word.
bool picture_choice(Ui& ui, const char* label, const draw::Drawing& drawing, float width, bool& chosen);

}  // namespace kw::window
