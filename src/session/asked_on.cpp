#include "session/asked_on.h"

#include <algorithm>

namespace kw {
namespace {

bool is_same_end(const Pass& a, const Pass& b) { return a.part == b.part && a.reference == b.reference; }

std::optional<std::size_t> end_in(const Setup& setup, const Pass& end) {
    const auto found = std::find_if(setup.passes.begin(), setup.passes.end(),
                                    [&](const Pass& pass) { return is_same_end(pass, end); });
    if (found == setup.passes.end()) return std::nullopt;
    return static_cast<std::size_t>(found - setup.passes.begin());
}

class Translator {
public:
    Translator(const Plan& seen, const Plan& now) : seen_(seen), now_(now) {}

    template <class Any>
    std::optional<Action> operator()(const Any& any) const {
        return any;
    }
    std::optional<Action> operator()(SaveTest save) const { return renamed(save, save.cut.setup); }
    std::optional<Action> operator()(LockGroup lock) const { return renamed(lock, lock.cut.setup); }
    std::optional<Action> operator()(PinSetup pin) const { return renamed(pin, pin.setup); }
    std::optional<Action> operator()(MarkRun mark) const {
        const Setup* before = seen_.setup_with_id(mark.setup);
        if (!before) return mark;
        const Setup* after = same_setup(*before);
        if (!after) return std::nullopt;
        for (std::size_t& pass : mark.passes) {
            const auto its = end_in(*after, before->passes.at(pass));
            if (!its) return std::nullopt;
            pass = *its;
        }
        mark.setup = after->id;
        return mark;
    }

private:
    // `setup`: within `action`. A setup that is set again keeps its "#2".
    template <class Any>
    std::optional<Action> renamed(Any& action, std::string& setup) const {
        const std::size_t end = std::min(setup.find('#'), setup.size());
        const Setup* before = seen_.setup_with_id(setup.substr(0, end));
        if (!before) return action;
        const Setup* after = same_setup(*before);
        if (!after) return std::nullopt;
        setup = after->id + setup.substr(end);
        return action;
    }

    // That does the same work on the same machine, for its first end among others.
    const Setup* same_setup(const Setup& setup) const {
        const auto is_same = [&](const Setup& other) {
            return other.work == setup.work && other.machine == setup.machine && other.stage == setup.stage &&
                   end_in(other, setup.passes.front());
        };
        const Setup* by_number = now_.setup_with_id(setup.id);
        if (by_number && is_same(*by_number)) return by_number;
        const auto found = std::find_if(now_.setups.begin(), now_.setups.end(), is_same);
        return found == now_.setups.end() ? nullptr : &*found;
    }

    const Plan& seen_;
    const Plan& now_;
};

}  // namespace

std::optional<Action> asked_on(const Action& action, const Plan& seen, const Plan& now) {
    return std::visit(Translator(seen, now), action);
}

}  // namespace kw
