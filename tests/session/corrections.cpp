// A test cut, its correction, and what follows from it.
#include <doctest/doctest.h>

#include <algorithm>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/session.h"

using namespace kw;
using tests::mm, tests::now, tests::setup_of, tests::tested;

namespace {

// A joint cut with the blade `low_mm` too low and the fence `out_mm` too far out.
std::vector<NamedLength> readings_with(const Session& session, const std::string& setup, double low_mm,
                                       double out_mm) {
    const Settings& s =
        session.work->plan.group_with_id(session.work->plan.setup_with_id(setup)->group)->designed;
    const double stock_mm = 12.1;
    const double h = s.height.mm() - low_mm;
    const double f = s.fence.mm() + out_mm;
    return {mm("stock_thickness", stock_mm),
            mm("dado_width", s.kerf.mm()),
            mm("dado_depth", h),
            mm("lip", f),
            mm("tongue_thickness", stock_mm - h),
            mm("tongue_length", f + s.kerf.mm() - s.spacer.mm()),
            mm("fit", s.kerf.mm() + h - stock_mm),
            mm("shoulder_gap", std::max(0.0, f + s.kerf.mm() - s.spacer.mm() - h)),
            mm("face_step", f - h)};
}

Length front_length(const Session& session) {
    return session.work->plan.part_with_id("seeds.1.front")->size.length;
}

}  // namespace

TEST_CASE("a tight joint with the blade low is told to raise the blade by what it is low") {
    const Session session = open_session(tests::sample_json());
    REQUIRE(session.problems.empty());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const Session after = tested(session, dado, readings_with(session, dado, 0.3, 0.0));
    const auto report = fit_report(*after.work, dado);
    REQUIRE(report);
    CHECK(report->advice == AdviceKind::move);
    const auto height = std::find_if(report->moves.begin(), report->moves.end(),
                                     [](const SaidMove& move) { return move.control == "height"; });
    REQUIRE(height != report->moves.end());
    CHECK(height->by.mm() == doctest::Approx(0.3).epsilon(0.25));
    CHECK(height->say.rfind("raise the blade 0.01", 0) == 0);
    CHECK(report->chance_after_move > report->chance_in_tolerance);
    CHECK(report->retry == Retry::same_ends);  // a raised blade takes all that the low one took
}

TEST_CASE("a blade too high needs a fresh end") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const Session after = tested(session, dado, readings_with(session, dado, -0.4, 0.0));
    CHECK(fit_report(*after.work, dado)->retry == Retry::fresh_end);
}

TEST_CASE("a good joint is told to lock") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const Session after = tested(session, dado, readings_with(session, dado, 0.0, 0.0));
    CHECK(fit_report(*after.work, dado)->advice == AdviceKind::lock);
}

TEST_CASE("when the tongue comes out longer, fronts that are not cut yet follow by twice as much") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    auto readings = readings_with(session, dado, 0.0, 0.0);
    for (NamedLength& reading : readings)
        if (reading.name == "tongue_length") reading.value += Length::micrometres(80);
    Session after = tested(session, dado, readings);
    after = apply(after, LockGroup{{dado, {}, {}, std::vector<NamedLength>{}, false, "test"}}, now);
    const Settings locked =
        after.work->plan.group_with_id(after.work->plan.setup_with_id(dado)->group)->stands;
    const Settings designed =
        after.work->plan.group_with_id(after.work->plan.setup_with_id(dado)->group)->designed;
    CHECK(far_at_end(locked) != far_at_end(designed));
    CHECK(front_length(after) - front_length(session) == 2 * (far_at_end(locked) - far_at_end(designed)));
    CHECK(is_locked(*after.work, *after.work->plan.setup_with_id(dado)));
}

TEST_CASE(
    "a back that follows its front stays as deep as planned when it is locked, to half a step of the height, "
    "and parts run so are fine") {
    Json job = tests::sample_json();
    job["drawers"][0]["back"].erase("depth");
    Session session = open_session(job);
    REQUIRE(session.work);
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    auto readings = readings_with(session, dado, 0.0, 0.0);
    for (NamedLength& reading : readings)
        if (reading.name == "tongue_length") reading.value += Length::micrometres(200);
    session = tested(session, dado, readings);
    session = apply(session, LockGroup{{dado, {}, {}, std::vector<NamedLength>{}, false, "test"}}, now);
    const std::string back = setup_of(session, "back dado: side dado");
    const auto height = [&](const Session& at) { return *at.work->plan.setup_with_id(back)->height; };
    const Length planned = height(session);
    const Length reach = session.work->plan.part_with_id("seeds.1.front")->size.length;
    CHECK(session.work->plan.part_with_id("seeds.1.back")->size.length == reach);  // one stop serves both
    session = tests::ran(std::move(session), back, {0}, now);
    CHECK(session.work->affected.empty());
    const Session locked = apply(session, LockGroup{{back, {}, {}, {}, false, "test"}}, now);
    CHECK(abs(height(locked) - planned) <= Length::micrometres(25));
    CHECK(locked.work->affected.empty());
    const Session read = tested(session, back, {mm("depth", planned.mm())});
    CHECK(fit_report(*read.work, back)->moves.empty());
}

namespace {

// The sample drawer with a tongue on the back, and the front's joint locked with its tongue longer by `longer_um` than planned.
Session with_longer_front(Json job, std::int64_t longer_um) {
    job["drawers"][0]["back"].erase("depth");
    job["drawers"][0]["back"]["joint"] = "tongue and dado";
    Session session = open_session(job);
    REQUIRE(session.work);
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    auto readings = readings_with(session, dado, 0.0, 0.0);
    for (NamedLength& reading : readings)
        if (reading.name == "tongue_length") reading.value += Length::micrometres(longer_um);
    session = tested(session, dado, readings);
    return apply(session, LockGroup{{dado, {}, {}, std::vector<NamedLength>{}, false, "test"}}, now);
}

const Group& group_of(const Session& session, const std::string& work) {
    const Setup& setup = *session.work->plan.setup_with_id(setup_of(session, work));
    return *session.work->plan.group_with_id(setup.group);
}

Length length_of(const Session& session, const std::string& part) {
    return session.work->plan.part_with_id(part)->size.length;
}

}  // namespace

TEST_CASE(
    "where one height cuts the back's tongue and dado, the back follows its front by the spacer alone, and "
    "its "
    "fit stays") {
    const Session session = with_longer_front(tests::sample_json(), 200);
    const Group& front = group_of(session, "locking rabbet: side dado");
    const Group& back = group_of(session, "back tongue and dado: side dado");
    REQUIRE(back.cuts_end);
    CHECK(far_at_end(front.stands) > far_at_end(front.designed));
    CHECK(length_of(session, "seeds.1.back") == length_of(session, "seeds.1.front"));  // one stop serves both
    CHECK(far_at_end(back.stands) == far_at_end(front.stands));
    CHECK(back.stands.height == front.designed.height);
    const JointDesign& joint = back.work.chosen.joint;
    CHECK(back.work.insert_thickness - back.stands.height == joint.slot().width - joint.clearance);
    CHECK(joint.end_relief == back.stands.height - far_at_end(back.stands));
}

TEST_CASE(
    "a back's dado with a height of its own goes deeper with the front's tongue, and keeps its relief") {
    Json job = tests::sample_json();
    job["drawers"][0]["back"]["dado_width"] = "9/32";
    const Session session = with_longer_front(job, 200);
    const Group& front = group_of(session, "locking rabbet: side dado");
    const Group& slot = group_of(session, "back tongue and dado: side dado");
    const Group& tongue = group_of(session, "back tongue and dado: rabbet");
    REQUIRE(slot.id != tongue.id);
    const Length reach = far_at_end(front.stands);
    CHECK(length_of(session, "seeds.1.back") == length_of(session, "seeds.1.front"));
    CHECK(far_at_end(tongue.stands) == reach);
    CHECK(slot.stands.height == reach + slot.work.chosen.joint.end_relief);
    CHECK(slot.stands.height > front.designed.height);
    // The tongue itself is as thick as before.
    CHECK(tongue.stands.height == tongue.work.chosen.joint.insert_cut()->depth);
}

TEST_CASE(
    "a front's tongue longer than the back's dado is deep is not followed: the shoulders would stand off") {
    Json job = tests::sample_json();
    job["fit"]["end_relief"] = "0.05 mm";
    const Session session = with_longer_front(job, 200);
    const Group& front = group_of(session, "locking rabbet: side dado");
    const Group& back = group_of(session, "back tongue and dado: side dado");
    REQUIRE(far_at_end(front.stands) > back.stands.height);
    CHECK(far_at_end(back.stands) < back.stands.height);
    CHECK(length_of(session, "seeds.1.back") < length_of(session, "seeds.1.front"));
}

TEST_CASE("readings after other moves than those advised are held against what was moved") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const Session low = tested(session, dado, readings_with(session, dado, 1.2, 0.0));
    const TestCut moved{dado, readings_with(session, dado, -0.3, 0.0),
                        {},   std::vector<NamedLength>{mm("height", 1.5)},
                        true, "test"};
    CHECK(apply(low, SaveTest{moved}, now).refused.empty());
}

TEST_CASE("a front that was cut to length already is reported, not silently changed") {
    Session session = open_session(tests::sample_json());
    const std::string crosscut = setup_of(session, "crosscut to length: fronts");
    session = tests::ran(std::move(session), crosscut, {0}, now);
    CHECK(session.work->affected.empty());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    auto readings = readings_with(session, dado, 0.0, 0.0);
    for (NamedLength& reading : readings)
        if (reading.name == "tongue_length") reading.value += Length::micrometres(300);
    session = apply(session, SaveTest{{dado, readings, {}, std::nullopt, false, "test"}}, now);
    REQUIRE(session.refused.empty());
    session = apply(session, LockGroup{{dado, {}, {}, std::vector<NamedLength>{}, false, "test"}}, now);
    REQUIRE(session.work->affected.size() == 1);
    CHECK(session.work->affected[0].part == "seeds.1.front");
    CHECK(session.work->affected[0].fate == Fate::lost);
}

TEST_CASE(
    "sides that ran before the blade was raised are to be run again; with the blade lowered they are lost") {
    for (const double low_mm : {0.4, -0.4}) {
        Session session = open_session(tests::sample_json());
        const std::string dado = setup_of(session, "locking rabbet: side dado");
        session = tests::ran(std::move(session), dado, {0, 1}, now);
        session = tested(session, dado, readings_with(session, dado, low_mm, 0.0));
        REQUIRE(session.work->affected.size() == 2);
        CHECK(session.work->affected[0].fate == (low_mm > 0 ? Fate::recut : Fate::lost));
    }
}

TEST_CASE("undo takes back the last test cut, and redo brings it again") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const TestCut cut{dado, readings_with(session, dado, 0.3, 0.0), {}, std::nullopt, false, "test"};
    const Session after = apply(session, SaveTest{cut}, now);
    const Session undone = apply(after, Undo{}, now);
    CHECK(undone.document == session.document);
    CHECK(fit_report(*undone.work, dado)->test == 0);
    const Session redone = apply(undone, Redo{}, now);
    CHECK(redone.document == after.document);
    CHECK(fit_report(*redone.work, dado)->test == 1);
}

TEST_CASE("the log outlives a new drawer: it knows its group by the work, not by the number") {
    Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    session = tested(session, dado, readings_with(session, dado, 0.3, 0.0));
    const Session more = apply(session, AddDrawer{0}, now);
    CHECK(more.work->standing.forgotten == 0);
    CHECK(fit_report(*more.work, setup_of(more, "locking rabbet: side dado"))->test == 1);
}

TEST_CASE("readings out of reason are refused with the reason, and nothing is logged") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    const Session after =
        apply(session, SaveTest{{dado, {mm("dado_width", 63.5)}, {}, std::nullopt, false, "test"}}, now);
    CHECK(after.refused ==
          "the dado width of 2.500 in is out of reason: about 0.250 in was expected; it looks like ten times "
          "too much: 0.250 in?; mind the unit");
    CHECK(after.document == session.document);
}

TEST_CASE("the order in which readings are given does not matter") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    auto readings = readings_with(session, dado, 0.2, 0.1);
    const auto one = fit_report(*tested(session, dado, readings).work, dado);
    std::reverse(readings.begin(), readings.end());
    const auto other = fit_report(*tested(session, dado, readings).work, dado);
    CHECK(one->now.height.mm() == doctest::Approx(other->now.height.mm()).epsilon(1e-9));
    CHECK(one->chance_in_tolerance == doctest::Approx(other->chance_in_tolerance).epsilon(1e-6));
}

TEST_CASE("a feel alone moves the blade the right way") {
    const Session session = open_session(tests::sample_json());
    const std::string dado = setup_of(session, "locking rabbet: side dado");
    for (const auto& [word, sign] : {std::pair<const char*, int>{"will not enter", 1}, {"rattles", -1}}) {
        const Session after = apply(session, SaveTest{{dado, {}, word, std::nullopt, false, "test"}}, now);
        REQUIRE(after.refused.empty());
        const auto report = fit_report(*after.work, dado);
        CHECK(sign * (report->next.height - report->now.height).ticks() >= 0);
        CHECK(sign * (report->now.height + report->now.kerf -
                      session.work->plan.group_with_id(report->group)->designed.height -
                      session.work->plan.group_with_id(report->group)->designed.kerf)
                         .ticks() <
              0);
    }
}
