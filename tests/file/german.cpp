// What is wrong with a file, told in German.
#include <doctest/doctest.h>

#include <set>

#include "no_english.h"
#include "sample_job.h"

using namespace kw;

namespace {

const Locale german(Graduation::mm_0_1, Language::german);

std::string said(const std::string& from, const std::string& to) {
    std::string text = tests::file_text("seed_cabinet.json");
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    const auto job = read_job(parse_json(text.replace(at, from.size(), to)).value());
    REQUIRE_FALSE(job);
    return job.error().front().why.text(german) + " | " + job.error().front().remedy.text(german);
}

}  // namespace

TEST_CASE("a length that can't be read, and one that is missing, are told of in German") {
    CHECK(said("\"14 3/8\"", "\"14 3/0\"") ==
          "„14 3/0“: unter dem Bruchstrich steht null, beim Zeichen 6 | "
          "wie auf der Stückliste schreiben: \"10 1/16 in\" oder \"12,7 mm\"");
    CHECK(said("\"thickness\": \"12.1 mm\", ", "") == "„Dicke“ fehlt | messen und hier eintragen");
    CHECK(said("\"kind\": \"plywood\"", "\"kind\": \"paper\"") ==
          "Art „paper“ gibt es nicht | „plywood“, „solid“ oder „panel“ schreiben");
    CHECK(said("\"kerf\": \"1/4\"", "\"kerf\": \"1/4\", \"shims\": [\"1/8\", \"3/16\"]") ==
          "die Passscheiben zusammen (7,9 mm +) sind dicker als der Nutsatz (6,4 mm −) | "
          "nur eintragen, was für diese Schnittbreite im Satz ist");
}

TEST_CASE("no field that is wrong has English left in its German") {
    const Json job = tests::sample_json(), fields = job.flatten();
    std::set<std::string> seen;
    for (const auto& [pointer, _] : fields.items())
        for (const Json& wrong : {Json(), Json(true), Json("x"), Json(""), Json(-3), Json(1e9), Json::array(),
                                  Json::object(), Json("0 mm")}) {
            Json changed = job;
            changed[Json::json_pointer(pointer)] = wrong;
            std::vector<Problem> problems;
            read_job(changed, problems, nullptr);
            for (const Problem& problem : problems)
                for (const Message& message : {problem.why, problem.remedy}) {
                    const std::string text = message.text(german);
                    CAPTURE(text);
                    REQUIRE_FALSE(tests::sounds_english(text));
                    REQUIRE(text.find('`') == std::string::npos);
                    seen.insert(text);
                }
        }
    CHECK(seen.size() > 50);
}

TEST_CASE("a file that can't be saved is told of in German, with the system's reason") {
    const auto saved = save_file("/nowhere/at all/job.json", "{}");
    REQUIRE_FALSE(saved);
    CHECK(saved.error().why.text(german) ==
          "neben diese Datei lässt sich nichts schreiben: Datei oder Ordner nicht vorhanden");
}
