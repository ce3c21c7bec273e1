#include "memory/memory.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cmath>

namespace kw {

namespace {

// One sigma each, mm or mm per mm. Together a machine and a cutter that nothing is known of are as unsure as usual_scales()
// says. Common practice, no source.
struct Nature {
    double machine;    // the machine's own part
    double cutter;     // the part of each cutter on it
    double mounting;   // each time that it is mounted
    double per_month;  // how far either wanders in thirty days
};
Nature nature_of(Taught what) {
    switch (what) {
        case Taught::fence: return {0.20, 0.15, 0.015, 0.02};
        case Taught::height: return {0.10, 0.23, 0.015, 0.02};
        case Taught::kerf: return {0.0, 0.08, 0.01, 0.01};
        case Taught::fence_gain:
        case Taught::height_gain: return {0.03, 0.0, 0.0, 0.003};
    }
    return {};
}

// The maker's own word is taken as sure to this.
constexpr double by_hand_mm = 0.03;

int number_in(std::string_view text, std::size_t from, std::size_t length) {
    int value = 0;
    if (text.size() >= from + length) std::from_chars(text.data() + from, text.data() + from + length, value);
    return value;
}

// Days since 1970; 0 where there is no date.
double day_number(std::string_view time) {
    using namespace std::chrono;
    const year_month_day date{year{number_in(time, 0, 4)}, month{unsigned(number_in(time, 5, 2))},
                              day{unsigned(number_in(time, 8, 2))}};
    return date.ok() ? double(sys_days{date}.time_since_epoch().count()) : 0.0;
}

bool is_of(const Lesson& lesson, Taught what, const std::string& machine) {
    return lesson.what == what && lesson.machine == machine;
}

struct Parts {
    std::vector<std::pair<std::string, Length>> cutters;  // after the machine's own part
    Belief belief;
    double day = 0.0;
};

std::size_t part_of(const Parts& parts, const std::string& cutter, Length kerf) {
    const auto found = std::find(parts.cutters.begin(), parts.cutters.end(), std::pair{cutter, kerf});
    return std::size_t(found - parts.cutters.begin()) + 1;
}

Form sum_of(const Parts& parts, std::size_t cutter) {
    Form form{"offset", std::vector<double>(parts.belief.size(), 0.0), 0.0};
    form.weights[0] = form.weights[cutter] = 1.0;
    return form;
}

void wander(Parts& parts, const Nature& nature, double day) {
    const double months = std::max(0.0, day - parts.day) / 30.0;
    const std::size_t n = parts.belief.size();
    for (std::size_t i = 0; i < n; ++i) {
        const bool exists = i == 0 ? nature.machine > 0.0 : nature.cutter > 0.0;
        const double most = i == 0 ? nature.machine : nature.cutter;
        double& variance = parts.belief.covariance[i * n + i];
        // Never less sure than before anything was learned.
        if (exists)
            variance = std::max(
                variance, std::min(variance + nature.per_month * nature.per_month * months, most * most));
    }
    parts.day = std::max(parts.day, day);
}

// All lessons of one kind on one machine, joined; with a part for `cutter` too, learned of or not.
Parts join(const Memory& memory, Taught what, const std::string& machine, const std::string& cutter,
           Length kerf, double day) {
    const Nature nature = nature_of(what);
    Parts parts;
    parts.cutters.emplace_back(cutter, kerf);
    for (const Lesson& lesson : memory.lessons)
        if (is_of(lesson, what, machine) && part_of(parts, lesson.cutter, lesson.kerf) > parts.cutters.size())
            parts.cutters.emplace_back(lesson.cutter, lesson.kerf);
    const std::size_t n = parts.cutters.size() + 1;
    parts.belief = {std::vector<double>(n, 0.0), std::vector<double>(n * n, 0.0)};
    for (std::size_t i = 0; i < n; ++i) {
        const double spread = i == 0 ? nature.machine : nature.cutter;
        parts.belief.covariance[i * n + i] = spread * spread;
    }
    for (const Lesson& lesson : memory.lessons) {
        if (!is_of(lesson, what, machine)) continue;
        wander(parts, nature, std::min(day, day_number(lesson.time)));
        parts.belief = observe(parts.belief, sum_of(parts, part_of(parts, lesson.cutter, lesson.kerf)),
                               lesson.value, std::hypot(lesson.spread, nature.mounting));
    }
    wander(parts, nature, day);
    return parts;
}

Marginal joined(const Memory& memory, Taught what, const std::string& machine, const std::string& cutter,
                Length kerf, std::string_view day) {
    const Parts parts = join(memory, what, machine, cutter, kerf, day_number(day));
    Marginal sum = marginal(parts.belief, sum_of(parts, 1));
    sum.sd_mm = std::hypot(sum.sd_mm, nature_of(what).mounting);
    return sum;
}

// How long moves come out is the machine's own, whatever cutter is on.
bool is_of_moves(Taught what) { return what == Taught::fence_gain || what == Taught::height_gain; }

bool is_about(const Lesson& lesson, const Believed& what) {
    if (is_of_moves(what.what)) return is_of(lesson, what.what, what.machine);
    return is_of(lesson, what.what, what.machine) && lesson.cutter == what.cutter && lesson.kerf == what.kerf;
}

}  // namespace

Scales scales_for(const Memory& memory, const Machine& machine, const Cutter& cutter, std::string_view day) {
    const auto of = [&](Taught what) {
        return joined(memory, what, machine.name, cutter.name, cutter.kerf, day);
    };
    const auto scale = [&](Taught offset, Taught gain) {
        const Marginal off = of(offset), moves = of(gain);
        return Scale{off.mean_mm, off.sd_mm, moves.mean_mm, moves.sd_mm};
    };
    Scales scales{scale(Taught::fence, Taught::fence_gain), scale(Taught::height, Taught::height_gain), {}};
    const Marginal kerf = of(Taught::kerf);
    scales.kerf = {kerf.mean_mm, kerf.sd_mm, 0.0, 0.0};
    return scales;
}

std::vector<Believed> believed(const Memory& memory, std::string_view day) {
    std::vector<Believed> out;
    for (const Lesson& lesson : memory.lessons) {
        const auto known =
            std::find_if(out.begin(), out.end(), [&](const Believed& b) { return is_about(lesson, b); });
        if (known != out.end()) {
            known->tests += lesson.tests;
            known->since = std::min(known->since, lesson.time.substr(0, 10));
            known->by_hand |= lesson.by_hand;
            continue;
        }
        const Marginal now = joined(memory, lesson.what, lesson.machine, lesson.cutter, lesson.kerf, day);
        out.push_back({lesson.what, lesson.machine, lesson.cutter, lesson.kerf, now.mean_mm, now.sd_mm,
                       lesson.tests, lesson.time.substr(0, 10), lesson.by_hand});
    }
    return out;
}

Memory forget(Memory memory, const Believed& what) {
    std::erase_if(memory.lessons, [&](const Lesson& lesson) { return is_about(lesson, what); });
    return memory;
}

Memory correct(Memory memory, const Believed& what, double value, std::string_view time) {
    const auto first = std::find_if(memory.lessons.begin(), memory.lessons.end(),
                                    [&](const Lesson& lesson) { return is_about(lesson, what); });
    const auto place = first - memory.lessons.begin();  // so that the list keeps its order
    memory = forget(std::move(memory), what);
    Lesson lesson;
    lesson.what = what.what;
    lesson.machine = what.machine;
    lesson.cutter = what.cutter;
    lesson.kerf = what.kerf;
    lesson.value = value;
    lesson.spread = by_hand_mm;
    lesson.time = time;
    lesson.by_hand = true;
    memory.lessons.insert(memory.lessons.begin() + place, std::move(lesson));
    return memory;
}

Memory relearn(Memory memory, const std::vector<Lesson>& before, const std::vector<Lesson>& after) {
    const auto place = [](auto& all, const Lesson& one) {
        return std::find_if(all.begin(), all.end(), [&](const Lesson& other) {
            return !other.by_hand && other.what == one.what && other.group == one.group &&
                   other.began == one.began;
        });
    };
    std::erase_if(memory.lessons, [&](const Lesson& lesson) {
        return place(before, lesson) != before.end() && place(after, lesson) == after.end();
    });
    for (const Lesson& lesson : after) {
        // What this change did not teach is left as the maker may have put it since.
        const auto old = place(before, lesson);
        if (old != before.end() && *old == lesson) continue;
        const auto known = place(memory.lessons, lesson);
        if (known == memory.lessons.end()) memory.lessons.push_back(lesson);
        else *known = lesson;
    }
    return memory;
}

Memory with_others(Memory memory, const Memory& before, const Memory& there) {
    const auto holds = [](const Memory& all, const Lesson& lesson) {
        return std::find(all.lessons.begin(), all.lessons.end(), lesson) != all.lessons.end();
    };
    std::erase_if(memory.lessons,
                  [&](const Lesson& lesson) { return holds(before, lesson) && !holds(there, lesson); });
    for (const Lesson& lesson : there.lessons)
        if (!holds(before, lesson) && !holds(memory, lesson)) memory.lessons.push_back(lesson);
    return memory;
}

}  // namespace kw
