#pragma once
// What every screen is handed, and what it remembers from frame to frame. A screen draws the session as it is and says
// what the maker did, as an action; nothing of the job itself is kept here.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "draw/order_drag.h"
#include "job/breaking_down.h"
#include "job/lay_out.h"
#include "memory/preferences.h"
#include "session/session.h"
#include "window/gl_picture.h"
#include "window/printing.h"
#include "window/setup_picture.h"
#include "window/setup_said.h"
#include "window/widgets.h"

namespace kw::window {

enum class Where { drawers, order, saw, job };
// A page over whatever else is shown.
enum class Over { none, keys, preferences };
enum class DrawersTab { drawers, stock, shop, fit };
enum class JobTab { stages, faces, layout, print, together };
enum class SawTab { picture, closed, test, log };

// An entry that has not been taken: it could not be read, or is being typed.
struct Draft {
    std::string text;
    std::string why;
};

// What has been put in at a test cut, and not yet been worked out.
struct TestDraft {
    std::string setup;
    std::map<std::string, Draft> readings;
    int felt = -1;
    bool by_eye = false;                      // what is seen is told by pictures
    std::map<std::string, std::string> seen;  // by reading: the word
    std::optional<bool> fresh_end;            // empty: as the advice said
    bool made_unread = false;                 // the moves for who can't measure what was asked
    bool other_moves = false;
    std::map<std::string, Draft> moved;
};

// What was said to each entry of the log: replayed once for each job that is looked at.
struct LogWords {
    std::shared_ptr<const Work> of;
    std::vector<std::string> said;
};

// The order as it was last drawn: made anew only for another plan or another room.
struct OrderPicture {
    std::shared_ptr<const Work> of;
    draw::OrderRoom room;
    int fonts = 0;
    draw::OrderView view;
};

// A step of the order's picture under the finger, and on its way to another place once the finger has moved.
struct OrderDrag {
    std::shared_ptr<const Work> of;
    std::string step;  // pressed; empty: none
    ImVec2 from;       // where, device pixels
    std::optional<draw::DraggedStep> moving;
};

// The plan that is shown is that of an older document: a newer one is being worked out.
struct Searching {
    std::optional<std::int64_t>
        at_most_better_s;       // than the best order found so far; known where it takes long
    bool can_be_ended = false;  // the best is found, and there is a thread that can be told
    bool is_ending = false;     // the maker has asked for that
};

// What fills the window: where that is another page than before, it is seen from its top.
struct ShownPage {
    Where place = Where::drawers;
    DrawersTab tab = DrawersTab::drawers;
    SawTab saw_tab = SawTab::picture;
    JobTab job_tab = JobTab::stages;
    std::string setup;
    Over over = Over::none;
    bool operator==(const ShownPage&) const = default;
};

// The parts laid out, as worked out last: of an older plan where another is shown.
struct ShownLayOut {
    std::shared_ptr<const Work> of;
    std::shared_ptr<const LayOut> layout;
    std::shared_ptr<const BreakingDown> breaking;
};
ShownLayOut shown_lay_out(const std::shared_ptr<const Work>& work, LayOut layout);

struct UiState {
    Preferences preferences;
    Where place = Where::drawers;
    DrawersTab tab = DrawersTab::drawers;
    int drawer = 0;
    JobTab job_tab = JobTab::stages;
    std::size_t bank = 0;      // whose faces are shown
    bool survey_open = false;  // the places at which an opening is measured
    ShownLayOut lay_out;
    std::optional<print::Paper> paper;          // empty: by the job's unit
    std::optional<print::PagesOf> to_print;     // asked for in this frame
    std::map<print::PagesOf, Printed> printed;  // what came of it
    std::size_t assembled = 0;                  // the drawer that is put together, of all of them
    bool assembly_order_open = false;           // in which order it is
    std::string setup;                          // at the saw; empty: the next one with work to do
    SawTab saw_tab = SawTab::picture;
    std::map<std::string, Draft> drafts;  // by JSON pointer
    std::vector<std::string> recent;      // lengths entered last, the newest first
    TestDraft test;
    ViewTransform picture, closed, magnified;
    SetupPicture setup_picture;
    SetupSaid setup_said;
    std::string filling;    // caption of the number that fills the screen
    std::string spoilt_at;  // the step at which the maker is asked which part is spoilt; empty: none
    std::string why_at;     // the step at which it is told why parts are lost; empty: none
    std::string
        refused_at;  // the step at which the last action was refused; empty: it was not, or that is said elsewhere
    std::string late_at;  // the step whose ticks are of parts that ran before it was torn down; empty: none
    Over over = Over::none;
    int first_question = -1;  // of the first start; negative: they are answered, or were left
    ShownPage shown_page;     // in the frame before
    LogWords log;
    OrderPicture order;
    OrderDrag drag;
    std::vector<float> step_heights, note_heights, drawer_heights;  // of rows, device pixels
    std::optional<Searching> searching;
};

struct Screen {
    Ui& ui;
    const Session& session;
    UiState& state;
    std::optional<Action> done;

    const Work* work() const { return session.work.get(); }
    template <class... Values>
    std::string text(std::string_view key, const Values&... values) const {
        return ui.text(key, values...);
    }
    bool is_left_handed() const { return state.preferences.works_with == kw::Hand::left; }
    bool is_wide() const { return ui.page_size.x >= ui.px(1100); }
    // A small panel on its side: numbers and picture stand beside each other all the same.
    bool is_low() const { return ui.page_size.y < ui.px(700) && ui.page_size.x >= ui.px(960); }
};

// One frame of the whole program.
std::optional<Action> draw_program(Ui& ui, const Session& session, UiState& state);

void draw_drawers(Screen& screen);
void draw_order(Screen& screen);
void draw_when(Screen& screen, const Setup& setup);
void draw_saw(Screen& screen);
void draw_test_cut(Screen& screen, const Setup& setup);
void draw_log(Screen& screen);
// The whole work in stages, each with how far it has come.
void draw_job(Screen& screen);
void draw_keys(Screen& screen);
// The parts on boards and sheets, as `state.lay_out` has them.
void draw_lay_out(Screen& screen);
void draw_print(Screen& screen);
// The faces of a bank, with what they follow from.
void draw_faces(Screen& screen);

// Changes the preferences where they are kept, and asks for this job's own reading.
void draw_preferences(Screen& screen);

// Their parts.
// The order as a picture, no higher than `most_height` (device pixels) or else scrolled; the step that was tapped, or nothing.
std::string draw_order_picture(Screen& screen, float most_height);
// What the plan has to tell; nothing where it has nothing.
void draw_notes(Screen& screen, const Work& work);
void draw_drawer_fields(Screen& screen, std::size_t index);
void draw_stock_fields(Screen& screen);
void draw_shop_fields(Screen& screen);
void draw_fit_fields(Screen& screen);

}  // namespace kw::window
