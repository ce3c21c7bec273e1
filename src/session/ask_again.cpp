#include "session/ask_again.h"

#include <algorithm>

#include "session/words.h"
#include "testcut/feel.h"

namespace kw {
namespace {

Message looks_like(Slip slip, Length found) {
    switch (slip) {
        case Slip::ten_times: return Message::say("slip.ten_times", found.scaled(1, 10));
        case Slip::tenth: return Message::say("slip.tenth", found.scaled(10, 1));
        case Slip::inches: return Message::say("slip.inches");
        case Slip::millimetres: return Message::say("slip.millimetres");
        case Slip::sign: return Message::say("slip.sign");
        case Slip::none: break;
    }
    return Message::say("slip.none");
}

// "the dado width"; of the stock, which of two boards it is.
Message the_reading(const std::string& name) {
    const Message reading = Message::say(key_of("reading.", name));
    return name == "stock_thickness" ? Message::say("doubt.reading_of_insert", reading)
                                     : Message::say("doubt.reading", reading);
}

// `which`: of what was felt and seen.
Message word_disagrees(const LogEntry& entry, std::size_t which, Length makes) {
    if (!entry.felt.empty() && which-- == 0)
        return Message::say("doubt.feel", feel_message(entry.felt), makes);
    return Message::say("doubt.sight", sight_message(entry.seen.at(which)), makes);
}

Message reading_disagrees(const NamedLength& reading, Length expected, bool may_insist, bool alone) {
    const char* key = may_insist ? (alone ? "doubt.disagrees_alone" : "doubt.disagrees")
                                 : (alone ? "doubt.out_of_reason_alone" : "doubt.out_of_reason");
    return Message::say(key, the_reading(reading.name), reading.value, expected);
}

// As the maker knows it there.
Message the_control(const Setup& setup, const std::string& name) {
    return Message::say(key_of("control.", control_at_setup(setup, name)));
}

// "fence by 6.35 mm, height by 0.30 mm": all that has to be told as moved, so that the control stands where it is found.
Message moves_to_tell(const Setup& setup, const Model& model, std::vector<NamedLength> moves,
                      const Doubt& doubt) {
    const std::string& name = model.controls[doubt.which].name;
    const Length more = Length::nearest_mm(doubt.found_mm - doubt.expected_mm);
    const auto its =
        std::find_if(moves.begin(), moves.end(), [&](const NamedLength& move) { return move.name == name; });
    if (its != moves.end()) its->value += more;
    else moves.push_back({name, more});
    Message all;
    for (const NamedLength& move : moves) {
        const Message one = Message::say("doubt.move", the_control(setup, move.name), move.value);
        all = all.empty() ? one : Message::say("doubt.moves", all, one);
    }
    return all;
}

Refusal ask_setting_again(const Setup& setup, const Model& model, bool cut_before, const Doubt& doubt,
                          bool may_insist, const std::vector<NamedLength>& assumed) {
    const Message control = the_control(setup, model.controls[doubt.which].name);
    const Length stands = Length::nearest_mm(doubt.found_mm), meant = Length::nearest_mm(doubt.expected_mm);
    const char* field = may_insist ? "doubt" : "moved";
    if (doubt.about == Doubt::About::move && !cut_before)
        return {field, Message::say("doubt.scale_is_off", control, stands, meant),
                Message::say("doubt.tell_what_is_different")};
    if (doubt.about == Doubt::About::setting)
        return {field, Message::say("doubt.set_otherwise", control, stands, meant),
                Message::say("doubt.tell_own_setting", moves_to_tell(setup, model, assumed, doubt))};
    const char* key = doubt.looks_like == Slip::sign ? "doubt.moved_other_way" : "doubt.moved_otherwise";
    return {field, Message::say(key, control, stands, meant), Message::say("doubt.tell_what_was_moved")};
}

Refusal ask_reading_again(bool cut_before, const LogEntry& entry, const Doubt& doubt, bool may_insist) {
    const Length expected = Length::nearest_mm(doubt.expected_mm);
    const char* field = may_insist ? "doubt" : "readings";
    if (doubt.which >= entry.readings.size())
        return {field, word_disagrees(entry, doubt.which - entry.readings.size(), expected),
                Message::say("doubt.look_again")};
    const NamedLength& reading = entry.readings[doubt.which];
    const bool alone = entry.readings.size() == 1 && !cut_before;
    return {field, reading_disagrees(reading, expected, may_insist, alone),
            Message::say("doubt.mind_the_unit", looks_like(doubt.looks_like, reading.value))};
}

}  // namespace

Message feel_message(std::string_view word) {
    return feel_of_word(word) ? Message::say(key_of("feel.", word)) : Message::of(word);
}
Message sight_message(std::string_view word) {
    return sight_of_word(word) ? Message::say(key_of("sight.", word)) : Message::of(word);
}

Message or_tell_the_setting(const Setup& setup, const Model& model, const Message& remedy,
                            const Doubt& setting, const std::vector<NamedLength>& assumed) {
    const Message control = the_control(setup, model.controls[setting.which].name);
    return Message::say("doubt.or_tell_the_setting", remedy, control, Length::nearest_mm(setting.found_mm),
                        moves_to_tell(setup, model, assumed, setting));
}

Refusal ask_again(const Setup& setup, const Model& model, bool cut_before, const LogEntry& entry,
                  const Doubt& doubt, bool may_insist, const std::vector<NamedLength>& assumed,
                  bool may_have_moved) {
    Refusal refusal = doubt.about == Doubt::About::reading
                          ? ask_reading_again(cut_before, entry, doubt, may_insist)
                          : ask_setting_again(setup, model, cut_before, doubt, may_insist, assumed);
    if (may_have_moved && doubt.about == Doubt::About::reading)
        refusal.remedy = Message::say("doubt.or_tell_moved", refusal.remedy);
    if (may_insist) refusal.remedy = Message::say("doubt.or_be_sure", refusal.remedy);
    return refusal;
}

}  // namespace kw
