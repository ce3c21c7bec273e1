// What is to be done to the machine for a setup, and what to leave alone, in sentences.

#include <algorithm>

#include "session/words.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::string blade_of(const Work& work, const Setup& setup) {
    const Cutter* cutter = work.job.shop.cutter_named(setup.cutter);
    return cutter && cutter->kind == CutterKind::bit ? "bit" : "blade";
}

// Both as the rule shows them; as a caliper does where a rule shows the same.
std::string from_to(const Job& job, Length from, Length to) {
    const auto by_rule = [&](Length length) { return without_mark(show_with_unit(length, job.locale)); };
    if (by_rule(from) != by_rule(to)) return "from " + by_rule(from) + " to " + by_rule(to);
    return "from " + caliper_text(job, from) + " to " + caliper_text(job, to);
}

// What no caliper can tell apart is no change to the maker.
bool same(const Job& job, Length a, Length b) { return caliper_text(job, a) == caliper_text(job, b); }

std::string by_words(const ControlMove& move) { return move.by_scale ? "by its scale " : ""; }

struct Sentences {
    const Work& work;
    const Setup& before;
    const Setup& now;
    CutterSide measured_to;
    std::vector<std::string> change = {}, leave = {};
    SetTo stood = set_to(work, before), set = set_to(work, now);

    const Job& job() const { return work.job; }
    std::string guide_word() const { return now.guide == "stop" ? "stop" : "fence"; }

    void cutter() {
        if (before.cutter != now.cutter) change.push_back("Change the cutter: " + now.cutter);
        else if (before.make_up != now.make_up)
            change.push_back("Make the stack up to " + caliper_text(job(), now.make_up));
        else if (stood.dial.shims != set.dial.shims) {
            const std::string shims = say_shims(work, now, set.dial.shims);
            change.push_back(capital("the " + now.cutter) + ": " +
                             (shims.empty() ? "put on as it was made up, without further shims" : shims));
        } else leave.push_back("the " + now.cutter);
    }
    void fence() {
        const ControlMove w = move_of(stood.fence_to(measured_to), set.fence_to(measured_to));
        if ((before.guide == "stop") != (now.guide == "stop"))
            change.push_back("Set the " + guide_word() + " " + by_words(w) + "to " +
                             without_mark(show_with_unit(w.to, job().locale)));
        else if (!same(job(), w.from, w.to))
            change.push_back("Move the " + guide_word() + (w.to > w.from ? " out, " : " in, ") + by_words(w) +
                             from_to(job(), w.from, w.to));
        else leave.push_back("the " + guide_word());
    }
    void guide() {
        if (before.guide != now.guide && now.guide != "stop")
            change.push_back("Guide the boards with the " + now.guide);
    }
    void height() {
        const std::string blade = blade_of(work, now);
        if (!now.height) {
            if (before.height) change.push_back("Raise the " + blade + " until it cuts through");
            else if (before.cutter == now.cutter) leave.push_back("the height");
            return;
        }
        const ControlMove w = move_of(stood.height.value_or(*set.height), *set.height);
        if (!before.height)
            change.push_back("Set the " + blade + " " + by_words(w) +
                             (w.by_scale ? "to " + caliper_text(job(), w.to)
                                         : without_mark(show_with_unit(w.to, job().locale)) + " high"));
        else if (!same(job(), w.from, w.to))
            change.push_back((w.to > w.from ? "Raise the " : "Lower the ") + blade + " " + by_words(w) +
                             from_to(job(), w.from, w.to));
        else leave.push_back("the height");
    }
    void spacer() {
        const Length none;
        const auto words = [&](Length length) { return without_mark(show_with_unit(length, job().locale)); };
        if (before.spacer == none && now.spacer == none) return;
        if (before.spacer == none) change.push_back("Put a spacer of " + words(now.spacer) + " on the fence");
        else if (now.spacer == none) change.push_back("Take the spacer off the fence");
        else if (!same(job(), before.spacer, now.spacer))
            change.push_back("Change the spacer " + from_to(job(), before.spacer, now.spacer));
        else leave.push_back("the spacer");
    }
    void board() {
        const std::string was = faces_down(before), is = faces_down(now);
        if (was != is) change.push_back("Lay the boards " + is + " face down: it was the " + was);
    }
};

std::string all_of(const std::vector<std::string>& words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i)
        out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    return out;
}

}  // namespace

SetupChanges setup_changes(const Work& work, const Setup* before, const Setup& now, CutterSide measured_to) {
    if (!before) return {{"Set all of it: nothing was cut on the " + now.machine + " before"}, {}};
    Sentences all{work, *before, now, measured_to};
    all.cutter();
    all.guide();
    all.fence();
    all.height();
    all.spacer();
    all.board();
    std::string leave;
    if (!all.leave.empty())
        leave = "Leave " + all_of(all.leave) + (all.leave.size() == 1 ? " as it is" : " as they are");
    return {std::move(all.change), std::move(leave)};
}

void draw_changes(Screen& screen, const Stand& stand) {
    Ui& ui = screen.ui;
    const SetupChanges& said = said_at(screen, stand).changes;
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, ui.px(2)));
    for (const std::string& change : said.change) status(ui, Tone::changed, change);
    if (!said.leave.empty()) status(ui, Tone::good, said.leave);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
}

}  // namespace kw::window
