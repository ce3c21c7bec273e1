#include "job/comes_first.h"

#include <algorithm>
#include <map>
#include <set>

#include "job/precedence.h"

namespace kw {
namespace {

class Waiting {
public:
    Waiting(const Work& work, const Setup& setup)
        : work_(work),
          setup_(setup),
          index_(std::size_t(&setup - work.plan.setups.data())),
          is_known_(!setup.group.empty() && is_locked(work, setup)),
          is_torn_down_(is_torn_down(work, setup)) {
        for (const Ran& ran : work.standing.ran)
            ran_.insert(ran.work_key + "\n" + ran.part + "\n" + ran.reference);
        for (const Part& part : work.plan.parts) parts_.emplace(part.id, &part);
        for (const auto& [first, then] : precedence_of(work.standing_design, work.plan.setups).before)
            if (std::size_t(then) == index_) add(work.plan.setups[std::size_t(first)]);
    }

    std::optional<ComesFirst> first_for(const std::vector<std::size_t>& passes) const {
        std::optional<ComesFirst> found;
        const auto take = [&](const std::optional<ComesFirst>& one) {
            if (one && (!found || one->setup < found->setup)) found = one;
        };
        std::set<std::string> parts;
        for (const std::size_t i : passes) parts.insert(setup_.passes.at(i).part);
        for (const std::string& part : parts) {
            for (const Before& before : before_) take(wait(before, part));
            if (!setup_.group.empty() && (!is_known_ || is_torn_down_))
                take(ComesFirst{part, &setup_, true, is_torn_down_});
        }
        return found;
    }

private:
    struct Before {
        const Setup* setup = nullptr;
        bool is_locked = false;
        std::vector<const Part*> open;  // that have an end still to go through it
    };

    void add(const Setup& first) {
        Before before{&first, !first.group.empty() && is_locked(work_, first), {}};
        const std::string key = work_key(first, work_.design);
        for (const Pass& pass : first.passes)
            if (!ran_.contains(key + "\n" + pass.part + "\n" + std::string(name_of(pass.reference))))
                before.open.push_back(parts_.at(pass.part));
        before_.push_back(std::move(before));
    }

    std::optional<ComesFirst> wait(const Before& before, const std::string& part) const {
        const Part& its = *parts_.at(part);
        const Waits waits = waits_of(work_.plan, *before.setup, setup_, part);
        // What is known of a joint by its lock stays known when it is torn down.
        if (waits == Waits::lock && (before.is_locked || is_known_)) return std::nullopt;
        const auto concerns = [&](const Part* other) {
            if (waits == Waits::lock) return other->drawer == its.drawer;
            if (waits == Waits::drawer) return other->drawer == its.drawer && other->copy == its.copy;
            return other == &its;
        };
        const auto found = std::find_if(before.open.begin(), before.open.end(), concerns);
        if (found == before.open.end()) return std::nullopt;
        if (waits == Waits::lock) return ComesFirst{part, before.setup, true};
        return ComesFirst{part, before.setup, false, false, (*found)->id};
    }

    const Work& work_;
    const Setup& setup_;
    std::size_t index_;
    bool is_known_, is_torn_down_;
    std::set<std::string> ran_;
    std::map<std::string, const Part*> parts_;
    std::vector<Before> before_;  // setups that come before it
};

}  // namespace

std::optional<ComesFirst> what_comes_first(const Work& work, const Setup& setup,
                                           const std::vector<std::size_t>& passes) {
    return Waiting(work, setup).first_for(passes);
}

}  // namespace kw
