#include "length/message.h"

namespace kw {

std::string Message::text(const Locale& locale) const {
    std::string out;
    for (const auto& piece : pieces_) {
        if (const auto* words = std::get_if<std::string>(&piece)) out += *words;
        else if (const auto* length = std::get_if<Length>(&piece)) out += show_with_unit(*length, locale);
        else {
            const auto& phrase = std::get<Phrase>(piece);
            std::vector<std::string> values;
            for (const Message& value : phrase.values) values.push_back(value.text(locale));
            out += locale.words().filled(phrase.key, values);
        }
    }
    return out;
}

}  // namespace kw
