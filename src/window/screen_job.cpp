// The whole work at a glance: its stages in the maker's order, how far each has come, and a way into each.

#include <array>

#include "session/words.h"
#include "window/screen_measured.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::string progress_words(const Words& words, const JobStage& stage) {
    const std::string count = words(stage.counts, stage.done, stage.of);
    if (stage.done == stage.of || stage.left_s <= 0) return count;
    return words("job.about_left", count, minutes(stage.left_s));
}

// Where a stage is whole, its first step can still be looked at from the order.
void go_to_stage(Screen& screen, const JobStage& stage) {
    if (!stage.next.empty()) return open_step(screen, stage.next);
    screen.state.place = stage.place == Where::saw ? Where::order : stage.place;
}

void draw_stage(Screen& screen, const JobStage& stage, std::size_t number, bool is_next) {
    Ui& ui = screen.ui;
    const Tone tone = stage.done == stage.of ? Tone::good : is_next ? Tone::accent : Tone::soft;
    const std::string label = std::to_string(number) + ".  " + stage.name;
    if (list_row(ui, label.c_str(), progress_words(ui.words(), stage), is_next, tone))
        go_to_stage(screen, stage);
    progress(ui, stage.done, stage.of, content_width(ui));
}

void draw_total(Screen& screen, const Work& work) {
    Ui& ui = screen.ui;
    const Progress all = progress_of(work);
    heading(ui, work.rest.steps.empty()
                    ? ui.text("job.all_cut", all.done, all.of)
                    : ui.text("job.cuts_left", all.done, all.of, minutes(work.rest.seconds)));
}

}  // namespace

static void draw_stages(Screen& screen) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    const auto stages = job_stages(screen);
    const NextThing next = next_thing(ui.words(), work);
    const auto holds_next = [&](const JobStage& stage) {
        return !next.step.empty() && stage.next == next.step;
    };
    begin_scroll(ui, "job", {0, 0});
    draw_total(screen, work);
    const bool beside = screen.is_wide() || screen.is_low();
    const float gap = ui.px(size::gap), room = content_width(ui), width = beside ? (room - gap) / 2 : room;
    const std::size_t columns = beside ? 2 : 1, each = (stages.size() + columns - 1) / columns;
    for (std::size_t column = 0; column < columns; ++column) {
        if (column > 0) ImGui::SameLine(0, gap);
        begin_card(ui, column == 0 ? "stages" : "more stages", width);
        for (std::size_t i = column * each; i < std::min(stages.size(), (column + 1) * each); ++i)
            draw_stage(screen, stages[i], i + 1, holds_next(stages[i]));
        end_card(ui);
    }
    if (quiet_button(ui, ui.text("job.keys").c_str(), {})) screen.state.over = Over::keys;
    end_scroll(ui);
}

void draw_job(Screen& screen) {
    const std::array<std::string, 5> tabs{screen.text("job.tab_stages"), screen.text("job.tab_faces"),
                                          screen.text("job.tab_layout"), screen.text("job.tab_print"),
                                          screen.text("job.tab_together")};
    int tab = static_cast<int>(screen.state.job_tab);
    if (segments(screen.ui, "tabs", tabs, tab, std::min(screen.ui.px(860), content_width(screen.ui))))
        screen.state.job_tab = static_cast<JobTab>(tab);
    if (screen.state.job_tab == JobTab::faces) draw_faces(screen);
    else if (!screen.work()) return;
    else if (screen.state.job_tab == JobTab::stages) draw_stages(screen);
    else if (screen.state.job_tab == JobTab::layout) draw_lay_out(screen);
    else if (screen.state.job_tab == JobTab::print) draw_print(screen);
    else draw_assembly(screen);
}

}  // namespace kw::window
