// `kerfwright pin`: what is pinned and lent, let go, and what lending a machine means.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said, tests::setup_of;

namespace {

// A router that can cut every joint, beside the saw.
Json with_router() {
    Json job = tests::sample_json();
    job["machines"].push_back(Json{{"name", "router"}, {"kind", "router table"}});
    job["cutters"].push_back(
        Json{{"name", "quarter bit"}, {"kind", "bit"}, {"machine", "router"}, {"kerf", "1/4"}});
    return job;
}

}  // namespace

TEST_CASE("`pin` alone lists what is pinned and lent, and --free lets all of it go") {
    const Bench bench;
    const std::string before = bench.text();
    CHECK(bench.run({"pin", bench.job()}).out == "Nothing is pinned, and every machine is here.\n");
    CHECK(bench.run({"pin", bench.job(), "--free"}).out == "Nothing is pinned, and every machine is here.\n");
    CHECK(bench.text() == before);
    REQUIRE(bench.run({"pin", bench.job(), "--setup", setup_of(bench, "groove"), "--first"}).status == 0);
    REQUIRE(bench.run({"pin", bench.job(), "--setup", setup_of(bench, "crosscut to length: sides"), "--last"})
                .status == 0);
    REQUIRE(bench.run({"pin", bench.job(), "--away", "chop"}).status == 0);
    const Said listed = bench.run({"pin", bench.job()});
    CHECK(listed.status == 0);
    const std::string groove = setup_of(bench, "groove");
    CHECK(listed.out.rfind("Wanted first\n  " + groove + "  groove", 0) == 0);
    // On a machine that is away it waits for it.
    CHECK(listed.out.find("Wanted last\n  (again when `chop` is back)  crosscut to length on chop, from ") !=
          std::string::npos);
    const std::string plan = bench.run({"plan", bench.job()}).out;
    CHECK(
        plan.find("  order: while `chop` is away its pin does not hold; back, it does again: crosscut to ") !=
        std::string::npos);
    CHECK(plan.find("saw, ripping blade, miter gauge or sled, with a stop on it\n") != std::string::npos);
    CHECK(listed.out.find("Lent out\n  chop\n") != std::string::npos);
    const Said freed = bench.run({"pin", bench.job(), "--free"});
    CHECK(freed.status == 0);
    CHECK(freed.out.rfind("To do, in order: about ", 0) == 0);
    CHECK(bench.read() == Json::parse(before));
    CHECK(bench.run({"pin", bench.job(), "--free", "--away", "chop"}).status == 2);
}

TEST_CASE("a setup that is not there is refused, though a machine is lent in the same breath") {
    const Bench bench;
    const std::string before = bench.text();
    const Said said = bench.run({"pin", bench.job(), "--setup", "S99", "--first", "--away", "chop"});
    CHECK(said.status == 1);
    CHECK(said.err == bench.job() + ": there is no such setup in the plan\n");
    CHECK(bench.text() == before);
}

TEST_CASE("a machine without which nothing goes is not lent out, and that is said in two sentences") {
    const Bench bench;
    const std::string before = bench.text();
    const Said said = bench.run({"pin", bench.job(), "--away", "saw"});
    CHECK(said.status == 1);
    CHECK(said.err == bench.job() +
                          ": `saw` can't be lent out: nothing else in the shop cuts the joints of `seeds` as "
                          "they are asked "
                          "for. List another machine, with a cutter on it that can, or leave `saw` here\n");
    CHECK(bench.text() == before);
}

TEST_CASE(
    "lending out the machine of a joint that was begun says that it is planned and tested anew elsewhere") {
    const Bench bench;
    bench.write(with_router());
    const std::string setup = setup_of(bench, "locking rabbet: side dado");
    REQUIRE(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).err == "");
    const Said lent = bench.run({"pin", bench.job(), "--away", "router"});
    REQUIRE(lent.err == "");
    const std::string note =
        "  locking rabbet (seeds): was locked on `router`, which is away: it is planned anew on `saw`, and "
        "is "
        "tested and locked there before its parts run\n";
    CHECK(lent.out.find(note) != std::string::npos);
    CHECK(lent.out.find("no longer planned") == std::string::npos);
    CHECK(bench.run({"plan", bench.job()}).out.find(note) != std::string::npos);
    CHECK(bench.run({"pin", bench.job(), "--back", "router"}).out.find("planned anew") == std::string::npos);
}

TEST_CASE("of two saws one is taken back and the other lent out in one breath") {
    const Bench bench;
    Json job = tests::sample_json();
    job["machines"].push_back(Json{{"name", "other saw"}, {"kind", "table saw"}});
    for (Json cutter : Json(job["cutters"])) {
        cutter["machine"] = "other saw";
        cutter["name"] = "other " + cutter["name"].get<std::string>();
        job["cutters"].push_back(cutter);
    }
    bench.write(job);
    REQUIRE(bench.run({"pin", bench.job(), "--away", "saw"}).err == "");
    CHECK(bench.run({"pin", bench.job(), "--away", "other saw"}).status == 1);
    const Said swapped = bench.run({"pin", bench.job(), "--away", "other saw", "--back", "saw"});
    CHECK(swapped.err == "");
    CHECK(swapped.out.find("other saw: ") == std::string::npos);
    CHECK(bench.run({"pin", bench.job()}).out == "Lent out\n  other saw\n");
}
