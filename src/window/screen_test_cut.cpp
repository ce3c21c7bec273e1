// A test cut: what is put in is worked out, and what to do comes out.

#include <algorithm>
#include <array>

#include "draw/joint_view.h"
#include "session/words.h"
#include "window/screen_bench.h"
#include "window/screen_fields.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

TestDraft& draft_for(UiState& state, const std::string& setup) {
    if (state.test.setup != setup) {
        state.test = TestDraft();
        state.test.setup = setup;
    }
    return state.test;
}

void draw_refusal(Bench& bench) {
    const Session& session = bench.screen.session;
    const std::array<const char*, 7> here{"setup", "readings", "felt", "seen", "moved", "doubt", "fresh_end"};
    if (session.refused.empty() || std::find(here.begin(), here.end(), session.refused_field) == here.end())
        return;
    const bool doubt = session.refused_field == "doubt";
    notice(bench.screen.ui, doubt ? Tone::caution : Tone::wrong,
           bench.screen.text(doubt ? "test.look_again" : "test.not_taken"), capital(session.refused));
    if (doubt && anything_in(bench.draft) &&
        secondary_button(bench.screen.ui, bench.screen.text("test.sure").c_str(),
                         {.width = content_width(bench.screen.ui)})) {
        if (auto cut = cut_of(bench)) {
            cut->sure = true;
            bench.screen.done = SaveTest{std::move(*cut)};
        }
    }
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
    if (bench.report.row_mm)
        all.push_back(words("test.row_ends", bench.report.sockets,
                            fine_words(bench.work.job, Length::nearest_mm(*bench.report.row_mm))));
    return joined(all);
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
                      ui.text(moves_on                        ? "test.locked_passes"
                              : cuts > 1 && bench.setup.index ? "test.locked_jig"
                              : cuts > 1                      ? "test.locked_cuts"
                                                              : "test.locked_one"));
    }
    if (bench.report.is_good() && !again) {
        if (primary_button(ui, ui.text("test.lock").c_str(),
                           {.width = width, .height_px = 64, .detail = ui.text("test.lock_why")}))
            lock();
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

// Once the moves are made of who could not measure further.
std::string say_retry(const Bench& bench) {
    return bench.screen.text(bench.report.unread_retry == Retry::fresh_end ? "test.unread_fresh"
                                                                           : "test.unread_same");
}

// The moves make it likely enough as it is: one more reading is the maker's to take or leave.
bool moves_will_do(const Bench& bench) {
    return !bench.report.unread.empty() && bench.report.chance_after_move >= bench.report.wanted_chance;
}

// What to move where the reading that was asked for can't be taken; once it is made it is told with the next reading.
void draw_unread(Bench& bench) {
    if (bench.report.unread.empty()) return;
    if (!bench.draft.made_unread && !moves_will_do(bench))
        say(bench.screen.ui, say_unread(bench.report, bench.screen.ui.words()) + ".");
    toggle_row(bench.screen.ui, bench.screen.text("test.did_that").c_str(), bench.draft.made_unread);
}

// What the hands do next is what is read first.
void draw_advice(Bench& bench, bool is_open) {
    Ui& ui = bench.screen.ui;
    for (const SaidMove& move : bench.report.moves) say(ui, capital(move.say), TypeSize::heading);
    if (bench.draft.made_unread) return say(ui, say_retry(bench), TypeSize::heading);
    if (!moves_will_do(bench))
        return say(ui, say_advice(bench.report, ui.words()),
                   is_open && bench.report.moves.empty() ? TypeSize::heading : TypeSize::body);
    for (const SaidMove& move : bench.report.unread) say(ui, capital(move.say), TypeSize::heading);
    say(ui, ui.text("test.moves_will_do", percent(bench.report.chance_after_move),
                    reading_word(ui.words(), bench.report.measure)));
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
    const bool is_open = bench.report.test > 0 && !again && !bench.report.locked;
    if (is_open) caption(ui, ui.text("test.says", bench.report.test));
    draw_advice(bench, is_open);
    if (const std::string later = say_torn_down(bench.work, bench.report); !later.empty())
        status(ui, Tone::caution, later);
    draw_unread(bench);
    if (again || (bench.report.test == 0 && !bench.report.locked)) {
        int number = 0;
        for (const std::string& step : said_at(bench.screen, *stand_at(bench.screen)).test)
            say(ui, std::to_string(++number) + ".  " + step);
        caption(ui, ui.text("test.one_is_enough"));
    }
    if (bench.report.test > 0 && !bench.draft.made_unread) {
        // After the moves stands in the advice, and where there are none this does too.
        if (!bench.report.moves.empty() || moves_will_do(bench))
            caption(ui, ui.text("test.as_it_stands", hundredths(bench.report.chance_in_tolerance)));
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
    (has_fingers(believed.work.chosen.joint) && !believed.cuts_slot ? believed.work.receiver_thickness
                                                                    : believed.work.insert_thickness) =
        bench.report.stock;
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
