// The parts laid out on boards and sheets: what to buy, a picture of each, and its cuts.

#include "draw/lay_out_view.h"
#include "job/on_hand.h"
#include "session/say_breaking.h"
#include "session/say_layout.h"
#include "window/screen.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

// The numbers of the picture, the cuts in their order, and what is left.
void draw_lists(Screen& screen, const Job& job, const LaidStock& laid, const LaidPiece& piece) {
    Ui& ui = screen.ui;
    int number = 0;
    for (const LaidPart& part : piece.parts)
        caption(ui, std::to_string(++number) + "  " + part_words(ui.words(), screen.work()->plan, part.part) +
                        ", " + say_place(job, part));
    rule(ui);
    for (const SaidCut& said : say_cuts(job, laid, piece)) {
        caption(ui, capital(said.cut));
        if (!said.caution.empty()) status(ui, Tone::wrong, said.caution);
    }
    for (const cutting::Rectangle& offcut : piece.offcuts)
        status(ui, Tone::accent, ui.text("layout.keep", say_rectangle(job, offcut)));
}

void draw_laid_piece(Screen& screen, const Job& job, const LaidStock& laid, std::size_t index) {
    Ui& ui = screen.ui;
    const LaidPiece& piece = laid.pieces[index];
    const StockSize& stock_size = job.stock_named(laid.stock)->sizes.at(piece.size);
    say(ui, std::to_string(index + 1) + ".  " + capital(say_size(job, stock_size)), TypeSize::body);
    const float room = content_width(ui), gap = ui.px(size::gap);
    const bool beside = screen.is_wide();
    const float picture = beside ? 0.6f * room : room;
    draw_picture(ui, (laid.stock + std::to_string(index)).c_str(), draw::lay_out_view(job, laid, piece),
                 {picture, ui.px(!laid.is_in_sheets ? 130
                                 : beside           ? 400
                                                    : 340)});
    if (beside) ImGui::SameLine(0, gap);
    ImGui::BeginChild("lists", {beside ? room - picture - gap : room, 0}, ImGuiChildFlags_AutoResizeY,
                      ImGuiWindowFlags_NoBackground);
    draw_lists(screen, job, laid, piece);
    ImGui::EndChild();
    rule(ui);
}

void draw_stock(Screen& screen, const Job& job, const LaidStock& laid) {
    Ui& ui = screen.ui;
    begin_card(ui, laid.stock.c_str(), 0, laid.cannot ? Tone::wrong : Tone::plain);
    heading(ui, capital(laid.stock));
    if (laid.cannot) {
        notice(ui, Tone::wrong, capital(laid.cannot->why.text(job.locale)),
               capital(laid.cannot->remedy.text(job.locale)));
        return end_card(ui);
    }
    status(ui, laid.proved ? Tone::good : Tone::accent, capital(say_layout(job, laid)));
    for (const std::string& buy : say_to_buy(job, laid)) say(ui, ui.text("layout.buy", buy));
    if (secondary_button(ui, ui.text("breaking.done", laid.stock).c_str(), {.width = content_width(ui)}))
        screen.done = MarkBrokenDown{broken_down_of(job, laid)};
    for (std::size_t i = 0; i < laid.pieces.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        draw_laid_piece(screen, job, laid, i);
        ImGui::PopID();
    }
    const std::vector<std::string> settings = say_settings(job, laid);
    for (std::size_t i = 0; i < settings.size(); ++i)
        i == 0 ? say(ui, capital(settings[i])) : caption(ui, capital(settings[i]));
    end_card(ui);
}

// What all of it takes before the setups, and how these find the parts.
void say_broken_down(Screen& screen, const Work& work, const BreakingDown& down) {
    if (down.all.cuts == 0) return;
    Ui& ui = screen.ui;
    say(ui, capital(say_breaking(work.job, down.all)));
    std::vector<std::string> steps;
    for (const AtSizeAlready& one : down.at_size)
        steps.push_back(step_name(ui.words(), work.plan, one.setup));
    for (const std::string& said : say_sizes_cut(work.job, work.plan, down, steps))
        caption(ui, capital(said));
}

}  // namespace

void draw_lay_out(Screen& screen) {
    Ui& ui = screen.ui;
    const auto& shown = screen.state.lay_out;
    begin_scroll(ui, "layout", {0, 0});
    if (!shown.layout || shown.of.get() != screen.work()) {
        say(ui, ui.text("layout.being_searched"));
        return end_scroll(ui);
    }
    const Job& job = shown.of->job;
    if (const std::string already = say_cut_already(job, *shown.layout); !already.empty())
        status(ui, Tone::good, capital(already));
    for (const std::string& freed : say_freed(job, shown.of->plan, *shown.layout, SetupNames::steps))
        status(ui, Tone::good, capital(freed));
    say_broken_down(screen, *shown.of, *shown.breaking);
    if (shown.layout->stocks.empty() && shown.layout->without_size.empty())
        say(ui, capital(say_nothing_laid_out(job, *shown.layout)));
    for (const LaidStock& laid : shown.layout->stocks) draw_stock(screen, job, laid);
    for (const std::string& stock : shown.layout->without_size) {
        begin_card(ui, (stock + " without size").c_str());
        heading(ui, capital(stock));
        say(ui, ui.text("layout.say_sizes"));
        if (secondary_button(ui, (ui.text("layout.to_stock") + "##" + stock).c_str(), {})) {
            screen.state.place = Where::drawers;
            screen.state.tab = DrawersTab::stock;
        }
        end_card(ui);
    }
    end_scroll(ui);
}

}  // namespace kw::window
