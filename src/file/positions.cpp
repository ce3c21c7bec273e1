#include <optional>
#include <string_view>

#include "file/positions.h"

namespace kw {
namespace {

// Walks valid JSON text and remembers where the value with the longest matching pointer begins.
class Locator {
public:
    Locator(std::string_view text, std::string_view wanted) : text_(text), wanted_(wanted) {}

    std::size_t find() {
        value("");
        return best_;
    }

    // Where the name of that value begins; of what has none, the value.
    std::size_t find_name() {
        value("");
        return name_.value_or(best_);
    }

private:
    void value(const std::string& pointer) {
        space();
        if (wanted_ == pointer ||
            (wanted_.substr(0, pointer.size()) == pointer && wanted_.substr(pointer.size(), 1) == "/"))
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
            if (step == wanted_) name_ = name_at;
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

    // The string as it stands between its quotes; names with escapes match only themselves as written.
    std::string string() {
        const std::size_t start = ++at_;
        while (at_ < text_.size() && text_[at_] != '"') at_ += text_[at_] == '\\' ? 2 : 1;
        const std::string out(text_.substr(start, at_ - start));
        ++at_;
        return out;
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
    std::string_view wanted_;
    std::size_t at_ = 0;
    std::size_t best_ = 0;
    std::optional<std::size_t> name_;
};

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

}  // namespace

Position position_of(const std::string& text, std::size_t offset) {
    Position position;
    for (std::size_t i = 0; i < offset && i < text.size(); ++i) {
        if (text[i] == '\n') position = {position.line + 1, 1};
        else if (starts_character(text[i])) ++position.column;
    }
    return position;
}

Position locate(const std::string& text, const std::string& pointer) {
    return position_of(text, Locator(text, pointer).find());
}

Position locate_name(const std::string& text, const std::string& pointer) {
    return position_of(text, Locator(text, pointer).find_name());
}

}  // namespace kw
