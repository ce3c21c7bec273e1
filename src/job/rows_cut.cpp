#include "job/rows_cut.h"

#include <algorithm>

#include "job/drawer_groups.h"
#include "testcut/match_row.h"

namespace kw {
namespace {

const std::string& row_of(const Group& group) { return group.row_of.empty() ? group.key : group.row_of; }

bool is_mate_cut(const Design& design, const Standing& standing, const Ran& ran) {
    const std::optional<PartEnd> mate = mate_of({ran.part, *reference_named(ran.reference)});
    return mate && std::any_of(standing.ran.begin(), standing.ran.end(), [&](const Ran& other) {
               const Group* its = design.group_with_key(other.group_key);
               return its && has_fingers(its->work.chosen.joint) && other.part == mate->part &&
                      other.reference == name_of(mate->reference);
           });
}

int sockets_of(const Group& group, const std::string& part) {
    const Length pitch = group.designed.fence + group.designed.kerf;
    int most = 0;
    for (const auto* ends : {&group.work.receivers, &group.work.inserts})
        for (const PartEnd& end : *ends)
            if (end.part == part) most = std::max(most, sockets_up(group.designed.fence, pitch, end.up));
    return most;
}

// The sockets up the highest board that has gone through in this group's row, and whose mate at the corner has not. 0: no board waits.
int sockets_to_match(const Design& design, const Standing& standing, const Group& group) {
    int most = 0;
    for (const Ran& ran : standing.ran) {
        const Group* its = design.group_with_key(ran.group_key);
        if (its && row_of(*its) == row_of(group) && !is_mate_cut(design, standing, ran))
            most = std::max(most, sockets_of(*its, ran.part));
    }
    return most;
}

}  // namespace

bool is_of_pin(const std::string& control) { return control == "fence" || control == "kerf"; }

void match_row(const Job& job, const Design& design, const Standing& standing, const Group& group,
               GroupStanding& its, const std::vector<std::string>& by_hand) {
    if (!has_fingers(group.work.chosen.joint)) return;
    const int sockets = sockets_to_match(design, standing, group);
    const bool is_by_hand = std::any_of(by_hand.begin(), by_hand.end(), is_of_pin);
    if (sockets == 0) its.model = without_row_to_match(std::move(its.model));
    if (sockets == 0 || (!is_by_hand && !follows_pin(group))) return;
    RowBelief row =
        row_to_match({std::move(its.model), its.now, its.next}, sockets, job.fit.tolerance.fit.mm());
    its.model = std::move(row.model);
    its.now = std::move(row.now);
    its.next = std::move(row.next);
}

}  // namespace kw
