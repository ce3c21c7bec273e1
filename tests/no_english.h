#pragma once
// Whether a text in another language has English words left in it, but for names, which stand in German quotes.

#include <string>

namespace kw::tests {

inline bool sounds_english(const std::string& text) {
    static const std::string open = "„", close = "“";
    std::string all = " " + text + " ";
    for (std::size_t at = all.find(open); at != std::string::npos; at = all.find(open, at + 1)) {
        const std::size_t end = all.find(close, at);
        if (end != std::string::npos) all.erase(at + open.size(), end - at - open.size());
    }
    for (const char* word : {" the ", " of ", " is ", " are ", " and ", " or ", " to ", " with ", " no ",
                             " not ", " must ", " make ", " there ", " from ", " a "})
        if (all.find(word) != std::string::npos) return true;
    return false;
}

}  // namespace kw::tests
