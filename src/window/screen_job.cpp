// The whole work at a glance: its stages in the maker's order, how far each has come, and a way into each.

#include "session/words.h"
#include "window/screen_next.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::string progress_words(const JobStage& stage) {
    const std::string count =
        std::to_string(stage.done) + " of " + std::to_string(stage.of) + " " + stage.unit;
    if (stage.done == stage.of) return count;
    return stage.left_s > 0 ? count + ", about " + minutes(stage.left_s) + " left" : count;
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
    if (list_row(ui, label.c_str(), progress_words(stage), is_next, tone)) go_to_stage(screen, stage);
    progress(ui, stage.done, stage.of, content_width(ui));
}

void draw_total(Screen& screen, const Work& work) {
    Ui& ui = screen.ui;
    const Progress all = progress_of(work);
    const std::string left =
        work.rest.steps.empty() ? "all is cut" : "about " + minutes(work.rest.seconds) + " left";
    heading(ui, std::to_string(all.done) + " of " + std::to_string(all.of) + " cuts done, " + left);
}

}  // namespace

void draw_job(Screen& screen) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    const auto stages = job_stages(screen);
    const NextThing next = next_thing(work);
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
    if (quiet_button(ui, "Keys: all of this without a mouse", {})) screen.state.over = Over::keys;
    end_scroll(ui);
}

}  // namespace kw::window
