#pragma once
// A sentence with lengths in it, not yet put into the maker's reading: the core says what is the matter
// without knowing whether the maker reads 1/64 in or 0.1 mm.

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "length/text.h"

namespace kw {

class Message {
public:
    Message() = default;

    // Words and lengths in the order in which they are said.
    template <class... Pieces>
    static Message of(Pieces&&... pieces) {
        Message message;
        (message.add(std::forward<Pieces>(pieces)), ...);
        return message;
    }

    friend Message operator+(Message first, const Message& second) {
        first.pieces_.insert(first.pieces_.end(), second.pieces_.begin(), second.pieces_.end());
        return first;
    }

    bool empty() const { return pieces_.empty(); }

    std::string text(Graduation graduation) const {
        std::string out;
        for (const auto& piece : pieces_) {
            if (const auto* words = std::get_if<std::string>(&piece)) out += *words;
            else out += show_with_unit(std::get<Length>(piece), graduation);
        }
        return out;
    }

private:
    void add(const Message& other) {
        pieces_.insert(pieces_.end(), other.pieces_.begin(), other.pieces_.end());
    }
    void add(std::string words) { pieces_.emplace_back(std::move(words)); }
    void add(const char* words) { pieces_.emplace_back(std::string(words)); }
    void add(Length length) { pieces_.emplace_back(length); }
    void add(int count) { pieces_.emplace_back(std::to_string(count)); }

    std::vector<std::variant<std::string, Length>> pieces_;
};

// Why something can't be made as asked. `field` is the name of the job field to blame, relative to the thing
// that was asked for ("depth", "stock"); `remedy` says what would do.
struct Refusal {
    std::string field;
    Message why;
    Message remedy;
};

}  // namespace kw
