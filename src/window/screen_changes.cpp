// What is to be done to the machine for a setup, and what to leave alone.

#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {

// Of a step that is not the next: what it is a change from is not how the machine stands now.
static std::string say_from_where(Screen& screen, const Stand& stand) {
    const auto& rest = stand.work.rest;
    if (!stand.at_machine || rest.steps.empty() || rest.steps.front().step == stand.step) return {};
    const auto stands = rest.stands.find(stand.setup.machine);
    if (stands != rest.stands.end() && stands->second == stand.at_machine->id) return {};
    return screen.text("saw.as_after", step_of(stand.work.plan, stand.at_machine->id) + 1);
}

void draw_changes(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    if (stand.is_done) return status(ui, Tone::good, say_done(stand.work, stand.setup));
    const SetupChanges& said = said_at(screen, stand).changes;
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, ui.px(2)));
    if (const std::string after = say_from_where(screen, stand); !after.empty()) caption(ui, after);
    for (const std::string& change : said.change) status(ui, Tone::changed, change);
    if (!said.leave.empty()) status(ui, Tone::good, said.leave);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
}

}  // namespace kw::window
