#pragma once
// The order of work along time: what takes how long on which machine, and which settings stand meanwhile.

#include <string>
#include <vector>

#include "draw/drawing.h"
#include "job/pins.h"
#include "job/work.h"

namespace kw::draw {

// A part of a step: setting something, a test cut, the cuts.
struct Piece {
    std::string what;  // "cutter", "shims", "fence", "height", "spacer", "test cut", "cuts"
    Material material = Material::ground;
    std::int64_t seconds = 0;
};

struct TimedStep {
    std::string step;  // as in Rest
    std::string name;  // by which it goes in the picture: where it stands in the order, from 1
    const Setup* setup = nullptr;
    std::size_t lane = 0;     // its machine's
    std::int64_t walk_s = 0;  // before it
    std::int64_t from_s = 0;  // since the beginning of the work; walked already
    std::vector<Piece> pieces;
    bool is_done = false;
    bool still_set = false;  // its machine has stood so since it was locked
    Pinned pinned = Pinned::nowhere;

    std::int64_t to_s() const;
    std::int64_t setting_s() const;  // all its changes
};

struct Timeline {
    std::vector<std::string> machines;  // one lane each: those that are used, as the shop lists them
    std::vector<TimedStep> steps;
    std::int64_t now_s = 0;  // what is done took so long, as planned
    bool begun = false;

    bool has_pinned(Pinned pinned) const;
    std::int64_t end_s() const { return steps.empty() ? 0 : steps.back().to_s(); }
};

// Points into `work`.
Timeline timeline_of(const Work& work);

// Steps [first, end) that share a row of the picture. The walk to the first belongs to it.
struct TimeRow {
    std::size_t first = 0;
    std::size_t end = 0;
    std::int64_t from_s = 0;
    std::int64_t to_s = 0;
};

// At most `rows` rows, none longer than it must be: no step is broken off.
std::vector<TimeRow> rows_of(const Timeline& timeline, std::size_t rows);

}  // namespace kw::draw
