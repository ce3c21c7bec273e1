#include "length/message.h"

#include "length/text.h"

namespace kw {

std::string Message::text(const Locale& locale) const {
    std::string out;
    for (const auto& piece : pieces_) {
        if (const auto* words = std::get_if<std::string>(&piece)) out += *words;
        else if (const auto* length = std::get_if<Length>(&piece)) out += show_with_unit(*length, locale);
        else if (const auto* name = std::get_if<Name>(&piece)) {
            out += locale.words().name(name->begin, name->id);
        } else if (const auto* word = std::get_if<Word>(&piece)) {
            out += word->shown(locale.words(), word->id);
        } else {
            const auto& phrase = std::get<Phrase>(piece);
            std::vector<std::string> values;
            for (const Message& value : phrase.values) values.push_back(value.text(locale));
            out += locale.words().filled(phrase.key, values);
        }
    }
    return out;
}

Message in_quotes(std::string_view name) { return Message::say("quote.name", name); }

Message either_of(const std::vector<std::string_view>& names) {
    std::vector<Message> quoted;
    for (const std::string_view name : names) quoted.push_back(in_quotes(name));
    return Message::list(quoted, "list.or");
}

}  // namespace kw
