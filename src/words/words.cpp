#include "words/words.h"

#include <cctype>
#include <cstdio>
#include <cstdlib>

#include "words/tables_embedded.h"

namespace kw {
namespace {

[[noreturn]] void refuse(std::string_view line, const char* why) {
    std::fprintf(stderr, "kerfwright: table of words: %s: %.*s\n", why, static_cast<int>(line.size()),
                 line.data());
    std::abort();
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

// Spaces at the ends of a text are kept by quotes around it.
std::string_view unquoted(std::string_view text) {
    const bool is_quoted = text.size() >= 2 && text.front() == '"' && text.back() == '"';
    return is_quoted ? text.substr(1, text.size() - 2) : text;
}

std::map<std::string, std::string, std::less<>> read_table(std::string_view table) {
    std::map<std::string, std::string, std::less<>> out;
    while (!table.empty()) {
        const std::size_t end = table.find('\n');
        const std::string_view line = trimmed(table.substr(0, end));
        table.remove_prefix(end == std::string_view::npos ? table.size() : end + 1);
        if (line.empty() || line.front() == '#') continue;
        const std::size_t mark = line.find(" = ");
        if (mark == std::string_view::npos) refuse(line, "not `key = text`");
        const std::string_view key = trimmed(line.substr(0, mark));
        if (!out.emplace(key, unquoted(trimmed(line.substr(mark + 3)))).second) refuse(line, "told twice");
    }
    return out;
}

bool is_letter(std::string_view text, std::size_t at) {
    return at < text.size() && (std::isalpha(static_cast<unsigned char>(text[at])) || text[at] == '_');
}

std::string capitalised(std::string word) {
    if (!word.empty()) word[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(word[0])));
    return word;
}

std::string with_word(std::string text, const std::string& word, const std::string& other) {
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at)) {
        const bool is_whole = (at == 0 || !is_letter(text, at - 1)) && !is_letter(text, at + word.size());
        if (is_whole) text.replace(at, word.size(), other);
        at += is_whole ? other.size() : word.size();
    }
    return text;
}

}  // namespace

std::string_view tag_of(Language language) {
    switch (language) {
        case Language::english: return "en-US";
        case Language::british: return "en-GB";
        case Language::german: return "de";
    }
    return "en-US";
}

std::string_view name_of(Language language) {
    switch (language) {
        case Language::english: return "English (US)";
        case Language::british: return "English (UK)";
        case Language::german: return "Deutsch";
    }
    return "English (US)";
}

Words::Words(std::string_view table) : texts_(read_table(table)) {}

Words::Words(const Words& others, std::string_view changes) : texts_(others.texts_) {
    for (const auto& [key, text] : read_table(changes)) {
        if (const auto found = texts_.find(key); found != texts_.end()) {
            found->second = text;
            continue;
        }
        if (key.find('.') != std::string::npos) refuse(key, "changes a text that is not there");
        for (auto& [_, whole] : texts_)
            whole = with_word(with_word(std::move(whole), key, text), capitalised(key), capitalised(text));
    }
}

std::string_view Words::text(std::string_view key) const {
    const auto found = texts_.find(key);
    return found == texts_.end() ? key : std::string_view(found->second);
}

std::string Words::name(std::string_view begin, std::string_view id) const {
    std::string key(begin);
    for (const char c : id) key += c == ' ' ? '_' : c;
    const auto found = texts_.find(key);
    return found == texts_.end() ? std::string(id) : found->second;
}

std::string Words::filled(std::string_view key, std::span<const std::string> values) const {
    const std::string_view pattern = text(key);
    std::string out;
    for (std::size_t at = 0; at < pattern.size(); ++at) {
        const bool is_place = pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 2] == '}' &&
                              std::isdigit(static_cast<unsigned char>(pattern[at + 1]));
        if (!is_place) {
            out += pattern[at];
            continue;
        }
        if (const auto place = static_cast<std::size_t>(pattern[at + 1] - '0'); place < values.size())
            out += values[place];
        at += 2;
    }
    return out;
}

std::string Words::list(std::span<const std::string> items, std::string_view last) const {
    std::string out;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) out += i + 1 == items.size() ? text(last) : text("list.comma");
        out += items[i];
    }
    return out;
}

std::string key_of(std::string_view prefix, std::string_view name) {
    std::string out(prefix);
    for (const char c : name) out += c == ' ' ? '_' : c;
    return out;
}

const Words& words_in(Language language) {
    static const Words english(tables::english);
    static const Words british(english, tables::british);
    static const Words german(tables::german);
    switch (language) {
        case Language::english: return english;
        case Language::british: return british;
        case Language::german: return german;
    }
    return english;
}

}  // namespace kw
