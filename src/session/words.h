#pragma once
// Corrections and advice in the maker's words.

#include <cstdint>
#include <string>
#include <vector>

#include "job/set_to.h"
#include "job/work.h"
#include "memory/preferences.h"

namespace kw {

struct FitReport;

// "3 h 16 min", to the nearest minute.
std::string minutes(std::int64_t seconds);

// "raise the blade 0.012 in, about 1/8 turn". `by` is + for fence out, blade up, thicker spacer, wider stack, last pass farther
// out; `after`: what the scales show when it is done, for which shims are in then and whether a pass is new.
std::string say_move(const Job& job, const Group& group, const std::string& control, Length by,
                     const Settings& after);

// "twine 1, left side"; a part that the plan has not, by its id.
std::string say_part(const Words& words, const Plan& plan, const std::string& part);

// What the fence is called there: on an indexing jig the pin, where lengths are cut the stop.
std::string_view control_at_setup(const Setup& setup, std::string_view control);

// "rip fence", "miter gauge", "stop"; of a crosscut on a table saw "miter gauge or sled, with a stop on it": there a stop alone guides nothing.
std::string say_guide(const Work& work, const Setup& setup);

// As a caliper reads it, without a mark: "0.223 in".
std::string caliper_text(const Job& job, Length length);

// How far the fence stands from one side of the cutter, and which: "near" or "far". The far side is where the cutter is believed to cut.
struct FenceReading {
    Length distance;
    std::string side;
};
FenceReading fence_reading(const Work& work, const Setup& setup, CutterSide measured_to);

// "0.008 in out from the pass before", for the further passes of a slot; empty for all else.
std::string say_from_pass_before(const Work& work, const Setup& setup);

// What to cut in scrap and what to do with it, one line a step; what is set as the page at the saw says it: "Rabbet: outside face down, fence at
// 7/32 in to the near side, height scale at 0.252 in, a spacer of 17/64 in on the fence".
std::vector<std::string> say_test(const Work& work, const std::string& setup, CutterSide measured_to);

// What a row of sockets is read on, and when the spacer is on the jig's pin, one sentence each; none of what is cut without a jig.
std::vector<std::string> say_jig(const Work& work, const Setup& setup);

// The fit that the joint is to come to: "0.004 in", + loose; empty where nothing is fitted.
std::string say_aimed(const Job& job, const FitReport& report);

// Of a locked group for whose parts it must be torn down and set again; empty where it can stay until they have run.
std::string say_torn_down(const Work& work, const FitReport& report);

// "If you can't: raise the blade 0.004 in (71 % then)", where the advice is to measure; empty where no move would help.
std::string say_unread(const FitReport& report, const Words& words);

// "Lock it: 94 % likely that all of it is in tolerance."
std::string say_advice(const FitReport& report, const Words& words);

// "0.004 in more than planned, to make up for the cutter": how far a control is meant to stand beyond what is planned; empty where it is not.
std::string say_beyond(const Work& work, Length beyond);

// "put on with 0.010 in of shims more than its make-up", or with which ones, where the maker's are known; empty where it is put on
// as it is.
std::string say_shims(const Work& work, const Setup& setup, Length shims);

// "still set", "change the cutter, the fence", "set again as it was locked: the cutter to quarter stack made up to 0.258 in (shims 0.008 in),
// the fence, then a test cut", "nothing to change".
std::string say_changes(const Work& work, const RestStep& step);

// What the shop has learned, with how sure that is and why: "saw, quarter stack: the fence stands 0.016 in farther out than
// its scale says, ± 0.003 in, from 7 test cuts since 2026-03-01".
std::string say_belief(const Believed& belief, const Locale& locale);

}  // namespace kw
