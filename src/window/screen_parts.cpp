// What goes through at a setup: a tap ticks an end, and nothing is lost or taken back by one.

#include <algorithm>

#include "session/say_log.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "window/text.h"
#include "words/names.h"

namespace kw::window {
namespace {

// Of a part that is made again, what has gone through is of the new piece: nothing is wrong with that. What is to be cut again says
// how, where that is done.
std::string fate_words(const Words& words, const Stand& stand, const Pass& pass, bool has_run) {
    for (const Affected& affected : stand.work.affected) {
        if (affected.part != pass.part || affected.fate == Fate::fine) continue;
        if (affected.fate == Fate::recut) {
            const bool is_here = affected.work_key == work_key(stand.setup, stand.work.design) &&
                                 affected.reference == name_of(pass.reference);
            if (is_here) return affected.what.text(stand.work.job.locale);
        } else if (!affected.is_logged) return words("parts.lost");
        else if (!has_run) return words("parts.made_again");
    }
    return {};
}

// "left side and right side"
std::string roles_through(const Words& words, const Stand& stand) {
    std::vector<std::string> roles;
    for (const Pass& pass : stand.setup.passes) {
        const std::string role = role_words(words, stand.work.plan.part_with_id(pass.part)->size.role);
        if (std::find(roles.begin(), roles.end(), role) == roles.end()) roles.push_back(role);
    }
    return words.list(roles);
}

void draw_count(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const Progress progress = progress_of(stand.work, stand.setup);
    const bool all = progress.done == progress.of;
    figure(ui, {.caption = all ? ui.text("parts.all_ran") : ui.text("parts.left", progress.of),
                .value = std::to_string(all ? progress.of : progress.of - progress.done),
                .unit = {},
                .changed_from = {},
                .note = capital(roles_through(ui.words(), stand)),
                .value_px = 52,
                .width = content_width(ui)});
}

// One end. True where something is wrong with its part, and the order says what.
bool draw_end(Screen& screen, const Stand& stand, std::size_t index) {
    const Pass& pass = stand.setup.passes[index];
    const bool done = has_run(stand.work, stand.setup, pass);
    const std::string fate = fate_words(screen.ui.words(), stand, pass, done);
    std::string detail = end_word(screen.ui.words(), name_of(pass.reference));
    if (!fate.empty()) detail += ", " + fate;
    const std::string label =
        part_words(screen.ui.words(), stand.work.plan, pass.part) + "##" + std::to_string(index);
    switch (hold_tick_row(screen.ui, label.c_str(), done, detail)) {
        case Tick::none: break;
        case Tick::set:
            screen.done = MarkRun{stand.setup.id, {index}, true, is_told_late(screen, stand)};
            break;
        case Tick::taken_away: screen.done = MarkRun{stand.setup.id, {index}, false}; break;
        case Tick::only_tapped: screen.ui.toast(screen.text("parts.hold_tick")); break;
    }
    return !fate.empty();
}

// Why parts are lost or to be cut again: told here, once it is asked.
void draw_why(Screen& screen, const Stand& stand, bool any_wrong) {
    UiState& state = screen.state;
    if (!any_wrong) return;
    if (state.why_at != stand.step) {
        if (list_row(screen.ui, screen.text("parts.why").c_str(), {}, false, Tone::caution))
            state.why_at = stand.step;
        return;
    }
    const auto goes_through = [&](const std::string& part) {
        return std::any_of(stand.setup.passes.begin(), stand.setup.passes.end(),
                           [&](const Pass& pass) { return pass.part == part; });
    };
    for (const Affected& affected : stand.work.affected)
        if (affected.fate != Fate::fine && goes_through(affected.part))
            say_affected(screen, stand.work, affected);
}

// Why the last tick was not taken, where the finger is, and the way to what comes first, or to where a part is told as spoilt.
void draw_refused(Screen& screen, const Stand& stand) {
    const Session& session = screen.session;
    if (screen.state.refused_at != stand.step || session.refused.empty()) return;
    notice(screen.ui, Tone::wrong, screen.text("parts.not_taken"), capital(session.refused));
    if (const std::string& part = session.refused_part; stand.work.plan.part_with_id(part)) {
        const std::string label =
            screen.text("parts.one_spoilt", part_words(screen.ui.words(), stand.work.plan, part));
        if (primary_button(screen.ui, label.c_str(), {.width = content_width(screen.ui)}))
            screen.state.spoilt_at = stand.step;
        return;
    }
    const std::string& first = session.refused_first;
    if (first.empty() || first == stand.setup.id || !stand.work.plan.setup_with_id(first)) return;
    const std::string step = step_name(screen.ui.words(), stand.work.plan, first);
    if (primary_button(screen.ui, screen.text("parts.go_first", step).c_str(),
                       {.width = content_width(screen.ui)}))
        open_step(screen, first);
}

void draw_ends(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    // Not the ends that can only go through when it is set a second time.
    const RestStep* step = step_named(stand.work.rest, stand.step);
    const std::vector<std::size_t> left = step ? step->open : std::vector<std::size_t>{};
    bool any_wrong = false;
    draw_refused(screen, stand);
    if (is_torn_down(stand.work, stand.setup)) {
        bool late = is_told_late(screen, stand);
        if (toggle_row(ui, ui.text("parts.late").c_str(), late, ui.text("parts.late_why")))
            screen.state.late_at = late ? stand.step : std::string();
    }
    for (std::size_t i = 0; i < stand.setup.passes.size(); ++i)
        any_wrong = draw_end(screen, stand, i) || any_wrong;
    draw_why(screen, stand, any_wrong);
    const float width = content_width(ui);
    if (!left.empty() && secondary_button(ui, ui.text("parts.tick_all").c_str(), {.width = width}))
        screen.done = MarkRun{stand.setup.id, left, true, is_told_late(screen, stand)};
    if (quiet_button(ui, ui.text("parts.spoilt").c_str(), {.width = width}))
        screen.state.spoilt_at = stand.step;
}

void draw_spoilt(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    heading(ui, ui.text("parts.which_spoilt"));
    caption(ui, ui.text("parts.spoilt_why"));
    std::vector<std::string> parts;
    for (const Pass& pass : stand.setup.passes)
        if (std::find(parts.begin(), parts.end(), pass.part) == parts.end()) parts.push_back(pass.part);
    const float width = content_width(ui);
    for (const std::string& part : parts) {
        const std::string label = part_words(screen.ui.words(), stand.work.plan, part);
        if (!hold_button(ui, label.c_str(), {.width = width, .detail = screen.text("parts.hold_lost")}))
            continue;
        screen.done = MarkLost{part};
        ui.toast(ui.text("parts.is_lost", label));
        screen.state.spoilt_at.clear();
    }
    if (secondary_button(ui, ui.text("parts.none_spoilt").c_str(), {.width = width}))
        screen.state.spoilt_at.clear();
}

// The number of the step at which it was told; nothing where the plan has none any more.
std::optional<std::size_t> step_of_entry(const Work& work, const LogEntry& entry) {
    for (const Setup& setup : work.plan.setups) {
        if (work_key(setup, work.design) != without_pass_count(entry.key)) continue;
        const bool its_part =
            entry.part.empty() || std::any_of(setup.passes.begin(), setup.passes.end(),
                                              [&](const Pass& pass) { return pass.part == entry.part; });
        if (its_part) return step_of(work.plan, setup.id) + 1;
    }
    return std::nullopt;
}

}  // namespace

bool is_told_late(const Screen& screen, const Stand& stand) {
    return screen.state.late_at == stand.step && is_torn_down(stand.work, stand.setup);
}

std::string last_words(const Words& words, const Work& work) {
    const auto& log = work.job.log;
    const std::size_t count = last_told(log);
    if (count == 0) return {};
    const LogEntry& first = log[log.size() - count];
    const auto step = step_of_entry(work, first);
    const auto at_step = [&](const std::string& what) {
        return step ? words("take_back.at_step", what, *step) : what;
    };
    switch (first.kind) {
        case LogKind::test: return at_step(words("take_back.test"));
        case LogKind::lock: return at_step(words("take_back.lock"));
        case LogKind::ran: return at_step(words.counted("take_back.ticks", static_cast<long long>(count)));
        case LogKind::broken_down:
            return words("take_back.broken_down", first.broken_down ? first.broken_down->stock : "");
        case LogKind::lost: break;
    }
    const Part* part = work.plan.part_with_id(first.part);
    return part ? words("take_back.lost", role_words(words, part->size.role)) : words("take_back.lost_part");
}

void draw_take_back(Screen& screen) {
    Ui& ui = screen.ui;
    const std::string what = last_words(ui.words(), *screen.work());
    if (what.empty()) return;
    const std::string detail = ui.text("take_back.what", what);
    if (hold_button(ui, ui.text("take_back.hold").c_str(), {.width = content_width(ui), .detail = detail}))
        screen.done = TakeBack{};
}

void say_through(Screen& screen, const Stand& stand) {
    const Progress progress = progress_of(stand.work, stand.setup);
    status(screen.ui, progress.done == progress.of ? Tone::good : Tone::accent,
           screen.text("saw.through", roles_through(screen.ui.words(), stand), progress.of - progress.done,
                       progress.of));
}

void draw_parts(Screen& screen, const Stand& stand) {
    begin_card(screen.ui, "parts");
    if (screen.state.spoilt_at == stand.step) {
        draw_spoilt(screen, stand);
    } else {
        if (screen.is_low()) say_through(screen, stand);
        else draw_count(screen, stand);
        draw_ends(screen, stand);
    }
    end_card(screen.ui);
    draw_take_back(screen);
}

}  // namespace kw::window
