// What has been done at the machines, in words.

#include "session/say_log.h"
#include "session/test_cut.h"
#include "session/words.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

// What was said after a test: the log up to there, replayed over the same plan.
std::string said_after(const Work& work, std::size_t index) {
    const LogEntry& entry = work.job.log[index];
    const Setup* setup = setup_of_entry(work, entry);
    if (entry.kind != LogKind::test || !setup) return {};
    Work then = work;  // its drawers still point into `work`, which outlives this
    then.job.log.resize(index + 1);
    then.standing = replay(then.job, then.design);
    const auto report = fit_report(then, setup->id);
    if (!report) return {};
    std::vector<std::string> words;
    for (const SaidMove& move : report->moves) words.push_back(move.say);
    return capital(words.empty() ? std::string() : joined(words) + ". ") +
           say_advice(*report, work.job.locale.words());
}

void say_again(LogWords& words, const std::shared_ptr<const Work>& work) {
    if (words.of == work) return;
    words.of = work;
    words.said.clear();
    for (std::size_t i = 0; i < work->job.log.size(); ++i) words.said.push_back(said_after(*work, i));
}

// "2026-07-03 14:02" of an ISO 8601 time.
std::string clock_words(const std::string& time) {
    if (time.size() < 16) return time;
    return time.substr(0, 10) + " " + time.substr(11, 5);
}

std::string entry_words(const Words& words, const Work& work, const LogEntry& entry) {
    if (entry.kind == LogKind::lock) return words("log.locked");
    if (entry.kind == LogKind::lost) return words("log.lost", part_words(words, work.plan, entry.part));
    if (entry.kind == LogKind::broken_down) return capital(say_broken_down(work.job, entry));
    if (entry.kind == LogKind::ran)
        return words("log.ran", part_words(words, work.plan, entry.part), end_word(words, entry.reference));
    return words("log.test", say_told(work, entry));
}

bool is_same_run(const LogEntry& a, const LogEntry& b) {
    return a.kind == LogKind::ran && b.kind == LogKind::ran && a.key == b.key && a.time == b.time;
}

void draw_head(Screen& screen, const LogEntry& entry) {
    const std::string time = clock_words(entry.time);
    if (entry.key.empty()) return caption(screen.ui, screen.text("log.time", time));
    const Work& work = *screen.work();
    const Words& words = screen.ui.words();
    const Setup* setup = setup_of_entry(work, entry);
    caption(screen.ui, setup ? words("log.step", time, step_name(words, work.plan, setup->id),
                                     setup_words(words, *setup))
                             : words("log.unplanned", time, entry.setup));
}

}  // namespace

void draw_log(Screen& screen) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    say_again(screen.state.log, screen.session.work);
    begin_scroll(ui, "log", ImGui::GetContentRegionAvail());
    const auto& log = work.job.log;
    draw_take_back(screen);
    if (log.empty()) say(ui, ui.text("log.nothing"));
    for (std::size_t last = log.size(); last > 0;) {
        std::size_t first = last - 1;
        while (first > 0 && is_same_run(log[first - 1], log[last - 1])) --first;
        const LogEntry& entry = log[last - 1];
        begin_card(ui, ("entry" + std::to_string(first)).c_str(), 0,
                   entry.kind == LogKind::lock ? Tone::good : Tone::plain);
        draw_head(screen, entry);
        if (last - first > 1) say(ui, ui.text("log.ran_many", last - first));
        else say(ui, entry_words(ui.words(), work, entry));
        if (!screen.state.log.said[last - 1].empty())
            say(ui, screen.state.log.said[last - 1], TypeSize::body, Tone::accent);
        end_card(ui);
        last = first;
    }
    end_scroll(ui);
}

}  // namespace kw::window
