#pragma once
// What the program says, in the maker's language. A language has one table of texts, found by key (src/words/english.txt says
// how a table is written); all of them hold the same keys with the same places to fill in, which tests/words checks.

#include <initializer_list>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace kw {

// British is English with the names that the trade has there.
enum class Language { english, british, german };
inline constexpr Language all_languages[] = {Language::english, Language::british, Language::german};

// Its tag by BCP 47: "en-US", "en-GB", "de".
std::string_view tag_of(Language language);
// Its name in the language itself.
std::string_view name_of(Language language);

class Words {
public:
    // Reads a table. A line that is none, or a key told twice, ends the program: tables are part of it.
    explicit Words(std::string_view table);
    // The same texts with the changes of a second table: a key's text, or a word wherever it stands ("dado = housing").
    Words(const Words& others, std::string_view changes);

    // The text of a key as it stands in the table. The key itself where there is none.
    std::string_view text(std::string_view key) const;
    bool has(std::string_view key) const { return texts_.find(key) != texts_.end(); }
    // What is shown for a name that files and code go by: the text of the key that begins so and ends in the name, with `_` for its
    // spaces; the name itself where there is none, since a file may hold any.
    std::string name(std::string_view begin, std::string_view id) const;

    // The text with its places {0}, {1} ... filled in, in whichever order the language puts them.
    std::string filled(std::string_view key, std::span<const std::string> values) const;
    template <class... Values>
    std::string operator()(std::string_view key, const Values&... values) const {
        const std::vector<std::string> all{as_text(values)...};
        return filled(key, all);
    }
    // By count: the text of `key`.one where `count` is 1, otherwise that of `key`.many; {0} is the count.
    template <class... Values>
    std::string counted(std::string_view key, long long count, const Values&... values) const {
        return (*this)(std::string(key) + (count == 1 ? ".one" : ".many"), count, values...);
    }
    // "a, b and c"; with `last` "list.or", "a, b or c".
    std::string list(std::span<const std::string> items, std::string_view last = "list.and") const;

    const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }

private:
    static std::string as_text(std::string_view value) { return std::string(value); }
    static std::string as_text(long long value) { return std::to_string(value); }
    static std::string as_text(unsigned long value) { return std::to_string(value); }
    static std::string as_text(long value) { return std::to_string(value); }
    static std::string as_text(int value) { return std::to_string(value); }

    std::map<std::string, std::string, std::less<>> texts_;
};

// The key under which a name is told that files and code know: "kind." and "dado stack" give "kind.dado_stack".
std::string key_of(std::string_view prefix, std::string_view name);

// The tables are read at their first use and kept.
const Words& words_in(Language language);

}  // namespace kw
