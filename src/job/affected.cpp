#include "job/standing.h"

#include <algorithm>

namespace kw {
namespace {

std::string group_key_of(const Plan& plan, const Setup& setup) {
    const Group* group = plan.group_with_id(setup.group);
    return group ? group->key : std::string();
}

std::string part_word(const std::string& part) { return "`" + part + "`"; }

// Parts that went through a group's setup before it was corrected.
std::optional<Affected> recheck_joint(const Job& job, const Design& design, const Ran& ran) {
    const Group* group = design.group_with_key(ran.group_key);
    if (!group) return std::nullopt;
    const Fate fate = fate_of(*group, ran.member, ran.settings, group->stands, job.fit.tolerance.fit);
    if (fate == Fate::fine) return std::nullopt;
    return Affected{ran.part, fate,
                    fate == Fate::recut ? Message::of(part_word(ran.part), ", ", ran.reference,
                                                      ": run it again, the new cut takes it all")
                                        : Message::of(part_word(ran.part), ", ", ran.reference,
                                                      ": lost, the old cut took wood that should be there")};
}

// Parts already cut to a size that has changed since.
std::optional<Affected> recheck_size(const Job& job, const Plan& plan, const Ran& ran) {
    const Part* part = plan.part_with_id(ran.part);
    if (!part || !ran.size) return std::nullopt;
    const Length wanted = ran.work_key == "rip" ? part->size.width : part->size.length;
    const Length less = wanted - *ran.size;
    if (abs(less) <= job.fit.tolerance.fit) return std::nullopt;
    if (less < Length{})
        return Affected{ran.part, Fate::recut,
                        Message::of(part_word(ran.part), " was cut to ", *ran.size, ": take off ", -less,
                                    ", to ", wanted)};
    return Affected{ran.part, Fate::lost,
                    Message::of(part_word(ran.part), " was cut to ", *ran.size, ", and must be ", wanted,
                                ": too short by ", less)};
}

// A part that was lost and is not made again yet: what is left to do of it, and what of that is still set.
std::optional<Affected> remake(const Design& design, const Plan& plan, const Standing& standing,
                               const std::string& part) {
    int left = 0, of = 0, still_set = 0;
    for (const Setup& setup : plan.setups) {
        const auto group = standing.groups.find(group_key_of(plan, setup));
        const bool locked = group != standing.groups.end() && group->second.locked;
        for (const Pass& pass : setup.passes) {
            if (pass.part != part) continue;
            ++of;
            const std::string key = work_key(setup, design);
            const bool done = std::any_of(standing.ran.begin(), standing.ran.end(), [&](const Ran& ran) {
                return ran.part == part && ran.work_key == key && ran.reference == name_of(pass.reference);
            });
            if (done) continue;
            ++left;
            if (locked) ++still_set;
        }
    }
    if (left == 0) return std::nullopt;
    const Message set =
        still_set == 0 ? Message()
                       : Message::of("; ", still_set,
                                     " of them where it is locked: run it there before that is torn down");
    return Affected{part, Fate::lost,
                    Message::of(part_word(part), " is lost, and to be made again from the board: ", left,
                                " of ", of, " cuts to do", set)};
}

}  // namespace

std::vector<Affected> affected_parts(const Job& job, const Design& design, const Plan& plan,
                                     const Standing& standing) {
    std::vector<Affected> out;
    for (const Ran& ran : standing.ran) {
        const auto affected =
            ran.group_key.empty() ? recheck_size(job, plan, ran) : recheck_joint(job, design, ran);
        if (affected) out.push_back(*affected);
    }
    for (const std::string& part : standing.lost)
        if (auto affected = remake(design, plan, standing, part)) out.push_back(std::move(*affected));
    return out;
}

}  // namespace kw
