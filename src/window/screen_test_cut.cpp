// A test cut: what was read and felt goes in, what to do comes out.

#include <algorithm>
#include <array>

#include "draw/joint_view.h"
#include "draw/symptom_view.h"
#include "session/words.h"
#include "testcut/feel.h"
#include "window/picture_choice.h"
#include "window/screen_fields.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

struct Bench {
    Screen& screen;
    const Work& work;
    const Setup& setup;
    FitReport report;
    TestDraft& draft;
};

TestDraft& draft_for(UiState& state, const std::string& setup) {
    if (state.test.setup != setup) {
        state.test = TestDraft();
        state.test.setup = setup;
    }
    return state.test;
}

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

bool anything_in(const TestDraft& draft) {
    return draft.felt >= 0 || !draft.seen.empty() ||
           std::any_of(draft.readings.begin(), draft.readings.end(),
                       [](const auto& entry) { return !entry.second.text.empty(); });
}

bool on_fresh_ends(const Bench& bench) {
    const Retry retry = bench.draft.made_unread ? bench.report.unread_retry : bench.report.retry;
    return bench.draft.fresh_end.value_or(retry == Retry::fresh_end);
}

// What the maker says was moved since the cut before; nothing where it is what was advised. False while an entry does not read.
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

// --- in ------------------------------------------------------------------------------------------------------------

void draw_refusal(Bench& bench) {
    const Session& session = bench.screen.session;
    const std::array<const char*, 7> here{"setup", "readings", "felt", "seen", "moved", "doubt", "fresh_end"};
    if (session.refused.empty() || std::find(here.begin(), here.end(), session.refused_field) == here.end())
        return;
    const bool doubt = session.refused_field == "doubt";
    notice(bench.screen.ui, doubt ? Tone::caution : Tone::wrong, bench.screen.text(doubt ? "test.look_again" : "test.not_taken"),
           capital(session.refused));
    if (doubt && anything_in(bench.draft) &&
        secondary_button(bench.screen.ui, bench.screen.text("test.sure").c_str(),
                         {.width = content_width(bench.screen.ui)})) {
        if (auto cut = cut_of(bench)) {
            cut->sure = true;
            bench.screen.done = SaveTest{std::move(*cut)};
        }
    }
}

// "Front's thickness": of the two boards in the joint, the one that enters.
std::string reading_label(const Bench& bench, const std::string& name) {
    const Words& words = bench.screen.ui.words();
    const Group* group = bench.work.plan.group_with_id(bench.setup.group);
    if (name != "stock_thickness" || !group) return capital(reading_word(words, name));
    if (group->work.inserts.empty()) return capital(words("test.thickness_of", role_words(words, Role::bottom)));
    const Part* part = bench.work.plan.part_with_id(group->work.inserts.front().part);
    return capital(words("test.thickness_of", role_words(words, part->size.role)));
}

void draw_readings(Bench& bench) {
    Screen& screen = bench.screen;
    Across across(screen, screen.is_wide() ? 3 : 2);  // beside the answer: all of it above the fold
    for (const std::string& name : reading_names(bench.work, bench.setup.id)) {
        const bool would_tell = bench.report.advice == AdviceKind::measure && bench.report.measure == name;
        draft_entry(screen, reading_label(bench, name), bench.draft.readings[name],
                    {across.next(), screen.text(would_tell ? "test.tells_most" : "test.not_read")});
    }
    const auto names = reading_names(bench.work, bench.setup.id);
    const auto knows = [&](const char* name) {
        return std::find(names.begin(), names.end(), name) != names.end();
    };
    std::vector<std::string> signs;
    if (knows("fit")) signs.push_back(screen.text("test.sign_of_fit"));
    if (knows("face_step")) signs.push_back(screen.text("test.sign_of_step"));
    if (!signs.empty()) caption(screen.ui, joined(signs, " "));
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
    const std::array<std::pair<const char*, const char*>, 3> kinds{
        {{"face_step", "test.see_face_step"},
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

std::vector<std::string> movable_controls(const Bench& bench) {
    std::vector<std::string> names;
    const Group* group = bench.work.plan.group_with_id(bench.setup.group);
    if (!group) return names;
    const auto standing = bench.work.standing.groups.find(group->key);
    if (standing == bench.work.standing.groups.end()) return names;
    for (const Control& control : standing->second.model.controls)
        if (control.movable) names.push_back(control.name);
    return names;
}

void draw_other_moves(Bench& bench) {
    Ui& ui = bench.screen.ui;
    if (bench.report.test == 0) return;
    toggle_row(ui, ui.text("test.other_moves").c_str(), bench.draft.other_moves);
    if (!bench.draft.other_moves) return;
    caption(ui, ui.text("test.sign_of_moves"));
    Across across(bench.screen, 2);
    for (const std::string& name : movable_controls(bench))
        draft_entry(bench.screen, capital(ui.text("test.moved_by", control_word(ui.words(), name))), bench.draft.moved[name],
                    {across.next(), ui.text("test.not_moved")});
}

void draw_entry(Bench& bench) {
    Ui& ui = bench.screen.ui;
    begin_card(ui, "entry");
    heading(ui,
            bench.report.test == 0 ? ui.text("test.first") : ui.text("test.number", bench.report.test + 1));
    draw_readings(bench);
    draw_feel(bench);
    draw_sights(bench);
    if (bench.report.test > 0) {
        bool fresh = on_fresh_ends(bench);
        toggle_row(ui, ui.text("test.fresh_end").c_str(), fresh);
        if (fresh != on_fresh_ends(bench)) bench.draft.fresh_end = fresh;
    }
    draw_other_moves(bench);
    if (anything_in(bench.draft) && quiet_button(ui, ui.text("test.clear").c_str(), {.width = content_width(ui)}))
        bench.draft.setup.clear();
    end_card(ui);
}

constexpr float work_out_px = 64;

void draw_work_out(Bench& bench, float width) {
    if (primary_button(bench.screen.ui, bench.screen.text("test.work_out").c_str(),
                       {.width = width, .height_px = work_out_px, .enabled = anything_in(bench.draft)}))
        if (auto cut = cut_of(bench)) bench.screen.done = SaveTest{std::move(*cut)};
}

// --- out -----------------------------------------------------------------------------------------------------------

std::string expected_words(const Bench& bench) {
    const Words& words = bench.screen.ui.words();
    std::vector<std::string> all;
    const auto add = [&](const char* name, const std::optional<double>& value_mm) {
        if (value_mm)
            all.push_back(reading_word(words, name) + " " +
                          fine_words(bench.work.job, Length::nearest_mm(*value_mm)));
    };
    add("fit", bench.report.fit_mm);
    add("shoulder_gap", bench.report.shoulder_gap_mm);
    add("face_step", bench.report.face_step_mm);
    return joined(all);
}

// "I did that: height + 0.008 in".
std::string made_words(const Words& words, const FitReport& report, const Job& job) {
    std::vector<std::string> all;
    for (const SaidMove& move : report.unread)
        all.push_back(control_word(words, move.control) + (move.by > Length{} ? " + " : " \u2212 ") +
                      caliper_text(job, abs(move.by)));
    return words("test.did_that", joined(all));
}

// As it stands; after the moves stands in the advice.
void draw_chance(Bench& bench) {
    Ui& ui = bench.screen.ui;
    const std::string now = hundredths(bench.report.chance_in_tolerance);
    if (!bench.report.moves.empty())
        return caption(ui, ui.text("test.as_it_stands", now));
    figure(ui, {.caption = ui.text("test.chance"),
                .value = now,
                .unit = "%",
                .changed_from = {},
                .note = {},
                .value_px = 40,
                .width = content_width(ui)});
}

void draw_lock(Bench& bench) {
    Ui& ui = bench.screen.ui;
    const float width = content_width(ui);
    TestCut cut;
    cut.setup = bench.setup.id;
    const bool readable = take_moves(bench, cut);
    const auto lock = [&] {
        if (readable) bench.screen.done = LockGroup{cut};
    };
    const bool again = bench.report.torn_down, moved = !bench.report.moves.empty();
    if (bench.report.locked && !again) {
        const Group* group = bench.work.plan.group_with_id(bench.setup.group);
        const bool moves_on = group && group->cuts_slot && group->slot_passes() > 1;
        const auto cuts = std::count_if(bench.work.plan.setups.begin(), bench.work.plan.setups.end(),
                                        [&](const Setup& one) { return group && one.group == group->id; });
        return status(ui, Tone::good,
                      ui.text(moves_on   ? "test.locked_passes"
                              : cuts > 1 ? "test.locked_cuts"
                                         : "test.locked_one"));
    }
    if (bench.report.is_good() && !again) {
        if (primary_button(ui, ui.text("test.lock").c_str(),
                           {.width = width, .height_px = 64, .detail = ui.text("test.lock_why")})) lock();
        return;
    }
    // What the program does not advise is held down: a second tap in one place locks nothing.
    const std::string chance =
        percent(chance_when_locked(bench.work, cut).value_or(bench.report.chance_in_tolerance));
    const std::string detail = ui.text(again                    ? "test.untested_again"
                                       : bench.report.test == 0 ? "test.untested"
                                       : moved                  ? "test.with_moves"
                                                                : "test.in_tolerance",
                                       chance);
    const std::string label = ui.text(again   ? "test.hold_lock_again"
                                      : moved ? "test.hold_lock_moved"
                                              : "test.hold_lock");
    if (hold_button(ui, label.c_str(), {.width = width, .detail = detail})) lock();
}

// What to move where the reading that was asked for can't be taken; once it is made it is told with the next reading.
void draw_unread(Bench& bench) {
    if (bench.report.unread.empty()) return;
    say(bench.screen.ui, say_unread(bench.report, bench.screen.ui.words()) + ".");
    toggle_row(bench.screen.ui, made_words(bench.screen.ui.words(), bench.report, bench.work.job).c_str(), bench.draft.made_unread);
    if (bench.draft.made_unread)
        caption(bench.screen.ui,
                bench.screen.text(bench.report.unread_retry == Retry::fresh_end ? "test.unread_fresh"
                                                                                : "test.unread_same"));
}

void draw_answer(Bench& bench) {
    Ui& ui = bench.screen.ui;
    const bool again = bench.report.torn_down,
               good = !again && (bench.report.locked || bench.report.is_good());
    begin_card(ui, "answer", 0,
               again                   ? Tone::caution
               : good                  ? Tone::good
               : bench.report.test > 0 ? Tone::accent
                                       : Tone::plain);
    for (const SaidMove& move : bench.report.moves) say(ui, capital(move.say), TypeSize::heading);
    say(ui, say_advice(bench.report, ui.words()));
    if (const std::string later = say_torn_down(bench.work, bench.report); !later.empty())
        status(ui, Tone::caution, later);
    draw_unread(bench);
    if (again || (bench.report.test == 0 && !bench.report.locked)) {
        int number = 0;
        for (const std::string& step : said_at(bench.screen, *stand_at(bench.screen)).test)
            say(ui, std::to_string(++number) + ".  " + step);
        caption(ui, ui.text("test.one_is_enough"));
    }
    if (bench.report.test > 0) {
        draw_chance(bench);
        const std::string expected = expected_words(bench);
        if (!expected.empty())
            caption(ui,
                    ui.text(bench.report.moves.empty() ? "test.expected" : "test.expected_moved", expected));
    }
    draw_lock(bench);
    end_card(ui);
}

void draw_pictures(Bench& bench, float height) {
    const Group* group = bench.work.plan.group_with_id(bench.setup.group);
    if (!group) return;
    Ui& ui = bench.screen.ui;
    if (bench.report.test == 0) {
        // What the readings are of; words alone would fill less room.
        const float least = ui.px(260),
                    room = bench.screen.is_wide() ? ImGui::GetContentRegionAvail().y : height;
        if (room >= least)
            draw_picture(ui, "to be read", draw::joint_view(bench.work, *group), {content_width(ui), height});
        return;
    }
    Group believed = *group;  // of boards as thick as the readings say
    believed.work.insert_thickness = bench.report.stock;
    const draw::Drawing drawing =
        bench.report.moves.empty()
            ? draw::joint_magnified(bench.work, believed, bench.report.now)
            : draw::joint_before_after(bench.work, believed, bench.report.now, bench.report.next);
    draw_picture(ui, "before and after", drawing, {content_width(ui), height});
}

}  // namespace

void draw_test_cut(Screen& screen, const Setup& setup) {
    Ui& ui = screen.ui;
    const auto report = fit_report(*screen.work(), setup.id);
    if (!report) return say(ui, ui.text("test.no_test"));
    Bench bench{screen, *screen.work(), setup, *report, draft_for(screen.state, setup.id)};
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const float gap = ui.px(size::gap);
    if (!screen.is_wide() && !screen.is_low()) {
        begin_scroll(ui, "test", room);
        draw_answer(bench);
        draw_entry(bench);
        draw_refusal(bench);  // beside the button that was pressed
        draw_work_out(bench, content_width(ui));
        draw_pictures(bench, ui.px(360));
        return end_scroll(ui);
    }
    const float entry = room.x * 0.46f;
    ImGui::BeginGroup();
    begin_scroll(ui, "entry", {entry, room.y - ui.px(work_out_px) - gap});
    draw_entry(bench);
    end_scroll(ui);
    draw_work_out(bench, entry);  // stays in sight
    ImGui::EndGroup();
    ImGui::SameLine(0, gap);
    begin_scroll(ui, "answer", {room.x * 0.54f - gap, room.y});
    draw_refusal(bench);
    draw_answer(bench);
    draw_pictures(bench, std::max(ui.px(240), ImGui::GetContentRegionAvail().y));
    end_scroll(ui);
}

}  // namespace kw::window
