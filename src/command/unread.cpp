#include "command/unread.h"

#include "file/unread.h"

namespace kw {
namespace {

// Nobody reads on from there: one that is misspelt so often is misspelt alike.
constexpr std::size_t most_told = 20;

void add(const std::string& file, const std::string& text, const std::string& called,
         std::vector<Problem> (*unread_in)(const Json&), std::vector<UnreadField>& all) {
    const auto json = parse_json(text);
    if (!json) return;
    const auto shared = std::make_shared<const std::string>(text);
    std::vector<Problem> unread = unread_in(*json);
    if (unread.size() > most_told) {
        const std::size_t more = unread.size() - most_told;
        unread.resize(most_told + 1);
        unread.back().why = Message::of("from here on nothing reads ", std::to_string(more),
                                        more == 1 ? " more" : " more of them");
        unread.back().remedy = {};
    }
    std::vector<std::string> pointers;
    for (const Problem& problem : unread) pointers.push_back(problem.pointer);
    const std::vector<Position> places = locate_names(text, pointers);
    for (std::size_t i = 0; i < unread.size(); ++i) {
        const Problem& problem = unread[i];
        const Position at = places[i];
        all.push_back(
            {file, shared, FileError{at, problem.why, problem.remedy},
             Note{Level::note,
                  called + "line " + std::to_string(at.line) + ", column " + std::to_string(at.column),
                  problem.remedy.empty() ? problem.why : problem.why + Message::of("; ") + problem.remedy}});
    }
}

}  // namespace

std::vector<UnreadField> unread_fields(const std::string& job, const std::string& job_text,
                                       const std::string& shop) {
    std::vector<UnreadField> all;
    add(job, job_text, {}, unread_in_job, all);
    if (shop.empty()) return all;
    if (const auto text = read_file(shop))
        add(shop, *text, std::filesystem::path(shop).filename().string() + ", ", unread_in_shop, all);
    return all;
}

std::vector<Note> notes_of(const std::vector<UnreadField>& unread) {
    std::vector<Note> notes;
    for (const UnreadField& one : unread) notes.push_back(one.note);
    return notes;
}

std::string report(const std::vector<UnreadField>& unread) {
    std::string all;
    for (const UnreadField& one : unread) all += report(one.file, *one.text, one.error);
    return all;
}

}  // namespace kw
