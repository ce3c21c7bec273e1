#include "words/words.h"

#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <string>

using namespace kw;

namespace {

std::multiset<std::string> places_in(const std::string& text) {
    static const std::regex place(R"(\{\d\})");
    return {std::sregex_token_iterator(text.begin(), text.end(), place), std::sregex_token_iterator()};
}

}  // namespace

TEST_CASE("all languages say everything, each with the same places to fill in") {
    for (const Language language : all_languages) {
        CAPTURE(tag_of(language));
        const auto& texts = words_in(language).all();
        CHECK(texts.size() == words_in(Language::english).all().size());
        for (const auto& text : words_in(Language::english).all()) {
            CAPTURE(text.first);
            REQUIRE(texts.contains(text.first));
            const std::string& other = texts.at(text.first);
            const auto wanted = places_in(text.second), found = places_in(other);
            CHECK(std::set(wanted.begin(), wanted.end()) == std::set(found.begin(), found.end()));
            CHECK_FALSE(other.empty());
        }
    }
}

TEST_CASE("a text's places are filled in, in whichever order the language puts them") {
    const Words words(
        "a.b = {1} after {0}\na.c.one = one part\na.c.many = {0} parts of {1}\nlist.comma = \", \"\nlist.and "
        "= \" and \"\n");
    CHECK(words("a.b", "first", 2) == "2 after first");
    CHECK(words.counted("a.c", 1, "oak") == "one part");
    CHECK(words.counted("a.c", 3, "oak") == "3 parts of oak");
    CHECK(words.list(std::vector<std::string>{"a", "b", "c"}) == "a, b and c");
    CHECK(words.list(std::vector<std::string>{"a"}) == "a");
    // What is filled in is not read again: a maker may call a drawer so.
    CHECK(words("a.b", "{1}", "{0}") == "{0} after {1}");
}

TEST_CASE("British English changes whole words and leaves the maker's names alone") {
    const Words us("a.b = cut the dado of {0}, then the Dados; a dadoed part\na.c = color\n");
    const Words uk(us, "dado = housing\ndados = housings\na.c = colour\n");
    CHECK(uk("a.b", "dado drawer") == "cut the housing of dado drawer, then the Housings; a dadoed part");
    CHECK(uk("a.c") == "colour");
}

TEST_CASE("no British text speaks of rabbets, dados or miters") {
    // "rebate", "housing" and "mitre" are the names in the UK: common practice, no source.
    static const std::regex american(R"(\b(rabbet|miter|dado(?! stack))s?\b)", std::regex::icase);
    for (const auto& text : words_in(Language::british).all()) {
        CAPTURE(text.first);
        CHECK_FALSE(std::regex_search(text.second, american));
    }
}
