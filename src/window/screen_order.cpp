// The second place: the whole work in the order in which it is done.

#include "session/say_breaking.h"
#include "session/say_layout.h"
#include "session/say_ways.h"
#include "session/test_cut.h"
#include "session/words.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::string left_words(const Words& words, const Rest& rest) {
    if (!rest.begun || rest.steps.empty()) return {};
    return words(rest.proved ? "order.left_proved" : "order.left", minutes(rest.seconds));
}

// What can be pressed while it is searched stands first: there it is in sight, however low the page is.
void draw_searching(Ui& ui, Searching& searching) {
    say(ui, search_words(ui.words(), searching.at_most_better_s));
    if (secondary_button(ui, ui.text("order.stop_searching").c_str(),
                         {.width = content_width(ui), .enabled = !searching.is_ending}))
        searching.is_ending = true;
}

void draw_summary(Screen& screen, const Work& work) {
    Ui& ui = screen.ui;
    const Progress all = progress_of(work);
    begin_card(ui, "summary");
    heading(ui, ui.text("order.cuts_done", all.done, all.of));
    progress(ui, all.done, all.of);
    auto& searching = screen.state.searching;
    const bool can_be_ended = searching && searching->can_be_ended;
    if (can_be_ended) draw_searching(ui, *searching);
    const std::string next = next_step(work);
    if (const Setup* setup = setup_of_step(work.plan, next)) {
        const std::string detail = capital(setup_words(ui.words(), *setup));
        if (primary_button(ui, ui.text("order.go_on").c_str(),
                           {.width = content_width(ui), .height_px = 76, .detail = detail}))
            open_step(screen, next);
    }
    if (!can_be_ended)
        say(ui, searching         ? search_words(ui.words(), searching->at_most_better_s)
                : work.rest.begun ? proof_words(ui.words(), work.rest)
                                  : proof_words(ui.words(), work.plan));
    if (const std::string left = left_words(ui.words(), work.rest); !left.empty()) say(ui, left);
    if (work.plan.pins_s > 0) say(ui, ui.text("order.pins_take", minutes(work.plan.pins_s)));
    caption(ui, ui.text("order.drag"));
    end_card(ui);
}

void draw_affected(Screen& screen, const Work& work) {
    for (const Affected& affected : work.affected)
        if (affected.fate != Fate::fine) say_affected(screen, work, affected);
}

void draw_note(Ui& ui, const Work& work, const Note& note) {
    const Locale& locale = work.job.locale;
    const std::string about = note.title.empty() ? about_words(ui.words(), work.plan, note.about)
                                                 : capital(note.title.text(locale));
    const std::string words = about + ". " + capital(note.text.text(locale));
    if (note.level == Level::note) say(ui, words, TypeSize::small);
    else status(ui, note.level == Level::error ? Tone::wrong : Tone::caution, words);
}

// Where there was a choice, what each way adds to the other work.
void draw_reasons(Screen& screen, const Work& work) {
    if (work.reasons.empty()) return;
    Ui& ui = screen.ui;
    begin_card(ui, "reasons");
    heading(ui, ui.text("order.reasons"));
    for (const WayReason& reason : work.reasons)
        say(ui, capital(say_reason(work.job, reason)), TypeSize::small);
    caption(ui, ui.text("order.reasons_why"));
    end_card(ui);
}

std::string pin_words(const Words& words, const Work& work, const Setup& setup) {
    switch (pinned(work, setup)) {
        case Pinned::first: return words("order.wanted_first");
        case Pinned::last: return words("order.wanted_last");
        case Pinned::nowhere: break;
    }
    return {};
}

std::string test_words(const Words& words, const Work& work, const Setup& setup) {
    if (!setup.test_cut) return {};
    if (is_torn_down(work, setup)) return words("order.torn_down");
    if (is_locked(work, setup)) return words("order.locked");
    const Group* group = work.plan.group_with_id(setup.group);
    const auto standing = group ? work.standing.groups.find(group->key) : work.standing.groups.end();
    const int tests = standing == work.standing.groups.end() ? 0 : standing->second.tests;
    if (tests == 0) return words("order.test_first");
    return words.counted("order.tested", tests);
}

// What is done needs no changes any more.
std::string change_words(const Work& work, std::size_t index) {
    const std::size_t done = work.rest.done.size();
    return index < done ? std::string() : say_changes(work, work.rest.steps[index - done]);
}

void draw_step(Screen& screen, const Work& work, std::size_t index, bool next) {
    const std::string& step = work.plan.sequence[index];
    const Setup& setup = *setup_of_step(work.plan, step);
    const Progress progress = progress_of(work, setup);
    const bool ready = progress.done == progress.of;
    std::string detail =
        drawers_of(work.plan, setup) + "  \u00b7  " + setup.machine + ", " + say_cutter(work, setup);
    if (const std::string change = change_words(work, index); !change.empty())
        detail += "  \u00b7  " + change;
    if (const std::string pin = pin_words(screen.ui.words(), work, setup); !pin.empty())
        detail += "  \u00b7  " + pin;
    if (const std::string test = test_words(screen.ui.words(), work, setup); !test.empty())
        detail += "  \u00b7  " + test;
    detail += "  \u00b7  " + (ready ? screen.text("order.all_done", progress.of)
                                    : screen.text("order.some_done", progress.done, progress.of));
    const std::string label =
        std::to_string(index + 1) + ".  " + capital(setup_words(screen.ui.words(), setup)) + "##" + step;
    if (list_row(screen.ui, label.c_str(), detail, next,
                 ready  ? Tone::good
                 : next ? Tone::accent
                        : Tone::soft))
        open_step(screen, step);
}

// As far as it is known: all of it was told.
bool is_all_broken_down(const Screen& screen, const Work& work) {
    const ShownLayOut& shown = screen.state.lay_out;
    return shown.of.get() == &work && shown.layout && shown.layout->stocks.empty() &&
           shown.layout->without_size.empty() && !shown.layout->freed.empty();
}

// How much there is to break down; empty while that is not known.
std::string breaking_words(const Screen& screen, const Work& work) {
    const Words& words = screen.ui.words();
    if (!can_be_laid_out(work.job)) return words("breaking.say_sizes");
    const ShownLayOut& shown = screen.state.lay_out;
    if (!shown.layout || shown.of.get() != &work) return words("layout.being_searched");
    if (is_all_broken_down(screen, work)) return words("breaking.all_done");
    const BreakingCount& all = shown.breaking->all;
    const std::int64_t setups_s = work.rest.begun ? work.rest.seconds : work.plan.seconds;
    std::vector<std::string> said;
    if (all.cuts > 0) {
        said = {say_breaking(work.job, all), words("breaking.total", minutes(all.seconds + setups_s))};
        if (!shown.layout->without_size.empty())
            said.push_back(words("breaking.without_size", words.list(shown.layout->without_size)));
    }
    for (const LaidStock& laid : shown.layout->stocks)
        if (laid.cannot) said.push_back(laid.stock + ": " + laid.cannot->why.text(work.job.locale));
    return said.empty() ? capital(say_nothing_laid_out(work.job, *shown.layout)) : joined(said, "  \u00b7  ");
}

// What comes before all setups, and has no number among them.
void draw_breaking_down(Screen& screen, const Work& work) {
    const std::string label = capital(screen.text("breaking.title")) + "##breaking down";
    if (!list_row(screen.ui, label.c_str(), breaking_words(screen, work), false,
                  is_all_broken_down(screen, work) ? Tone::good : Tone::soft))
        return;
    screen.state.place = Where::job;
    screen.state.job_tab = JobTab::layout;
}

void draw_sequence(Screen& screen, const Work& work) {
    Ui& ui = screen.ui;
    begin_card(ui, "sequence");
    draw_breaking_down(screen, work);
    const std::string next = next_step(work);
    rows_in_sight(ui, screen.state.step_heights, work.plan.sequence.size(),
                  [&](std::size_t i) { draw_step(screen, work, i, work.plan.sequence[i] == next); });
    end_card(ui);
}

void draw_picture_card(Screen& screen, float most_height) {
    begin_card(screen.ui, "picture");
    if (const std::string step = draw_order_picture(screen, most_height); !step.empty())
        open_step(screen, step);
    end_card(screen.ui);
}

}  // namespace

void draw_notes(Screen& screen, const Work& work) {
    Ui& ui = screen.ui;
    if (work.plan.notes.empty()) return;
    begin_card(ui, "notes");
    heading(ui, ui.text("order.notes"));
    rows_in_sight(ui, screen.state.note_heights, work.plan.notes.size(),
                  [&](std::size_t i) { draw_note(ui, work, work.plan.notes[i]); });
    end_card(ui);
}

void draw_order(Screen& screen) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    const auto about = [&] {
        draw_summary(screen, work);
        draw_affected(screen, work);
        draw_reasons(screen, work);
        draw_notes(screen, work);
    };
    const bool is_low = screen.is_low();
    if (!screen.is_wide() && !is_low) {
        begin_scroll(ui, "order", {0, 0});
        draw_summary(screen, work);
        draw_affected(screen, work);
        draw_picture_card(screen, ui.px(720));
        draw_sequence(screen, work);
        draw_reasons(screen, work);
        draw_notes(screen, work);
        end_scroll(ui);
        return;
    }
    const ImVec2 all = ImGui::GetContentRegionAvail();
    const float side = all.x * 0.34f, gap = ui.px(size::gap);
    if (!is_low) draw_picture_card(screen, all.y * 0.63f);
    begin_scroll(ui, "about", {side, 0});
    about();
    end_scroll(ui);
    ImGui::SameLine(0, gap);
    begin_scroll(ui, "order", {0, 0});
    if (is_low) draw_picture_card(screen, all.y - ui.px(2 * size::pad));
    draw_sequence(screen, work);
    end_scroll(ui);
}

}  // namespace kw::window
