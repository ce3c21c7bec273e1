#include <algorithm>

#include "command/breaking.h"
#include "command/table.h"
#include "command/write.h"
#include "session/say_ways.h"
#include "session/setup_said.h"
#include "session/words.h"

namespace kw {
namespace {

std::string times(std::size_t count) {
    return count == 1 ? "1 part end" : std::to_string(count) + " part ends";
}

std::string boxes_text(const Work& work) {
    const Locale& locale = work.job.locale;
    Table table(
        {Align::left, Align::right, Align::left, Align::right, Align::left, Align::right, Align::left});
    for (const DrawerSpec& spec : work.job.drawers)
        for (const DrawerBox& box : work.plan.boxes)
            if (box.drawer == spec.name)
                table.row({std::to_string(spec.count) + " × " + spec.name, show(box.size.width, locale),
                           "wide", show(box.size.height, locale), "high", show(box.size.depth, locale),
                           "deep"});
    return table.text();
}

// "[ ] seeds.1.front left end, right end": a part's ends together, ticked when all of them have run.
std::string passes_text(const Work& work, const Setup& setup) {
    struct Line {
        std::string part;
        std::string ends;
        bool done = true;
    };
    std::vector<Line> lines;
    for (const Pass& pass : setup.passes) {
        const bool same = !lines.empty() && lines.back().part == pass.part;
        if (!same) lines.push_back({pass.part, {}, true});
        Line& line = lines.back();
        line.ends += (same ? ", " : " ") + std::string(name_of(pass.reference));
        line.done = line.done && has_run(work, setup, pass);
    }
    std::string out;
    for (const Line& line : lines)
        out += std::string("      [") + (line.done ? "x" : " ") + "] " + line.part + line.ends + "\n";
    return out;
}

bool runs_both_ends(const Setup& setup, const std::string& part) {
    return std::count_if(setup.passes.begin(), setup.passes.end(),
                         [&](const Pass& pass) { return pass.part == part; }) > 1;
}

// "left end": the first, where both ends of each part go through; "front end or rear end" where parts differ.
std::string references_text(const Setup& setup) {
    std::string text(name_of(setup.passes.front().reference));
    const std::string& first = setup.passes.front().part;
    for (const Pass& pass : setup.passes) {
        const std::string name(name_of(pass.reference));
        if (pass.part != first && text.find(name) == std::string::npos && !runs_both_ends(setup, pass.part))
            text += " or " + name;
    }
    return text;
}

std::string downs_text(const Setup& setup) {
    return std::string(name_of(setup.passes.front().down)) + " face down";
}

// Left on, it would set all of the cuts off by its thickness.
bool spacer_comes_off(const Work& work, const Setup& setup) {
    return std::any_of(work.rest.steps.begin(), work.rest.steps.end(), [&](const RestStep& step) {
        return step.setup == setup.id && setup.spacer == Length{} &&
               (step.spacer_left ||
                std::any_of(step.changes.begin(), step.changes.end(),
                            [](const RestChange& change) { return change.what == "spacer"; }));
    });
}

std::string settings_text(const Work& work, const Setup& setup, CutterSide measured_to) {
    const Locale& locale = work.job.locale;
    Table table({Align::left, Align::right, Align::left, Align::left});
    if (!setup.height) {
        const bool is_banded = std::any_of(setup.passes.begin(), setup.passes.end(), [&](const Pass& pass) {
            return !work.plan.part_with_id(pass.part)->banded.empty();
        });
        table.row({setup.guide, show_with_unit(setup.fence, locale),
                   is_banded ? "size to cut, before the band" : "finished size"});
        return table.text(6);
    }
    // A joint is finer than a rule: the caliper's reading stands beside it.
    const auto row = [&](const char* control, Length length, const std::string& what) {
        table.row(
            {control, show_with_unit(length, locale), "(" + caliper_text(work.job, length) + ")", what});
    };
    // What is set leads: where a scale is known to be off, its number, and then where that puts the control.
    const auto scaled = [&](const char* control, const ControlAt& at, const std::string& what) {
        if (!at.by_scale) return row(control, at.truly, what);
        table.row({control, caliper_text(work.job, at.scale), "by its scale",
                   show_with_unit(at.truly, locale) + " (" + caliper_text(work.job, at.truly) + ")" +
                       (what.empty() ? "" : " " + what)});
    };
    const auto more = [](const std::string& words) { return words.empty() ? words : "; " + words; };
    const SetTo set = set_to(work, setup);
    const Dial& dial = set.dial;
    const FenceReading fence = fence_reading(work, setup, measured_to);
    scaled(setup.index ? "pin" : "fence", set.fence_to(measured_to),
           "to the " + fence.side + " side of the cutter" + more(say_from_pass_before(work, setup)) +
               more(say_beyond(work, dial.fence_beyond)));
    scaled("height", *set.height, say_beyond(work, dial.height_beyond));
    if (setup.index) row("set over", *setup.index, capital(say_sockets(work.job.locale.words(), setup)));
    if (const std::string shims = say_shims(work, setup, dial.shims); !shims.empty())
        table.row({"stack", "", "", shims});
    if (setup.spacer > Length{})
        row("spacer", setup.spacer,
            setup.sacrificial ? "on the fence, sacrificial: the cutter runs into it"
            : setup.index     ? "on the pin, for the first socket of each row: a finger of the other board"
                              : "on the fence");
    else if (spacer_comes_off(work, setup))
        table.row({"spacer", "none", "", setup.index ? "take it off the pin" : "take it off the fence"});
    return table.text(6);
}

// Of what is left of a group, which is tested once.
bool is_first_of_group(const Work& work, const Setup& setup) {
    const auto first = std::find_if(
        work.rest.steps.begin(), work.rest.steps.end(),
        [&](const RestStep& step) { return work.plan.setup_with_id(step.setup)->group == setup.group; });
    return first != work.rest.steps.end() && first->setup == setup.id;
}

std::string setup_text(const Work& work, const Setup& setup, CutterSide measured_to) {
    std::string out = setup.id + "  " + setup.work;
    const bool torn_down = is_torn_down(work, setup);
    if (is_locked(work, setup)) out += torn_down ? "  (was locked, then torn down)" : "  (locked)";
    if (const Pinned where = pinned(work, setup); where != Pinned::nowhere)
        out += where == Pinned::first ? "  (wanted first)" : "  (wanted last)";
    out += "\n      " + setup.machine + ", " + say_cutter(work, setup) + ", " + say_guide(work, setup);
    if (setup.index)
        out += "; " + references_text(setup) + " down, bottom edge to the pin" +
               (setup.spacer > Length{} ? "'s spacer" : "");
    else if (setup.height) out += "; " + downs_text(setup) + ", " + references_text(setup) + " to the fence";
    out += "\n" + settings_text(work, setup, measured_to);
    if (torn_down && is_first_of_group(work, setup))
        out += "      set it again as it was locked, and test first, in scrap of the same stock\n";
    if (setup.test_cut && !is_locked(work, setup))
        out += "      test cut first, in scrap of the same stock\n";
    const bool nibble =
        std::any_of(setup.passes.begin(), setup.passes.end(), [](const Pass& pass) { return pass.nibble; });
    if (nibble)
        out +=
            "      nibble: begin at the part's end, a little with each pass, and work toward the fence; the "
            "last pass is against it\n";
    return out + passes_text(work, setup);
}

std::string notes_text(const Work& work, const std::vector<Note>& of_files = {}) {
    std::string out;
    std::vector<Note> notes = of_files;
    notes.insert(notes.end(), work.plan.notes.begin(), work.plan.notes.end());
    for (const Note& note : notes)
        out += std::string("  ") + (note.level == Level::note ? "" : "WARNING ") + note.about + ": " +
               note.text.text(work.job.locale) + "\n";
    for (const Affected& affected : work.affected)
        out += "  ALREADY CUT " + affected.said().text(work.job.locale) + "\n";
    int forgotten = work.standing.forgotten;  // but for those of which a note tells
    for (const Elsewhere& one : work.elsewhere) forgotten -= one.entries;
    if (forgotten > 0)
        out += "  " + std::to_string(forgotten) + " log entries are about work that is no longer planned\n";
    return out;
}

Table parts_table(const Work& work) {
    const Locale& locale = work.job.locale;
    Table table({Align::left, Align::right, Align::left, Align::right, Align::left, Align::right, Align::left,
                 Align::left});
    for (const Part& part : work.plan.parts)
        table.row({part.id, show(part.size.length, locale), "×", show(part.size.width, locale), "×",
                   show(part.size.thickness, caliper_locale(work.job)), part.stock,
                   band_words(work.job, part.band, part.banded)});
    return table;
}

std::string unit_text(const Work& work) {
    return unit_of(work.job.locale) == Unit::inch ? "inches" : "millimetres";
}

}  // namespace

std::string rest_text(const Work& work) {
    const Rest& rest = work.rest;
    if (!rest.begun) return {};
    if (rest.steps.empty()) return "\nNothing is left to do.\n";
    Table table({Align::left, Align::left, Align::right, Align::left, Align::left});
    for (const RestStep& step : rest.steps) {
        const Setup& setup = *work.plan.setup_with_id(step.setup);
        table.row({step.step, setup.work, std::to_string(step.ends), step.ends == 1 ? "cut" : "cuts",
                   setup.machine + ": " + say_changes(work, step)});
    }
    return "\nLeft to do, in order, from how the machines stand now: about " + minutes(rest.seconds) + "\n" +
           table.text();
}

std::string next_text(const Work& work) {
    const Rest& rest = work.rest;
    if (rest.steps.empty()) return "Nothing is left to do.\n";
    const RestStep& next = rest.steps.front();
    const Setup& setup = *work.plan.setup_with_id(next.setup);
    const std::size_t more = rest.steps.size() - 1;
    return "Next: " + next.step + " (" + setup.work + "), " + std::to_string(next.ends) +
           (next.ends == 1 ? " cut" : " cuts") + ", " + setup.machine + ": " + say_changes(work, next) +
           "\n" +
           (more == 0 ? std::string("Nothing") : std::to_string(more) + (more == 1 ? " setup" : " setups")) +
           " after that; all that is left takes about " + minutes(rest.seconds) +
           ". `kerfwright plan` lists it.\n";
}

std::string order_text(const Work& before, const Work& after) {
    Table table({Align::left, Align::left, Align::left});
    for (const RestStep& step : after.rest.steps) {
        const Setup& setup = *after.plan.setup_with_id(step.setup);
        table.row({step.step, setup.work, setup.machine + ": " + say_changes(after, step)});
    }
    const std::int64_t more = after.rest.seconds - before.rest.seconds;
    return "To do, in order: about " + minutes(after.rest.seconds) +
           (more == 0
                ? std::string(", as before")
                : ", " + minutes(std::abs(more)) + (more > 0 ? " more than before" : " less than before")) +
           "\n" + table.text() + notes_text(after);
}

std::string reasons_text(const Work& work) {
    std::string out;
    for (const WayReason& reason : work.reasons) out += "  " + say_reason(work.job, reason) + "\n";
    for (const NotCompared& one : work.not_compared) out += "  " + say_not_compared(work.job, one) + "\n";
    for (const LeftOut& one : work.design.left_out) out += "  " + say_left_out(work.job, one) + "\n";
    return out.empty() ? out : "\nWhere there was a choice, what each way adds to the other work\n" + out;
}

std::string plan_text(const Work& work, const LayOut& layout, const std::vector<Note>& of_files,
                      CutterSide measured_to) {
    const Plan& plan = work.plan;
    std::string out = plan.job + ", in " + unit_text(work) + "\n\nBoxes, outside\n" + boxes_text(work) +
                      "\nParts, finished: length × width × thickness\n" + parts_table(work).text() +
                      breaking_text(work, layout) + "\nSetups, in order\n";
    std::size_t ends = 0;
    for (const Setup& setup : plan.setups) {
        out += "\n" + setup_text(work, setup, measured_to);
        ends += setup.passes.size();
    }
    out += "\nAbout " + minutes(plan.seconds) + " at the machines, " + std::to_string(plan.setups.size()) +
           " setups, " + times(ends) + ". ";
    out += plan.proved ? "No order of this work takes less with the machines as assigned.\n"
                       : "The best order found; none takes less than " +
                             minutes(plan.lower_bound_seconds - plan.lower_bound_seconds % 60) + ".\n";
    out += breaking_total_text(work, layout);
    if (plan.pins_s > 0) out += "What is pinned first or last takes " + minutes(plan.pins_s) + " of that.\n";
    out += reasons_text(work);
    out += rest_text(work);
    const std::string notes = notes_text(work, of_files);
    if (!notes.empty()) out += "\nNotes\n" + notes;
    out +=
        "\nWARNING Blades and bits cut hands, and kickback throws work. Guard and riving knife come off for "
        "a dado only: refit "
        "them before the next\nthrough cut. The machine's manual, local rules and qualified instruction come "
        "first.\n";
    return out;
}

std::string parts_text(const Work& work) {
    return work.plan.job + ", in " + unit_text(work) + ": length × width × thickness\n" +
           parts_table(work).text();
}

}  // namespace kw
