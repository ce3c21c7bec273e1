// The faces of a bank: the elevation with where each is marked, and what it follows from.

#include "draw/bank_view.h"
#include "session/say_bank.h"
#include "window/screen_bank.h"
#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

void draw_without_bank(Screen& screen) {
    Ui& ui = screen.ui;
    begin_card(ui, "no bank");
    say(ui, ui.text("faces.none"));
    if (primary_button(ui, ui.text("faces.gather").c_str(), {.enabled = screen.work() != nullptr}))
        screen.done = GatherBank{};
    caption(ui, ui.text("faces.gathered_how"));
    end_card(ui);
}

void draw_tape(Screen& screen, const SaidBank& said) {
    Ui& ui = screen.ui;
    const Locale& locale = screen.work()->job.locale;
    heading(ui, capital(said.rule));
    caption(ui, capital(said.measured_from));
    const bool overlay = said.style == FaceStyle::overlay;
    int number = 0;
    for (const TapeRow& row : said.rows) {
        rule(ui);
        std::string line = std::to_string(++number) + "  " +
                           ui.text("faces.tape", capital(row.drawer), show(row.lower, locale),
                                   show(row.upper, locale), show_with_unit(row.upper - row.lower, locale));
        if (row.holes) line = ui.text("faces.tape_holes", line, show(*row.holes, locale));
        if (row.slide) line = ui.text("faces.tape_slide", line, show(*row.slide, locale));
        say(ui, line);
        const int sign = overlay ? 1 : -1;
        caption(ui, ui.text(overlay ? "faces.covers" : "faces.gaps", show(sign * row.over_bottom, locale),
                            show_with_unit(sign * row.over_top, locale)));
    }
}

void draw_made(Screen& screen, const BankSpec& bank) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    const SaidBank said = say_bank(work, bank);
    begin_card(ui, "faces", 0, screen.session.problems.empty() ? Tone::plain : Tone::soft);
    heading(ui, capital(said.head));
    draw_picture(
        ui, "bank",
        draw::bank_view(work.job, bank, tape_zero(bank), holes_of(work.design.drawers, bank, work.job)),
        {content_width(ui), ui.px(screen.is_low() ? 400 : 560)});
    draw_tape(screen, said);
    for (const Note& note : said.notes)
        status(ui, note.level == Level::note ? Tone::accent : Tone::caution,
               note.title.empty() ? capital(note.about) + ": " + note.text.text(work.job.locale)
                                  : capital(note.text.text(work.job.locale)));
    end_card(ui);
}

void draw_bank_choice(Screen& screen, const std::vector<std::string>& names) {
    if (names.size() < 2) return;
    std::vector<std::string> labels;
    for (const std::string& name : names) labels.push_back(capital(name));
    int chosen = static_cast<int>(screen.state.bank);
    begin_card(screen.ui, "banks");
    if (segments(screen.ui, "which bank", labels, chosen, -1))
        screen.state.bank = static_cast<std::size_t>(chosen);
    end_card(screen.ui);
}

}  // namespace

void draw_faces(Screen& screen) {
    Ui& ui = screen.ui;
    const auto names = names_in(screen.session, "banks");
    if (names.empty()) {
        begin_scroll(ui, "faces page", {0, 0});
        draw_without_bank(screen);
        return end_scroll(ui);
    }
    screen.state.bank = std::min(screen.state.bank, names.size() - 1);
    const BankSpec* bank = made_bank(screen, screen.state.bank);
    if (!screen.is_wide() && !screen.is_low()) {
        begin_scroll(ui, "faces page", {0, 0});
        draw_bank_choice(screen, names);
        if (bank) draw_made(screen, *bank);
        draw_bank_fields(screen, screen.state.bank);
        return end_scroll(ui);
    }
    const float room = content_width(ui), gap = ui.px(size::gap), left = bank ? (room - gap) / 2 : 0;
    if (bank) {
        begin_scroll(ui, "made faces", {left, 0});
        draw_made(screen, *bank);
        end_scroll(ui);
        ImGui::SameLine(0, gap);
    }
    begin_scroll(ui, "bank fields", {0, 0});
    draw_bank_choice(screen, names);
    draw_bank_fields(screen, screen.state.bank);
    end_scroll(ui);
}

}  // namespace kw::window
