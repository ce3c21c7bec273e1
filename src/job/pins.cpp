#include "job/pins.h"

#include <algorithm>

#include "job/precedence.h"

namespace kw {
namespace {

using Pairs = std::vector<std::pair<int, int>>;
using Flags = std::vector<bool>;  // by setup

// The setups in `from`, and all that lie before (or after) them. A group is set once: with one of its setups all of them.
Flags reached(const Flags& from, const Pairs& before, const std::vector<Setup>& setups, bool backward) {
    Flags all = from;
    for (bool more = true; more;) {
        more = false;
        for (std::size_t i = 0; i < setups.size(); ++i)
            for (std::size_t j = 0; all[i] && !setups[i].group.empty() && j < setups.size(); ++j) {
                if (all[j] || setups[j].group != setups[i].group) continue;
                all[j] = more = true;
            }
        for (const auto& [first, then] : before) {
            const auto source = std::size_t(backward ? then : first),
                       target = std::size_t(backward ? first : then);
            if (!all[source] || all[target]) continue;
            all[target] = more = true;
        }
    }
    return all;
}

Flags named(const std::string& pin, const std::vector<std::string>& names) {
    Flags found(names.size(), false);
    for (std::size_t i = 0; i < names.size(); ++i) found[i] = names[i] == pin;
    return found;
}

// Each setup that is in `first` before each that is in none of both.
void add_pairs(const Flags& first, const Flags& exempt, bool first_leads, Pairs& pairs) {
    for (std::size_t i = 0; i < first.size(); ++i)
        for (std::size_t j = 0; first[i] && j < exempt.size(); ++j)
            if (!exempt[j]) pairs.emplace_back(int(first_leads ? i : j), int(first_leads ? j : i));
}

std::vector<std::string> names_of(const Design& design, const std::vector<Setup>& setups) {
    std::vector<std::string> names;
    for (const Setup& setup : setups) names.push_back(pin_name(setup, design));
    return names;
}

}  // namespace

std::string pin_name(const Setup& setup, const Design& design) {
    for (const Group& group : design.groups)
        if (group.id == setup.group) return group.key;
    const std::size_t colon = setup.work.find(':');
    return setup.work.substr(0, colon) + " on " + setup.machine + ", from " + setup.passes.front().part;
}

std::vector<std::pair<int, int>> pinned_pairs(const Pins& pins, const Design& design,
                                              const std::vector<Setup>& setups,
                                              const std::vector<std::pair<int, int>>& before) {
    const std::vector<std::string> names = names_of(design, setups);
    Pairs pairs;
    Flags led(setups.size(), false);  // by a pin before, or needed by it
    for (const std::string& pin : pins.first) {
        const Flags its = named(pin, names);
        Flags exempt = reached(its, before, setups, true);
        for (std::size_t i = 0; i < exempt.size(); ++i) exempt[i] = exempt[i] || led[i];
        add_pairs(its, exempt, true, pairs);
        led = std::move(exempt);
    }
    Flags last(setups.size(), false);
    for (const std::string& pin : pins.last) {
        const Flags its = named(pin, names);
        for (std::size_t i = 0; i < last.size(); ++i) last[i] = last[i] || its[i];
    }
    add_pairs(last, reached(last, before, setups, false), false, pairs);
    return pairs;
}

Pinned pinned_as(const Pins& pins, const std::string& name) {
    const auto in = [&](const std::vector<std::string>& list) {
        return std::find(list.begin(), list.end(), name) != list.end();
    };
    if (in(pins.first)) return Pinned::first;
    return in(pins.last) ? Pinned::last : Pinned::nowhere;
}

Surroundings surroundings_of(const Design& design, const std::vector<Setup>& setups, std::size_t setup) {
    const Pairs before = precedence_of(design, setups).before;
    Flags its(setups.size(), false);
    its.at(setup) = true;
    return {reached(its, before, setups, true), reached(its, before, setups, false)};
}

std::string away_with(const std::string& pin, const Shop& shop) {
    for (const Machine& machine : shop.machines)
        if (machine.is_away && (pin.find(" on " + machine.name + ", from ") != std::string::npos ||
                                pin.find("; " + machine.name + ", ") != std::string::npos))
            return machine.name;
    return {};
}

std::vector<std::string> idle_pins(const Pins& pins, const Design& design, const std::vector<Setup>& setups) {
    const std::vector<std::string> names = names_of(design, setups);
    std::vector<std::string> idle;
    for (const auto* list : {&pins.first, &pins.last})
        for (const std::string& pin : *list)
            if (std::find(names.begin(), names.end(), pin) == names.end()) idle.push_back(pin);
    return idle;
}

}  // namespace kw
