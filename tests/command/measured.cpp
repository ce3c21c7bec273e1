// Openings and finished drawers on the command line.
#include <doctest/doctest.h>

#include "command/bench.h"
#include "session/measured.h"

using namespace kw;
using tests::Bench, tests::Said;

TEST_CASE("`survey` keeps what was read only when asked to, and says what it says of the opening") {
    const Bench bench;
    const std::string before = bench.text();
    const std::vector<std::string> read{"survey", bench.job(),          "--drawer", "seeds",
                                        "--read", "width_back=14 5/16", "--read",   "width_top=14 3/8"};
    const Said tried = bench.run(read);
    CHECK(tried.status == 0);
    CHECK(tried.out.find("seeds: opening 14 5/16 × 5 1/4 × 18 in, box 13 5/16 × 4 1/4 × 17 3/4 in\n") == 0);
    CHECK(tried.out.find("1/16 in wider at the top than at the back") != std::string::npos);
    CHECK(tried.out.find("Not kept: --save") != std::string::npos);
    CHECK(bench.text() == before);
    std::vector<std::string> save = read;
    save.emplace_back("--save");
    const Said kept = bench.run(save);
    CHECK(kept.status == 0);
    CHECK(kept.out.find("Kept in the job.") != std::string::npos);
    CHECK(bench.read()["drawers"][0]["opening"]["survey"]["width_back"] == "14 5/16");
    CHECK(bench.run({"survey", bench.job()}).out.find("width_back") != std::string::npos);
    // The plan tells it too.
    CHECK(bench.run({"plan", bench.job()}).out.find("1/16 in wider at the top than at the back") !=
          std::string::npos);
    const Said wrong =
        bench.run({"survey", bench.job(), "--drawer", "seeds", "--read", "width_back=1 mm", "--save"});
    CHECK(wrong.status == 1);
    CHECK(bench.read()["drawers"][0]["opening"]["survey"]["width_back"] == "14 5/16");
}

TEST_CASE("`assemble` says what each drawer's diagonals should be, and what to do where they are not") {
    const Bench bench;
    const Said all = bench.run({"assemble", bench.job()});
    CHECK(all.out.find("seeds 1: each diagonal of a square box is 22 7/32 in +\nseeds 2: ") == 0);
    const Said skew = bench.run({"assemble", bench.job(), "--drawer", "seeds", "--copy", "2", "--read",
                                 "from_front_left=22 5/16", "--read", "from_front_right=22 1/8", "--save"});
    CHECK(skew.status == 0);
    CHECK(skew.out.find("push the back right corner toward the front left one") != std::string::npos);
    CHECK(bench.read()["drawers"][0]["assembled"]["2"]["from_front_right"] == "22 1/8");
    CHECK(bench.run({"check", bench.job()}).err.empty());
    CHECK(bench.run({"assemble", bench.job(), "--drawer", "seeds", "--copy", "3", "--read", "left_top=1/8"})
              .err == bench.job() + ": of `seeds` there are 2: there is no number 3\n");
    CHECK(bench.run({"assemble", bench.job(), "--read", "left_top=1/8"}).status == 2);
}

TEST_CASE(
    "a drawer whose front was kept though it is short is put together by what it is, and its like is not") {
    const Bench bench;
    const std::string front = "seeds.1.front";
    bench.run({"lock", bench.job(), "--setup", tests::side_dado(bench), "--anyway"});
    for (const char* work : {"rip to width: sides and fronts", "crosscut to length: fronts"})
        CHECK(bench.run({"ran", bench.job(), "--setup", tests::setup_of(bench, work), "--part", front}).err ==
              "");
    CHECK(bench.run({"assemble", bench.job(), "--order"}).out.find("seeds, in this order:\n") == 0);
    Json job = bench.read();
    for (Json& entry : job["log"])
        if (entry.value("key", "") == "crosscut") entry["readings"]["size"] = "12 3/4 in";
    bench.write(job);
    const std::string said = bench.run({"assemble", bench.job()}).out;
    CHECK(said.find("seeds 1: as its parts were cut, the box is 13 17/64 in + wide in front and 13 3/8 in") ==
          0);
    CHECK(said.find("\nseeds 2: each diagonal of a square box is 22 7/32 in +") != std::string::npos);
    const std::string order = bench.run({"assemble", bench.job(), "--order"}).out;
    CHECK(order.find("seeds 1, in this order:\n") != std::string::npos);
    CHECK(order.find("seeds 2, in this order:\n") != std::string::npos);
    const std::string one =
        bench.run({"assemble", bench.job(), "--order", "--drawer", "seeds", "--copy", "2"}).out;
    CHECK(one.find("seeds 2, in this order:\n") == 0);
    CHECK(one.find("seeds 1") == std::string::npos);
}

TEST_CASE("help explains every reading that can be given") {
    const Bench bench;
    for (const Measured what : {Measured::opening, Measured::assembled}) {
        const std::string help = bench.run({what == Measured::opening ? "survey" : "assemble", "--help"}).out;
        for (const std::string& name : measured_names(what)) {
            CAPTURE(name);
            const auto at = help.find("\n  " + name + "  ");
            REQUIRE(at != std::string::npos);
            CHECK(help.find('\n', at + 1) > at + name.size() + 10);
        }
    }
}

TEST_CASE("`assemble --order` says step by step how each drawer is put together") {
    const Bench bench;
    const Said said = bench.run({"assemble", bench.job(), "--order", "--drawer", "seeds"});
    CHECK(said.status == 0);
    CHECK(said.out.find("seeds, in this order:\n  1. Dry fit first") == 0);
    CHECK(said.out.find("\n  2. Finish the insides") != std::string::npos);
}
