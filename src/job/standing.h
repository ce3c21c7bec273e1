#pragma once
// How everything stands: the log, replayed. No state is kept anywhere else.

#include <map>

#include "job/plan.h"
#include "testcut/correct.h"
#include "testcut/joint_model.h"
#include "testcut/observe.h"
#include "testcut/recut.h"

namespace kw {

struct GroupStanding {
    Start start;
    Model model;
    Belief now;   // as the last test cut left it, before the moves advised
    Belief next;  // after them: where the next cut will be made
    int tests = 0;
    bool locked = false;
    Advice advice;                  // after the last test
    std::vector<std::string> read;  // of the last cut, one for each time
    Settings stood;                 // what the scales showed at the last test
    Settings dial;                  // what they show once the moves advised are made
    std::string began;              // when its first test was logged
    std::string locked_at;
    Settings at_test;        // what cut the last test ends, as believed now
    Settings at_fresh_ends;  // what cut them first
    // Its machine was used for something else since: it is to be set by hand again before more of it is cut. Then these of its
    // controls were touched, and `now` and `next` are as unsure as one more setting of them makes it.
    bool torn_down = false;
    std::vector<std::string> set_again;
    // Of a row of fingers that follows another: pin or cutter were moved for it, or set by hand anew, since that one was cut.
    bool has_own_pin = false;
    // Its last test cut and its last lock, by their places in the log as it is replayed, from 1; 0: there is none.
    int tested_at = 0, lock_at = 0;
};

// One part's end or edge that has gone through.
struct Ran {
    std::string work_key;   // see work_key()
    std::string group_key;  // empty for rips and crosscuts
    std::string part;
    std::string reference;
    Member member = Member::receiver;
    Settings settings;             // of the group when it ran, as believed now
    int after_tests = 0;           // how many test cuts the group had had by then
    std::optional<Length> size;    // that it was cut to, of rips and crosscuts
    bool set_again_since = false;  // its group's machine did something else, and then this again
    int at = 0;                    // its place in the log as it is replayed, from 1
};

// A part that lies by itself, of that stock.
struct Freed {
    std::string stock;
    Length length, width;
};

struct Standing {
    std::map<std::string, GroupStanding> groups;  // by group key; those that were tested or locked
    std::vector<Ran>
        ran;  // of the pieces that there are: what went through before a part was lost is gone with it
    std::vector<Ran> again;         // what went through as well, and must once more: see recheck.h
    std::vector<std::string> lost;  // parts that were lost once, each once
    // By key, of rows of fingers that are not tested yet: which of pin ("fence") and cutter ("kerf") were set by hand since the row was
    // cut that they follow.
    std::map<std::string, std::vector<std::string>> pins_touched;
    std::map<std::string, std::string> lost_by;  // of those, the group with whose lock they were told as lost
    // By part: as it was freed last of its board or sheet. Not that of a part that was lost since.
    std::map<std::string, Freed> freed = {};
    int forgotten = 0;  // log entries about work that is no longer planned
};

GroupTolerances tolerances_of(const Job& job);
// For the last cut of a group that has been read so far; `felt`: what doesn't go together has no step and no gap that could be read.
AdviceOptions advice_options(const Job& job, const std::vector<std::string>& read,
                             const std::string& felt = {});
// The group by which this one's setting stands: slot_of(); in a row of fingers that whose pin it is cut by. nullptr: none.
const Group* partner_of(const Design& design, const Group& group);
// The row whose pin this one is cut by now: partner_of() while it has none of its own. nullptr: its own, or it is no row.
const Group* leading_row(const Design& design, const Standing& standing, const Group& group);
// The group that cuts the slot, where this one cuts the insert alone; else nullptr.
const Group* slot_of(const Design& design, const Group& group);

// Where a group is to stand when its parts run: as locked, or after the moves that were advised; where something is to be
// measured first, after those that would be made without it.
Belief planned(const GroupStanding& standing);

// The settings that the plan has for such a group. A second pass that was taken back is none, whatever is believed of how far the
// fence's moves came out.
Settings stands_of(const GroupStanding& standing, const Settings& designed);

// What an entry says of the joint: its readings, by the tool that they were taken with, and its words. In the order in which they
// stand in the entry: readings, the feel, what was seen.
std::vector<Observation> observations_of(const Model& model, const LogEntry& entry);

// What the maker says was moved, of the controls that the model has.
std::vector<Move> moves_told(const Model& model, const std::vector<NamedLength>& told);

// Where the controls are believed to stand after a test: by the moves that were told, or else by those that were advised.
Belief after_moves(const GroupStanding& standing, const std::optional<std::vector<NamedLength>>& told);

// What is cut, without what the joint is called, which changes when the job gets another drawer: "side dado" of "back dado: side
// dado".
std::string cut_of(const std::string& work);

// The key of a log entry, also of one from when the slot had more passes or fewer: the first pass goes by no number and the last by
// none, since what they cut stays the same; one between them by its number and how many there are.
std::string without_pass_count(const std::string& key);

// The same for the same work, however setups are numbered, and however many passes a slot has; the log names it.
std::string work_key(const Setup& setup, const Design& design);

// Replays the job's log over the design.
Standing replay(const Job& job, const Design& design);

// The design with its groups standing as tested and locked. Backs that follow the front's reach follow it here.
Design with_standing(Design design, const Standing& standing);

// A part that has been cut and no longer is as it must be.
struct Affected {
    std::string part;
    Fate fate = Fate::fine;
    Message what;
    bool is_logged = false;      // as lost: it is being made again
    std::string group_key = {};  // whose cut it is; empty of a size
    std::string work_key = {};   // see work_key(); empty of what is logged as lost
    std::string reference = {};  // the end or edge that it is about

    // With the part's name before it.
    Message said() const;
};

// "`middle.1.front`", the role in the maker's language.
Message part_message(const std::string& part);

struct Rest;
std::vector<Affected> affected_parts(const Job& job, const Design& standing_design, const Plan& plan,
                                     const Standing& standing, const Rest& rest);

}  // namespace kw
