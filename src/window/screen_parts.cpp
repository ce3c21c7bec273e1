// What goes through at a setup: a tap ticks an end, and nothing is lost or taken back by one.

#include <algorithm>

#include "session/say_log.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

// Of a part that is made again, what has gone through is of the new piece: nothing is wrong with that.
std::string fate_words(const Work& work, const std::string& part, bool has_run) {
    for (const Affected& affected : work.affected) {
        if (affected.part != part || affected.fate == Fate::fine) continue;
        if (!affected.is_logged) return affected.fate == Fate::lost ? "lost" : "to be cut again";
        if (!has_run) return "to be made again";
    }
    return {};
}

bool is_told_late(const Screen& screen, const Stand& stand) {
    return screen.state.late_at == stand.step && is_torn_down(stand.work, stand.setup);
}

void draw_count(Ui& ui, const Progress& progress) {
    const std::string left = std::to_string(progress.of - progress.done),
                      caption = (progress.done == progress.of ? "All have run, of " : "Left to run, of ") +
                                std::to_string(progress.of);
    figure(ui, {.caption = caption,
                .value = left,
                .unit = {},
                .changed_from = {},
                .note = {},
                .value_px = 52,
                .width = content_width(ui)});
}

// One end. True where something is wrong with its part, and the order says what.
bool draw_end(Screen& screen, const Stand& stand, std::size_t index) {
    const Pass& pass = stand.setup.passes[index];
    const bool done = has_run(stand.work, stand.setup, pass);
    const std::string fate = fate_words(stand.work, pass.part, done);
    std::string detail(name_of(pass.reference));
    if (!fate.empty()) detail += ", " + fate;
    const std::string label = part_words(stand.work.plan, pass.part) + "##" + std::to_string(index);
    switch (hold_tick_row(screen.ui, label.c_str(), done, detail)) {
        case Tick::none: break;
        case Tick::set:
            screen.done = MarkRun{stand.setup.id, {index}, true, is_told_late(screen, stand)};
            break;
        case Tick::taken_away: screen.done = MarkRun{stand.setup.id, {index}, false}; break;
        case Tick::only_tapped: screen.ui.toast("Hold it down to take the tick away"); break;
    }
    return !fate.empty();
}

void draw_ends(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    // Not the ends that can only go through when it is set a second time.
    const RestStep* step = step_named(stand.work.rest, stand.step);
    const std::vector<std::size_t> left = step ? step->open : std::vector<std::size_t>{};
    bool any_wrong = false;
    if (is_torn_down(stand.work, stand.setup)) {
        bool late = is_told_late(screen, stand);
        if (toggle_row(ui, "They ran before it was torn down", late, "what is ticked now"))
            screen.state.late_at = late ? stand.step : std::string();
    }
    for (std::size_t i = 0; i < stand.setup.passes.size(); ++i)
        any_wrong = draw_end(screen, stand, i) || any_wrong;
    if (any_wrong && list_row(ui, "Why parts are lost or cut again", {}, false, Tone::caution))
        screen.state.place = Where::order;
    const float width = content_width(ui);
    if (!left.empty() && secondary_button(ui, "Tick all", {.width = width}))
        screen.done = MarkRun{stand.setup.id, left, true, is_told_late(screen, stand)};
    if (quiet_button(ui, "A part is spoilt", {.width = width})) screen.state.spoilt_at = stand.step;
}

void draw_spoilt(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    heading(ui, "Which part is spoilt?");
    caption(ui, "It is made again from the board, with every setup that it needs.");
    std::vector<std::string> parts;
    for (const Pass& pass : stand.setup.passes)
        if (std::find(parts.begin(), parts.end(), pass.part) == parts.end()) parts.push_back(pass.part);
    const float width = content_width(ui);
    for (const std::string& part : parts) {
        const std::string label = part_words(stand.work.plan, part);
        if (!hold_button(ui, label.c_str(), {.width = width, .detail = "hold down: it is lost"})) continue;
        screen.done = MarkLost{part};
        screen.state.spoilt_at.clear();
    }
    if (secondary_button(ui, "None of them", {.width = width})) screen.state.spoilt_at.clear();
}

std::string at_step(const Work& work, const LogEntry& entry) {
    for (const Setup& setup : work.plan.setups) {
        if (work_key(setup, work.design) != without_pass_count(entry.key)) continue;
        const bool its_part =
            entry.part.empty() || std::any_of(setup.passes.begin(), setup.passes.end(),
                                              [&](const Pass& pass) { return pass.part == entry.part; });
        if (its_part) return " at step " + std::to_string(step_of(work.plan, setup.id) + 1);
    }
    return {};
}

}  // namespace

std::string last_words(const Work& work) {
    const auto& log = work.job.log;
    const std::size_t count = last_told(log);
    if (count == 0) return {};
    const LogEntry& first = log[log.size() - count];
    switch (first.kind) {
        case LogKind::test: return "the test cut" + at_step(work, first);
        case LogKind::lock: return "the lock" + at_step(work, first);
        case LogKind::ran:
            return (count == 1 ? "the tick" : std::to_string(count) + " ticks") + at_step(work, first);
        case LogKind::lost: break;
    }
    const Part* part = work.plan.part_with_id(first.part);
    return "that a " + (part ? role_words(part->size.role) : std::string("part")) + " is lost";
}

void draw_take_back(Screen& screen) {
    const std::string what = last_words(*screen.work());
    if (what.empty()) return;
    const std::string detail = "takes back " + what;
    if (hold_button(screen.ui, "Hold to undo", {.width = content_width(screen.ui), .detail = detail}))
        screen.done = TakeBack{};
}

void draw_parts(Screen& screen, const Stand& stand) {
    begin_card(screen.ui, "parts");
    if (screen.state.spoilt_at == stand.step) {
        draw_spoilt(screen, stand);
    } else {
        draw_count(screen.ui, progress_of(stand.work, stand.setup));
        draw_ends(screen, stand);
    }
    end_card(screen.ui);
    draw_take_back(screen);
}

}  // namespace kw::window
