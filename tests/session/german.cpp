// What is said of a job's work in German: whole sentences, with the decimal comma, and nothing English among them.
#include <doctest/doctest.h>

#include <algorithm>
#include <regex>

#include "sample_job.h"
#include "session/made_ready.h"
#include "session/say_log.h"
#include "session/say_ways.h"
#include "session/session.h"
#include "session/words.h"
#include "testcut/feel.h"

using namespace kw;
using tests::mm, tests::now, tests::setup_of, tests::test_cut;

namespace {

Session opened_in_german(const Json& job, const Memory& memory = {}) {
    Session session = worked_out(unworked_session(job, memory, now, Language::german));
    REQUIRE(session.work);
    return session;
}

Memory german_saw_off_by(Taught what, double value) {
    return tests::off_by(what, value, "Kreissäge", "Nutsatz");
}

// Without the names that are quoted: parts are told by theirs.
std::string unquoted(const std::string& text) {
    static const std::regex quoted("„[^“]*“");
    return std::regex_replace(text, quoted, "");
}

void check_german(const std::string& said) {
    const std::string text = unquoted(said);
    CAPTURE(text);
    for (const char* word :
         {" the ", " of ", " is ", " and ", " to ", " it ", " with ", "fence", "blade ", "height", "spacer",
          "dado", "rabbet", "groove", "test cut", "pass ", "side", "edge", "_"})
        CHECK(text.find(word) == std::string::npos);
}

// A joint cut with the blade 0.3 mm too low.
TestCut low_blade(const Session& session) {
    const std::string setup = setup_of(session, "locking rabbet: side dado");
    const Settings& s =
        session.work->plan.group_with_id(session.work->plan.setup_with_id(setup)->group)->designed;
    const double stock_mm = 12.1, h = s.height.mm() - 0.3;
    return test_cut(setup, {mm("stock_thickness", stock_mm), mm("dado_width", s.kerf.mm()),
                            mm("dado_depth", h), mm("lip", s.fence.mm()),
                            mm("tongue_thickness", stock_mm - h), mm("fit", s.kerf.mm() + h - stock_mm),
                            mm("tongue_length", s.fence.mm() + s.kerf.mm() - s.spacer.mm()),
                            mm("shoulder_gap", std::max(0.0, s.fence.mm() + s.kerf.mm() - s.spacer.mm() - h)),
                            mm("face_step", s.fence.mm() - h)});
}

void check_all_said(const Session& session) {
    const Work& work = *session.work;
    const Words& words = work.job.locale.words();
    for (const Setup& setup : work.plan.setups) {
        check_german(say_guide(work, setup));
        check_german(say_from_pass_before(work, setup));
        check_german(say_put_on(work, setup));
        for (const CutterSide side : {CutterSide::near, CutterSide::far})
            for (const std::string& step : say_test(work, setup.id, side)) check_german(step);
        const auto report = fit_report(work, setup.id);
        if (!report) continue;
        check_german(say_advice(*report, words));
        check_german(say_unread(*report, words));
        check_german(say_torn_down(work, *report));
        for (const SaidMove& move : report->moves) check_german(move.say);
    }
    for (const RestStep& step : work.rest.steps) check_german(say_changes(work, step));
    for (const WayReason& reason : work.reasons) check_german(say_reason(work.job, reason));
    for (const NotCompared& one : work.not_compared) check_german(say_not_compared(work.job, one));
    for (const LeftOut& one : work.design.left_out) check_german(say_left_out(work.job, one));
    for (std::size_t count = 1; count <= work.job.log.size(); ++count) check_german(say_last(work, count));
}

}  // namespace

TEST_CASE("a correction is said in German, with the decimal comma") {
    const Words& words = words_in(Language::german);
    Session session = opened_in_german(tests::sample_json());
    const TestCut test = low_blade(session);
    session = apply(session, SaveTest{test}, now);
    REQUIRE(session.refused == "");
    auto report = fit_report(*session.work, test.setup);
    for (const NamedLength& again : test.readings)
        if (report->moves.empty() && again.name == report->measure) {
            CHECK(say_advice(*report, words).find(" noch einmal messen: ") != std::string::npos);
            session = apply(session, SaveTest{test_cut(test.setup, {again})}, now);
            REQUIRE(session.refused == "");
            report = fit_report(*session.work, test.setup);
        }
    REQUIRE_FALSE(report->moves.empty());
    CHECK(report->moves.front().say == "Sägeblatt 0,012 Zoll höher stellen");
    CHECK(
        say_advice(*report, words) ==
        "So verstellen, dann dieselben Probestücke noch einmal schneiden: danach mit 97 % Wahrscheinlichkeit "
        "in der Toleranz.");
    CHECK(say_last(*session.work, 1) ==
          "Probeschnitt bei S8 (Falz mit Nut: Quernut in der Seite): Sitz −0,008 Zoll");
}

TEST_CASE("what is cut for a test, and what is set anew, is said in German") {
    const Session session = opened_in_german(tests::sample_json());
    const auto steps = say_test(*session.work, low_blade(session).setup, CutterSide::near);
    REQUIRE(steps.size() == 3);
    CHECK(
        steps[0] ==
        "Quernut in der Seite: Innenfläche nach unten, Anschlag auf 15/64 Zoll − (0,230 Zoll) bis zur nahen "
        "Seite, Höhe 15/64 Zoll − (0,230 Zoll)");
    CHECK(steps[2] ==
          "Verbindung zusammenstecken: ablesen, was sie zeigt, und messen; angestrebt ist eine Passung von "
          "0,004 Zoll");
    CHECK(say_changes(*session.work, session.work->rest.steps.front()) == "neu: Werkzeug, Anschlag");
}

TEST_CASE("no English is left in what is said of a German job, from the first setup to the last tick") {
    Json job = tests::sample_json();
    job["cutters"].push_back(
        Json{{"name", "Nutsatz breit"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "5/16"}});
    Session session = opened_in_german(job, german_saw_off_by(Taught::fence, 0.5));
    check_all_said(session);
    session = apply(session, SaveTest{low_blade(session)}, now);
    REQUIRE(session.refused == "");
    check_all_said(session);
    session = tests::ran(session, session.work->plan.setups.back().id,
                         tests::passes_of(session, session.work->plan.setups.back().id), now);
    session = apply(session, MarkLost{session.work->plan.parts.front().id}, now);
    REQUIRE(session.refused == "");
    check_all_said(session);
}

TEST_CASE("what the shop believes is said in German") {
    const Locale german{Graduation::mm_0_01, Language::german};
    for (const Taught what :
         {Taught::fence, Taught::height, Taught::kerf, Taught::fence_gain, Taught::height_gain})
        for (const double value : {0.25, -0.25, 0.0})
            for (const Believed& belief : believed(german_saw_off_by(what, value), now))
                check_german(say_belief(belief, german));
    CHECK(say_belief(believed(german_saw_off_by(Taught::fence, 0.5), now).front(), german) ==
          "Kreissäge, Nutsatz mit 6,35 mm: der Anschlag steht 0,49 mm weiter weg, als seine Skala sagt, ± "
          "0,07 mm, von "
          "Hand "
          "angegeben");
}

TEST_CASE("refusals are said in German") {
    const Session session = opened_in_german(tests::sample_json());
    const std::string setup = low_blade(session).setup;
    const auto refused = [&](const Action& action) {
        const std::string said = apply(session, action, now).refused;
        REQUIRE_FALSE(said.empty());
        CAPTURE(said);
        for (const char* word : {" the ", " of ", " is ", " and ", " to ", " it ", "there "})
            CHECK(said.find(word) == std::string::npos);
        return said;
    };
    CHECK(refused(Undo{}) == "nichts zurückzunehmen");
    CHECK(refused(TakeBack{}) == "nichts zurückzunehmen: das Protokoll ist leer");
    refused(Redo{});
    refused(AddDrawer{99});
    refused(RemoveDrawer{99});
    refused(MarkLost{"nowhere"});
    refused(SetField{"drawers", 1});
    refused(PinSetup{"S99"});
    refused(SaveTest{test_cut("S99", {})});
    refused(SaveTest{test_cut(setup, {})});
    refused(SaveTest{test_cut(setup, {mm("wax", 1)})});
    refused(SaveTest{test_cut(setup, {mm("lip", 6), mm("lip", 6)})});
    refused(SaveTest{test_cut(setup, {mm("lip", -6)})});
    CHECK(refused(SaveTest{test_cut(setup, {mm("lip", 60)})}) ==
          "Vorholz von 2,362 Zoll kann nicht stimmen: erwartet wurden etwa 0,230 Zoll +; das sieht nach dem "
          "Zehnfachen aus: 0,236 Zoll?; auf die Einheit achten");
    TestCut felt = test_cut(setup, {});
    felt.felt = "wobbly";
    CHECK(refused(SaveTest{felt}) ==
          "„wobbly“ ist kein Wort für den Sitz; „geht nicht hinein“, „mit dem Klüpfel“, „stramm von Hand“, "
          "„gleitet“ oder „klappert“, wo etwas zusammengesteckt wird");
    felt.felt.clear();
    felt.seen = {"flush", "side proud"};
    refused(SaveTest{felt});
    TestCut moved = low_blade(session);
    moved.moved = std::vector<NamedLength>{mm("wheel", 1)};
    refused(SaveTest{moved});
    const Setup& last = session.work->plan.setups.back();
    refused(MarkRun{last.id, {0}, true});
}
