// What goes in at a test cut: readings, how it goes together, what is seen.

#include <algorithm>
#include <array>

#include "draw/symptom_view.h"
#include "session/words.h"
#include "testcut/feel.h"
#include "window/picture_choice.h"
#include "window/screen_bench.h"
#include "window/screen_fields.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

// What has been put in, as it goes into the log; nothing while an entry does not read.
std::optional<std::vector<NamedLength>> lengths_of(Screen& screen, std::map<std::string, Draft>& drafts) {
    std::vector<NamedLength> out;
    for (auto& [name, draft] : drafts) {
        if (draft.text.empty()) continue;
        Length length;
        if (!take_length(screen, draft, length)) return std::nullopt;
        out.push_back({name, length});
    }
    return out;
}

}  // namespace

bool anything_in(const TestDraft& draft) {
    return draft.felt >= 0 || !draft.seen.empty() ||
           std::any_of(draft.readings.begin(), draft.readings.end(),
                       [](const auto& entry) { return !entry.second.text.empty(); });
}

bool on_fresh_ends(const Bench& bench) {
    const Retry retry = bench.draft.made_unread ? bench.report.unread_retry : bench.report.retry;
    return bench.draft.fresh_end.value_or(retry == Retry::fresh_end);
}

bool take_moves(Bench& bench, TestCut& cut) {
    if (bench.draft.other_moves) cut.moved = lengths_of(bench.screen, bench.draft.moved);
    else if (bench.draft.made_unread) cut.moved = as_moved(bench.report.unread);
    return !bench.draft.other_moves || cut.moved;
}

std::optional<TestCut> cut_of(Bench& bench) {
    TestCut cut;
    cut.setup = bench.setup.id;
    const auto readings = lengths_of(bench.screen, bench.draft.readings);
    if (!readings) return std::nullopt;
    cut.readings = *readings;
    if (bench.draft.felt >= 0) cut.felt = feel_table()[static_cast<std::size_t>(bench.draft.felt)].word;
    for (const auto& [reading, word] : bench.draft.seen) cut.seen.push_back(word);
    cut.fresh_end = on_fresh_ends(bench);
    if (!take_moves(bench, cut)) return std::nullopt;
    return cut;
}

namespace {

void draw_readings(Bench& bench) {
    Screen& screen = bench.screen;
    Across across(screen, screen.is_wide() ? 3 : 2);  // beside the answer: all of it above the fold
    for (const std::string& name : reading_names(bench.work, bench.setup.id)) {
        const bool would_tell = bench.report.advice == AdviceKind::measure && bench.report.measure == name;
        draft_entry(screen, reading_label(bench.work, bench.setup, name), bench.draft.readings[name],
                    {across.next(), screen.text(would_tell ? "test.tells_most" : "test.not_read")});
    }
    const auto names = reading_names(bench.work, bench.setup.id);
    const auto knows = [&](const char* name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    std::vector<std::string> signs;
    if (knows("fit")) signs.push_back(screen.text("test.sign_of_fit"));
    if (knows("face_step"))
        signs.push_back(screen.text(knows("row") ? "test.sign_of_fingers" : "test.sign_of_step"));
    if (const std::string aimed = say_aimed(bench.work.job, bench.report); !aimed.empty())
        signs.push_back(screen.text("test.aimed", aimed));
    if (!signs.empty()) caption(screen.ui, joined(signs, " "));
    // Of a first cut it stands among the steps.
    if (bench.report.test > 0 && !bench.report.locked)
        for (const std::string& line : say_jig(bench.work, bench.setup)) caption(screen.ui, line + ".");
}

bool is_fitted(const Bench& bench) {
    const auto names = reading_names(bench.work, bench.setup.id);
    return std::find(names.begin(), names.end(), "fit") != names.end();
}

void draw_feel(Bench& bench) {
    Ui& ui = bench.screen.ui;
    if (!is_fitted(bench)) return;
    std::vector<std::string> words{ui.text("test.not_tried")};
    for (const FeelMeaning& feel : feel_table()) words.push_back(capital(feel_word(ui.words(), feel.word)));
    caption(ui, ui.text("test.feel"));
    int chosen = bench.draft.felt + 1;
    if (segments(ui, "feel", words, chosen, -1)) bench.draft.felt = chosen - 1;
}

// The closed joint in pictures, one row for each thing that can be off: one tap says what is seen.
void draw_sights(Bench& bench) {
    Ui& ui = bench.screen.ui;
    const Group* group = bench.work.plan.group_with_id(bench.setup.group);
    const std::array<std::pair<const char*, const char*>, 3> kinds{{{"face_step", "test.see_face_step"},
                                                                    {"shoulder_gap", "test.see_shoulder"},
                                                                    {"fit", "test.see_fit"}}};
    const bool any = group && std::any_of(kinds.begin(), kinds.end(), [&](const auto& kind) {
                         return !sight_words(bench.work, bench.setup.id, kind.first).empty();
                     });
    if (!any) return;
    toggle_row(ui, ui.text("test.by_eye").c_str(), bench.draft.by_eye);
    if (!bench.draft.by_eye) return;
    for (const auto& [reading, what] : kinds) {
        const auto words = sight_words(bench.work, bench.setup.id, reading);
        if (words.empty()) continue;
        caption(ui, ui.text(what));
        const float gap = ui.px(size::gap), whole = content_width(ui);
        const int columns = std::clamp(static_cast<int>(whole / ui.px(170)), 2, 5);
        const float width = (whole - static_cast<float>(columns - 1) * gap) / static_cast<float>(columns);
        for (std::size_t i = 0; i < words.size(); ++i) {
            if (static_cast<int>(i) % columns != 0) ImGui::SameLine(0, gap);
            const auto told = bench.draft.seen.find(reading);
            bool chosen = told != bench.draft.seen.end() && told->second == words[i];
            if (!picture_choice(ui, capital(sight_word(ui.words(), words[i])).c_str(),
                                draw::symptom_view(bench.work, *group, *sight_of_word(words[i])), width,
                                chosen))
                continue;
            if (chosen) bench.draft.seen[reading] = words[i];
            else bench.draft.seen.erase(reading);
        }
    }
}

void draw_other_moves(Bench& bench) {
    Ui& ui = bench.screen.ui;
    // Of a first cut it is asked only where the readings say so.
    const bool is_first = bench.report.test == 0;
    const bool is_doubted = bench.screen.session.refused_field == "readings";
    if (is_first && !is_doubted && !bench.draft.other_moves) return;
    toggle_row(ui, ui.text(is_first ? "test.other_setting" : "test.other_moves").c_str(),
               bench.draft.other_moves);
    if (!bench.draft.other_moves) return;
    caption(ui, ui.text(bench.setup.index ? "test.sign_of_pin_moves" : "test.sign_of_moves"));
    Across across(bench.screen, 2);
    for (const std::string& name : names_to_move(bench.work, bench.setup.id))
        draft_entry(
            bench.screen,
            capital(ui.text("test.moved_by", control_word(ui.words(), control_at_setup(bench.setup, name)))),
            bench.draft.moved[name], {across.next(), ui.text("test.not_moved")});
}

// Which cut the readings are of: the one that was read already, as long as nothing was moved, or the next.
std::string title_of(const Bench& bench) {
    const FitReport& report = bench.report;
    if (report.test == 0) return bench.screen.text("test.first");
    const bool moved = bench.draft.other_moves || bench.draft.made_unread || !report.moves.empty();
    const bool is_open = !report.locked && !report.torn_down;
    if (is_open && !moved && report.advice == AdviceKind::measure && !on_fresh_ends(bench))
        return bench.screen.text("test.measured_further", report.test);
    return bench.screen.text(is_open && moved ? "test.after_moves" : "test.number", report.test + 1);
}

}  // namespace

void draw_entry(Bench& bench) {
    Ui& ui = bench.screen.ui;
    begin_card(ui, "entry");
    heading(ui, title_of(bench));
    draw_readings(bench);
    draw_feel(bench);
    draw_sights(bench);
    if (bench.report.test > 0) {
        bool fresh = on_fresh_ends(bench);
        toggle_row(ui, ui.text("test.fresh_end").c_str(), fresh);
        if (fresh != on_fresh_ends(bench)) bench.draft.fresh_end = fresh;
    }
    draw_other_moves(bench);
    if (anything_in(bench.draft) &&
        quiet_button(ui, ui.text("test.clear").c_str(), {.width = content_width(ui)}))
        bench.draft.setup.clear();
    end_card(ui);
}

}  // namespace kw::window
