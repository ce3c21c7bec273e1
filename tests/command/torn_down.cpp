// A joint that was locked, and whose machine did something else before all its parts had run.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::left_side, tests::Said, tests::setup_of;

namespace {

// The groove is cut in one pass, by a stack that is made up to 6.50 mm with a shim of 0.15 mm.
struct Torn : Bench {
    std::string rip, groove, dado;
    Torn() {
        write(parse_json(tests::file_text("made_up_groove.json")).value());
        rip = setup_of(*this, "rip to width: sides and fronts");
        groove = setup_of(*this, "groove");
        dado = setup_of(*this, "locking rabbet: side dado");
    }
    Said tell(const std::string& what, const std::string& setup, std::vector<std::string> more = {}) const {
        std::vector<std::string> all{what, job(), "--setup", setup};
        all.insert(all.end(), more.begin(), more.end());
        return run(all);
    }
    void done(const std::string& what, const std::string& setup, std::vector<std::string> more = {}) const {
        const Said said = tell(what, setup, std::move(more));
        CAPTURE(said.err);
        REQUIRE(said.status == 0);
    }
    // The setup in the plan, to the next empty line.
    std::string planned(const std::string& setup) const {
        const std::string plan = run({"plan", job()}).out;
        const std::size_t from = plan.find("\n" + setup + "  ") + 1;
        return plan.substr(from, plan.find("\n\n", from) - from);
    }
    // The line of what is left.
    std::string left_to_do(const std::string& setup) const {
        const std::string plan = run({"plan", job()}).out;
        const std::size_t from = plan.find("  " + setup + " ", plan.find("Left to do"));
        return from == std::string::npos ? std::string() : plan.substr(from, plan.find('\n', from) - from);
    }
    // The groove is locked, and has run; a side of it is lost, and the saw has done something else since.
    void tear_down() const {
        done("ran", rip);
        done("lock", groove, {"--anyway"});
        done("ran", setup_of(*this, "crosscut to length: sides"));
        done("ran", groove);
        done("lock", dado, {"--anyway"});
        REQUIRE(run({"lost", job(), "--part", left_side}).status == 0);
    }
};

const std::string made_up = "quarter stack made up to 6.50 mm (shims 0.15 mm)";

}  // namespace

TEST_CASE("a stack that is made up for a joint is told with its shims after the lock as before") {
    const Torn shop;
    const auto json_of = [&] {
        const Json plan = Json::parse(shop.run({"plan", shop.job(), "--json"}).out);
        for (const Json& setup : plan["setups"])
            if (setup["id"] == shop.groove) return setup["put_on"].get<std::string>();
        return std::string();
    };
    CHECK(shop.planned(shop.groove).find("saw, " + made_up + ", rip fence") != std::string::npos);
    CHECK(json_of() == made_up);
    shop.done("ran", shop.rip);
    shop.done("lock", shop.groove, {"--anyway"});
    CHECK(shop.planned(shop.groove).find("saw, " + made_up + ", rip fence") != std::string::npos);
    CHECK(json_of() == made_up);
}

TEST_CASE("what is left says with which shims a stack is to be put on again") {
    const Torn shop;
    shop.tear_down();
    // The joint beside it is cut by the stack without the shim: there that is all that changes in it.
    CHECK(shop.left_to_do(shop.groove)
              .find("saw: set again as it was locked: the shims (put on with shims of "
                    "0.15 mm), the fence, the height, then a test cut") != std::string::npos);
    shop.done("ran", shop.rip, {"--part", left_side});
    CHECK(shop.left_to_do(shop.dado).find("the cutter") != std::string::npos);
    CHECK(shop.left_to_do(shop.dado).find("made up") == std::string::npos);
}

TEST_CASE("a stack that comes on a machine after another cutter is told with its shims") {
    const Torn shop;
    shop.done("ran", shop.rip);
    CHECK(shop.run({"pin", shop.job(), "--setup", shop.groove, "--first"})
              .out.find("change the cutter to " + made_up + ", the fence, the height") != std::string::npos);
}

TEST_CASE("a part goes through a setup that was torn down when it is set again, tested and locked") {
    const Torn shop;
    shop.tear_down();
    const std::vector<std::string> its{"--part", left_side};
    shop.done("ran", shop.rip, its);
    shop.done("ran", setup_of(shop, "crosscut to length: sides"), its);
    const std::string plan = shop.planned(shop.groove);
    CHECK(plan.rfind(shop.groove + "  groove  (was locked, then torn down)\n", 0) == 0);
    CHECK(plan.find("set it again as it was locked, and test first, in scrap of the same stock") !=
          std::string::npos);
    const std::string before = shop.text();
    const Said early = shop.tell("ran", shop.groove, its);
    CHECK(early.status == 1);
    CHECK(early.err == shop.job() + ": `" + left_side + "` can't have gone through " + shop.groove +
                           " (groove) yet: it was locked, then torn down; set it again as it was locked, "
                           "test and lock " +
                           shop.groove + " first; or tell that it ran before it was torn down\n");
    const Said untested = shop.tell("lock", shop.groove);
    CHECK(untested.status == 1);
    CHECK(untested.err ==
          shop.job() + ": not locked: " + shop.groove +
              " was torn down since it was locked; set it again as it was, cut its joint in scrap and tell "
              "`kerfwright fit`, --anyway locks it all the same\n");
    CHECK(shop.text() == before);
    shop.done("fit", shop.groove, {"--fresh-end", "--felt", "slides", "--save"});
    CHECK(shop.tell("ran", shop.groove, its).err.find("it is not locked; cut the joint in scrap") !=
          std::string::npos);
    shop.done("lock", shop.groove, {"--anyway"});
    CHECK(shop.planned(shop.groove).rfind(shop.groove + "  groove  (locked)\n", 0) == 0);
    shop.done("ran", shop.groove, its);
}

TEST_CASE("what tears down a locked setup says so, as long as some of its parts have not run") {
    const Torn shop;
    shop.done("ran", shop.rip);
    shop.done("lock", shop.groove, {"--anyway"});
    shop.done("ran", setup_of(shop, "crosscut to length: sides"));
    const Said torn = shop.tell("fit", shop.dado, {"--felt", "slides", "--save"});
    CHECK(torn.out.find("The saw no longer stands as locked for " + shop.groove + " (groove), with ") == 0);
    CHECK(torn.out.find(" still to run: it will have to be set again, and tested.\n") != std::string::npos);
    // It is said once.
    CHECK(shop.tell("lock", shop.dado, {"--anyway"}).out.find("no longer stands") == std::string::npos);
}

TEST_CASE("parts that ran before a setup was torn down can be told afterwards, without another lock") {
    const Torn shop;
    shop.done("ran", shop.rip);
    shop.done("lock", shop.groove, {"--anyway"});
    shop.done("ran", setup_of(shop, "crosscut to length: sides"));
    shop.done("lock", shop.dado, {"--anyway"});
    REQUIRE(shop.planned(shop.groove).find("torn down") != std::string::npos);
    const std::vector<std::string> its{"--part", left_side};
    CHECK(shop.tell("ran", shop.groove, its).status == 1);
    const Said told = shop.tell("ran", shop.groove, {"--part", left_side, "--before-torn-down"});
    CAPTURE(told.err);
    REQUIRE(told.status == 0);
    CHECK(told.out.find("Marked 1 end as run before " + shop.groove + " was torn down; ") == 0);
    // The log has it where it was told, behind the dado's lock, and it is what is taken back first.
    CHECK(Json::parse(shop.text())["log"].back().contains("late"));
    CHECK(shop.run({"undo", shop.job()}).out.find("Took back: ran through " + shop.groove + " (groove): ") ==
          0);
    REQUIRE(shop.tell("ran", shop.groove, {"--part", left_side, "--before-torn-down"}).status == 0);
    // Those that it is not told of are still to be set again for.
    CHECK(shop.planned(shop.groove).find("torn down") != std::string::npos);
    CHECK(shop.tell("ran", shop.groove, {"--before-torn-down"}).status == 0);
    CHECK(shop.planned(shop.groove).find("torn down") == std::string::npos);
}

TEST_CASE("a test of a setup that is set again says nothing of the parts that it cut as it was set before") {
    const Torn shop;
    Json job = tests::sample_json();
    job["fit"]["tolerance"]["fit"] = job["fit"]["tolerance"]["step"] = "0.03 mm";
    shop.write(job);
    const auto its = [&](const std::string& work) { return setup_of(shop, work); };
    const std::string dado = "locking rabbet: side dado";
    shop.done("ran", its("rip to width: sides"));
    shop.done("ran", its("crosscut to length: sides"));
    for (int i = 0; i < 3; ++i)
        shop.done("fit", its(dado),
                  {"--fresh-end", "--read", "dado_depth=5.85mm", "lip=5.85mm", "dado_width=6.35mm",
                   "tongue_thickness=6.25mm", "fit=0.1mm", "--save"});
    shop.done("lock", its(dado), {"--anyway"});
    shop.done("ran", its(dado), {"--part", left_side});
    shop.done("lock", its("groove"), {"--anyway"});
    REQUIRE(shop.planned(its(dado)).find("torn down") != std::string::npos);
    REQUIRE(shop.run({"plan", shop.job()}).out.find("ALREADY CUT") == std::string::npos);
    shop.done("fit", its(dado),
              {"--fresh-end", "--read", "dado_depth=6.05mm", "tongue_thickness=6.05mm", "fit=0.3mm", "--sure",
               "--save"});
    CHECK(shop.run({"plan", shop.job()}).out.find("ALREADY CUT") == std::string::npos);
}
