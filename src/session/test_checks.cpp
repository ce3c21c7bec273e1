#include "session/test_checks.h"

#include <algorithm>
#include <cmath>

#include "session/ask_again.h"
#include "session/words.h"
#include "setup/shims.h"
#include "testcut/doubt.h"
#include "testcut/observe.h"
#include "testcut/set_again.h"
#include "words/names.h"

namespace kw {
namespace {

// "it has `fence`, `height`"
Message it_has(const std::vector<Message>& names) {
    Message all;
    for (const Message& name : names) {
        const Message quoted = Message::say("testing.name", name);
        all = all.empty() ? quoted : Message::say("testing.names", all, quoted);
    }
    return Message::say("testing.it_has", all);
}

// As they are told, which is by their names.
std::vector<Message> as_told(const std::vector<std::string>& names) {
    std::vector<Message> out;
    for (const std::string& name : names) out.push_back(Message::of(name));
    return out;
}

std::vector<Message> words_to_see(const Model& model) {
    std::vector<Message> words;
    for (const Sight& sight : sight_table())
        if (reading_named(model, sight.reading)) words.push_back(sight_message(sight.word));
    return words;
}

// A name that stands there twice; nullptr where none does.
const std::string* told_twice(const std::vector<NamedLength>& told) {
    for (const NamedLength& one : told)
        if (std::count_if(told.begin(), told.end(),
                          [&](const NamedLength& other) { return other.name == one.name; }) > 1)
            return &one.name;
    return nullptr;
}

// What was moved since the cut before. Of a first cut: from the planned number to what its scale was to be set to, which may not
// have been done. What is set by hand again is in doubt as a first setting is.
std::vector<Move> moves_made(const TestedGroup& found, const TestCut& cut) {
    if (!found.set_again.empty() || (found.standing && found.standing->torn_down)) return {};
    if (cut.moved) return moves_told(found.model, *cut.moved);
    if (found.standing) return found.standing->advice.moves;
    std::vector<Move> moves;
    Settings dial = found.start.dial, planned = found.group->stands;
    for (const char* control : {"fence", "height"}) {
        const Length by = *setting_named(dial, control) - *setting_named(planned, control);
        if (by != Length{}) moves.push_back({*control_named(found.model, control), by.mm()});
    }
    return moves;
}

// The moves that the belief takes as made, by name: what is told with others takes their place.
std::vector<NamedLength> moves_assumed(const TestedGroup& found, const TestCut& cut) {
    if (cut.moved) return *cut.moved;
    std::vector<NamedLength> assumed;
    if (found.standing)
        for (const Move& move : found.standing->advice.moves)
            assumed.push_back({found.model.controls[move.control].name, Length::nearest_mm(move.by_mm)});
    return assumed;
}

// Farther than this from what all the rest says, nobody can be sure of it.
constexpr double most_sigmas = 8.0;

}  // namespace

std::optional<Refusal> check_names(const TestedGroup& found, const TestCut& cut) {
    if (const std::string* twice = told_twice(cut.readings))
        return Refusal{"readings", Message::say("testing.told_twice", *twice),
                       Message::say("testing.tell_once")};
    for (const NamedLength& reading : cut.readings) {
        if (!reading_named(found.model, reading.name))
            return Refusal{"readings", Message::say("testing.no_reading", reading.name),
                           it_has(as_told(names_of_readings(found.model)))};
        const bool may_be_negative = reading.name == "fit" || reading.name == "face_step";
        if (reading.value < Length{} && !may_be_negative)
            return Refusal{"readings", Message::say("testing.less_than_nothing", reading.name),
                           Message::say("testing.measure_again")};
    }
    if (!cut.felt.empty() && (!feel_of_word(cut.felt) || !reading_named(found.model, "fit")))
        return Refusal{
            "felt",
            feel_of_word(cut.felt) ? Message::say("testing.nothing_fitted")
                                   : Message::say("testing.no_feel", cut.felt),
            Message::say("testing.feels", feel_message("will not enter"), feel_message("mallet"),
                         feel_message("hand tight"), feel_message("slides"), feel_message("rattles"))};
    std::vector<std::string_view> told;
    for (const std::string& word : cut.seen) {
        const Sight* sight = sight_of_word(word);
        if (sight && std::find(told.begin(), told.end(), sight->reading) != told.end())
            return Refusal{"seen", Message::say("testing.two_sights", sight_message(word)),
                           Message::say("testing.say_the_better")};
        if (sight) told.push_back(sight->reading);
        if (!sight || !reading_named(found.model, sight->reading))
            return Refusal{"seen",
                           sight ? Message::say("testing.not_seen_here", sight_message(word))
                                 : Message::say("testing.no_sight", word),
                           it_has(words_to_see(found.model))};
    }
    return std::nullopt;
}

std::optional<Refusal> check_doubt(const TestedGroup& found, const TestCut& cut, const LogEntry& entry) {
    Belief before = before_reading(found, cut);
    const bool set_again = !found.set_again.empty() || (found.standing && found.standing->torn_down);
    if (set_again) before = predict_first_setting(found.model, before, found.set_again);
    const auto observations = observations_of(found.model, entry);
    const auto doubt = find_doubt(found.model, before, moves_made(found, cut), observations);
    if (!doubt) return std::nullopt;
    const bool of_words = doubt->about == Doubt::About::reading && doubt->which >= entry.readings.size();
    const bool may_insist = of_words || std::abs(doubt->sigmas) <= most_sigmas;
    if (cut.sure && may_insist) return std::nullopt;
    const std::vector<NamedLength> assumed = moves_assumed(found, cut);
    // Who was told to measure further was told too what to move without that.
    const bool may_have_moved = found.standing && !cut.moved && !found.standing->advice.unread.empty();
    Refusal refusal = ask_again(*found.setup, found.model, found.standing != nullptr, entry, *doubt,
                                may_insist, assumed, may_have_moved);
    // What nobody can be sure of may be so where the control was set so: to the mark of another pass, by another scale.
    const bool of_setting = doubt->about == Doubt::About::reading && doubt->looks_like == Slip::none &&
                            (set_again || !found.standing);
    if (may_insist || !of_setting) return refusal;
    if (const auto setting = otherwise_set(found.model, before, observations, found.set_again))
        refusal.remedy = or_tell_the_setting(*found.setup, found.model, refusal.remedy, *setting, assumed);
    return refusal;
}

std::optional<Refusal> check_moved(const TestedGroup& found, const TestCut& cut) {
    if (!cut.moved) return std::nullopt;
    if (const std::string* twice = told_twice(*cut.moved))
        return Refusal{"moved", Message::say("testing.told_twice", *twice),
                       Message::say("testing.tell_all_in_all")};
    for (const NamedLength& move : *cut.moved) {
        Settings settable;
        if (control_named(found.model, move.name) && setting_named(settable, move.name)) {
            const Settings& stood = found.standing ? found.standing->stood : found.start.dial;
            const Cutter& cutter = found.group->work.chosen.cutter;
            const Length in_it = shims_in(cutter) + stood.kerf - found.designed->designed.kerf;
            if (move.name == "kerf" && lists_shims(cutter) && in_it + move.value < Length{})
                return Refusal{"moved", Message::say("testing.too_few_shims", in_it),
                               Message::say("testing.tell_taken_out")};
            if (move.name != "shift" || stood.shift + move.value >= Length{}) continue;
            return Refusal{"moved", Message::say("testing.pass_too_near", move.value, stood.shift),
                           Message::say("testing.tell_last_pass")};
        }
        std::vector<std::string> names;
        for (const Control& control : found.model.controls)
            if (control.movable) names.emplace_back(control_at_setup(*found.setup, control.name));
        return Refusal{"moved", Message::say("testing.no_control", move.name), it_has(as_told(names))};
    }
    return std::nullopt;
}

std::optional<Refusal> check_ends(const Work& work, const TestedGroup& found, const TestCut& cut) {
    if (!found.standing || found.standing->tests == 0 || cut.fresh_end) return std::nullopt;
    const Settings after = settings_of(work, found, after_moves(*found.standing, cut.moved));
    if (same_ends_will_do(*found.designed, found.standing->at_test, after)) return std::nullopt;
    return Refusal{"fresh_end", Message::say("testing.old_ends"), Message::say("testing.fresh_ends")};
}

}  // namespace kw
