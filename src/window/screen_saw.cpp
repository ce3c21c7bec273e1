// The third place: one setup, beside the machine.

#include <algorithm>
#include <array>

#include "draw/joint_view.h"
#include "job/notes.h"
#include "session/say_ways.h"
#include "session/words.h"
#include "window/screen.h"
#include "window/screen_fields.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

// The way back and on: a word, and what is done there, in two lines or on a low page in one.
float steps_height(const Screen& screen) { return screen.ui.px(screen.is_low() ? 64 : 88); }

}  // namespace

// A joint of several cuts was tested with all of them: as long as none of its parts has run, the machine stands as the last of
// those cuts left it, and not as it is set for the first.
static const Setup* left_by_test(const Work& work, const Setup& setup) {
    if (!is_locked(work, setup) || is_torn_down(work, setup)) return nullptr;
    const Setup* last = nullptr;
    for (const Setup& other : work.plan.setups) {
        if (other.group != setup.group) continue;
        last = &other;
        for (const Pass& pass : other.passes)
            if (has_run(work, other, pass)) return nullptr;
    }
    return last == &setup ? nullptr : last;
}

std::optional<Stand> stand_at(Screen& screen) {
    const Work& work = *screen.work();
    std::string step = screen.state.setup;
    if (step_of(work.plan, step) == work.plan.sequence.size()) step = next_step(work);
    const Setup* setup = setup_of_step(work.plan, step);
    if (!setup) return std::nullopt;
    screen.state.setup = step;
    Stand stand{work, step, step_of(work.plan, step), *setup, nullptr, nullptr, nullptr};
    const Setup* tested = left_by_test(work, *setup);
    const Progress progress = progress_of(work, *setup);
    stand.is_done = progress.done == progress.of;
    stand.at_machine = stand.is_done ? setup : tested ? tested : before_at_machine(work, stand.index);
    stand.is_left_by_test = tested != nullptr;
    if (stand.index > 0) stand.before = setup_of_step(work.plan, work.plan.sequence[stand.index - 1]);
    if (stand.index + 1 < work.plan.sequence.size())
        stand.after = setup_of_step(work.plan, work.plan.sequence[stand.index + 1]);
    return stand;
}

namespace {

// --- what to do ----------------------------------------------------------------------------------------------------

void draw_fact(Ui& ui, Across& across, std::string_view name, const std::string& words, bool changed) {
    const float width = across.next();
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, 0));
    caption(ui, name);
    say(ui, changed ? std::string(sign(Tone::changed)) + " " + words : words, TypeSize::body,
        changed ? Tone::changed : Tone::plain, width);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
}

// How the board lies: as facts side by side, or as one sentence under the numbers.
void draw_lie(Screen& screen, const Setup& setup) {
    const Words& words = screen.ui.words();
    Across across(screen, 2);
    const std::string ends = capital(references_of(words, setup));
    draw_fact(screen.ui, across, words("saw.down"),
              setup.index ? ends : capital(words("saw.face", faces_down(words, setup))), false);
    draw_fact(screen.ui, across, capital(say_against(words, setup)),
              setup.index ? capital(end_word(words, "bottom edge")) : ends, false);
}

void say_lie(Screen& screen, const Setup& setup) {
    say(screen.ui, capital(say_lie(screen.ui.words(), setup)));
}

// What guides it, and what cuts.
void draw_gear(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const Setup& setup = stand.setup;
    Across across(screen, 2);
    const Setup* before = stand.at_machine;
    draw_fact(ui, across, ui.text("saw.guide"), capital(say_guide(stand.work, setup)),
              before && before->guide != setup.guide);
    draw_fact(ui, across, ui.text("saw.cutter"),
              ui.text("saw.cutter_on", said_at(screen, stand).cutter,
                      show_with_unit(setup.kerf, stand.work.job.locale), setup.machine),
              before && (before->cutter != setup.cutter || before->make_up != setup.make_up));
    if (std::any_of(setup.passes.begin(), setup.passes.end(), [](const Pass& pass) { return pass.nibble; }))
        draw_fact(ui, across, ui.text("saw.then"), ui.text("saw.nibble"), false);
}

void draw_cautions(Screen& screen, const Stand& stand) {
    const std::string mark = "WARNING ";
    for (const std::string& caution : cautions_for(stand.work.job, stand.setup)) {
        const bool loud = caution.rfind(mark, 0) == 0;
        if (loud) notice(screen.ui, Tone::caution, caution.substr(mark.size()), "");
        else caption(screen.ui, caution);
    }
    for (const Note& note : stand.work.plan.notes)
        if (note.about == stand.setup.id)
            notice(screen.ui, note.level == Level::note ? Tone::accent : Tone::caution,
                   capital(note.text.text(stand.work.job.locale)), "");
}

void say_lock(Screen& screen, const Stand& stand) {
    const RestStep* step = step_named(stand.work.rest, stand.step);
    const bool again = step && step->set_again;
    status(screen.ui, again || stand.is_left_by_test ? Tone::caution : Tone::good,
           screen.text(again                   ? "saw.locked_set_again"
                       : stand.is_left_by_test ? "saw.locked_left_by_test"
                                               : "saw.locked"));
}

// Whether the joint is tested, and the way to what helps where it fits tight or loose: at each of its cuts.
void draw_test_state(Screen& screen, const Stand& stand) {
    const Group* group = stand.work.plan.group_with_id(stand.setup.group);
    if (!group || stand.is_done) return;
    Ui& ui = screen.ui;
    const bool torn_down = is_torn_down(stand.work, stand.setup),
               locked = is_locked(stand.work, stand.setup) && !torn_down;
    if (locked) say_lock(screen, stand);
    else if (torn_down) status(ui, Tone::caution, ui.text("saw.torn_down"));
    const float width = content_width(ui);
    if (locked ? secondary_button(ui, ui.text("saw.too_tight").c_str(),
                                  {.width = width, .detail = ui.text("saw.too_tight_why")})
               : primary_button(ui, ui.text("saw.test_first").c_str(),
                                {.width = width, .detail = ui.text("saw.test_first_why")}))
        screen.state.saw_tab = SawTab::test;
}

// --- the page ------------------------------------------------------------------------------------------------------

void draw_title(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const std::string where = ui.text("saw.step_of", stand.index + 1, stand.work.plan.sequence.size(),
                                      drawer_words(ui.words(), stand.work.plan, stand.setup));
    const std::array<std::string, 4> tabs{ui.text("saw.tab_picture"), ui.text("saw.tab_closed"),
                                          ui.text("saw.tab_test"), ui.text("saw.tab_log")};
    int tab = static_cast<int>(screen.state.saw_tab);
    const float left = ImGui::GetCursorPosX(), room = ImGui::GetContentRegionAvail().x,
                tabs_width = std::min(ui.px(screen.is_low() ? 568 : 620), room);
    const bool beside = screen.is_wide() || screen.is_low();
    const float words = beside ? room - tabs_width - ui.px(size::gap) : room;
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, 0));
    caption(ui, shortened(ui, where, ui.font(TypeSize::small), words).text);
    // Smaller rather than cut short.
    const std::string title = capital(setup_words(ui.words(), stand.setup));
    const bool is_long = text_width(ui, title, ui.font(TypeSize::heading, Face::strong)) > words;
    const TypeSize size = is_long ? TypeSize::body : TypeSize::heading;
    const Font font = ui.font(size, is_long ? Face::text : Face::strong);
    say(ui, shortened(ui, title, font, words).text, size);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
    if (beside) {
        ImGui::SameLine();
        ImGui::SetCursorPosX(left + room - tabs_width);
    }
    if (segments(ui, "tabs", tabs, tab, tabs_width)) screen.state.saw_tab = static_cast<SawTab>(tab);
}

void draw_steps(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const float gap = ui.px(size::gap), room = ImGui::GetContentRegionAvail().x;
    const auto& sequence = stand.work.plan.sequence;
    // With the drawers, where their names are not too long for it.
    const auto name = [&](const Setup* setup, const char* none, float width) {
        if (!setup) return ui.text(none);
        const std::string work = capital(setup_words(ui.words(), *setup));
        const std::string step = step_name(ui.words(), stand.work.plan, setup->id);
        const std::string both = step + ": " + work;
        std::string all = both + ", " + drawer_words(ui.words(), stand.work.plan, *setup);
        const float words = width - ui.px(2 * size::pad);
        const Font font = ui.font(TypeSize::small);
        if (screen.is_low()) {
            // In one line: by its number alone where the work is what is done here.
            if (wrapped(ui, both, font, words).size() == 1) return both;
            return wrapped(ui, work, font, words).size() > 1 || setup->work == stand.setup.work ? step : work;
        }
        return wrapped(ui, all, font, words).size() > 2 ? both : std::move(all);
    };
    const std::string before = name(stand.before, "saw.first_step", room * 0.4f - gap),
                      after = name(stand.after, "saw.last_step", room * 0.6f);
    const double height_px = static_cast<double>(steps_height(screen)) / ui.pixel_ratio;
    const auto go = [&](std::size_t index) {
        open_step(screen, sequence[index],
                  screen.state.saw_tab == SawTab::log ? SawTab::log : SawTab::picture);
    };
    const auto back = [&] {
        if (secondary_button(ui, ui.text("saw.back").c_str(),
                             {.width = room * 0.4f - gap,
                              .height_px = height_px,
                              .enabled = stand.before != nullptr,
                              .detail = before}))
            go(stand.index - 1);
    };
    const auto on = [&] {
        const Progress progress = progress_of(stand.work, stand.setup);
        const Rank rank = progress.done == progress.of ? Rank::primary : Rank::secondary;
        if (button(ui, ui.text("saw.next").c_str(), rank,
                   {.width = room * 0.6f,
                    .height_px = height_px,
                    .enabled = stand.after != nullptr,
                    .detail = after}))
            go(stand.index + 1);
    };
    // The larger one under the hand that works.
    const bool left = screen.is_left_handed();
    if (left) on();
    else back();
    ImGui::SameLine(0, gap);
    if (left) back();
    else on();
}

struct Columns {
    float numbers = 0, parts = 0;  // wide
    float picture = 0;             // high
};

// Numbers, picture and parts; for who works with the left hand the other way round.
void draw_columns(Screen& screen, const Stand& stand, const Columns& columns) {
    Ui& ui = screen.ui;
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const float gap = ui.px(size::gap);
    const auto numbers = [&] {
        begin_scroll(ui, "numbers", {columns.numbers, room.y});
        if (screen.is_low()) ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(ui.px(8), ui.px(6)));
        draw_numbers(screen, stand, false);
        say_lie(screen, stand.setup);
        if (screen.is_low()) ImGui::PopStyleVar();
        end_scroll(ui);
    };
    const auto parts = [&] {
        begin_scroll(ui, "parts to run", {columns.parts, room.y});
        draw_test_state(screen, stand);
        draw_parts(screen, stand);
        draw_when(screen, stand.setup);
        end_scroll(ui);
    };
    const bool left = screen.is_left_handed();
    if (left) parts();
    else numbers();
    ImGui::SameLine(0, gap);
    begin_scroll(ui, "middle", {room.x - columns.numbers - columns.parts - 2 * gap, room.y});
    draw_setup_picture(screen, stand, columns.picture);
    draw_changes(screen, stand);
    draw_cautions(screen, stand);
    draw_gear(screen, stand);
    end_scroll(ui);
    ImGui::SameLine(0, gap);
    if (left) numbers();
    else parts();
}

void draw_picture_wide(Screen& screen, const Stand& stand) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const auto px = [&](double paper_px) { return screen.ui.px(paper_px); };
    draw_columns(screen, stand,
                 {std::max(px(280), room.x * 0.21f), std::max(px(310), room.x * 0.23f),
                  std::max(px(295), room.y - px(335))});
}

// A panel of 1024 x 600: all three are in sight there as well.
void draw_picture_low(Screen& screen, const Stand& stand) {
    const ImVec2 room = ImGui::GetContentRegionAvail();
    draw_columns(screen, stand,
                 {room.x * 0.26f, room.x * 0.26f, std::max(screen.ui.px(200), room.y - screen.ui.px(60))});
}

void draw_picture_narrow(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    begin_scroll(ui, "saw", {0, ImGui::GetContentRegionAvail().y});
    draw_numbers(screen, stand, true);
    say_through(screen, stand);
    draw_changes(screen, stand);
    draw_test_state(screen, stand);
    draw_setup_picture(screen, stand, ui.px(380));
    begin_card(ui, "facts");
    draw_lie(screen, stand.setup);
    draw_gear(screen, stand);
    end_card(ui);
    draw_cautions(screen, stand);
    draw_parts(screen, stand);
    draw_when(screen, stand.setup);
    end_scroll(ui);
}

void draw_closed(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const Group* group = stand.work.plan.group_with_id(stand.setup.group);
    if (!group) return say(ui, ui.text("saw.no_joint"));
    const ImVec2 room = ImGui::GetContentRegionAvail();
    const float gap = ui.px(size::gap);
    const bool beside = screen.is_wide() || screen.is_low();
    const ImVec2 each = beside ? ImVec2{(room.x - gap) / 2, room.y} : ImVec2{room.x, (room.y - gap) / 2};
    explore_picture(ui, "closed", draw::joint_view(stand.work, *group), each, screen.state.closed,
                    {.corner = Corner::upper_right});
    if (beside) ImGui::SameLine(0, gap);
    explore_picture(ui, "magnified", draw::joint_magnified(stand.work, *group), each, screen.state.magnified);
}

void draw_tab(Screen& screen, const Stand& stand) {
    switch (screen.state.saw_tab) {
        case SawTab::picture:
            if (screen.is_low()) return draw_picture_low(screen, stand);
            return screen.is_wide() ? draw_picture_wide(screen, stand) : draw_picture_narrow(screen, stand);
        case SawTab::closed: return draw_closed(screen, stand);
        case SawTab::test: return draw_test_cut(screen, stand.setup);
        case SawTab::log: return draw_log(screen);
    }
}

}  // namespace

void draw_saw(Screen& screen) {
    Ui& ui = screen.ui;
    auto stand = stand_at(screen);
    if (!stand) return say(ui, ui.text("saw.no_setup"));
    if (!screen.state.filling.empty() && draw_filling(screen, *stand)) return;
    // The way on comes first, at the foot of the page: where it is taken, this very frame shows the other step.
    const ImVec2 top = ImGui::GetCursorPos(), page = ImGui::GetContentRegionAvail();
    const float foot = page.y - steps_height(screen);
    ImGui::SetCursorPos({top.x, top.y + foot});
    draw_steps(screen, *stand);
    stand.emplace(*stand_at(screen));
    ImGui::SetCursorPos(top);
    draw_title(screen, *stand);
    const float head = ImGui::GetCursorPosY() - top.y;
    ImGui::BeginChild("body", {page.x, foot - head - ui.px(size::gap)}, 0, ImGuiWindowFlags_NoBackground);
    draw_tab(screen, *stand);
    ImGui::EndChild();
}

}  // namespace kw::window
