#pragma once
// A test cut as it goes in, and what is answered.

#include "job/work.h"

namespace kw {

struct TestCut {
    std::string setup;
    std::vector<NamedLength> readings;
    std::string felt;
    // Nothing: the moves advised before were made. At an indexing jig "pin" is its fence.
    std::optional<std::vector<NamedLength>> moved;
    bool fresh_end = false;
    std::string by;
    std::vector<std::string> seen = {};  // words for what was seen on the closed joint
    std::optional<Tool> tool = {};       // that the readings were taken with; nothing: the job's
    bool sure = false;                   // looked at again: what seems to contradict is right
};

// The log entry for a test cut or a lock at a setup, checked: names that the joint knows, readings within reason, and none
// that contradicts the rest. Refuses with the field `setup`, `readings`, `felt`, `seen` or `moved`; with `doubt` where
// something had better be looked at again, which `sure` overrules.
tl::expected<LogEntry, Refusal> test_entry(const Work& work, const TestCut& cut, const std::string& time);
tl::expected<LogEntry, Refusal> lock_entry(const Work& work, const TestCut& cut, const std::string& time);

struct SaidMove {
    std::string control;
    Length by;
    std::string say;  // "raise the blade 0.012 in, about 1/8 turn"
};

enum class Retry { same_ends, fresh_end };

// Where a group stands after its last test cut, and what to do.
struct FitReport {
    std::string setup;
    std::string group;
    int test = 0;
    bool locked = false;
    bool torn_down = false;  // since it was locked: to be set again and tested, before more parts run
    Settings now;
    Settings next;  // after the moves
    Length stock;   // thickness of the insert, as believed
    std::vector<std::pair<std::string, double>> spread_mm;
    std::vector<SaidMove> moves;
    std::vector<SaidMove> unread;  // where the advice is to measure: what to move if that can't be
    Retry retry = Retry::same_ends;
    Retry unread_retry = Retry::same_ends;  // after those moves
    double chance_in_tolerance = 0.0;
    double chance_after_move = 0.0;
    double wanted_chance = 0.9;  // from which the maker is told to lock
    AdviceKind advice = AdviceKind::measure;
    std::string measure;                                          // the reading that would tell most
    bool measure_again = false;                                   // though it was taken of this cut already
    std::optional<double> fit_mm, shoulder_gap_mm, face_step_mm;  // expected after the moves
    std::optional<double> fit_aimed_mm = {};
    // Of fingers: how many sockets the highest row has, and how much farther up than planned it ends after the moves.
    int sockets = 0;
    std::optional<double> row_mm = {};

    // Tested, and likely enough to be in tolerance as it stands. Where nothing can be moved, `lock` may be all that is left.
    bool is_good() const {
        return test > 0 && advice == AdviceKind::lock && chance_in_tolerance >= wanted_chance;
    }
};

// Moves as the log takes them: `moved` of the next test cut, where they were made.
std::vector<NamedLength> as_moved(const std::vector<SaidMove>& moves);

// Nothing for a setup that has no joint. Before the first test: what is believed of the scales.
std::optional<FitReport> fit_report(const Work& work, const std::string& setup);

// The chance that a tested joint is in tolerance as it would be locked: with the moves that were told, or else those that were advised,
// taken as made. Nothing before the first test.
std::optional<double> chance_when_locked(const Work& work, const TestCut& lock);

// The controls that can be told as moved.
std::vector<std::string> names_to_move(const Work& work, const std::string& setup);
// The readings that a setup's joint knows, in the order in which a maker takes them.
std::vector<std::string> reading_names(const Work& work, const std::string& setup);

// The words for what can be seen of one reading at this joint, in order; none where it is not seen there.
std::vector<std::string> sight_words(const Work& work, const std::string& setup, std::string_view reading);

// "tongue thickness" for "tongue_thickness".
std::string plain_name(const std::string& reading);

}  // namespace kw
