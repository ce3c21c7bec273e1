// The very first start: one question after another, from the opening to the first setup at the saw.

#include <array>

#include "session/words.h"
#include "window/screen_fields.h"
#include "window/screen_first.h"
#include "window/screen_next.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

struct Question {
    const char* name;     // of its texts
    const char* pointer;  // of the answer
    Sketch sketch;
};

constexpr std::array<Question, 7> questions{{{"unit", "/unit", Sketch::rule},
                                             {"width", "/drawers/0/opening/width", Sketch::width},
                                             {"height", "/drawers/0/opening/height", Sketch::height},
                                             {"depth", "/drawers/0/opening/depth", Sketch::depth},
                                             {"slides", "/drawers/0/slide/kind", Sketch::slides},
                                             {"sides", "/stock/0/thickness", Sketch::stock},
                                             {"bottom", "/stock/1/thickness", Sketch::bottom}}};

constexpr int last_page = static_cast<int>(questions.size());

void draw_units(Screen& screen) {
    const std::array<std::string, 2> units{screen.text("first.inches"), screen.text("first.millimetres")};
    const bool metric = unit_of_job(screen.session) != Unit::inch;
    for (int i = 0; i < 2; ++i) {
        const bool is_now = metric == (i == 1);
        if (!button(screen.ui, units[static_cast<std::size_t>(i)].c_str(),
                    is_now ? Rank::primary : Rank::secondary,
                    {.width = content_width(screen.ui), .height_px = 72}))
            continue;
        if (!is_now) screen.done = SetField{"/unit", i == 1 ? "mm" : "in"};
        ++screen.state.first_question;
    }
}

void draw_slides(Screen& screen) {
    const std::string now = text_at(screen.session, "/drawers/0/slide/kind");
    for (const SlideKind kind : slide_kinds()) {
        const std::string name(name_of(kind));
        if (!button(screen.ui, capital(slide_kind_word(screen.ui.words(), name)).c_str(),
                    name == now ? Rank::primary : Rank::secondary,
                    {.width = content_width(screen.ui), .height_px = 60}))
            continue;
        if (name != now) screen.done = SetField{"/drawers/0/slide/kind", name};
        ++screen.state.first_question;
    }
}

// Of the answer itself; the drawer's other troubles come with the plan.
void draw_problem(Screen& screen) {
    if (screen.session.problems.empty()) return;
    const Problem& problem = screen.session.problems.front();
    const Locale locale = locale_of_job(screen.session);
    notice(screen.ui, Tone::wrong, capital(problem.why.text(locale)), capital(problem.remedy.text(locale)));
}

// What stands there now, in the unit of the job; a word as it is.
std::string held_text(const Screen& screen, const Question& question) {
    const std::string held = text_at(screen.session, question.pointer);
    const auto length = read_length(held, unit_of_job(screen.session));
    return length ? exact_text(*length, unit_of_job(screen.session)) : held;
}

void draw_answer(Screen& screen, const Question& question) {
    const std::string pointer = question.pointer;
    if (pointer == "/unit") return draw_units(screen);
    if (pointer == "/drawers/0/slide/kind") return draw_slides(screen);
    // Shown in the maker's unit, so that the keypad begins with it; the job is left as it is until something is put in.
    auto& drafts = screen.state.drafts;
    if (!drafts.contains(pointer)) drafts[pointer] = {held_text(screen, question), {}};
    length_entry(screen, screen.text("first.press"), pointer, {content_width(screen.ui), {}});
    if (screen.done) ++screen.state.first_question;
    if (const auto draft = drafts.find(pointer); draft != drafts.end() && draft->second.why.empty())
        drafts.erase(draft);
}

void draw_question(Screen& screen, const Question& question) {
    Ui& ui = screen.ui;
    const bool beside = ui.page_size.x > ui.page_size.y;
    const float gap = ui.px(size::gap), room = content_width(ui);
    heading(ui, ui.shown("first.ask_", question.name));
    say(ui, ui.shown("first.why_", question.name));
    const float height = beside ? ui.px(280) : ui.px(340), width = beside ? (room - gap) / 2 : room;
    draw_sketch(ui, question.sketch, {width, height});
    if (beside) ImGui::SameLine(0, gap);
    begin_card(ui, question.pointer, width);
    draw_answer(screen, question);
    if (screen.state.first_question > 0 &&
        secondary_button(ui, ui.text("first.back").c_str(), {.width = content_width(ui)}))
        --screen.state.first_question;
    const std::string held = held_text(screen, question),
                      keep = held.empty() ? std::string() : screen.text("first.stays", held);
    if (secondary_button(ui, ui.text("first.skip").c_str(), {.width = content_width(ui), .detail = keep}))
        ++screen.state.first_question;
    end_card(ui);
}

void draw_end(Screen& screen) {
    Ui& ui = screen.ui;
    begin_card(ui, "end");
    const Work* work = screen.work();
    if (screen.session.problems.empty() && work && !work->plan.boxes.empty()) {
        const BoxSize& box = work->plan.boxes.front().size;
        heading(ui, ui.text("first.drawer"));
        say(ui, ui.text("first.box", size_words(work->job, box.width, box.height, box.depth)));
        say(ui, ui.text("first.steps", work->plan.sequence.size(), proof_words(ui.words(), work->plan)));
        say(ui, ui.text("first.granted"));
        if (primary_button(ui, ui.text("first.to_saw").c_str(),
                           {.width = content_width(ui), .height_px = 76})) {
            screen.state.first_question = -1;
            go_to_next(screen);
        }
    }
    if (secondary_button(ui, ui.text("first.back").c_str(), {.width = content_width(ui)}))
        --screen.state.first_question;
    end_card(ui);
    if (screen.session.problems.empty() && work) draw_notes(screen, *work);
}

}  // namespace

void draw_first(Screen& screen) {
    Ui& ui = screen.ui;
    const int page = std::min(screen.state.first_question, last_page);
    begin_scroll(ui, ("first" + std::to_string(page)).c_str(), {0, 0});
    caption(ui,
            page < last_page ? ui.text("first.question", page + 1, last_page) : ui.text("first.one_drawer"));
    progress(ui, page, last_page);
    draw_problem(screen);
    if (page < last_page) draw_question(screen, questions[static_cast<std::size_t>(page)]);
    else draw_end(screen);
    if (quiet_button(ui, ui.text("first.leave").c_str())) {
        screen.state.first_question = -1;
        screen.state.place = Where::drawers;
    }
    end_scroll(ui);
}

}  // namespace kw::window
