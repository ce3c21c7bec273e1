// Fence, height and spacer of a setup, as they are read from afar.

#include <algorithm>

#include "session/setup_said.h"
#include "session/words.h"
#include "setup/bit_passes.h"

namespace kw {
namespace {

using Number = SetupNumber;

// What a rule cannot show, a caliper can. A joint is finer than the mark behind a rounded length: there a hair less than a
// quarter of the rule's step is the whole clearance.
std::string finer(const Job& job, Length length) {
    const auto shown = read_length(value_of(job, length), unit_of(job.locale));
    return shown && *shown == length ? std::string() : caliper_text(job, length);
}

std::string with(const std::string& note, const std::string& more) {
    return note + (note.empty() || more.empty() ? "" : ", ") + more;
}

// As a caliper reads it, without its unit.
std::string fine_value(const Job& job, Length length) {
    return without_mark(show(length, caliper_locale(job)));
}

Number number_for(const Job& job, const std::string& caption, Length now, std::optional<Length> before) {
    Number number{caption, value_of(job, now), unit_words(job), {}, finer(job, now)};
    // What no caliper can tell apart is no change to the maker; what it can is seen in the number itself.
    if (!before || fine_value(job, *before) == fine_value(job, now)) return number;
    const bool looks_the_same = value_of(job, *before) == value_of(job, now);
    number.was = looks_the_same ? caliper_text(job, *before) : show_with_unit(*before, job.locale);
    if (looks_the_same) {
        number.value = fine_value(job, now);
        number.note = job.locale.words()("number.about", show_with_unit(now, job.locale));
    }
    return number;
}

// Where the scale is known to be off, the number to set it to; where that puts the control is the note. `name`: of its texts.
Number control_number(const Job& job, const char* name, const ControlAt& now,
                      const std::optional<ControlAt>& stood) {
    const Words& words = job.locale.words();
    const std::optional<Length> from = stood ? std::optional(move_of(*stood, now).from) : std::nullopt;
    if (!now.by_scale) return number_for(job, words(key_of("number.", name)), now.truly, from);
    Number number{words(key_of("number.scale_", name)), fine_value(job, now.scale), unit_words(job), {}, {}};
    if (from && fine_value(job, *from) != number.value) number.was = caliper_text(job, *from);
    number.note = words(key_of("number.truly_", name), show_with_unit(now.truly, job.locale));
    if (const std::string fine = finer(job, now.truly); !fine.empty()) number.note += " (" + fine + ")";
    return number;
}

// Where the bit is raised to this height by and by: the heights before it, where they can't be overlooked.
std::string say_bit_passes(const Work& work, const Setup& setup) {
    const std::vector<Length> heights = heights_of(work.job.shop, setup);
    if (heights.size() < 2) return {};
    const Words& words = work.job.locale.words();
    std::vector<std::string> before;
    for (std::size_t i = 0; i + 1 < heights.size(); ++i) before.push_back(value_of(work.job, heights[i]));
    return words("number.in_passes", heights.size(), words.list(before, "list.comma"));
}

// A socket stands over the jig's pin, and at first is no deeper than the bit has come.
std::string say_low_pin(const Work& work, const Setup& setup) {
    const std::vector<Length> heights = heights_of(work.job.shop, setup);
    if (!setup.index || heights.size() < 2) return {};
    return work.job.locale.words()("number.low_pin", show_with_unit(heights.front(), work.job.locale));
}

}  // namespace

std::vector<SetupNumber> setup_numbers(const Work& work, const Setup* before, const Setup& setup,
                                       CutterSide measured_to) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const Length zero;
    const SetTo set = set_to(work, setup);
    const std::optional<SetTo> stood = before ? std::optional(set_to(work, *before)) : std::nullopt;
    std::vector<Number> numbers;
    const auto note = [&](const std::string& more) { numbers.back().note = with(numbers.back().note, more); };
    const auto words_alone = [&](const char* name, const std::string& what) {
        numbers.push_back({words(name), "", "", "", what});
    };
    const bool stop = setup.guide == "stop";
    const bool is_far =
        fence_reading(work, setup, setup.height ? measured_to : CutterSide::near).side == "far";
    numbers.push_back(control_number(
        job,
        stop          ? "stop"
        : setup.index ? "pin"
        : is_far      ? "fence_far"
                      : "fence_near",
        set.fence_to(measured_to),
        stood && stood->on_jig == set.on_jig ? std::optional(stood->fence_to(measured_to)) : std::nullopt));
    if (set.fence.by_scale && is_far) note(words("number.scale_is_near"));
    note(say_from_pass_before(work, setup));
    if (setup.height) note(say_beyond(work, set.dial.fence_beyond));
    note(say_low_pin(work, setup));
    if (!setup.height) {
        if (!stop) words_alone("number.height", words("number.through"));
        return numbers;
    }
    numbers.push_back(control_number(job, "height", *set.height, stood ? stood->height : std::nullopt));
    note(say_beyond(work, set.dial.height_beyond));
    note(say_bit_passes(work, setup));
    if (const std::string shims = say_shims(work, setup, set.dial.shims); !shims.empty())
        words_alone("number.stack", capital(shims));
    if (setup.index) {
        numbers.push_back(
            number_for(job, words("number.index"), *setup.index, before ? before->index : std::nullopt));
        note(say_sockets(words, setup));
    }
    if (setup.spacer == zero) words_alone("number.spacer", words("number.none"));
    else
        numbers.push_back(number_for(job,
                                     words(setup.sacrificial ? "number.sacrificial_spacer" : "number.spacer"),
                                     setup.spacer, before ? std::optional(before->spacer) : std::nullopt));
    return numbers;
}

}  // namespace kw
