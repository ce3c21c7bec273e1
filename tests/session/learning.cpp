// What a lock teaches, what the next first cut makes of it, what is asked again, and what becomes of a lost part.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "file/shop_file.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"
#include "session/words.h"

using namespace kw;
using tests::mm, tests::now;

namespace {

const std::string later = "2026-03-09T09:00:00Z";

std::string dado_of(const Session& session) {
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work == "locking rabbet: side dado") return setup.id;
    return {};
}

const Settings& designed(const Session& session) {
    return session.work->plan.group_with_id(session.work->plan.setup_with_id(dado_of(session))->group)
        ->designed;
}

// All readings of a joint cut where the fence stands `out_mm` beyond where it was to be, and the blade `high_mm`.
std::vector<NamedLength> dado_readings(const Session& session, double out_mm, double high_mm) {
    const Settings& s = designed(session);
    const double stock = 12.1, f = s.fence.mm() + out_mm, h = s.height.mm() + high_mm, k = s.kerf.mm();
    return {mm("stock_thickness", stock),
            mm("dado_width", k),
            mm("dado_depth", h),
            mm("lip", f),
            mm("tongue_thickness", stock - h),
            mm("tongue_length", f + k - s.spacer.mm()),
            mm("fit", k + h - stock),
            mm("shoulder_gap", std::max(0.0, f + k - s.spacer.mm() - h)),
            mm("face_step", f - h)};
}

TestCut dado_cut(const Session& session, std::vector<NamedLength> readings) {
    return tests::test_cut(dado_of(session), std::move(readings));
}

// A saw whose fence stands 0.4 mm beyond its scale and whose height 0.3: tested, and moved back by just that, and locked.
Session tested_and_locked(Session session, const std::string& time) {
    session = apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.4, 0.3))}, time);
    REQUIRE(session.refused.empty());
    TestCut lock = dado_cut(session, {});
    lock.moved = std::vector<NamedLength>{mm("fence", -0.4), mm("height", -0.3)};
    session = apply(session, LockGroup{lock}, time);
    REQUIRE(session.refused.empty());
    return session;
}

}  // namespace

TEST_CASE(
    "a lock teaches how far fence and height stand beyond their scales, and the next job is set by it") {
    const Session first = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    REQUIRE(!first.memory.lessons.empty());
    const Session second = open_session(tests::sample_json(), first.memory, later);
    const Setup& dado = *second.work->plan.setup_with_id(dado_of(second));
    const Dial dial = dial_of(*second.work, dado);
    CHECK(dial.fence.mm() == doctest::Approx(dado.fence.mm() - 0.4).epsilon(0.02));
    CHECK(dial.height.mm() == doctest::Approx(dado.height->mm() - 0.3).epsilon(0.02));
    CHECK(dado.fence == designed(second).fence);  // the plan's geometry knows nothing of scales
    const auto before = fit_report(*open_session(tests::sample_json()).work, dado.id);
    CHECK(fit_report(*second.work, dado.id)->chance_in_tolerance > 2.0 * before->chance_in_tolerance);
}

TEST_CASE("the log says how a group was begun, so that later lessons do not change what earlier tests said") {
    const Session session = open_session(tests::sample_json(), {}, now);
    const Session tested = apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.1, 0.1))}, now);
    const Session elsewhere = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const Session again = open_session(tested.document, elsewhere.memory, later);
    const auto one = fit_report(*tested.work, dado_of(tested)),
               other = fit_report(*again.work, dado_of(again));
    CHECK(one->now == other->now);
    CHECK(one->chance_in_tolerance == other->chance_in_tolerance);
}

TEST_CASE("a lock that is undone is unlearned, and done again is learned again") {
    const Session session = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const Session undone = apply(session, Undo{}, now);
    CHECK(undone.memory.lessons.empty());
    CHECK(apply(undone, Redo{}, now).memory == session.memory);
}

TEST_CASE("what is believed is said with its reason, can be put right, and forgotten") {
    Session session = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const auto all = believed(session.memory, session.day);
    const auto fence =
        std::find_if(all.begin(), all.end(), [](const Believed& b) { return b.what == Taught::fence; });
    REQUIRE(fence != all.end());
    CHECK(say_belief(*fence, Graduation::mm_0_01) ==
          "saw, quarter stack of 6.35 mm: the fence stands 0.38 mm farther out than its scale says, \u00b1 "
          "0.10 mm, "
          "from 1 test "
          "cut since 2026-03-01");
    session = apply(session, CorrectBelief{*fence, 0.2}, later);
    const auto corrected = believed(session.memory, session.day);
    const auto told = std::find_if(corrected.begin(), corrected.end(),
                                   [](const Believed& b) { return b.what == Taught::fence; });
    CHECK(told->by_hand);
    CHECK(told->value == doctest::Approx(0.2).epsilon(0.05));
    session = apply(session, ForgetBelief{*told}, later);
    for (const Believed& belief : believed(session.memory, session.day)) CHECK(belief.what != Taught::fence);
}

TEST_CASE("a shop's file keeps the lessons to the last digit, and all else that stands in it") {
    const Session session = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const Json file = with_memory(
        Json{{"format", "kerfwright-shop"}, {"machines", Json::array()}, {"mine", 7}}, session.memory);
    CHECK(read_memory(parse_json(to_text(file)).value()).value() == session.memory);
    CHECK(file["mine"] == 7);
    Json wrong = file;
    wrong["lessons"][0]["what"] = "weather";
    REQUIRE(!read_memory(wrong));
    CHECK(read_memory(wrong).error()[0].pointer == "/lessons/0/what");
}

TEST_CASE("a reading that contradicts the rest is asked again by name, and taken when the maker is sure") {
    const Session session = open_session(tests::sample_json(), {}, now);
    auto wrong = dado_readings(session, 0.0, -0.3);
    wrong[6] = mm("fit", 0.2);  // tight by 0.2, written as loose
    TestCut told = dado_cut(session, wrong);
    const Session asked = apply(session, SaveTest{told}, now);
    CHECK(asked.refused_field == "doubt");
    CHECK(asked.refused.rfind("the fit of ", 0) == 0);
    CHECK(asked.document == session.document);
    told.sure = true;
    CHECK(apply(asked, SaveTest{told}, now).refused.empty());
}

TEST_CASE("no word of the maker makes a reading ten times too large a right one") {
    const Session session = open_session(tests::sample_json(), {}, now);
    auto wrong = dado_readings(session, 0.0, 0.0);
    wrong[2].value = 10 * wrong[2].value;
    TestCut told = dado_cut(session, wrong);
    told.sure = true;
    const Session asked = apply(session, SaveTest{told}, now);
    CHECK(asked.refused_field == "readings");
    CHECK(asked.refused.find("ten times") != std::string::npos);
    CHECK(asked.document == session.document);
}

TEST_CASE(
    "what is seen on the closed joint moves the estimate as a reading does; an unknown word is refused") {
    const Session session = open_session(tests::sample_json(), {}, now);
    TestCut told = dado_cut(session, {});
    told.seen = {"side proud", "no paper beside it"};
    const Session after = apply(session, SaveTest{told}, now);
    REQUIRE(after.refused.empty());
    const auto report = fit_report(*after.work, told.setup);
    CHECK(report->now.fence - report->now.height > designed(session).fence - designed(session).height);
    CHECK(after.work->job.log.back().seen == told.seen);
    told.seen = {"purple"};
    CHECK(apply(session, SaveTest{told}, now).refused_field == "seen");
}

TEST_CASE("a rule's readings weigh less than a caliper's") {
    const Session session = open_session(tests::sample_json(), {}, now);
    TestCut told = dado_cut(session, {mm("dado_depth", designed(session).height.mm() - 0.3)});
    const auto height = [&](const TestCut& test) {
        const Session after = apply(session, SaveTest{test}, now);
        REQUIRE(after.refused.empty());
        return fit_report(*after.work, test.setup)->now.height;
    };
    const Length by_caliper = height(told);
    told.tool = Tool::rule;
    CHECK(height(told) > by_caliper);
    CHECK(height(told) < designed(session).height);
}

TEST_CASE(
    "sides that were cut too deep are lost at the lock: they are parts to make again, with all their "
    "setups") {
    Session session = open_session(tests::sample_json(), {}, now);
    const std::string dado = dado_of(session);
    const std::string side = session.work->plan.setup_with_id(dado)->passes[0].part;
    const auto run_all = [&](bool rips_only) {
        const auto work = session.work;  // outlives what is worked out anew
        for (const Setup& setup : work->plan.setups)
            for (std::size_t p = 0; p < setup.passes.size(); ++p)
                if (setup.passes[p].part == side && (!rips_only || setup.stage == Stage::rip))
                    session = tests::ran(std::move(session), setup.id, {p}, now);
    };
    run_all(true);
    session = tests::ran(std::move(session), dado, {0}, now);
    session = apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.0, 0.5))}, now);
    TestCut lock = dado_cut(session, {});
    lock.moved = std::vector<NamedLength>{mm("height", -0.5)};
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    CHECK(session.document["log"].back()["kind"] == "lost");
    for (const Ran& ran : session.work->standing.ran) CHECK(ran.part != side);
    const auto& affected = session.work->affected;
    const auto remade =
        std::find_if(affected.begin(), affected.end(), [&](const Affected& a) { return a.part == side; });
    REQUIRE(remade != affected.end());
    const std::string words = remade->what.text(Graduation::mm_0_1);
    CHECK(words.find("made again from the board") != std::string::npos);
    // The only saw that rips is the one that stands for the joint: it has to be set again for this side.
    CHECK(words.find(session.work->plan.setup_with_id(dado)->work + " (to be set again, with a test cut)") !=
          std::string::npos);
    // Made again, it is a part like any other.
    run_all(false);
    for (const Affected& a : session.work->affected) {
        INFO(a.what.text(Graduation::mm_0_1));
        CHECK(a.part != side);
    }
}

TEST_CASE("a first setting of the maker's own is told, and the readings are held against that") {
    const Session session = open_session(tests::sample_json(), {}, now);
    TestCut told = dado_cut(session, dado_readings(session, 0.0, 3.0));
    const Session asked = apply(session, SaveTest{told}, now);
    CHECK(asked.refused.find("the height stands at") != std::string::npos);
    told.moved = std::vector<NamedLength>{mm("height", 3.0)};
    CHECK(apply(session, SaveTest{told}, now).refused.empty());
}

TEST_CASE("a blade set to the planned number, where its scale is known to be off, is asked about") {
    const Session taught = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const Session session = open_session(tests::sample_json(), taught.memory, later);
    // Set to the planned number it stands 0.3 mm high; by its scale it would have been right.
    const Session asked =
        apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.0, 0.3))}, later);
    CHECK(asked.refused.find("its scale is known to be off") != std::string::npos);
    CHECK(
        apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.0, 0.0))}, later).refused.empty());
}

TEST_CASE(
    "what a scale is known to be off by is taken off at every joint of its cutter, also where little depends "
    "on it") {
    const Session taught = tested_and_locked(open_session(tests::sample_json(), {}, now), now);
    const Session session = open_session(tests::sample_json(), taught.memory, later);
    int joints = 0;
    for (const Setup& setup : session.work->plan.setups) {
        if (setup.group.empty() || setup.cutter != "quarter stack") continue;
        ++joints;
        const Dial dial = dial_of(*session.work, setup);
        CHECK(std::abs(dial.fence.mm() - (setup.fence.mm() - 0.4)) < 0.08);
        CHECK(std::abs(dial.height.mm() - (setup.height->mm() - 0.3)) < 0.08);
    }
    CHECK(joints > 2);
}

TEST_CASE(
    "between a test cut and its moves the plan shows where the joint is to stand, not where it was found") {
    const Session session = open_session(tests::sample_json(), {}, now);
    for (const std::size_t how_many : {std::size_t(7), std::size_t(9)}) {
        auto some = dado_readings(session, 0.1, 0.4);
        some.resize(how_many);
        const Session after = apply(session, SaveTest{dado_cut(session, some)}, now);
        REQUIRE(after.refused.empty());
        const Setup& dado = *after.work->plan.setup_with_id(dado_of(after));
        CHECK(std::abs((*dado.height - designed(session).height).mm()) < 0.1);
    }
}

TEST_CASE("a cut that is tested after its lock is another test cut, whatever was asked before") {
    Session session = open_session(tests::sample_json(), {}, now);
    session = apply(session, SaveTest{dado_cut(session, {mm("fit", 0.1)})}, now);
    REQUIRE(fit_report(*session.work, dado_of(session))->advice == AdviceKind::measure);
    session = apply(session, LockGroup{dado_cut(session, {})}, now);
    session = apply(session, SaveTest{dado_cut(session, {mm("fit", 0.1)})}, now);
    CHECK(fit_report(*session.work, dado_of(session))->test == 2);
}

TEST_CASE("two words for one place are refused") {
    const Session session = open_session(tests::sample_json(), {}, now);
    TestCut told = dado_cut(session, {});
    told.seen = {"flush", "side proud"};
    CHECK(apply(session, SaveTest{told}, now).refused_field == "seen");
}

TEST_CASE("after the blade was lowered the old test ends still show the old cut: fresh ones are asked for") {
    Session session = open_session(tests::sample_json(), {}, now);
    session = apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.0, 0.3))}, now);
    REQUIRE(session.refused.empty());
    TestCut again = dado_cut(session, dado_readings(session, 0.0, 0.0));
    again.moved = std::vector<NamedLength>{mm("height", -0.3)};
    const Session asked = apply(session, SaveTest{again}, now);
    CHECK(asked.refused_field == "fresh_end");
    CHECK(asked.refused.rfind("after these moves the old test ends", 0) == 0);
    CHECK(asked.document == session.document);
    again.fresh_end = true;
    CHECK(apply(session, SaveTest{again}, now).refused.empty());
    // To be sure of a reading is no answer to that.
    again.fresh_end = false;
    again.sure = true;
    CHECK(apply(session, SaveTest{again}, now).refused_field == "fresh_end");
    // Raised, the new cut takes all that the old one took (the fence stays).
    TestCut higher = dado_cut(session, dado_readings(session, 0.0, 0.5));
    higher.moved = std::vector<NamedLength>{mm("height", 0.2)};
    CHECK(apply(session, SaveTest{higher}, now).refused.empty());
}

TEST_CASE("a log entry for a part or a work that is not planned is counted, and changes nothing") {
    Json job = tests::sample_json();
    job["log"] = Json::array(
        {{{"kind", "ran"}, {"setup", "S1"}, {"part", "seeds.1.side_left"}, {"reference", "bottom edge"}},
         {{"kind", "lost"}, {"part", "nobody.1.side"}}});
    const Session session = open_session(job, {}, now);
    REQUIRE(session.work);
    CHECK(session.work->standing.forgotten == 2);
    CHECK(session.work->standing.ran.empty());
    CHECK(session.work->standing.lost.empty());
}

TEST_CASE(
    "a first setting that makes up for a narrow stack says so, and is not taken for a scale that is off") {
    // The fence and the height stand where their scales say; the stack cuts 0.2 mm narrow.
    Session taught = open_session(tests::sample_json(), {}, now);
    std::vector<NamedLength> read = dado_readings(taught, 0.0, 0.0);
    read[1].value -= Length::nearest_mm(0.2);
    read[6].value -= Length::nearest_mm(0.2);
    read.erase(read.begin() + 7);  // the shoulder is as it is
    taught = apply(taught, SaveTest{dado_cut(taught, read)}, now);
    REQUIRE(taught.refused.empty());
    taught = apply(taught, LockGroup{dado_cut(taught, {})}, now);
    const Session session = open_session(tests::sample_json(), taught.memory, later);
    const Setup& dado = *session.work->plan.setup_with_id(dado_of(session));
    const Dial dial = dial_of(*session.work, dado);
    REQUIRE(dial.height > *dado.height);
    CHECK(dial.height_beyond.mm() == doctest::Approx((dial.height - *dado.height).mm()).epsilon(0.5));
    CHECK(
        say_beyond(*session.work, dial.height_beyond).find("more than planned, to make up for the cutter") !=
        std::string::npos);
    CHECK(say_beyond(*session.work, Length{}).empty());
}

TEST_CASE("locking one joint writes off no part of another that is being tested again") {
    Session session = open_session(tests::sample_json(), {}, now);
    const std::string dado = dado_of(session);
    session = apply(session, SaveTest{dado_cut(session, dado_readings(session, 0.0, 0.0))}, now);
    session = apply(session, LockGroup{dado_cut(session, {})}, now);
    session = tests::ran(std::move(session), dado, {0}, now);
    REQUIRE(session.refused.empty());
    // Tested again, the blade seems to stand half a millimetre high: what ran would be lost, if that is so.
    TestCut again = dado_cut(session, dado_readings(session, 0.0, 0.5));
    again.moved = std::vector<NamedLength>{mm("height", 0.5)};
    session = apply(session, SaveTest{again}, now);
    REQUIRE(session.refused.empty());
    std::string groove;
    for (const Setup& setup : session.work->plan.setups)
        if (setup.work.rfind("groove", 0) == 0 && groove.empty()) groove = setup.id;
    TestCut lock;
    lock.setup = groove;
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    for (const Json& entry : session.document["log"]) CHECK(entry["kind"] != "lost");
}
