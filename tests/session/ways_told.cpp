// What is said of the ways in which a joint can be cut.
#include <doctest/doctest.h>

#include <algorithm>

#include "session/ways_job.h"

using namespace kw;
using namespace ways_job;

TEST_CASE("chippers and shims are told as the maker wrote them, whatever the job's unit is") {
    Json job = demo(12);
    job["unit"] = "mm";
    job["reading"] = "0.1 mm";
    job["cutters"][0]["kerf"] = "1/4 in";
    job["cutters"][0]["spare_chippers"] = {"1/16 in", "3/32 in", "1/8\"", "3.175 mm"};
    job["cutters"][0]["spare_shims"] = {"0.004 in", 0.1, "0.2", "0.012 in"};
    job["fit"] = {{"clearance", "0.004 in"}, {"end_relief", "1/64 in"}};
    // Of the demo's drawers the one whose lengths all have a unit, with a back of half an inch in a dado.
    Json drawer = job["drawers"][2];
    drawer["sides"]["stock"] = drawer["back"]["stock"] = drawer["front"]["stock"] = "birch ply 12";
    drawer["back"] = {{"stock", "maple 1/2"}, {"joint", "dado"}, {"setback", "20 mm"}};
    job["drawers"] = Json::array({drawer});
    job["stock"][2]["thickness"] = "0.508 in";
    job["stock"][3]["thickness"] = "0.742 in";
    job["machines"][0] = {{"name", "saw"}, {"kind", "table saw"}};
    job["cutters"][1]["kerf"] = "1/8 in";
    job["cutters"][2]["kerf"] = "3/32 in";
    const Session session = opened(job);
    const WayReason& back = reason_for(*session.work, "back dado", "seed trays");
    const auto one_pass = std::find_if(back.ways.begin(), back.ways.end(),
                                       [](const WayCost& cost) { return is_made_up(cost.way); });
    REQUIRE(one_pass != back.ways.end());
    CHECK(say_way(session.work->job, one_pass->way) ==
          "1 pass with quarter stack made up to 13.00 mm (chippers 1/8\" + 1/8\", shims 0.012 in)");
    const Cutter& stack = session.work->job.shop.cutters[0];
    CHECK(say_piece(session.work->job, stack, Length::inches(3, 32)) == "3/32 in");
    CHECK(say_piece(session.work->job, stack, Length::micrometres(100)) == "0.1 mm");
    CHECK(say_piece(session.work->job, stack, Length::micrometres(200)) == "0.2 mm");
    // What nobody wrote is told as a caliper reads it.
    CHECK(say_piece(session.work->job, stack, Length::micrometres(300)) == "0.30 mm");
}

namespace {

// Two drawers alike but for their backs' joints.
Json two_backs(const char* first, const char* second) {
    Json job = demo(1);
    Json drawer = job["drawers"][1];
    job["drawers"] = Json::array();
    for (const auto& [name, joint] : {std::pair{"A", first}, std::pair{"B", second}}) {
        drawer["name"] = name;
        drawer["back"]["joint"] = joint;
        job["drawers"].push_back(drawer);
    }
    return job;
}

}  // namespace

TEST_CASE("a back of least time has its reason also where another drawer shares its setups") {
    for (const char* other : {"dado", "tongue and dado"}) {
        CAPTURE(other);
        const Session session = opened(two_backs("least time", other));
        CHECK(session.work->not_compared.empty());
        const WayReason& back = reason_for(*session.work, "back dado", "A");
        REQUIRE(back.ways.size() == 3);
        CHECK(back.ways[0].picked);
        // What is taken adds least, and no joint that is named does better for all the work.
        for (const WayCost& way : back.ways) CHECK(way.seconds >= back.ways[0].seconds);
        for (const char* named : {"dado", "tongue and dado"})
            CHECK(session.work->plan.seconds <= opened(two_backs(named, other)).work->plan.seconds);
    }
    // The tongue's setup stands for B in any case: for A it adds less than where it is set for A alone.
    const auto tongue_s = [](const Session& session) {
        const WayReason& back = reason_for(*session.work, "back dado", "A");
        for (const WayCost& way : back.ways)
            if (way.way.joint.kind == "tongue and dado") return way.seconds;
        return std::int64_t{-1};
    };
    const std::int64_t beside_it = tongue_s(opened(two_backs("least time", "tongue and dado")));
    const std::int64_t beside_another = tongue_s(opened(two_backs("least time", "dado")));
    REQUIRE(beside_it >= 0);
    CHECK(beside_it < beside_another);
}

TEST_CASE("a choice that is left out of the comparison is told of") {
    Json job = demo(1);
    Json drawer = job["drawers"][1];
    job["drawers"] = Json::array();
    for (int i = 0; i < 14; ++i) {
        drawer["name"] = "D" + std::to_string(i);
        drawer["bottom"]["offset"] = std::to_string(10 + i) + " mm";
        drawer["back"]["setback"] = std::to_string(15 + i) + " mm";
        job["drawers"].push_back(drawer);
    }
    const Session session = opened(job);
    const Work& work = *session.work;
    REQUIRE(work.design.alternatives.size() == 28);
    REQUIRE(work.not_compared.size() == 4);
    CHECK(say_not_compared(work.job, work.not_compared[0]) ==
          "back dado (D12) was not compared: there are more choices in this job than are gone through; it is "
          "cut in 3 "
          "passes with quarter stack");
    // And it is as said.
    CHECK(say_way(work.job, drawer_named(work, "D12").back) == "3 passes with quarter stack");
}

TEST_CASE("what is not proved is told as at most, at least, or about so much") {
    const auto said = [](Surety surety) {
        return say_cost({{}, 600, false, surety}, words_in(Language::english));
    };
    CHECK(said(Surety::exact) == "10 min");
    CHECK(said(Surety::at_most) == "at most 10 min");
    CHECK(said(Surety::at_least) == "at least 10 min");
    CHECK(said(Surety::about) == "about 10 min");
}

TEST_CASE("a way that is not compared, since the joint would be another with it, is told of") {
    Json job = tests::sample_json();
    CHECK(opened(job).work->design.left_out.empty());
    job["cutters"].push_back(
        Json{{"name", "wide stack"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "5/16"}});
    const Session session = opened(job);
    const auto& left_out = session.work->design.left_out;
    REQUIRE_FALSE(left_out.empty());
    CHECK(
        say_left_out(session.work->job, left_out[0]) ==
        "locking rabbet (seeds): 1 pass with wide stack was not compared: with it the joint would have other "
        "measures");
}
