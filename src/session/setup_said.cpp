#include "session/setup_said.h"

#include <algorithm>
#include <cctype>

#include "session/words.h"
#include "testcut/joint_model.h"
#include "words/names.h"

namespace kw {
namespace {

template <class WordsOf>
std::string each_once(const Words& words, const Setup& setup, WordsOf words_of) {
    std::vector<std::string> all;
    for (const Pass& pass : setup.passes) {
        const std::string word = words_of(pass);
        if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
    }
    return joined(all, std::string(words.text("list.and")).c_str());
}

}  // namespace

std::string capital(std::string words) {
    if (!words.empty()) words[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(words[0])));
    return words;
}

std::string joined(const std::vector<std::string>& words, const char* between) {
    std::string out;
    for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
    return out;
}

std::string value_of(const Job& job, Length length) { return show(length, job.locale); }

std::string unit_words(const Job& job) {
    return std::string(job.locale.words().text(unit_of(job.locale) == Unit::inch ? "unit.in" : "unit.mm"));
}

std::string fine_words(const Job& job, Length length) { return show_with_unit(length, caliper_locale(job)); }

std::string size_words(const Job& job, Length a, Length b, Length c) {
    const auto tight = [&](Length length) {
        std::string value = value_of(job, length);
        if (const std::size_t mark = value.rfind(' ');
            mark != std::string::npos && value.find('/', mark) == std::string::npos)
            value.erase(mark, 1);
        return value;
    };
    return tight(a) + " \u00d7 " + tight(b) + " \u00d7 " + tight(c) + " " + unit_words(job);
}

std::string band_words(const Job& job, Length band, const std::vector<BandedEdge>& banded) {
    if (banded.empty()) return {};
    std::vector<std::string> edges;
    for (const BandedEdge edge : banded)
        edges.emplace_back(job.locale.words().text("band." + std::string(name_of(edge))));
    return job.locale.words()("band.to_cut", show_with_unit(band, caliper_locale(job)),
                              job.locale.words().list(edges));
}

std::string role_words(const Words& words, Role role) { return role_word(words, name_of(role)); }

std::string setup_words(const Words& words, const Setup& setup) { return work_word(words, setup.work); }

std::string part_words(const Words& words, const Plan& plan, const std::string& id) {
    return capital(say_part(words, plan, id));
}

std::string references_of(const Words& words, const Setup& setup) {
    return each_once(words, setup,
                     [&](const Pass& pass) { return end_word(words, name_of(pass.reference)); });
}

std::string faces_down(const Words& words, const Setup& setup) {
    return each_once(words, setup,
                     [&](const Pass& pass) { return words(key_of("board_face.", name_of(pass.down))); });
}

std::string say_against(const Words& words, const Setup& setup) {
    if (setup.index) return words(setup.spacer > Length{} ? "saw.against_spacer_at_pin" : "saw.against_pin");
    return words(setup.guide == "stop"     ? "saw.against_stop"
                 : setup.spacer > Length{} ? "saw.against_spacer"
                                           : "saw.against_fence");
}

std::string say_lie(const Words& words, const Setup& setup) {
    if (setup.index)
        return words("saw.lie_in_jig", references_of(words, setup), end_word(words, "bottom edge"),
                     say_against(words, setup));
    return words("saw.lie", faces_down(words, setup), references_of(words, setup), say_against(words, setup));
}

std::string say_sockets(const Words& words, const Setup& setup) {
    const auto fewer = [](const Pass& a, const Pass& b) { return a.cuts < b.cuts; };
    const auto [least, most] = std::minmax_element(setup.passes.begin(), setup.passes.end(), fewer);
    return least->cuts == most->cuts ? words("number.sockets", most->cuts)
                                     : words("number.sockets_from_to", least->cuts, most->cuts);
}

const Setup* setup_of_step(const Plan& plan, const std::string& step) {
    return plan.setup_with_id(step.substr(0, step.find('#')));
}

const Setup* before_at_machine(const Work& work, std::size_t step) {
    const Plan& plan = work.plan;
    const Setup& setup = *setup_of_step(plan, plan.sequence[step]);
    const bool is_left = step >= work.rest.done.size();
    while (step-- > 0) {
        if (is_left && step < work.rest.done.size()) break;
        const Setup* before = setup_of_step(plan, plan.sequence[step]);
        if (before->machine == setup.machine) return before;
    }
    // Before the first of what is left the machine stands as it was used last, which need not be the end of what is done.
    const auto stands = work.rest.stands.find(setup.machine);
    return is_left && stands != work.rest.stands.end() ? plan.setup_with_id(stands->second) : nullptr;
}

const RestStep* needs_as_it_stands(const Work& work, const Setup& done) {
    const auto stands = work.rest.stands.find(done.machine);
    if (stands == work.rest.stands.end() || stands->second != done.id) return nullptr;
    const auto next = std::find_if(work.rest.steps.begin(), work.rest.steps.end(), [&](const RestStep& step) {
        return work.plan.setup_with_id(step.setup)->machine == done.machine;
    });
    if (next == work.rest.steps.end() || !next->still_set) return nullptr;
    const bool stays = std::all_of(next->changes.begin(), next->changes.end(), [](const RestChange& change) {
        return change.what == "spacer" || change.what == "fence";
    });
    return stays ? &*next : nullptr;
}

std::string say_done(const Work& work, const Setup& done) {
    const Words& words = work.job.locale.words();
    const RestStep* next = needs_as_it_stands(work, done);
    if (!next) return words("saw.done");
    const std::size_t step = step_of(work.plan, next->step) + 1;
    if (next->changes.empty()) return words("saw.done_leave_set", done.machine, step);
    std::vector<std::string> changes;
    const Setup& then = *work.plan.setup_with_id(next->setup);
    for (const RestChange& change : next->changes)
        changes.push_back(words("leave.the", control_word(words, control_at_setup(then, change.what))));
    return words("saw.done_leave_but", done.machine, step, words.list(changes));
}

std::string drawers_of(const Plan& plan, const Setup& setup) {
    std::vector<std::string> names;
    for (const Pass& pass : setup.passes) {
        const std::string& name = plan.part_with_id(pass.part)->drawer;
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return joined(names);
}

std::string drawer_words(const Words& words, const Plan& plan, const Setup& setup) {
    return words("saw.drawer", drawers_of(plan, setup));
}

std::string reading_label(const Work& work, const Setup& setup, const std::string& reading) {
    const Words& words = work.job.locale.words();
    const Group* group = work.plan.group_with_id(setup.group);
    const auto role_of = [&](const std::vector<PartEnd>& ends) {
        return role_words(words, work.plan.part_with_id(ends.front().part)->size.role);
    };
    const bool is_own_row = group && has_fingers(group->work.chosen.joint) && !group->cuts_slot;
    if (reading == "row" && group) {
        const int last = row_to(*group, start_of(work, *group));
        return capital(is_own_row ? words("reading.row_to_of", role_of(group->work.inserts), last)
                                  : words("reading.row_to", last));
    }
    if (reading != "stock_thickness" || !group) return capital(reading_word(words, reading));
    if (is_own_row) return capital(words("test.thickness_of", role_of(group->work.receivers)));
    const auto& inserts = group->work.inserts;
    return capital(
        words("test.thickness_of", inserts.empty() ? role_words(words, Role::bottom) : role_of(inserts)));
}

}  // namespace kw
