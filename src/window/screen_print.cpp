// What can be printed, each by one tap.

#include "window/screen.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

constexpr std::array<print::PagesOf, 5> all_kinds = {print::PagesOf::cards, print::PagesOf::layout,
                                                     print::PagesOf::labels, print::PagesOf::parts,
                                                     print::PagesOf::templates};

const char* name_of(print::PagesOf what) {
    switch (what) {
        case print::PagesOf::cards: return "cards";
        case print::PagesOf::labels: return "labels";
        case print::PagesOf::parts: return "parts";
        case print::PagesOf::layout: return "layout";
        case print::PagesOf::templates: return "templates";
    }
    return "";
}

void draw_kind(Screen& screen, print::PagesOf what, float width) {
    Ui& ui = screen.ui;
    begin_card(ui, name_of(what), width);
    const std::string detail = ui.text(key_of("print.why_", name_of(what)));
    if (secondary_button(ui, ui.text(key_of("print.write_", name_of(what))).c_str(),
                         {.width = content_width(ui), .height_px = 76, .detail = detail}))
        screen.state.to_print = what;
    const auto printed = screen.state.printed.find(what);
    if (printed != screen.state.printed.end())
        status(ui, printed->second.is_written ? Tone::good : Tone::wrong, printed->second.said);
    end_card(ui);
}

}  // namespace

void draw_print(Screen& screen) {
    Ui& ui = screen.ui;
    begin_scroll(ui, "print", {0, 0});
    const std::array<std::string, 2> papers{ui.text("print.a4"), ui.text("print.letter")};
    int paper =
        screen.state.paper.value_or(print::usual_paper(screen.work()->job)) == print::Paper::letter ? 1 : 0;
    caption(ui, ui.text("print.paper"));
    if (segments(ui, "paper", papers, paper, std::min(ui.px(360), content_width(ui))))
        screen.state.paper = paper == 1 ? print::Paper::letter : print::Paper::a4;
    const bool beside = screen.is_wide() || screen.is_low();
    const float gap = ui.px(size::gap), room = content_width(ui), width = beside ? (room - gap) / 2 : room;
    for (std::size_t i = 0; i < all_kinds.size(); ++i) {
        if (beside && i % 2 == 1) ImGui::SameLine(0, gap);
        draw_kind(screen, all_kinds[i], width);
    }
    caption(ui, ui.text("print.how"));
    end_scroll(ui);
}

}  // namespace kw::window
