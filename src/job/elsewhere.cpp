#include "job/elsewhere.h"

#include <algorithm>

#include "job/drawer_groups.h"
#include "words/names.h"

namespace kw {
namespace {

struct Way {
    std::string machine;
    JointKeys keys;
};

class Begun {
public:
    // `whole`: the job designed as if all machines were here.
    Begun(const Job& job, const Design& design, const Design& whole)
        : job_(job), design_(design), whole_(whole), is_counted_(job.log.size(), false) {}

    std::vector<Elsewhere> all() {
        for (std::size_t i = 0; i < design_.drawers.size(); ++i) {
            const DrawerDesign &now = design_.drawers[i], &then = whole_.drawers[i];
            look(now, Place::front, now.front, then.front, then.front_keys);
            look(now, Place::back, now.back, then.back, then.back_keys);
            look(now, Place::bottom, now.bottom, then.bottom, then.bottom_keys);
        }
        return found_;
    }

private:
    void look(const DrawerDesign& drawer, Place place, const ChosenJoint& now, const ChosenJoint& then,
              const JointKeys& keys) {
        const std::string label = label_of(place, then.joint), &name = drawer.spec->name;
        std::vector<Way> ways{{then.machine.name, keys}};
        for (const Alternative& one : whole_.alternatives)
            for (std::size_t w = 0; one.label == label && w < one.ways.size(); ++w)
                if (std::find(one.drawers.begin(), one.drawers.end(), name) != one.drawers.end())
                    ways.push_back({one.ways[w].machine.name, one.keys[w]});
        for (const Way& way : ways)
            if (is_away(way.machine)) count(way, {label, {}, way.machine, now.machine.name}, name);
    }

    void count(const Way& way, const Elsewhere& kind, const std::string& drawer) {
        const auto is_of = [](const LogEntry& entry, const std::string& key) {
            return !key.empty() && (entry.key == key || entry.key.rfind(key + " | ", 0) == 0);
        };
        for (std::size_t i = 0; i < job_.log.size(); ++i) {
            const LogEntry& entry = job_.log[i];
            if (!is_of(entry, way.keys.slot) && !is_of(entry, way.keys.end)) continue;
            Elsewhere& its = kind_of(kind);
            if (std::find(its.drawers.begin(), its.drawers.end(), drawer) == its.drawers.end())
                its.drawers.push_back(drawer);
            if (is_counted_[i]) continue;
            is_counted_[i] = true;
            ++its.entries;
            if (entry.kind == LogKind::ran) its.ran = true;
            else its.locked = entry.kind == LogKind::lock;
        }
    }

    Elsewhere& kind_of(const Elsewhere& kind) {
        const auto known = std::find_if(found_.begin(), found_.end(), [&](const Elsewhere& one) {
            return one.joint == kind.joint && one.was == kind.was && one.now == kind.now;
        });
        return known == found_.end() ? found_.emplace_back(kind) : *known;
    }

    bool is_away(const std::string& machine) const {
        return std::any_of(job_.shop.machines.begin(), job_.shop.machines.end(),
                           [&](const Machine& one) { return one.name == machine && one.is_away; });
    }

    const Job& job_;
    const Design &design_, &whole_;
    std::vector<bool> is_counted_;  // by log entry
    std::vector<Elsewhere> found_;
};

}  // namespace

std::vector<Elsewhere> begun_elsewhere(const Job& job, const Design& design_now) {
    const auto is_away = [](const Machine& machine) { return machine.is_away; };
    const auto& machines = job.shop.machines;
    if (job.log.empty() || std::none_of(machines.begin(), machines.end(), is_away)) return {};
    Job whole = job;
    for (Machine& machine : whole.shop.machines) machine.is_away = false;
    const auto designed = design(whole);
    return designed ? Begun(job, design_now, *designed).all() : std::vector<Elsewhere>{};
}

Note note_of(const Elsewhere& one) {
    std::string drawers;
    for (const std::string& drawer : one.drawers)
        drawers += (drawer == one.drawers.front() ? "" : ", ") + drawer;
    Message text =
        Message::say(one.locked ? "job.was_locked_elsewhere" : "job.was_begun_elsewhere", one.was, one.now);
    if (one.ran) text = text + Message::say("job.counts_again", one.was);
    return {Level::note, one.joint + " (" + drawers + ")", std::move(text),
            Message::of(Message::shown(work_word, one.joint), " (", drawers, ")")};
}

}  // namespace kw
