// What the command line tells the log, refuses to tell it, and takes back.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::left_side, tests::Said, tests::setup_of, tests::side_dado;

namespace {

Said fit(const Bench& bench, const std::string& setup, std::vector<std::string> more) {
    std::vector<std::string> all{"fit",    bench.job(),          "--setup", setup,
                                 "--read", "dado_depth=5.95 mm", "--read",  "lip=6.0 mm",
                                 "--read", "face_step=0.05 mm",  "--save"};
    all.insert(all.end(), more.begin(), more.end());
    return bench.run(all);
}

void refused(const Bench& bench, const std::vector<std::string>& command, const std::string& why) {
    const std::string before = bench.text();
    const Said said = bench.run(command);
    CHECK(said.status == 1);
    CHECK(said.err == bench.job() + ": " + why + "\n");
    CHECK(said.out.empty());
    CHECK(bench.text() == before);
}

}  // namespace

TEST_CASE("`ran` refuses what can't have gone through yet, says what comes first, and leaves the job alone") {
    const Bench bench;
    const std::string setup = side_dado(bench);
    const std::string rip = setup_of(bench, "rip to width: sides and fronts");
    const std::string yet =
        "`" + left_side + "` can't have gone through " + setup + " (locking rabbet: side dado) yet: ";
    refused(
        bench, {"ran", bench.job(), "--setup", setup, "--part", left_side},
        yet + "first comes " + rip + " (rip to width: sides and fronts); run it through " + rip + " first");
    refused(
        bench, {"ran", bench.job(), "--setup", setup},
        yet + "first comes " + rip + " (rip to width: sides and fronts); run it through " + rip + " first");
    const std::string crosscut = setup_of(bench, "crosscut to length: sides");
    CHECK(bench.run({"ran", bench.job(), "--setup", rip, "--part", left_side}).status == 0);
    // One side may go on, and the others not yet.
    const Said whole = bench.run({"ran", bench.job(), "--setup", crosscut});
    CHECK(whole.err.find(", or name with --part what has gone through\n") != std::string::npos);
    CHECK(bench.run({"ran", bench.job(), "--setup", crosscut, "--part", left_side}).status == 0);
    refused(bench, {"ran", bench.job(), "--setup", setup, "--part", left_side},
            yet + "it is not locked; cut the joint in scrap, test and lock " + setup + " first");
    CHECK(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).status == 0);
    const Said marked = bench.run({"ran", bench.job(), "--setup", setup, "--part", left_side});
    CHECK(marked.status == 0);
    CHECK(marked.out.rfind("Marked 1 end: ran through " + setup + " (locking rabbet: side dado): `" +
                               left_side + "` front end; 3 left there.\n",
                           0) == 0);
    CHECK(bench.run({"ran", bench.job(), "--setup", setup, "--part", left_side})
              .out.rfind("Nothing to mark: these have run through " + setup +
                             " (locking rabbet: side dado); 3 left there.\n",
                         0) == 0);
}

TEST_CASE("`ran` refuses a part that has come out too short, and names the command that marks it as spoilt") {
    const Bench bench;
    const std::string front = "seeds.1.front";
    CHECK(bench.run({"lock", bench.job(), "--setup", side_dado(bench), "--anyway"}).status == 0);
    for (const char* work : {"rip to width: sides and fronts", "crosscut to length: fronts"})
        CHECK(bench.run({"ran", bench.job(), "--setup", setup_of(bench, work), "--part", front}).err == "");
    const std::string groove = setup_of(bench, "groove");
    CHECK(bench.run({"lock", bench.job(), "--setup", groove, "--anyway"}).status == 0);
    Json job = bench.read();
    for (Json& entry : job["log"])
        if (entry.value("key", "") == "crosscut") entry["readings"]["size"] = "12 in";
    bench.write(job);
    const Said said = bench.run({"ran", bench.job(), "--setup", groove, "--part", front});
    CHECK(said.status == 1);
    CHECK(said.err.find("too short by") != std::string::npos);
    CHECK(said.err.find("; `kerfwright lost " + bench.job() + " --part " + front + "` marks it\n") !=
          std::string::npos);
    CHECK(bench.run({"lost", bench.job(), "--part", front}).status == 0);
}

TEST_CASE("what is told leaves a job file that was written by hand as it is laid out, but for the log") {
    const Bench bench;
    const std::string before = bench.text(), log = "\"log\": [";
    REQUIRE(before != to_text(bench.read()));
    const std::string rip = setup_of(bench, "rip to width: sides and fronts");
    CHECK(bench.run({"ran", bench.job(), "--setup", rip}).status == 0);
    const std::string after = bench.text();
    CHECK(bench.read()["log"].size() == 6);
    CHECK(after.substr(0, after.find(log)) == before.substr(0, before.find(log)));
    CHECK(after.substr(after.rfind(']')) == before.substr(before.rfind(']')));
    CHECK(bench.run({"undo", bench.job()}).status == 0);
    CHECK(bench.text() == before);
}

TEST_CASE("a joint that was never tested is locked with --anyway only") {
    const Bench bench;
    const std::string setup = side_dado(bench);
    refused(bench, {"lock", bench.job(), "--setup", setup},
            "not locked: " + setup +
                " was never tested; cut its joint in scrap and tell `kerfwright fit`, --anyway locks it all "
                "the same");
    const Said anyway = bench.run({"lock", bench.job(), "--setup", setup, "--anyway"});
    CHECK(anyway.status == 0);
    CHECK(anyway.out.find("Locked untested.") != std::string::npos);
}

TEST_CASE("a control that was moved is told once") {
    const Bench bench;
    refused(bench,
            {"fit", bench.job(), "--setup", side_dado(bench), "--moved", "fence=0.1 mm", "--moved",
             "fence=0.2 mm", "--read", "lip=6.0 mm", "--save"},
            "`fence` is told twice; tell how far it was moved in all");
    refused(bench,
            {"fit", bench.job(), "--setup", side_dado(bench), "--read", "lip=6.0 mm", "--read", "lip=6.1 mm",
             "--save"},
            "`lip` is told twice; tell it once, and what was measured again by itself");
}

TEST_CASE("`undo` takes back what was told last, one command after another, until the log is empty") {
    const Bench bench;
    const std::string setup = side_dado(bench);
    refused(bench, {"undo", bench.job()}, "nothing to take back: the log is empty");
    std::vector<std::string> texts{bench.text()};
    const auto tell = [&](const Said& said) {
        REQUIRE(said.err == "");
        REQUIRE(said.status == 0);
        texts.push_back(bench.text());
    };
    tell(fit(bench, setup, {}));
    tell(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}));
    tell(bench.run({"ran", bench.job(), "--setup", "S1"}));
    tell(bench.run({"lost", bench.job(), "--part", left_side}));
    const auto took_back = [&](const std::string& words) {
        const Said said = bench.run({"undo", bench.job()});
        CHECK(said.status == 0);
        CHECK(said.out.rfind("Took back: " + words + "\n", 0) == 0);
        texts.pop_back();
        CHECK(Json::parse(bench.text()) == Json::parse(texts.back()));
    };
    took_back("lost: `" + left_side + "`");
    took_back("ran through S1 (rip to width: sides and fronts): `" + left_side +
              "` bottom edge, `seeds.1.side_right` bottom edge, `seeds.1.front` bottom edge, "
              "`seeds.2.side_left` bottom edge and 2 more");
    took_back("locked " + setup + " (locking rabbet: side dado)");
    took_back("test cut at " + setup +
              " (locking rabbet: side dado): dado depth 0.234 in +, lip 0.236 in, face step 0.002 in");
    refused(bench, {"undo", bench.job()}, "nothing to take back: the log is empty");
}

TEST_CASE("what a lock taught the shop is taken back with it, and what it taught before stands again") {
    const Bench bench;
    const std::string setup = side_dado(bench);
    const auto lessons = [&] {
        std::ostringstream all;
        all << std::ifstream(bench.shop()).rdbuf();
        return Json::parse(all.str())["lessons"];
    };
    REQUIRE(fit(bench, setup, {}).status == 0);
    REQUIRE(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).status == 0);
    const Json first = lessons();
    REQUIRE_FALSE(first.empty());
    REQUIRE(fit(bench, setup, {"--fresh-end", "--moved", "height=0.05 mm", "--sure"}).status == 0);
    REQUIRE(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).status == 0);
    REQUIRE(lessons() != first);
    CHECK(bench.run({"undo", bench.job()}).out.find("What that taught the shop is as it was before.") !=
          std::string::npos);
    CHECK(bench.run({"undo", bench.job()}).status == 0);
    CHECK(lessons() == first);
    CHECK(bench.run({"undo", bench.job()}).status == 0);
    CHECK(lessons().empty());
}

TEST_CASE("parts that were found lost at a lock are taken back with the lock") {
    const Bench bench;
    const std::string setup = side_dado(bench);
    for (const char* size : {"rip to width: sides and fronts", "crosscut to length: sides"})
        REQUIRE(
            bench.run({"ran", bench.job(), "--setup", setup_of(bench, size), "--part", left_side}).status ==
            0);
    REQUIRE(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).status == 0);
    REQUIRE(bench.run({"ran", bench.job(), "--setup", setup, "--part", left_side}).status == 0);
    REQUIRE(
        bench.run({"fit", bench.job(), "--setup", setup, "--read", "dado_depth=6.6 mm", "--sure", "--save"})
            .status == 0);
    const Json before = bench.read();
    REQUIRE(
        bench.run({"lock", bench.job(), "--setup", setup, "--moved", "height=-0.6 mm", "--anyway"}).status ==
        0);
    REQUIRE(bench.read()["log"].back()["kind"] == "lost");
    CHECK(bench.run({"undo", bench.job()})
              .out.find("Took back: locked " + setup + " (locking rabbet: side dado); lost with it: `" +
                        left_side + "`\n") == 0);
    CHECK(bench.read() == before);
}

TEST_CASE("two parts that were lost at once are taken back at once") {
    const Bench bench;
    const std::string before = bench.text();
    REQUIRE(bench.run({"lost", bench.job(), "--part", left_side, "--part", "seeds.2.back"}).status == 0);
    REQUIRE(bench.read()["log"].size() == 2);
    CHECK(bench.run({"undo", bench.job()})
              .out.rfind("Took back: lost: `" + left_side + "`, `seeds.2.back`\n", 0) == 0);
    CHECK(bench.read() == Json::parse(before));
}
