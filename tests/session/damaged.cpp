// Jobs with random wounds: refused with a place, or read; never a crash, never half a job.
#include <doctest/doctest.h>

#include <random>

#include "sample_job.h"
#include "session/session.h"

using namespace kw;

TEST_CASE("damaged jobs are refused or read, never worse") {
    const std::string good = tests::file_text("seed_cabinet.json");
    std::mt19937 random(3);
    for (int i = 0; i < 3000; ++i) {
        std::string text = good;
        const int wounds = 1 + static_cast<int>(random() % 3);
        for (int n = 0; n < wounds; ++n) {
            const std::size_t at = random() % text.size();
            if (random() % 2) text[at] = static_cast<char>(32 + random() % 95);
            else text.erase(at, 1 + random() % 8);
        }
        const auto json = parse_json(text);
        if (!json) {
            CHECK(json.error().position.line >= 1);
            continue;
        }
        const Session session = open_session(*json);
        CHECK((session.work != nullptr) == session.problems.empty());
        for (const Problem& problem : session.problems)
            CHECK_FALSE(report("job.json", text, to_file_error(problem, text, Graduation::in_64)).empty());
    }
}
