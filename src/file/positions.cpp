#include <map>
#include <optional>
#include <string_view>

#include "file/positions.h"

namespace kw {
namespace {

// Walks valid JSON text once and remembers where the names that are wanted begin. Where `around` is a pointer, also where the value with
// the longest part of it begins.
class Locator {
public:
    using Offsets = std::map<std::string, std::optional<std::size_t>>;

    explicit Locator(std::string_view text) : text_(text) {}

    std::size_t find(std::string_view around) {
        around_ = around;
        value("");
        return best_;
    }

    // By pointer: where its name begins, where there is one.
    void find_names(Offsets& wanted) {
        names_ = &wanted;
        value("");
    }

private:
    void value(const std::string& pointer) {
        space();
        if (around_ == pointer ||
            (around_.substr(0, pointer.size()) == pointer && around_.substr(pointer.size(), 1) == "/"))
            best_ = at_;
        if (at_ >= text_.size()) return;
        if (text_[at_] == '{') object(pointer);
        else if (text_[at_] == '[') array(pointer);
        else if (text_[at_] == '"') string();
        else word();
    }

    void object(const std::string& pointer) {
        ++at_;
        for (space(); !at('}'); space()) {
            const std::size_t name_at = at_;
            const std::string step = pointer + pointer_step(string());
            if (names_)
                if (const auto found = names_->find(step); found != names_->end()) found->second = name_at;
            space();
            ++at_;  // the colon
            value(step);
            space();
            if (at(',')) ++at_;
        }
        ++at_;
    }

    void array(const std::string& pointer) {
        ++at_;
        int index = 0;
        for (space(); !at(']'); space()) {
            value(pointer + "/" + std::to_string(index++));
            space();
            if (at(',')) ++at_;
        }
        ++at_;
    }

    // What the string says, whatever escapes it is written with.
    std::string string() {
        const std::size_t start = at_++;
        bool escapes = false;
        while (at_ < text_.size() && text_[at_] != '"') {
            escapes = escapes || text_[at_] == '\\';
            at_ += text_[at_] == '\\' ? 2 : 1;
        }
        ++at_;
        const std::string_view quoted = text_.substr(start, at_ - start);
        if (escapes) return Json::parse(quoted).get<std::string>();
        return std::string(quoted.substr(1, quoted.size() - 2));
    }

    void word() {
        while (at_ < text_.size() &&
               std::string_view(",]} \t\r\n").find(text_[at_]) == std::string_view::npos)
            ++at_;
    }
    void space() {
        while (at_ < text_.size() && std::string_view(" \t\r\n").find(text_[at_]) != std::string_view::npos)
            ++at_;
    }
    bool at(char c) const { return at_ >= text_.size() || text_[at_] == c; }

    std::string_view text_;
    std::string_view around_;
    Offsets* names_ = nullptr;
    std::size_t at_ = 0;
    std::size_t best_ = 0;
};

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

Position moved_on(Position position, std::string_view over) {
    for (const char c : over) {
        if (c == '\n') position = {position.line + 1, 1};
        else if (starts_character(c)) ++position.column;
    }
    return position;
}

}  // namespace

Position position_of(const std::string& text, std::size_t offset) {
    return moved_on({1, 1}, std::string_view(text).substr(0, offset));
}

Position locate(const std::string& text, const std::string& pointer) {
    return position_of(text, Locator(text).find(pointer));
}

std::vector<Position> locate_names(const std::string& text, const std::vector<std::string>& pointers) {
    Locator::Offsets offsets;
    for (const std::string& pointer : pointers) offsets.emplace(pointer, std::nullopt);
    Locator(text).find_names(offsets);
    std::map<std::size_t, Position> places;  // in the order of the text, which is gone through once
    for (auto& [pointer, offset] : offsets) {
        if (!offset) offset = Locator(text).find(pointer);
        places.emplace(*offset, Position{1, 1});
    }
    Position at{1, 1};
    std::size_t done = 0;
    for (auto& [offset, place] : places) {
        at = place = moved_on(at, std::string_view(text).substr(done, offset - done));
        done = offset;
    }
    std::vector<Position> all;
    for (const std::string& pointer : pointers) all.push_back(places.at(*offsets.at(pointer)));
    return all;
}

}  // namespace kw
