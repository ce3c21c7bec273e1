// The shop's file on the command line: taught by a lock, listed, put right and forgotten.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::Said, tests::side_dado;

TEST_CASE("a lock writes what it taught into the shop's file; `shop` lists it, corrects it and forgets it") {
    const Bench bench;
    CHECK(bench.run({"shop"}).out.rfind("Nothing is learned yet", 0) == 0);
    const std::string setup = side_dado(bench);
    const Said fit = bench.run({"fit", bench.job(), "--setup", setup, "--read", "dado_depth=5.95 mm",
                                "--read", "lip=6.0 mm", "--read", "face_step=0.05 mm", "--save"});
    CHECK(fit.err == "");
    REQUIRE(fit.status == 0);
    CHECK(bench.run({"lock", bench.job(), "--setup", setup, "--anyway"}).status == 0);
    REQUIRE(std::filesystem::exists(bench.shop()));
    const std::string listed = bench.run({"shop"}).out;
    CHECK(listed.find("1  saw, quarter stack of 6.35 mm: the fence stands 0.1") != std::string::npos);
    // Nobody has said yet in which unit this shop reads.
    CHECK(listed.find(" (0.00") != std::string::npos);
    CHECK(bench.run({"shop", "--unit", "in"}).out.find(" (0.00") == std::string::npos);
    // So a bare number is not taken as one of them.
    const Said bare = bench.run({"shop", "--correct", "1=0.005"});
    CHECK(bare.status == 1);
    CHECK(bare.err.find("--correct: 0.005 of what?") != std::string::npos);
    CHECK(bench.run({"shop"}).out == listed);
    CHECK(bench.run({"shop", "--unit", "in", "--correct", "1=0.005"}).status == 0);
    CHECK(bench.run({"shop", "--correct", "1=0.3 mm"}).out.find("as you said") != std::string::npos);
    CHECK(bench.run({"shop", "--forget", "9"}).status == 1);
    const std::string left = bench.run({"shop", "--forget", "1"}).out;
    CHECK(left.find("as you said") == std::string::npos);
}

TEST_CASE("a shop's file that can't be read is said, with its place, and is left as it was") {
    const Bench bench;
    std::ofstream(bench.shop())
        << R"({"format": "kerfwright-shop", "lessons": [{"machine": "saw", "spread": -1}]})";
    const Said said = bench.run({"plan", bench.job()});
    CHECK(said.status == 1);
    CHECK(said.err.find("/lessons/0/spread") != std::string::npos);
    std::ostringstream kept;
    kept << std::ifstream(bench.shop()).rdbuf();
    CHECK(kept.str().find("-1") != std::string::npos);
}

TEST_CASE("a reading that contradicts the others is refused with status 1, and taken with --sure") {
    const Bench bench;
    std::vector<std::string> fit = {"fit",    bench.job(),          "--setup", side_dado(bench),
                                    "--read", "dado_width=6.35 mm", "--read",  "tongue_thickness=6.35 mm",
                                    "--read", "fit=0.3 mm"};
    const Said asked = bench.run(fit);
    CHECK(asked.status == 1);
    CHECK(asked.err.find("--sure") != std::string::npos);
    fit.emplace_back("--sure");
    const Said taken = bench.run(fit);
    CHECK(taken.status == 0);
    CHECK(taken.out.find("Not kept: --save") != std::string::npos);
}

TEST_CASE(
    "`ran` ticks a setup off, whole or by part, `lost` begins a part anew, and both say what comes next") {
    const Bench bench;
    const Said first = bench.run({"ran", bench.job(), "--setup", "S1"});
    CHECK(first.status == 0);
    CHECK(first.out.find("\nNext: S2 (") != std::string::npos);
    CHECK(first.out.find(" setups after that; all that is left takes about ") != std::string::npos);
    CHECK(bench.run({"ran", bench.job(), "--setup", "S2", "--part", "seeds.1.side_left"})
              .out.find("\nNext: S2 (") != std::string::npos);
    const Said lost = bench.run({"lost", bench.job(), "--part", "seeds.1.side_left"});
    CHECK(lost.status == 0);
    CHECK(lost.out.find("Marked as spoilt: seeds.1.side_left; another piece of it begins at the board.\n") ==
          0);
    CHECK(lost.out.find("\n  seeds.1.side_left goes through S1, S2") != std::string::npos);
    CHECK(lost.out.find("Next: S1 (rip to width: sides and fronts), 1 cut, saw: ") != std::string::npos);
    const Said part = bench.run({"lost", bench.job(), "--part", "seeds.9.side"});
    CHECK(part.status == 1);
    CHECK(part.err.find("there is no part `seeds.9.side`") != std::string::npos);
    CHECK(bench.run({"ran", bench.job(), "--setup", "S99"}).err.find("there is no setup `S99`") !=
          std::string::npos);
    CHECK(bench.run({"ran", bench.job(), "--setup", "S2", "--part", "seeds.1.bottom"})
              .err.find("no part `seeds.1.bottom` goes through S2") != std::string::npos);
}

TEST_CASE("a lock before its parts are cut to size on the same saw says that it will have to be set again") {
    const Bench bench;
    const Said lock = bench.run({"lock", bench.job(), "--setup", side_dado(bench), "--anyway"});
    CHECK(lock.status == 0);
    CHECK(lock.out.find("it will have to be set again") != std::string::npos);
}

TEST_CASE("what things take in this shop stands in its file, for every job that does not say") {
    const Bench bench;
    const std::string usual = bench.run({"plan", bench.job(), "--explain"}).out;
    CHECK(usual.find("cutter 15:00") != std::string::npos);
    std::ofstream(bench.shop()) << R"({"format": "kerfwright-shop", "times": {"cutter": 120, "pass": 7}})";
    const std::string quick = bench.run({"plan", bench.job(), "--explain"}).out;
    CHECK(quick.find("cutter 2:00") != std::string::npos);
    CHECK(quick.find("cutter 15:00") == std::string::npos);
    CHECK(quick.find("6 cuts 0:42") != std::string::npos);
}

TEST_CASE("whoever measures to the far side of the cutter reads the fence farther off by the kerf") {
    const Bench bench;
    const auto fence_line = [&] {
        const std::string plan = bench.run({"plan", bench.job()}).out, setup = side_dado(bench);
        const std::size_t at = plan.find("      fence ", plan.find(setup + "  locking rabbet: side dado"));
        return plan.substr(at, plan.find('\n', at) - at);
    };
    const auto inches = [](const std::string& line) { return std::stod(line.substr(line.find('(') + 1)); };
    const std::string near = fence_line();
    CHECK(near.find("to the near side of the cutter") != std::string::npos);
    std::ofstream(bench.shop())
        << R"({"format": "kerfwright-shop", "preferences": {"fence_to": "far side"}})";
    const std::string far = fence_line();
    CHECK(far.find("to the far side of the cutter") != std::string::npos);
    CHECK(inches(far) - inches(near) == doctest::Approx(0.25).epsilon(0.005));  // the demo's quarter stack
}
