// A dado that comes out too narrow: the correction, the plan, and what is said, from the first reading to the last part.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"
#include "session/setup_said.h"
#include "session/words.h"

using namespace kw;
using tests::mm, tests::now, tests::test_cut;

namespace {

// Backs in a dado of 12.2 mm by one pass of this cutter.
Json job_with(const Json& cutter) {
    return Json{
        {"format", "kerfwright-job"},
        {"version", 1},
        {"unit", "mm"},
        {"fit", {{"clearance", 0.1}}},
        {"stock", {{{"name", "ply 12"}, {"thickness", 12.1}}, {{"name", "ply 6"}, {"thickness", 5.6}}}},
        {"machines",
         {{{"name", "saw"}, {"kind", "table saw"}},
          {{"name", "chop"}, {"kind", "miter saw"}},
          {{"name", "router"}, {"kind", "router table"}}}},
        {"cutters",
         {{{"name", "quarter stack"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "1/4 in"}},
          cutter}},
        {"drawers",
         {{{"name", "seeds"},
           {"count", 2},
           {"box", {{"width", 300}, {"height", 100}, {"depth", 400}}},
           {"front", {{"stock", "ply 12"}}},
           {"sides", {{"stock", "ply 12"}}},
           {"back", {{"stock", "ply 12"}, {"joint", "dado"}, {"cutter", cutter["name"]}, {"setback", 25}}},
           {"bottom", {{"stock", "ply 6"}}}}}}};
}

const Json wide_bit = {{"name", "wide bit"}, {"kind", "bit"}, {"machine", "router"}, {"kerf", "12.2 mm"}};
const Json half_stack = {{"name", "half stack"}, {"kind", "dado stack"},
                         {"machine", "saw"},     {"kerf", "12.2 mm"},
                         {"shims", {"0.2 mm"}},  {"spare_shims", {"0.1 mm", "0.3 mm"}}};

std::vector<std::string> dado_setups(const Session& session) {
    std::vector<std::string> ids;
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work.rfind("back dado", 0) == 0) ids.push_back(setup.id);
    return ids;
}

std::vector<NamedLength> slot(double width, double depth, double near) {
    return {mm("stock_thickness", 12.1), mm("width", width), mm("depth", depth), mm("near", near),
            mm("fit", width - 12.1)};
}

// Cut narrower than planned by so much, and otherwise as planned.
Session tested_narrow(const Json& job, double narrow_mm) {
    const Session session = tests::opened(job);
    const std::string id = dado_setups(session).front();
    const Settings s =
        session.work->plan.group_with_id(session.work->plan.setup_with_id(id)->group)->designed;
    REQUIRE(s.shift == Length{});
    return tests::tested(session, id, slot(12.2 - narrow_mm, s.height.mm(), s.fence.mm()));
}

}  // namespace

TEST_CASE("a bit's dado that is 0.3 mm too narrow gets a second pass, and the plan a setup for it") {
    const Session before = open_session(job_with(wide_bit), {}, now);
    REQUIRE(dado_setups(before).size() == 1);
    Session session = tested_narrow(job_with(wide_bit), 0.3);
    const std::string id = dado_setups(before).front();
    const auto report = fit_report(*session.work, id);
    REQUIRE(report->moves.size() == 1);
    CHECK(report->moves[0].say ==
          "after this pass move the fence out by 0.30 mm, away from the cutter, and run every piece a second "
          "time");
    CHECK(report->retry == Retry::same_ends);
    // Its number is the first pass's with a letter: no other setup changes its name.
    CHECK(dado_setups(session) == std::vector<std::string>{id, id + "b"});
    CHECK(session.work->plan.setups.size() == before.work->plan.setups.size() + 1);
    CHECK(session.work->plan.setups.back().id == before.work->plan.setups.back().id);
    const Setup &first = *session.work->plan.setup_with_id(id),
                &second = *session.work->plan.setup_with_id(id + "b");
    CHECK((second.fence - first.fence).mm() == doctest::Approx(0.3).epsilon(0.05));
    CHECK(second.passes.size() == first.passes.size());
    CHECK(session.work->plan.seconds > before.work->plan.seconds);

    session = apply(session, SaveTest{test_cut(id, slot(12.2, first.height->mm(), first.fence.mm()))}, now);
    REQUIRE(session.refused.empty());
    CHECK(fit_report(*session.work, id)->is_good());
    session = apply(session, LockGroup{test_cut(id, {})}, now);
    for (const std::string& pass : {id, id + "b"}) {
        session = tests::ran(std::move(session), pass, {0}, now);
        CHECK(has_run(*session.work, *session.work->plan.setup_with_id(pass),
                      session.work->plan.setup_with_id(pass)->passes[0]));
    }
    CHECK(session.work->affected.empty());
}

TEST_CASE("a part that ran in one pass, before the second was found to be needed, is run again") {
    Session session = open_session(job_with(wide_bit), {}, now);
    const std::string id = dado_setups(session).front();
    session = tests::ran(std::move(session), id, {0}, now);
    const Settings s =
        session.work->plan.group_with_id(session.work->plan.setup_with_id(id)->group)->designed;
    session = apply(session, SaveTest{test_cut(id, slot(11.9, s.height.mm(), s.fence.mm()))}, now);
    REQUIRE(session.refused.empty());
    REQUIRE(session.work->affected.size() == 1);
    CHECK(session.work->affected[0].fate == Fate::recut);
    // What it went through stays logged: only the second pass is open, and when that has run nothing is left to mend.
    CHECK(has_run(*session.work, *session.work->plan.setup_with_id(id),
                  session.work->plan.setup_with_id(id)->passes[0]));
    CHECK(session.work->rest.stands.at("router") == id);
    TestCut lock = test_cut(id, {});
    lock.moved = std::vector<NamedLength>{mm("shift", 0.3)};
    const Session widened = apply(apply(session, LockGroup{lock}, now), MarkRun{id + "b", {0}, true}, now);
    REQUIRE(widened.refused.empty());
    CHECK(widened.work->affected.empty());
    CHECK_FALSE(has_run(*session.work, *session.work->plan.setup_with_id(id + "b"),
                        session.work->plan.setup_with_id(id + "b")->passes[0]));
}

TEST_CASE("a bit's dado that is too wide: nothing moves it, and that is said instead of a lock") {
    const Session session = tested_narrow(job_with(wide_bit), -0.4);
    const auto report = fit_report(*session.work, dado_setups(session).front());
    CHECK(report->moves.empty());
    CHECK_FALSE(report->is_good());
    CHECK(say_advice(*report, words_in(Language::english))
              .find("% likely to be in tolerance as it stands, and no move brings it nearer") !=
          std::string::npos);
}

TEST_CASE("a stack's shims are named: which are in it when the correction is made") {
    // Thirty drawers: a second pass would be sixty ends once more.
    Json job = job_with(half_stack);
    job["drawers"][0]["count"] = 30;
    const Session session = tested_narrow(job, 0.2);
    const auto report = fit_report(*session.work, dado_setups(session).front());
    REQUIRE(report->moves.size() == 1);
    CHECK(report->moves[0].say == "add 0.20 mm of shims in the stack: 0.3 mm + 0.1 mm in it then");
    const auto out = fit_report(*tested_narrow(job, -0.2).work, dado_setups(session).front());
    REQUIRE(out->moves.size() == 1);
    CHECK(out->moves[0].say == "take out 0.20 mm of shims in the stack: none in it then");
}

TEST_CASE("a last pass is not told nearer than the first") {
    Session session = tested_narrow(job_with(wide_bit), 0.3);
    const std::string id = dado_setups(session).front();
    TestCut told = test_cut(id, slot(12.0, 5.0, 25.0));
    told.moved = std::vector<NamedLength>{mm("shift", -0.1)};
    const Session after = apply(session, SaveTest{told}, now);
    CHECK(after.refused_field == "moved");
    CHECK(after.refused.rfind("the last pass can't come", 0) == 0);
    CHECK(after.document == session.document);
}

TEST_CASE("no more shims are taken out than there are, and a stack without a list is not known to have any") {
    Json job = job_with(half_stack);
    const Session session = tested_narrow(job, 0.0);
    const std::string id = dado_setups(session).front();
    TestCut told = test_cut(id, slot(12.0, 6.0, 25.0));
    told.moved = std::vector<NamedLength>{mm("kerf", -0.3)};
    told.fresh_end = true;
    const Session after = apply(session, SaveTest{told}, now);
    CHECK(after.refused_field == "moved");
    CHECK(after.refused ==
          "only 0.20 mm of shims are in the stack to take out; tell what was taken out, or another stack's "
          "kerf in the job");
    Json bare = half_stack;
    bare.erase("shims");
    bare.erase("spare_shims");
    const Session unlisted = tested_narrow(job_with(bare), -0.4);
    CHECK(fit_report(*unlisted.work, dado_setups(unlisted).front())->moves.empty());
}

TEST_CASE("between joints with other shims in one stack, the shims are among what is changed") {
    // Locked with 0.3 mm more in it; the groove by the same stack is to be cut as its make-up is.
    Json job = job_with(half_stack);
    job["drawers"][0]["count"] = 30;
    job["stock"][1]["thickness"] = 12.1;
    job["drawers"][0]["bottom"]["cutter"] = "half stack";
    job["drawers"][0]["bottom"]["offset"] = 20;
    Session session = tested_narrow(job, 0.2);
    const std::string id = dado_setups(session).front();
    session = apply(session, LockGroup{test_cut(id, {})}, now);
    REQUIRE(session.refused.empty());
    REQUIRE(dial_of(*session.work, *session.work->plan.setup_with_id(id)).shims == Length::nearest_mm(0.2));
    const auto& steps = session.work->rest.steps;
    CHECK(std::any_of(steps.begin(), steps.end(), [](const RestStep& step) {
        return std::any_of(step.changes.begin(), step.changes.end(), [](const RestChange& change) {
            return change.what == "shims" && change.seconds == 300;
        });
    }));
}

TEST_CASE("a second pass that is taken back leaves one setup, and nonsense in a log is no crash") {
    Session session = tested_narrow(job_with(wide_bit), 0.3);
    const std::string id = dado_setups(session).front();
    const auto with_moves = [&](const Json& moves) {
        Json job = session.document;
        Json entry = job["log"].back();
        entry["moved"] = moves;
        entry["readings"] = Json{{"depth", "5.9 mm"}};
        job["log"].push_back(entry);
        return open_session(job, {}, now);
    };
    REQUIRE(dado_setups(session).size() == 2);
    const Session locked = apply(with_moves({{"shift", "0.3 mm"}}), LockGroup{[&] {
                                     TestCut back = test_cut(id, {});
                                     back.moved = std::vector<NamedLength>{mm("shift", -0.3)};
                                     return back;
                                 }()},
                                 now);
    REQUIRE(locked.refused.empty());
    CHECK(dado_setups(locked).size() == 1);
    for (const Json& moves :
         {Json{{"shift", "-40 mm"}}, Json{{"shift", "9 m"}}, Json{{"kerf", "-30 mm"}, {"shift", "3 mm"}},
          Json{{"kerf", "-12.199 mm"}, {"shift", "300 mm"}}})
        CHECK(dado_setups(with_moves(moves)).size() <= 20);
}

TEST_CASE("the heights that a bit is raised to on the way stand beside the height itself") {
    Json shallow = wide_bit;
    shallow["depth_per_pass"] = "2 mm";
    const Session session = tests::opened(job_with(shallow));
    const Setup& dado = *session.work->plan.setup_with_id(dado_setups(session).front());
    REQUIRE(*dado.height > Length::millimetres(4));
    REQUIRE(*dado.height < Length::millimetres(8));
    const auto numbers = setup_numbers(*session.work, nullptr, dado, CutterSide::near);
    const auto height = std::find_if(numbers.begin(), numbers.end(),
                                     [](const SetupNumber& number) { return number.caption == "Height"; });
    REQUIRE(height != numbers.end());
    CHECK(height->note.find("in 3 passes: first 2.0, 4.0, then this") != std::string::npos);
    const Session deep = tests::opened(job_with(wide_bit));
    for (const SetupNumber& number :
         setup_numbers(*deep.work, nullptr, *deep.work->plan.setup_with_id(dado_setups(deep).front()),
                       CutterSide::near))
        CHECK(number.note.find("passes: first") == std::string::npos);
}

TEST_CASE("beside the pin of a jig stands how low it must be where the bit comes up in passes") {
    for (const bool in_passes : {true, false}) {
        Json bit = wide_bit;
        bit["depth_per_pass"] = in_passes ? "4 mm" : "20 mm";
        Json job = job_with(bit);
        for (Json& drawer : job["drawers"]) {
            for (const char* place : {"front", "back"}) {
                drawer[place]["joint"] = "box joint";
                drawer[place]["cutter"] = bit["name"];
                for (const char* field : {"depth", "setback", "dado_width"}) drawer[place].erase(field);
            }
            drawer["bottom"]["style"] = "captured";
        }
        const Session session = tests::opened(job);
        const Setup& sockets =
            *session.work->plan.setup_with_id(tests::setup_of(session, "box joint: side sockets"));
        const auto numbers = setup_numbers(*session.work, nullptr, sockets, CutterSide::near);
        REQUIRE(numbers.front().caption == "Pin to cutter");
        const bool says = numbers.front().note.find("the pin itself lower than 4.0") != std::string::npos;
        CHECK(says == in_passes);
    }
}
