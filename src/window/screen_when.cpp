// When a setup is done: wherever it fits, or first or last whatever it takes.

#include "window/screen.h"

namespace kw::window {

void draw_when(Screen& screen, const Setup& setup) {
    Ui& ui = screen.ui;
    const std::vector<std::string> places{ui.text("when.any"), ui.text("when.first"), ui.text("when.last")};
    begin_card(ui, "when");
    heading(ui, ui.text("when.title"));
    int chosen = static_cast<int>(pinned(*screen.work(), setup));
    if (segments(ui, "when it is done", places, chosen, content_width(ui))) {
        screen.done = PinSetup{setup.id, static_cast<Pinned>(chosen)};
        // The order is made anew, so that is what is shown then.
        screen.state.place = Where::order;
        screen.state.setup.clear();
    }
    end_card(ui);
}

}  // namespace kw::window
