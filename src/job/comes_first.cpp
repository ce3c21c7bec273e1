#include "job/comes_first.h"

#include <algorithm>
#include <set>

#include "job/precedence.h"

namespace kw {
namespace {

class Waiting {
public:
    Waiting(const Work& work, const Setup& setup)
        : work_(work), setup_(setup), index_(std::size_t(&setup - work.plan.setups.data())) {
        for (const Ran& ran : work.standing.ran)
            ran_.insert(ran.work_key + "\n" + ran.part + "\n" + ran.reference);
        for (const auto& [first, then] : precedence_of(work.standing_design, work.plan.setups).before)
            if (std::size_t(then) == index_) before_.push_back(std::size_t(first));
    }

    std::optional<ComesFirst> first_for(const std::vector<std::size_t>& passes) const {
        std::optional<ComesFirst> found;
        const auto take = [&](const std::optional<ComesFirst>& one) {
            if (one && (!found || one->setup < found->setup)) found = one;
        };
        std::set<std::string> parts;
        for (const std::size_t i : passes) parts.insert(setup_.passes.at(i).part);
        for (const std::string& part : parts) {
            for (const std::size_t i : before_) take(wait(work_.plan.setups[i], part));
            if (!setup_.group.empty() && !is_locked(work_, setup_)) take(ComesFirst{part, &setup_, true, {}});
        }
        return found;
    }

private:
    std::optional<ComesFirst> wait(const Setup& first, const std::string& part) const {
        const Part& its = *work_.plan.part_with_id(part);
        const Waits waits = waits_of(work_.plan, first, setup_, part);
        const std::string key = work_key(first, work_.design);
        for (const Pass& pass : first.passes) {
            const Part& other = *work_.plan.part_with_id(pass.part);
            const bool concerns = waits == Waits::lock ? other.drawer == its.drawer
                                  : waits == Waits::drawer
                                      ? other.drawer == its.drawer && other.copy == its.copy
                                      : pass.part == part;
            if (!concerns ||
                ran_.contains(key + "\n" + pass.part + "\n" + std::string(name_of(pass.reference))))
                continue;
            if (waits != Waits::lock) return ComesFirst{part, &first, false, pass.part};
            if (!is_locked(work_, first) && !is_locked(work_, setup_))
                return ComesFirst{part, &first, true, {}};
        }
        return std::nullopt;
    }

    const Work& work_;
    const Setup& setup_;
    std::size_t index_;
    std::set<std::string> ran_;
    std::vector<std::size_t> before_;  // setups that come before it
};

}  // namespace

std::optional<ComesFirst> what_comes_first(const Work& work, const Setup& setup,
                                           const std::vector<std::size_t>& passes) {
    return Waiting(work, setup).first_for(passes);
}

}  // namespace kw
