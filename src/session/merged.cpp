#include "session/merged.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

namespace kw {
namespace {

using Merged = tl::expected<Json, std::string>;

Merged merge(const Json& base, const Json& theirs, const Json& mine, const std::string& pointer);

// As a step of a JSON pointer (RFC 6901).
std::string step_to(const std::string& key) { return (Json::json_pointer() / key).to_string(); }

// A field that is not there is null; those of the file come in its own sequence.
Merged merge_objects(const Json& base, const Json& theirs, const Json& mine, const std::string& pointer) {
    const auto at = [](const Json& object, const std::string& key) {
        return object.contains(key) ? object[key] : Json();
    };
    Json out = Json::object();
    for (const Json* object : {&theirs, &mine})
        for (const auto& [key, value] : object->items()) {
            if (object == &mine && theirs.contains(key)) continue;
            auto field = merge(at(base, key), at(theirs, key), at(mine, key), pointer + step_to(key));
            if (!field) return field;
            if (!field->is_null()) out[key] = std::move(*field);
        }
    return out;
}

const Json* named(const Json& list, const std::string& name) {
    for (const Json& element : list)
        if (element["name"] == name) return &element;
    return nullptr;
}

// Where it stands in `mine`, or else in `theirs`.
std::ptrdiff_t place_of(const std::string& name, const Json& mine, const Json& theirs) {
    const auto is_it = [&](const Json& element) { return element["name"] == name; };
    const auto here = std::find_if(mine.begin(), mine.end(), is_it);
    return here != mine.end() ? here - mine.begin()
                              : std::find_if(theirs.begin(), theirs.end(), is_it) - theirs.begin();
}

using Names = std::vector<std::string>;

// In their sequence; nothing where one has no name, or the same as another.
std::optional<Names> names_in(const Json& list) {
    Names names;
    for (const Json& element : list) {
        if (!element.is_object() || !element.contains("name") || !element["name"].is_string())
            return std::nullopt;
        names.push_back(element["name"]);
        if (std::count(names.begin(), names.end(), names.back()) > 1) return std::nullopt;
    }
    return names;
}

Names those_in(const Names& names, const Names& others) {
    Names out;
    std::copy_if(names.begin(), names.end(), std::back_inserter(out), [&](const std::string& name) {
        return std::find(others.begin(), others.end(), name) != others.end();
    });
    return out;
}

// In the sequence of the one who has changed it, what only the other has at the end. Nothing where both have changed it.
std::optional<Names> sequence_of(const Names& base, const Names& theirs, const Names& mine) {
    const auto moved = [&](const Names& names) { return those_in(names, base) != those_in(base, names); };
    if (moved(theirs) && moved(mine)) return std::nullopt;
    const Names &first = moved(mine) ? mine : theirs, &second = moved(mine) ? theirs : mine;
    Names all = first;
    for (const std::string& name : second)
        if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
    return all;
}

// Drawers, boards, cutters: told apart by their names, whatever their sequence. One that was renamed is another.
Merged merge_named(const Json& base, const Json& theirs, const Json& mine, const Names& sequence,
                   const std::string& pointer) {
    Json out = Json::array();
    const auto absent = Json();
    const auto in = [&](const Json& list, const std::string& name) -> const Json& {
        const Json* found = named(list, name);
        return found ? *found : absent;
    };
    for (const std::string& name : sequence) {
        const Json &was = in(base, name), &is = in(theirs, name), &here = in(mine, name);
        auto element = merge(was, is, here, pointer + "/" + std::to_string(place_of(name, mine, theirs)));
        if (!element) return element;
        if (!element->is_null()) out.push_back(std::move(*element));
    }
    return out;
}

Merged merge_lists(const Json& base, const Json& theirs, const Json& mine, const std::string& pointer) {
    const auto was = names_in(base), is = names_in(theirs), here = names_in(mine);
    if (!was || !is || !here) return tl::unexpected(pointer);
    const auto sequence = sequence_of(*was, *is, *here);
    return sequence ? merge_named(base, theirs, mine, *sequence, pointer) : tl::unexpected(pointer);
}

// The entries of `all` that are not in `those`, each as often as it is more often in `all`: the later ones of several that are alike.
Json without(const Json& all, const Json& those) {
    Json left = all;
    for (const Json& entry : those)
        if (const auto found = std::find(left.begin(), left.end(), entry); found != left.end())
            left.erase(found);
    return left;
}

bool is_together(const Json& entry) { return entry.is_object() && entry.value("together", false); }

// What was told together with an entry that is taken out is told by itself, from its first on.
void take_out(Json& log, const Json& entry) {
    for (std::size_t i = log.size(); i-- > 0;) {
        if (log[i] != entry) continue;
        if (!is_together(entry) && i + 1 < log.size() && is_together(log[i + 1]))
            log[i + 1].erase("together");
        log.erase(i);
        return;
    }
}

// Which entries of `mine` base does not have: the later ones of several that are alike.
std::vector<bool> are_added(const Json& mine, const Json& base) {
    Json left = base;
    std::vector<bool> added;
    for (const Json& entry : mine) {
        const auto found = std::find(left.begin(), left.end(), entry);
        added.push_back(found == left.end());
        if (found != left.end()) left.erase(found);
    }
    return added;
}

// Behind `before` (null: at the beginning), or at the end where that is gone.
void insert_behind(Json& log, const Json* before, Json entry) {
    std::size_t at = before ? log.size() : 0;
    while (before && at > 0 && log[at - 1] != *before) --at;
    const bool is_gone = before && at == 0;
    const auto place = is_gone ? log.end() : log.begin() + static_cast<std::ptrdiff_t>(at);
    log.insert(place, std::move(entry));
}

Json merge_logs(const Json& base, const Json& theirs, const Json& mine) {
    Json out = theirs;
    const Json taken_back = without(base, mine);
    for (std::size_t i = taken_back.size(); i-- > 0;) take_out(out, taken_back[i]);
    const std::vector<bool> added = are_added(mine, base);
    const auto last_known = std::find(added.rbegin(), added.rend(), false);
    const auto behind = static_cast<std::size_t>(added.rend() - last_known);
    for (std::size_t i = 0; i < mine.size(); ++i) {
        if (!added[i]) continue;
        Json entry = mine[i];
        // What was told stays told where it was taken out and is there again by the way back; all else comes last.
        if (i < behind) {
            insert_behind(out, i > 0 ? &mine[i - 1] : nullptr, std::move(entry));
            continue;
        }
        // An entry that belonged to what was the last before is not one with what came in between.
        if (i == behind && is_together(entry) && theirs != base) entry.erase("together");
        out.push_back(std::move(entry));
    }
    return out;
}

Merged merge(const Json& base, const Json& theirs, const Json& mine, const std::string& pointer) {
    if (theirs == base || theirs == mine) return mine;
    if (mine == base) return theirs;
    if (base.is_object() && theirs.is_object() && mine.is_object())
        return merge_objects(base, theirs, mine, pointer);
    if (pointer == "/log" && base.is_null()) return merge(Json::array(), theirs, mine, pointer);
    const bool are_lists = base.is_array() && theirs.is_array() && mine.is_array();
    if (are_lists && pointer == "/log") return merge_logs(base, theirs, mine);
    if (are_lists) return merge_lists(base, theirs, mine, pointer);
    return tl::unexpected(pointer);
}

using Documents = std::vector<std::shared_ptr<const Json>>;

// From the newest back, as far as they can be.
Documents taken_up(const Documents& all, const Json& base, const Json& theirs) {
    Documents out;
    for (std::size_t i = all.size(); i-- > 0;) {
        auto one = merged(base, theirs, *all[i]);
        if (!one) break;
        out.push_back(std::make_shared<const Json>(std::move(*one)));
    }
    std::reverse(out.begin(), out.end());
    return out;
}

}  // namespace

Merged merged(const Json& base, const Json& theirs, const Json& mine) {
    return merge(base, theirs, mine, "");
}

tl::expected<Session, std::string> taken_up(Session session, const Json& base, const Json& theirs) {
    auto document = merged(base, theirs, session.document);
    if (!document) return tl::unexpected(document.error());
    session.document = std::move(*document);
    session.undo = taken_up(session.undo, base, theirs);
    session.redo = taken_up(session.redo, base, theirs);
    return session;
}

}  // namespace kw
