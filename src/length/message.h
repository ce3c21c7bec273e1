#pragma once
// A sentence with lengths in it, not yet put into the maker's reading: the core says what is the matter
// without knowing whether the maker reads 1/64 in or 0.1 mm.

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "length/length.h"
#include "length/locale.h"
#include "words/words.h"

namespace kw {

class Message {
public:
    Message() = default;

    // Words as they are and lengths, in the order in which they are said: for names and what is the same in all languages.
    template <class... Pieces>
    static Message of(Pieces&&... pieces) {
        Message message;
        (message.add(std::forward<Pieces>(pieces)), ...);
        return message;
    }

    // The text that has this key in the maker's language, its places filled in with what follows.
    template <class... Values>
    static Message say(std::string key, Values&&... values) {
        Message message;
        message.pieces_.emplace_back(Phrase{std::move(key), {of(std::forward<Values>(values))...}});
        return message;
    }

    // What is shown for a name that files and code go by (see Words::name).
    static Message name(std::string_view begin, std::string_view id) {
        Message message;
        message.pieces_.emplace_back(Name{std::string(begin), std::string(id)});
        return message;
    }

    // The same by a function of words/names.h, of names that are put together of others.
    using Shown = std::string (*)(const Words&, std::string_view);
    static Message shown(Shown word, std::string_view id) {
        Message message;
        message.pieces_.emplace_back(Word{word, std::string(id)});
        return message;
    }

    // "a, b or c"; `last` is the key of what stands before the last one.
    static Message list(const std::vector<Message>& items, const char* last) {
        Message message;
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (i > 0) message.add(say(i + 1 == items.size() ? last : "list.comma"));
            message.add(items[i]);
        }
        return message;
    }

    friend Message operator+(Message first, const Message& second) {
        first.pieces_.insert(first.pieces_.end(), second.pieces_.begin(), second.pieces_.end());
        return first;
    }

    bool empty() const { return pieces_.empty(); }
    std::string text(const Locale& locale) const;

private:
    struct Phrase {
        std::string key;
        std::vector<Message> values;
    };
    struct Name {
        std::string begin;
        std::string id;
    };

    struct Word {
        Shown shown;
        std::string id;
    };

    void add(const Message& other) {
        pieces_.insert(pieces_.end(), other.pieces_.begin(), other.pieces_.end());
    }
    void add(std::string words) { pieces_.emplace_back(std::move(words)); }
    void add(std::string_view words) { pieces_.emplace_back(std::string(words)); }
    void add(const char* words) { pieces_.emplace_back(std::string(words)); }
    void add(Length length) { pieces_.emplace_back(length); }
    void add(int count) { pieces_.emplace_back(std::to_string(count)); }

    std::vector<std::variant<std::string, Length, Phrase, Name, Word>> pieces_;
};

// Why something can't be made as asked. `field` is the name of the job field to blame, relative to the thing
// that was asked for ("depth", "stock"); `remedy` says what would do.
struct Refusal {
    std::string field;
    Message why;
    Message remedy;
    std::string first = {};  // id of what is to be done before, where that is a setup
};

// A name as it is written in files, in the language's quotes.
Message in_quotes(std::string_view name);
// "`a`, `b` or `c`".
Message either_of(const std::vector<std::string_view>& names);

}  // namespace kw
