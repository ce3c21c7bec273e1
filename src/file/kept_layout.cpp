#include "file/kept_layout.h"

#include <algorithm>
#include <string_view>
#include <vector>

#include "file/document.h"

namespace kw {
namespace {

constexpr std::string_view blanks = " \t\r\n";

// A value in the text. What stands in a list or an object has the blanks before it, and for an object its name with the colon.
struct Written {
    std::size_t begin = 0, end = 0;
    std::string_view before;  // blanks before the value, or before its name
    std::string_view name;    // as it is written, up to the value; empty in a list
    std::string key;
    std::string_view after;  // blanks up to the comma; of the last none
    std::vector<Written> parts;
    std::string_view close;  // blanks before the closing bracket
};

// Reads text that is known to be JSON.
class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {}

    Written whole() {
        space();
        return value();
    }

private:
    Written value() {
        Written out;
        out.begin = at_;
        if (text_[at_] == '{' || text_[at_] == '[') parts(out, text_[at_] == '{');
        else if (text_[at_] == '"') string();
        else at_ = std::min(text_.find_first_of(",]} \t\r\n", at_), text_.size());
        out.end = at_;
        return out;
    }

    void parts(Written& out, bool is_object) {
        ++at_;
        std::string_view before = space();
        while (text_[at_] != ']' && text_[at_] != '}') {
            const std::size_t name_at = at_;
            if (is_object) {
                string();
                const std::size_t name_end = at_;
                space();
                ++at_;  // the colon
                space();
                Written part = value_named(name_at, name_end);
                part.before = before;
                out.parts.push_back(std::move(part));
            } else {
                Written part = value();
                part.before = before;
                out.parts.push_back(std::move(part));
            }
            const std::string_view after = space();
            if (text_[at_] != ',') {
                before = after;
                break;
            }
            out.parts.back().after = after;
            ++at_;
            before = space();
        }
        out.close = before;
        ++at_;
    }

    Written value_named(std::size_t name_at, std::size_t name_end) {
        const std::size_t value_at = at_;
        Written part = value();
        part.name = text_.substr(name_at, value_at - name_at);
        part.key = Json::parse(text_.substr(name_at, name_end - name_at)).get<std::string>();
        return part;
    }

    void string() {
        ++at_;
        while (text_[at_] != '"') at_ += text_[at_] == '\\' ? 2 : 1;
        ++at_;
    }

    std::string_view space() {
        const std::size_t from = at_;
        at_ = std::min(text_.find_first_not_of(blanks, at_), text_.size());
        return text_.substr(from, at_ - from);
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

// What stands in a list or an object as it is to be: the blanks before it, and itself with its name.
struct Piece {
    std::string before, text, after;
};

class Writer {
public:
    explicit Writer(const std::string& text)
        : text_(text), line_end_(text.find("\r\n") == std::string::npos ? "\n" : "\r\n") {}

    std::string value(const Written& old, const Json& was, const Json& is) const {
        if (was == is) return text_.substr(old.begin, old.end - old.begin);
        if (was.is_object() && is.is_object()) return with_parts(old, object(old, was, is));
        if (was.is_array() && is.is_array()) return with_parts(old, list(old, was, is));
        return fresh(is, indent_of(old.begin), !is.is_structured());
    }

private:
    std::vector<Piece> object(const Written& old, const Json& was, const Json& is) const {
        // In the sequence in which they are to be: what was another entry there may have had another.
        std::vector<Piece> pieces;
        for (const auto& [key, its] : is.items()) {
            const std::string& name = key;
            const auto part = std::find_if(old.parts.begin(), old.parts.end(),
                                           [&](const Written& one) { return one.key == name; });
            if (part == old.parts.end()) pieces.push_back(added(old, quoted(key) + ": ", its));
            else
                pieces.push_back({std::string(part->before),
                                  std::string(part->name) + value(*part, was.at(key), its),
                                  std::string(part->after)});
        }
        return pieces;
    }

    // What is the same at both ends stays; what is between goes by its place.
    std::vector<Piece> list(const Written& old, const Json& was, const Json& is) const {
        const std::size_t least = std::min(was.size(), is.size());
        std::size_t first = 0, last = 0;
        while (first < least && was[first] == is[first]) ++first;
        while (last < least - first && was[was.size() - 1 - last] == is[is.size() - 1 - last]) ++last;
        std::vector<Piece> pieces;
        const auto keep = [&](std::size_t from, const Json& its) {
            const Written& part = old.parts.at(from);
            pieces.push_back(
                {std::string(part.before), value(part, was[from], its), std::string(part.after)});
        };
        for (std::size_t i = 0; i < first; ++i) keep(i, is[i]);
        for (std::size_t i = first; i < is.size() - last; ++i) {
            if (i < was.size() - last) keep(i, is[i]);
            else pieces.push_back(added(old, {}, is[i]));
        }
        for (std::size_t i = last; i > 0; --i) keep(was.size() - i, is[is.size() - i]);
        return pieces;
    }

    // As the last one before it stands; the first of all on a line of its own, two blanks farther in.
    Piece added(const Written& old, const std::string& name, const Json& is) const {
        if (old.parts.empty()) {
            const std::string inside = indent_of(old.begin) + "  ";
            return {line_end_ + inside, name + fresh(is, inside, false), {}};
        }
        const Written& like = old.parts.back();
        const bool has_line = like.before.find('\n') != std::string_view::npos;
        const bool in_one_line =
            text_.substr(like.begin, like.end - like.begin).find('\n') == std::string::npos;
        const bool is_short = !has_line || !is.is_structured() || (in_one_line && old_is_structured(like));
        return {has_line || old.parts.size() > 1 ? std::string(like.before) : std::string(" "),
                name + fresh(is, indent_of(like.begin), is_short),
                {}};
    }

    bool old_is_structured(const Written& part) const {
        return text_[part.begin] == '{' || text_[part.begin] == '[';
    }

    std::string with_parts(const Written& old, std::vector<Piece> pieces) const {
        std::string out(1, text_[old.begin]);
        if (!pieces.empty() && !old.parts.empty()) pieces.front().before = old.parts.front().before;
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            out += pieces[i].before + pieces[i].text;
            if (i + 1 < pieces.size()) out += pieces[i].after + ",";
        }
        if (!pieces.empty())
            out += old.parts.empty() ? line_end_ + indent_of(old.begin) : std::string(old.close);
        return out + text_[old.end - 1];
    }

    // A value of which nothing stood there.
    std::string fresh(const Json& is, const std::string& indent, bool in_one_line) const {
        if (in_one_line) return one_line(is);
        std::string out;
        for (const char c : is.dump(2, ' ', false, Json::error_handler_t::replace)) {
            if (c == '\n') out += line_end_ + indent;
            else out += c;
        }
        return out;
    }
    // What is no UTF-8 is replaced, in names as in values.
    static std::string dumped(const Json& is) {
        return is.dump(-1, ' ', false, Json::error_handler_t::replace);
    }
    static std::string quoted(const std::string& name) { return dumped(Json(name)); }
    static std::string one_line(const Json& is) {
        if (!is.is_structured() || is.empty()) return dumped(is);
        std::string out;
        for (const auto& [key, its] : is.items())
            out += (out.empty() ? "" : ", ") + (is.is_object() ? quoted(key) + ": " : "") + one_line(its);
        return is.is_object() ? "{ " + out + " }" : "[" + out + "]";
    }

    // Of the line on which that stands.
    std::string indent_of(std::size_t at) const {
        const std::size_t newline = text_.rfind('\n', at);
        const std::size_t begin = newline == std::string::npos ? 0 : newline + 1;
        return text_.substr(begin, text_.find_first_not_of(" \t", begin) - begin);
    }

    const std::string& text_;
    std::string line_end_;
};

// Not so where a field is there twice, which is read once.
bool is_as_read(const Written& written, const Json& json) {
    if (!json.is_structured()) return written.parts.empty();
    if (written.parts.size() != json.size()) return false;
    for (std::size_t i = 0; i < written.parts.size(); ++i) {
        const Written& part = written.parts[i];
        if (json.is_object() && !json.contains(part.key)) return false;
        if (!is_as_read(part, json.is_object() ? json.at(part.key) : json.at(i))) return false;
    }
    return true;
}

// In whatever order the fields of an object stand.
bool says(const std::string& text, const Json& document) {
    return nlohmann::json::parse(text, nullptr, false) == nlohmann::json(document);
}

}  // namespace

std::optional<std::string> in_its_layout(const std::string& text, const Json& document) {
    const Json was = Json::parse(text, nullptr, false);
    if (was.is_discarded() || to_text(was) == text) return std::nullopt;
    const Written old = Reader(text).whole();
    if (!is_as_read(old, was)) return std::nullopt;
    return text.substr(0, old.begin) + Writer(text).value(old, was, document) + text.substr(old.end);
}

std::string text_with(const std::string& text, const Json& document) {
    const auto kept = in_its_layout(text, document);
    return kept && says(*kept, document) ? *kept : to_text(document);
}

}  // namespace kw
