#include "print/card_matter.h"

#include <algorithm>

#include "draw/part_view.h"
#include "job/notes.h"
#include "session/say_ways.h"
#include "session/test_cut.h"
#include "session/words.h"
#include "words/names.h"

namespace kw::print {
namespace {

// Those that run at this step: not what waits until the setup is set again.
bool runs_here(const RestStep* step, bool has_run, std::size_t pass) {
    return has_run || !step || std::find(step->open.begin(), step->open.end(), pass) != step->open.end();
}

std::vector<PartToRun> parts_to_run(const Work& work, const Setup& setup, const RestStep* step) {
    const Words& words = work.job.locale.words();
    std::vector<PartToRun> parts;
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < setup.passes.size(); ++i) {
        const Pass& pass = setup.passes[i];
        const bool ran = has_run(work, setup, pass);
        if (!runs_here(step, ran, i)) continue;
        auto found = std::find(ids.begin(), ids.end(), pass.part);
        if (found == ids.end()) {
            ids.push_back(pass.part);
            parts.push_back({part_words(words, work.plan, pass.part), {}});
            found = ids.end() - 1;
        }
        parts[static_cast<std::size_t>(found - ids.begin())].ends.push_back(
            {end_word(words, name_of(pass.reference)), ran});
    }
    return parts;
}

// The end by which all parts run, once each; empty where they differ.
std::string common_end_of(const std::vector<PartToRun>& parts) {
    for (const PartToRun& part : parts)
        if (part.ends.size() != 1 || part.ends.front().end != parts.front().ends.front().end) return {};
    return parts.empty() ? std::string() : parts.front().ends.front().end;
}

std::vector<Caution> cautions_of(const Work& work, const Setup& setup) {
    const std::string mark = "WARNING ";
    std::vector<Caution> all;
    for (const std::string& caution : cautions_for(work.job, setup)) {
        const bool loud = caution.rfind(mark, 0) == 0;
        all.push_back({loud ? caution.substr(mark.size()) : caution, loud});
    }
    for (const Note& note : work.plan.notes)
        if (note.about == setup.id)
            all.push_back({capital(note.text.text(work.job.locale)), note.level != Level::note});
    std::stable_partition(all.begin(), all.end(), [](const Caution& caution) { return caution.loud; });
    return all;
}

std::vector<BoardPicture> boards_of(const Work& work, const Setup& setup,
                                    const draw::SetupViewOptions& options) {
    std::vector<BoardPicture> boards;
    if (setup.stage != Stage::joint) return boards;
    const Words& words = work.job.locale.words();
    for (const draw::PartLie& lie : draw::part_lies(work, setup))
        boards.push_back({words("picture.part", capital(role_words(words, lie.role)),
                                draw::lie_words(work, setup, lie, options)),
                          draw::part_view(work, setup, lie, options)});
    return boards;
}

std::vector<std::string> gear_of(const Work& work, const Setup& setup) {
    const Words& words = work.job.locale.words();
    std::vector<std::string> gear{words("print.fact", words("saw.guide"), say_guide(work, setup)),
                                  words("print.fact", words("saw.cutter"),
                                        words("saw.cutter_on", say_cutter(work, setup),
                                              show_with_unit(setup.kerf, work.job.locale), setup.machine))};
    if (std::any_of(setup.passes.begin(), setup.passes.end(), [](const Pass& pass) { return pass.nibble; }))
        gear.push_back(words("saw.nibble"));
    return gear;
}

std::string state_of(const Work& work, const Setup& setup, const RestStep* step) {
    const Words& words = work.job.locale.words();
    if (setup.group.empty()) return {};
    if (is_torn_down(work, setup)) return words("saw.torn_down");
    if (!is_locked(work, setup)) return {};
    return words(step && step->set_again ? "saw.locked_set_again" : "saw.locked");
}

std::optional<TestToMake> test_of(const Work& work, const Setup& setup, const RestStep* step,
                                  CutterSide measured_to) {
    const bool is_set_again = step && step->set_again && step->test_s > 0;
    const bool is_open = setup.test_cut && (!is_locked(work, setup) || is_torn_down(work, setup));
    if (!is_set_again && !is_open) return std::nullopt;
    TestToMake test{say_test(work, setup.id, measured_to), {}};
    for (const std::string& name : reading_names(work, setup.id))
        test.readings.push_back(reading_label(work, setup, name));
    return test;
}

std::string from_where(const Work& work, const Setup* before) {
    return before ? work.job.locale.words()("saw.as_after", step_of(work.plan, before->id) + 1)
                  : std::string();
}

}  // namespace

CardMatter card_matter(const Work& work, std::size_t step, const CardOptions& options) {
    const Plan& plan = work.plan;
    const Words& words = work.job.locale.words();
    const Setup& setup = *setup_of_step(plan, plan.sequence[step]);
    const Setup* before = before_at_machine(work, step);
    const RestStep* rest = step_named(work.rest, plan.sequence[step]);
    const draw::SetupViewOptions view{options.fence_left, options.measured_to == CutterSide::far};
    CardMatter card;
    card.step = words("print.step_of", step + 1, plan.sequence.size());
    card.id = setup.id;
    card.machine = setup.machine;
    card.what = capital(setup_words(words, setup));
    card.drawers = capital(drawer_words(words, plan, setup));
    card.numbers = setup_numbers(work, before, setup, options.measured_to);
    card.lie = {capital(say_lie(words, setup))};
    card.gear = gear_of(work, setup);
    card.from_where = from_where(work, before);
    card.changes = setup_changes(work, before, setup, options.measured_to);
    card.state = state_of(work, setup, rest);
    card.section = draw::setup_view(work, setup, view);
    card.boards = boards_of(work, setup, view);
    card.parts = parts_to_run(work, setup, rest);
    card.common_end = common_end_of(card.parts);
    card.test = test_of(work, setup, rest, options.measured_to);
    card.cautions = cautions_of(work, setup);
    return card;
}

}  // namespace kw::print
