#pragma once
// What is said of a setup beside its picture: what it does to which parts, how they lie, the numbers to set, and what to do to the
// machine. The page at the saw and the printed card say it alike.

#include <string>
#include <vector>

#include "job/work.h"
#include "memory/preferences.h"

namespace kw {

std::string capital(std::string words);
std::string joined(const std::vector<std::string>& words, const char* between = ", ");

// How the maker reads the job: values without a unit, and the unit.
std::string value_of(const Job& job, Length length);
std::string unit_words(const Job& job);
// As value_of, but to a caliper's step.
std::string fine_words(const Job& job, Length length);

// "10 1/16 \u00d7 4+ \u00d7 18 in": the remainder mark stands at its number.
std::string size_words(const Job& job, Length a, Length b, Length c);

// "Cutlery 1, left side".
std::string part_words(const Words& words, const Plan& plan, const std::string& part);
// "to cut; a band 1/32 in thick: left, right and top"; empty: none.
std::string band_words(const Job& job, Length band, const std::vector<BandedEdge>& banded);
std::string role_words(const Words& words, Role role);
// "groove", "locking rabbet: side dado": what a setup cuts.
std::string setup_words(const Words& words, const Setup& setup);

// "front end and rear end", each once.
std::string references_of(const Words& words, const Setup& setup);
std::string faces_down(const Words& words, const Setup& setup);
// How the board lies: "inside face down, left end against the fence"; on an indexing jig it stands on that end.
std::string say_lie(const Words& words, const Setup& setup);
// Of a row: "16 sockets", or "12 to 16 sockets" where boards are of several heights.
std::string say_sockets(const Words& words, const Setup& setup);
// "against the spacer": what the end or edge touches.
std::string say_against(const Words& words, const Setup& setup);

// "twine, seed trays": whose parts go through.
std::string drawers_of(const Plan& plan, const Setup& setup);
// "drawer twine": a name alone may read as a part of the sentence.
std::string drawer_words(const Words& words, const Plan& plan, const Setup& setup);

// "Front's thickness": of the two boards in the joint, the one that enters.
std::string reading_label(const Work& work, const Setup& setup, const std::string& reading);

// The step of the work: its setup, or nullptr. A step of a setup that is set again carries a suffix behind '#'.
const Setup* setup_of_step(const Plan& plan, const std::string& step);

// The setup that the machine of this step was set for last; nullptr where it was not used before.
const Setup* before_at_machine(const Work& work, std::size_t step);

// The step that comes next at the machine of this setup, where that has run last there and both are by one lock: cutter and height
// stay; else nullptr.
const RestStep* needs_as_it_stands(const Work& work, const Setup& done);
// "Done here. Leave the saw set: step 11 needs it so, but for the spacer".
std::string say_done(const Work& work, const Setup& done);

// One number to set.
struct SetupNumber {
    std::string caption;
    std::string value;  // empty: the note says it all
    std::string unit;
    std::string was;  // at the machine; empty: the same
    std::string note;
};

// Of a machine that was set for `before` (nullptr: for nothing yet).
std::vector<SetupNumber> setup_numbers(const Work& work, const Setup* before, const Setup& now,
                                       CutterSide measured_to);

// One sentence each; and what to leave as it is.
struct SetupChanges {
    std::vector<std::string> change;
    std::string leave;  // empty: nothing stays
};

// What to do to a machine that was set for `before` (nullptr: for nothing yet).
SetupChanges setup_changes(const Work& work, const Setup* before, const Setup& now, CutterSide measured_to);

}  // namespace kw
