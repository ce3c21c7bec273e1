#pragma once
// The open job: its document, what has been worked out from it, and the way back. A value; every action gives a new
// one. The window and the command line change jobs only through here.

#include <variant>

#include "file/document.h"
#include "job/pins.h"
#include "session/say_log.h"
#include "session/test_cut.h"

namespace kw {

struct Session {
    Json document;
    std::shared_ptr<const Work> work;         // the last that could be worked out; null before there was one
    std::shared_ptr<const Json> settled_for;  // of the document, what it was when the search was ended
    std::vector<Problem> problems;            // of the document as it is: `work` is then an older one's
    Memory memory;                            // what the shop has learned, this job's locks with it
    std::string day;                          // today, ISO 8601
    Language language = Language::english;    // in which all is said
    SetupNames names = SetupNames::ids;       // by which setups are called in it
    // Shared, since every session that follows from this one has them too.
    std::vector<std::shared_ptr<const Json>> undo;
    std::vector<std::shared_ptr<const Json>> redo;
    std::string refused;        // why the last action was not taken; empty if it was
    std::string refused_field;  // JSON pointer, or "setup", "readings" ...
    std::string refused_first;  // the setup that comes first, by its id; empty: the refusal names none
    std::string refused_part;   // a part that is too small to go on, and is to be told as spoilt; empty: none
};

// One field of the document; a null value takes the field away.
struct SetField {
    std::string pointer;
    Json value;
};
struct AddDrawer {
    std::size_t like = 0;  // index of the drawer to start from
};
struct RemoveDrawer {
    std::size_t index = 0;
};
// Drawers with faces of one style and openings within 1/16 in of one width that stand in no bank become one: by their openings, with rails
// of 3/4 in or 19 mm. Their own faces' margins go.
struct GatherBank {};
struct SaveTest {
    TestCut cut;
};
struct LockGroup {
    TestCut cut;  // its setup, and what was moved
};
struct MarkRun {
    std::string setup;
    std::vector<std::size_t> passes;  // indices into the setup's passes
    bool done = true;
    // They ran before their setup was torn down, and are told only now: they go into the log behind its lock.
    bool before_torn_down = false;
};
// A part that is spoilt: another piece of it begins at the board.
struct MarkLost {
    std::string part;
    bool together = false;  // told at once with what was told before
};
// Boards or sheets of a stock were broken down as laid out: see broken_down_of.
struct MarkBrokenDown {
    BrokenDown what;
    bool together = false;  // told at once with what was told before
};
// A setup, and with it its group, is done first or last whatever it takes; or where it fits best again.
struct PinSetup {
    std::string setup;
    Pinned where = Pinned::first;
};
struct ForgetBelief {
    Believed what;
};
struct CorrectBelief {
    Believed what;
    double value = 0.0;  // mm beyond the scale, or mm per mm of a move
};
// From now on all is said in this language. No part of the document, and nothing to undo.
struct SpeakIn {
    Language language = Language::english;
};
// The last entry of the log, with those that were told at once with it, and what it taught; also of a job that was opened anew.
struct TakeBack {};
struct Undo {};
struct Redo {};

using Action =
    std::variant<SetField, AddDrawer, RemoveDrawer, GatherBank, SaveTest, LockGroup, MarkRun, MarkLost,
                 MarkBrokenDown, PinSetup, ForgetBelief, CorrectBelief, SpeakIn, TakeBack, Undo, Redo>;

// `day`: today, by which what was learned has aged.
Session open_session(Json document, Memory memory = {}, std::string day = {});
// The same before it is `worked_out`: the document can be shown, and nothing that follows from it.
Session unworked_session(Json document, Memory memory = {}, std::string day = {},
                         Language language = Language::english);

// `time`: now, as it goes into the log. An action that is refused leaves everything but `refused` as it was. A field that
// reads well but makes a job that can't be made is taken: the problems are said, and the last work stays.
Session apply(const Session& session, const Action& action, const std::string& time, const Watch& watch = {});

// Takes what another session's document has come to, where its own can't be made: with that for which its search was ended.
void take_work_of(Session& session, const Session& other);

// Whether the action changes the document without asking the plan: then `apply` is `worked_out` of `edited`.
bool is_edit(const Action& action);
// The document as the action leaves it, and the work still as it was: what can be shown at once. Undo and redo show the document
// to which they lead; of other actions (not `can_be_shown`) nothing can be said so early.
bool can_be_shown(const Action& action);
Session edited(Session session, const Action& action, const std::string& time);
Session worked_out(Session session, const Watch& watch = {});

// Where the maker has pinned the setup.
Pinned pinned(const Work& work, const Setup& setup);

// Problems at this field or beneath it.
std::vector<Problem> problems_at(const Session& session, const std::string& pointer);

}  // namespace kw
