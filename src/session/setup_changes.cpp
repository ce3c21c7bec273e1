// What is to be done to the machine for a setup, and what to leave alone, in sentences.

#include <algorithm>

#include "session/say_ways.h"
#include "session/setup_said.h"
#include "session/words.h"
#include "words/names.h"

namespace kw {
namespace {

// What no caliper can tell apart is no change to the maker.
bool same(const Job& job, Length a, Length b) { return caliper_text(job, a) == caliper_text(job, b); }

// A sentence for each control that is set, and the names of those that stay.
struct Sentences {
    const Work& work;
    const Setup& before;
    const Setup& now;
    CutterSide measured_to;
    std::vector<std::string> change = {}, leave = {};
    SetTo stood = set_to(work, before), set = set_to(work, now);

    const Job& job() const { return work.job; }
    const Words& words() const { return job().locale.words(); }
    template <class... Values>
    void say_change(const char* key, const Values&... values) {
        change.push_back(words()(key, values...));
    }
    void say_leave(const std::string& what) { leave.push_back(words()("leave.the", what)); }

    std::string by_rule(Length length) const { return without_mark(show_with_unit(length, job().locale)); }
    bool is_on_rule(Length length) const {
        const auto shown = read_length(by_rule(length), unit_of(job().locale));
        return shown && *shown == length;
    }
    // As the rule shows them where it holds both; otherwise as a caliper does, and as the large numbers are told.
    std::string from_to(Length from, Length to, bool by_scale = false) const {
        const char* key = by_scale ? "change.from_to_by_scale" : "change.from_to";
        if (is_on_rule(from) && is_on_rule(to)) return words()(key, by_rule(from), by_rule(to));
        return words()(key, caliper_text(job(), from), caliper_text(job(), to));
    }
    std::string measure(Length length) const {
        return is_on_rule(length) ? by_rule(length) : caliper_text(job(), length);
    }
    std::string fence_or_stop() const {
        return now.guide == "stop" ? guide_word(words(), "stop")
                                   : control_word(words(), control_at_setup(now, "fence"));
    }
    std::string blade_or_bit() const {
        const Cutter* cutter = job().shop.cutter_named(now.cutter);
        return cutter_kind_word(words(), cutter && cutter->kind == CutterKind::bit ? "bit" : "blade");
    }

    void cutter() {
        if (before.cutter != now.cutter) say_change("change.cutter", say_put_on(work, now));
        else if (before.make_up != now.make_up)
            say_change("change.make_up", caliper_text(job(), now.make_up));
        else if (stood.dial.shims != set.dial.shims) {
            const std::string shims = say_shims(work, now, set.dial.shims);
            say_change("change.shims", now.cutter, shims.empty() ? words()("change.no_shims") : shims);
        } else say_leave(now.cutter);
    }
    void fence() {
        const ControlMove w = move_of(stood.fence_to(measured_to), set.fence_to(measured_to));
        const bool is_other_thing =
            (before.guide == "stop") != (now.guide == "stop") || stood.on_jig != set.on_jig;
        if (is_other_thing)
            say_change(w.by_scale ? "change.set_by_scale" : "change.set", fence_or_stop(), measure(w.to));
        else if (!same(job(), w.from, w.to))
            say_change(w.to > w.from ? "change.fence_out" : "change.fence_in", fence_or_stop(),
                       from_to(w.from, w.to, w.by_scale));
        else say_leave(fence_or_stop());
    }
    void guide() {
        if (before.guide != now.guide && now.guide != "stop")
            say_change("change.guide", guide_word(words(), now.guide));
    }
    void height() {
        const std::string blade = blade_or_bit(), height = control_word(words(), "height");
        if (!now.height) {
            if (before.height) say_change("change.cut_through", blade);
            else if (before.cutter == now.cutter) say_leave(height);
            return;
        }
        const ControlMove w = move_of(stood.height.value_or(*set.height), *set.height);
        if (!before.height && w.by_scale) say_change("change.set_by_scale", blade, caliper_text(job(), w.to));
        else if (!before.height) say_change("change.set_high", blade, measure(w.to));
        else if (!same(job(), w.from, w.to))
            say_change(w.to > w.from ? "change.raise" : "change.lower", blade,
                       from_to(w.from, w.to, w.by_scale));
        else say_leave(height);
    }
    void spacer() {
        const Length none;
        if (before.spacer == none && now.spacer == none) {
            if (is_spacer_left()) say_change(stood.on_jig ? "change.spacer_off_pin" : "change.spacer_off");
            return;
        }
        if (before.spacer == none || stood.on_jig != set.on_jig) {
            if (before.spacer != none)
                say_change(stood.on_jig ? "change.spacer_off_pin" : "change.spacer_off");
            if (now.spacer != none)
                say_change(set.on_jig ? "change.spacer_on_pin" : "change.spacer_on", measure(now.spacer));
        } else if (now.spacer == none)
            say_change(stood.on_jig ? "change.spacer_off_pin" : "change.spacer_off");
        else if (!same(job(), before.spacer, now.spacer))
            say_change("change.spacer", from_to(before.spacer, now.spacer));
        else say_leave(control_word(words(), "spacer"));
    }
    bool is_spacer_left() const {
        const auto& steps = work.rest.steps;
        return std::any_of(steps.begin(), steps.end(),
                           [&](const RestStep& step) { return step.setup == now.id && step.spacer_left; });
    }
    void board() {
        if (now.index) return;
        const std::string was = faces_down(words(), before), is = faces_down(words(), now);
        if (was != is) say_change("change.board", is, was);
    }
};

}  // namespace

SetupChanges setup_changes(const Work& work, const Setup* before, const Setup& now, CutterSide measured_to) {
    const Words& words = work.job.locale.words();
    if (!before) return {{words("change.all", now.machine)}, {}};
    Sentences all{work, *before, now, measured_to};
    // The last part that was cut to size there went by another one.
    const auto last = work.rest.sized_to.find(before->machine);
    if (last != work.rest.sized_to.end() && work.rest.stands.at(before->machine) == before->id &&
        !before->height)
        all.stood.fence = control_at(last->second, last->second);
    all.cutter();
    all.guide();
    all.fence();
    all.height();
    all.spacer();
    all.board();
    std::string leave;
    if (!all.leave.empty())
        leave = words(all.leave.size() == 1 ? "leave.one" : "leave.many", words.list(all.leave));
    return {std::move(all.change), std::move(leave)};
}

}  // namespace kw
