#pragma once
// The job: what the maker wants, what there is to make it with, and what has been done. A value.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "drawer/bank.h"
#include "drawer/handle_holes.h"
#include "drawer/hanging.h"
#include "drawer/parts.h"
#include "drawer/slides_hung.h"
#include "drawer/survey.h"
#include "job/broken_down.h"
#include "length/text.h"
#include "setup/setup.h"
#include "testcut/start.h"
#include "wood/movement.h"

namespace kw {

struct Tolerances {
    Length fit = Length::micrometres(100);  // either way from the clearance asked
    Length shoulder_gap = Length::micrometres(100);
    Length step = Length::micrometres(150);   // either way
    Length depth = Length::micrometres(250);  // of a slot, either way: the lengths follow what was cut
    Length place = Length::micrometres(500);  // of a back or a bottom, either way
};

struct FitRules {
    Length clearance = Length::inches(4, 1000);
    Length end_relief = Length::inches(1, 64);
    Length groove_clearance = Length::inches(10, 1000);
    Length bottom_slack = Length::inches(1, 32);
    Length step;
    Tolerances tolerance;
    double wanted_chance = 0.9;  // that all of a joint is within tolerance, before locking is advised
};

struct FrontSpec {
    std::string stock;
    std::string joint = "locking rabbet";
    std::string cutter;  // empty: the program chooses
    std::optional<Length> dado_width;
    std::optional<Length> depth;
};

struct BackSpec {
    std::string stock;
    std::string joint = "dado";
    std::string cutter;
    std::optional<Length> dado_width;
    std::optional<Length> depth;  // left open: so that fronts and backs are of one length
    Length setback = Length::inches(1);
};

struct BottomSpec {
    std::string stock;
    std::string joint = "groove";
    std::string cutter;
    Length offset = Length::inches(3, 8);
    std::optional<Length> depth;
    BottomStyle style = BottomStyle::slide_in;
};

// A face as its bank has it: how wide and high it is, and the gaps to what is beside it, of each copy from the top down.
struct FaceInBank {
    Length width, height;
    std::vector<Margins> gaps;
};

// What this drawer's faces get on their edges, whatever their stock says.
struct FaceBanding {
    std::optional<Length> thickness;  // nothing: as thick as on the rest of the stock
    std::vector<BandedEdge> edges;    // none: these faces are not banded
};

struct FaceSpec {
    std::string stock;
    FaceStyle style = FaceStyle::none;
    Length left, right, top, bottom;  // overlays, or gaps of an inset face
    Length reveal =
        Length::inches(1, 8);  // of an overlay face: the gap to what is beside it, on all four sides
    std::optional<FaceInBank> in_bank =
        {};  // then none of these lengths counts but the reveal, which is the bank's
    std::optional<FaceBanding> banding = {};  // nothing: that of its stock
};

// What was read of one drawer once it was put together and hung.
struct Assembled {
    std::optional<Length> from_front_left, from_front_right;  // diagonals of the box, see squareness.h
    SlidesRead slides;
    Gaps gaps;
};

struct DrawerSpec {
    std::string name;
    int count = 1;
    std::optional<Opening>
        opening;  // either this, with a slide; the least of what was typed and of the survey
    Survey survey;
    std::optional<FrameStandsIn> frame;
    std::optional<Opening> face_opening;  // the same without what was read at the back: what a face meets
    Slide slide;
    std::optional<BoxSize> box;  // or the box itself
    std::string side_stock;
    FrontSpec front;
    BackSpec back;
    BottomSpec bottom;
    FaceSpec face;
    std::map<int, Assembled> assembled;  // by copy, from 1
};

// What its face meets; the drawer has an opening.
inline const Opening& face_opening(const DrawerSpec& drawer) {
    return drawer.face_opening ? *drawer.face_opening : *drawer.opening;
}

// The drawer's face, of the thickness of its stock (nothing where none is named): as its bank has it, or from its opening. Nothing where it has none.
std::optional<PartSize> face_size(const DrawerSpec& drawer, Length thickness = {});

// A drawer of a bank: which of the job's drawers, and which copy, from 1.
struct BankPlace {
    std::size_t drawer = 0;
    int copy = 1;
};

// A bank as it is asked for. What is left open follows from the rest (see hang_in_banks).
struct BankSpec {
    std::string name;
    std::vector<std::string> drawers;  // top to bottom; one that is named once stands for all of its name
    FaceStyle style = FaceStyle::overlay;
    std::optional<Length> width, height, depth;  // of the column's opening
    std::optional<Length> rail;
    Length reveal = Length::inches(1, 8);
    std::optional<Length> left, right, top, bottom;  // how far faces cover the ends; of inset faces the gaps
    CaseEdges edges;
    FaceHeights heights = FaceHeights::equal;
    std::optional<Length> step, top_face;
    std::vector<int> parts;                           // a row each
    std::vector<std::optional<Length>> face_heights;  // a row each
    std::optional<Length> beside_top, beside_bottom;  // `top` and `bottom` of the doors beside
    std::optional<HandleAsk> handles;

    std::vector<BankPlace> rows;  // top to bottom
    Margins ends;                 // as asked for, or as they follow
    Bank made;                    // what it comes to
    // The least width in front, of the column and of all its drawers' openings, and the row that has it; nothing: as typed for the column.
    Length least_width;
    std::optional<std::size_t> narrowest = {};
};

// Seconds of work; common practice, no source. All editable in the job.
struct WorkTimes {
    std::int64_t machine_s = 30;  // walking to another machine
    std::int64_t cutter_s = 900;
    std::int64_t shims_s = 300;  // other ones in the same stack
    std::int64_t fence_s = 60;
    std::int64_t height_s = 60;
    std::int64_t spacer_s = 20;
    std::int64_t test_cut_s = 300;
    std::int64_t pass_s = 20;
    std::int64_t index_s = 8;       // each further socket of a row
    std::int64_t rough_cut_s = 40;  // through a board or a sheet, to break it down
};

// How parts are laid out on boards and sheets.
struct CuttingRules {
    std::optional<Length> kerf;  // nothing: the ripping blade's
    // Rough sizes are so much more than finished ones: the setups rip and crosscut to size from them, and fronts and backs get their length
    // only when their joint is locked (common practice, no source).
    Length over_length = Length::inches(1, 2), over_width = Length::inches(1, 8);
    Length least_offcut_length = Length::inches(12), least_offcut_width = Length::inches(2);  // worth keeping
};

// Names of setups (see pins.h), in the sequence in which they were pinned.
struct Pins {
    std::vector<std::string> first, last;
};

enum class LogKind { test, lock, ran, lost, broken_down };

struct NamedLength {
    std::string name;
    Length value;
    bool operator==(const NamedLength&) const = default;
};

// One thing done at the machine. `key` is the group's: it holds when the plan is numbered anew.
struct LogEntry {
    LogKind kind = LogKind::test;
    std::string time;   // ISO 8601, UTC
    std::string setup;  // as numbered when it was done
    std::string key;
    std::string machine;  // that it was done on; empty in a log that does not say
    std::vector<NamedLength> readings;
    std::string felt;
    std::vector<std::string> seen;  // words for what no tool was taken to
    std::optional<Tool> tool;       // that the readings were taken with
    std::optional<Start>
        start;  // of a group's first entry: how its scales were set, and what was known of them then
    std::vector<NamedLength> moved;  // what was moved since the test before; empty: the moves advised then
    bool moved_given = false;
    bool fresh_end = false;
    std::string part;  // of `ran` and `lost`
    std::string reference;
    std::string by;
    bool together = false;  // told at once with the entry before it, and taken back with it
    std::optional<BrokenDown> broken_down = {};  // of `broken_down`, which is of no group and no machine
    std::string late;  // of `ran`: it was told once its setup was torn down, and ran by the lock of this time
};

struct Job {
    std::string name;
    Unit unit = Unit::inch;
    Locale
        locale;  // how finely the maker reads; the language is not the job's own, and is put in by who opens it
    FitRules fit;
    std::vector<Stock> stock;
    Shop shop;
    WorkTimes times;
    CuttingRules cutting;
    Pins pins;
    Tool tool = Tool::caliper;  // what lengths are read with
    Climate climate;            // where the drawers will live
    std::vector<DrawerSpec> drawers;
    std::vector<BankSpec> banks;
    std::vector<LogEntry> log;

    const Stock* stock_named(std::string_view name_wanted) const;
};

// Of the drawers of one name the one of that number: "seeds 2".
std::string copy_name(std::string_view drawer, int copy);
// The same; of the only one just its name.
std::string copy_name(const DrawerSpec& drawer, int copy);

// Corrections and readings are shown finer than a rule can be read: a caliper's step in the job's unit.
Locale caliper_locale(const Job& job);

enum class Level { note, warning, error };

// Something wrong with the job, at the field to blame (a JSON pointer into the job file).
struct Problem {
    std::string pointer;
    Message why;
    Message remedy;
};

// Something to tell the maker; `about` is a setup, a drawer or a part, or what has a title to be shown by.
struct Note {
    Level level = Level::note;
    std::string about;
    Message text;
    Message title = {};
};

}  // namespace kw
