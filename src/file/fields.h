#pragma once
// Reads the fields of one JSON object, and gathers everything that is wrong with them. Private to this folder.

#include <map>
#include <set>

#include <nlohmann/json.hpp>

#include "job/job.h"

namespace kw {

using Json = nlohmann::ordered_json;

// The fields that were asked for while a document was read, by their object's pointer: what is in an object and not
// among these, nothing reads.
using Asked = std::map<std::string, std::set<std::string>>;

class Fields {
public:
    // `json` may be null: then every field is missing. `asked`, if any, is added to.
    Fields(const Json* json, std::string at, Unit unit, std::vector<Problem>& problems,
           Asked* asked = nullptr);

    bool has(const std::string& name) const;
    const std::string& pointer() const { return at_; }
    const Json* json() const { return json_; }

    std::string text(const std::string& name, const std::string& fallback);
    std::string required_text(const std::string& name);
    std::vector<std::string> texts(const std::string& name);  // a list of them
    int count(const std::string& name, int fallback, int least, int most);
    std::vector<int> counts(const std::string& name, int least, int most);  // a list of them
    double number(const std::string& name, double fallback);
    bool truth(const std::string& name, bool fallback);

    // Lengths: a string as people write them, or a number in the job's unit. Negative ones are refused.
    Length length(const std::string& name, Length fallback);
    std::optional<Length> optional_length(const std::string& name);
    Length required_length(const std::string& name);  // and more than zero
    std::vector<Length> lengths(const std::string& name);
    // Of which some may be left open: null, or an empty text.
    std::vector<std::optional<Length>> open_lengths(const std::string& name);
    // The same lengths as they were written, with the unit where none was: "1/8 in". Sums are left out.
    std::map<Length, std::string> as_written(const std::string& name);
    Length signed_length(const std::string& name, Length fallback);

    bool is_object(const std::string& name) const;
    // A member object; `required` says that it must be there. A missing one reads as empty.
    Fields object(const std::string& name, bool required = false);
    std::vector<Fields> array(const std::string& name, bool required = false);

    // One of these names; `lookup` gives nothing for a name that it does not know.
    template <class Lookup>
    auto one_of(const std::string& name, Lookup lookup, const std::vector<std::string_view>& names,
                typename decltype(lookup(std::string_view{}))::value_type fallback) {
        const std::string word = text(name, {});
        if (word.empty()) return fallback;
        if (const auto found = lookup(word)) return *found;
        blame(name, Message::say("file.no_such", Message::name("file.field.", name), word),
              Message::say("file.write", either_of(names)));
        return fallback;
    }

    void blame(const std::string& name, Message why, Message remedy);

private:
    const Json* find(const std::string& name) const;
    std::optional<Length> read(const Json& value, const std::string& name, bool allow_negative);

    const Json* json_;
    std::string at_;
    Unit unit_;
    std::vector<Problem>* problems_;
    Asked* asked_;
};

// A name as one step of a JSON pointer (RFC 6901: `~` is `~0`, `/` is `~1`).
std::string pointer_step(const std::string& name);

}  // namespace kw
