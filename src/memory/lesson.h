#pragma once
// What one lock taught of a machine: how far a scale stands from what it says, how long its moves come out, and how wide a
// cutter really cuts.

#include <string>
#include <vector>

#include "setup/group.h"
#include "testcut/model.h"
#include "testcut/start.h"

namespace kw {

enum class Taught { fence, height, kerf, fence_gain, height_gain };
std::string_view name_of(Taught what);
std::optional<Taught> taught_named(std::string_view name);

struct Lesson {
    Taught what = Taught::fence;
    std::string machine;
    std::string cutter;
    Length kerf;          // of the cutter, as it was typed in: another make-up is another cutter
    double value = 0.0;   // mm beyond the scale (the typed kerf), or mm per mm of a move
    double spread = 0.0;  // one sigma of what this job alone says of it
    int tests = 0;        // test cuts that it comes from
    std::string time;     // of the lock, ISO 8601; begins with the day
    std::string began;    // of the group's first test: with the group, names the work that taught it
    std::string job;
    std::string group;     // key of the group that was locked
    bool by_hand = false;  // the maker said so

    bool operator==(const Lesson&) const = default;
};

// What the test cuts of a group have told beyond what was known at its start: that is in the model, and is taken out of
// `now` again, so that nothing is learned twice. Nothing of what they did not touch.
std::vector<Lesson> lessons_of(const Group& group, const Model& model, const Belief& now);

}  // namespace kw
