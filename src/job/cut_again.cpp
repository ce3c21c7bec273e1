#include "job/cut_again.h"

#include <algorithm>
#include <set>

#include "job/recheck.h"

namespace kw {
namespace {

class CutAgain {
public:
    CutAgain(const Job& job, const Design& design, const Plan& plan, const Standing& standing)
        : job_(job), design_(design), plan_(plan), standing_(standing) {}

    // By index in `ran`.
    std::set<std::size_t> find() const {
        std::set<std::size_t> again;
        for (std::size_t i = 0; i < standing_.ran.size(); ++i) {
            const Ran& ran = standing_.ran[i];
            const auto affected = recheck(job_, design_, plan_, standing_, ran);
            if (!affected || affected->fate != Fate::recut) continue;
            if (!ran.group_key.empty()) {
                const bool comes_yet = differs_in_width_only(job_, design_, ran) && has_open_pass(ran);
                if (is_locked(ran) && !comes_yet) again.insert(i);
            } else if (const auto tongues = tongues_that_come_off(ran)) {
                again.insert(i);
                again.insert(tongues->begin(), tongues->end());
            }
        }
        return again;
    }

private:
    bool is_locked(const Ran& ran) const {
        const auto standing = standing_.groups.find(ran.group_key);
        return standing != standing_.groups.end() && standing->second.locked;
    }

    bool has_gone(const std::string& key, const Ran& end) const {
        return std::any_of(standing_.ran.begin(), standing_.ran.end(), [&](const Ran& ran) {
            return ran.work_key == key && ran.part == end.part && ran.reference == end.reference;
        });
    }
    bool has_open_pass(const Ran& ran) const {
        return std::any_of(plan_.setups.begin(), plan_.setups.end(), [&](const Setup& setup) {
            const Group* group = plan_.group_with_id(setup.group);
            if (!group || group->key != ran.group_key || has_gone(work_key(setup, design_), ran))
                return false;
            return std::any_of(setup.passes.begin(), setup.passes.end(), [&](const Pass& pass) {
                return pass.part == ran.part && name_of(pass.reference) == ran.reference;
            });
        });
    }

    // Nothing where something else than a tongue would come off with the size.
    std::optional<std::vector<std::size_t>> tongues_that_come_off(const Ran& sized) const {
        const auto against_the_stop = reference_named(sized.reference);
        if (!against_the_stop) return std::nullopt;
        const std::string_view end = name_of(opposite(*against_the_stop));
        std::vector<std::size_t> tongues;
        for (std::size_t i = 0; i < standing_.ran.size(); ++i) {
            const Ran& ran = standing_.ran[i];
            if (ran.group_key.empty() || ran.part != sized.part || ran.reference != end) continue;
            if (ran.member != Member::insert) return std::nullopt;
            tongues.push_back(i);
        }
        return tongues;
    }

    const Job& job_;
    const Design& design_;
    const Plan& plan_;
    const Standing& standing_;
};

}  // namespace

Standing with_cuts_again(Standing standing, const Job& job, const Design& standing_design, const Plan& plan) {
    const std::set<std::size_t> again = CutAgain(job, standing_design, plan, standing).find();
    if (again.empty()) return standing;
    std::vector<Ran> kept;
    for (std::size_t i = 0; i < standing.ran.size(); ++i)
        (again.contains(i) ? standing.again : kept).push_back(standing.ran[i]);
    standing.ran = std::move(kept);
    return standing;
}

const Affected* too_small(const Work& work, const Setup& setup, const std::vector<std::size_t>& passes) {
    for (const Affected& affected : work.affected) {
        if (affected.fate != Fate::lost || affected.is_logged || !affected.group_key.empty()) continue;
        for (const std::size_t i : passes)
            if (setup.passes.at(i).part == affected.part) return &affected;
    }
    return nullptr;
}

}  // namespace kw
