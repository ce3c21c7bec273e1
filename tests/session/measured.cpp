// Openings measured at several places, and drawers measured once they are put together.
#include <doctest/doctest.h>

#include <algorithm>

#include "job/survey_notes.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/measured.h"
#include "session/say_assembly.h"

using namespace kw;
using tests::now;

namespace {

using Readings = std::vector<std::pair<std::string, std::string>>;

Session surveyed(const Session& session, const Readings& readings) {
    return with_measured(session, Measured::opening, "seeds", 1, readings, now);
}

std::vector<std::string> notes_of(const Session& session) {
    const Job& job = session.work->job;
    std::vector<std::string> out;
    for (const Note& note : survey_notes(job.drawers[0], session.work->plan.boxes[0].size.depth))
        out.push_back(note.text.text(job.locale));
    return out;
}

SaidOfAssembly said_of(const Session& session, int copy) {
    const Job& job = session.work->job;
    return say_assembly(job, *assembly(*session.work, "seeds", copy));
}

}  // namespace

TEST_CASE("the box goes by the least of what was typed and what was read anywhere") {
    const Session start = open_session(tests::sample_json());
    const Length width = start.work->plan.boxes[0].size.width;
    const Session narrow = surveyed(start, {{"width_top", "14 3/8"}, {"width_back", "14 5/16"}});
    REQUIRE(narrow.problems.empty());
    CHECK(width - narrow.work->plan.boxes[0].size.width == Length::inches(1, 16));
    const Session wide = surveyed(start, {{"width_top", "14 7/16"}});
    CHECK(wide.work->plan.boxes[0].size.width == width);
    // With no width typed the readings are all there is.
    const Session untyped = apply(narrow, SetField{"/drawers/0/opening/width", nullptr}, now);
    REQUIRE(untyped.problems.empty());
    CHECK(untyped.work->plan.boxes[0].size.width == narrow.work->plan.boxes[0].size.width);
    const Session none = surveyed(untyped, {{"width_top", ""}, {"width_back", ""}});
    REQUIRE(none.problems.size() == 1);
    CHECK(none.problems[0].pointer == "/drawers/0/opening/width");
}

TEST_CASE("what the places say of each other is said, with what takes it up") {
    const Session start = open_session(tests::sample_json());
    const auto said = [&](const Readings& readings) { return notes_of(surveyed(start, readings)); };
    CHECK(said({{"width_top", "14 3/8"}, {"width_bottom", "14 27/64"}}) ==
          std::vector<std::string>{
              "the opening is 3/64 in wider at the bottom than at the top: the box goes by the least, 14 3/8 "
              "in; the slides take that up"});
    CHECK(
        said({{"width_middle", "14 5/8"}, {"width_back", "14 3/8"}}) ==
        std::vector<std::string>{
            "the opening is 1/4 in wider at the middle than at the back: the box goes by the least, 14 3/8 "
            "in. "
            "The slides take up 1/16 in in all: put 3/16 in behind one slide where it is wide, or half of it "
            "behind each"});
    CHECK(said({{"frame_left", "3/4"}}) ==
          std::vector<std::string>{
              "the frame stands in: put a filler of 3/4 in behind the left slide, 17 3/4 in long"});
    const Readings leaning = {{"width_top", "14 3/8"},
                              {"height_left", "5 1/4"},
                              {"diagonal_rising", "15 3/8"},
                              {"diagonal_falling", "15 1/4"}};
    CHECK(said(leaning) ==
          std::vector<std::string>{
              "the opening leans 1/16 in + to the right over its height: the face hides it, and "
              "hangs by its own square"});
    const Session inset = apply(apply(start, SetField{"/drawers/0/face/stock", "ply 12"}, now),
                                SetField{"/drawers/0/face/style", "inset"}, now);
    REQUIRE(inset.problems.empty());
    CHECK(notes_of(surveyed(inset, leaning)).at(0).find("Square the case") != std::string::npos);
    CHECK(said({{"width_top", "14 3/8"},
                {"height_left", "5 1/4"},
                {"diagonal_rising", "16 3/8"},
                {"diagonal_falling", "15 1/4"}})
              .at(0)
              .find("contradict each other by 33/64 in") != std::string::npos);
}

TEST_CASE("two diagonals say which corner to push, each drawer for itself") {
    const Session start = open_session(tests::sample_json());
    const auto read = [&](const Session& session, int copy, const char* left, const char* right) {
        return with_measured(session, Measured::assembled, "seeds", copy,
                             {{"from_front_left", left}, {"from_front_right", right}}, now);
    };
    // 13 3/8 wide and 17 3/4 deep: 22.225 in from corner to corner (Pythagoras).
    CHECK(said_of(start, 1).expected == "each diagonal of a square box is 22 7/32 in +");
    CHECK(said_of(start, 1).box.empty());
    const Session skew = read(start, 2, "22 5/16", "22 1/8");
    CHECK(skew.document["drawers"][0]["assembled"]["2"]["from_front_left"] == "22 5/16");
    CHECK(said_of(skew, 1).box.empty());
    const SaidOfAssembly second = said_of(skew, 2);
    CHECK_FALSE(second.is_square);
    CHECK(second.box ==
          std::vector<std::string>{
              "push the back right corner toward the front left one, until that diagonal is 3/32 in "
              "shorter: the back stands 5/32 in too far right"});
    const SaidOfAssembly other = said_of(read(skew, 1, "22 1/8", "22 5/16"), 1);
    CHECK(other.box.at(0).find("push the back left corner toward the front right one") == 0);
    CHECK(said_of(read(start, 1, "22 7/32", "22 7/32"), 1).is_square);
    CHECK(said_of(read(start, 1, "22 3/8", "22 3/8"), 1).box.at(1) ==
          "both are larger than they should be, by 5/32 in −: a joint stands open");
    const SaidOfAssembly misread = said_of(read(start, 1, "12 7/32", "22 7/32"), 1);
    CHECK(misread.is_misread);
    CHECK(misread.box.at(0).find("measure both again") != std::string::npos);
}

namespace {

// All of it run, this front cut that much too short, and kept.
Session with_short_front(const Session& start, Length by) {
    Session session = start;  // not moved: what is asked of it beside is read in any order
    const auto sequence = session.work->plan.sequence;
    for (const std::string& step : sequence)
        session = tests::ran(session, step, tests::passes_of(session, step), now);
    Json document = session.document;
    for (Json& entry : document["log"])
        if (entry.value("key", "") == "crosscut" && entry.value("part", "") == "seeds.1.front")
            entry["readings"]["size"] = exact_text(
                session.work->plan.part_with_id("seeds.1.front")->size.length - by, session.work->job.unit);
    return tests::opened(document);
}

}  // namespace

// 13 5/16 in front, 13 3/8 behind, 17 3/4 deep: 22.2062 in by Ptolemy's theorem, worked by hand; as planned it were 22.2250.
TEST_CASE("a box whose front was kept though it is short is measured as it is") {
    const Session session = with_short_front(open_session(tests::sample_json()), Length::inches(1, 16));
    const auto result = assembly(*session.work, "seeds", 1);
    CHECK(result->box == BoxSides{Length::inches(213, 16), Length::inches(107, 8), Length::inches(71, 4),
                                  Length::inches(71, 4)});
    CHECK(result->diagonal.mm() / 25.4 == doctest::Approx(22.206242).epsilon(1e-7));
    CHECK(
        said_of(session, 1).expected ==
        "as its parts were cut, the box is 13 5/16 in wide in front and 13 3/8 in behind, 17 3/4 in deep at "
        "the left and 17 3/4 in at the right: square, each of its diagonals is 22 13/64 in");
    CHECK(said_of(session, 2).expected == "each diagonal of a square box is 22 7/32 in +");
    // Square as it is, and not one that lacks a fiftieth of an inch.
    const Session read = with_measured(session, Measured::assembled, "seeds", 1,
                                       {{"from_front_left", "22.206"}, {"from_front_right", "22.206"}}, now);
    CHECK(said_of(read, 1).box.size() == 1);
    CHECK(said_of(read, 1).is_square);
}

TEST_CASE(
    "a front that a longer tongue made too short makes the box narrower by what enters both sides more") {
    Session session = open_session(tests::sample_json());
    const auto sequence = session.work->plan.sequence;
    for (const std::string& step : sequence)
        session = tests::ran(session, step, tests::passes_of(session, step), now);
    const Length planned = session.work->plan.part_with_id("seeds.1.front")->size.length;
    TestCut lock = tests::test_cut(tests::setup_of(session, tests::side_dado), {});
    lock.moved = std::vector<NamedLength>{{"spacer", Length::millimetres(-1)}};
    session = apply(session, LockGroup{lock}, now);
    REQUIRE(session.refused.empty());
    // Both fronts were told as lost with the lock; the maker keeps them.
    CHECK(assembly(*session.work, "seeds", 1)->box.front == Length::inches(107, 8));
    Json document = session.document;
    auto& log = document["log"];
    log.erase(std::remove_if(log.begin(), log.end(),
                             [](const Json& entry) { return entry.value("kind", "") == "lost"; }),
              log.end());
    session = tests::opened(document);
    const Length short_by = session.work->plan.part_with_id("seeds.1.front")->size.length - planned;
    REQUIRE(short_by > Length::millimetres(1));
    const auto result = assembly(*session.work, "seeds", 1);
    CHECK(result->box.front == Length::inches(107, 8) - short_by);
    CHECK(result->box.back == Length::inches(107, 8));
}

TEST_CASE("from the gaps round a face: which end to raise, and where to move it") {
    Session session = open_session(tests::sample_json());
    session = apply(session, SetField{"/drawers/0/face/reveal", "1/8"}, now);
    session = with_measured(session, Measured::assembled, "seeds", 1,
                            {{"left_top", "1/16"},
                             {"right_top", "3/16"},
                             {"top_left", "1/8"},
                             {"top_right", "1/4"},
                             {"proud_left", "-1/32"}},
                            now);
    REQUIRE(session.problems.empty());
    const SaidOfAssembly said = said_of(session, 1);
    CHECK_FALSE(said.is_hung);
    const auto says = [&](const std::string& line) {
        return std::find(said.face.begin(), said.face.end(), line) != said.face.end();
    };
    CHECK(says("bring the face's left end out 1/32 in"));
    CHECK(std::any_of(said.face.begin(), said.face.end(),
                      [](const std::string& line) { return line.find("raise the face's right end") == 0; }));
    const Session hung =
        with_measured(open_session(tests::sample_json()), Measured::assembled, "seeds", 1,
                      {{"left_top", "1/8"}, {"right_bottom", "1/8"}, {"top_left", "1/8"}}, now);
    // How it is turned was not read yet.
    CHECK_FALSE(said_of(hung, 1).is_hung);
    CHECK(said_of(hung, 1).face ==
          std::vector<std::string>{"as far as it was read, the face hangs as it should"});
    const Session all = with_measured(hung, Measured::assembled, "seeds", 1, {{"top_right", "1/8"}}, now);
    CHECK(said_of(all, 1).is_hung);
    CHECK(said_of(all, 1).face == std::vector<std::string>{"the face hangs as it should"});
}

TEST_CASE("one diagonal alone says nothing, and that is said") {
    const Session one = with_measured(open_session(tests::sample_json()), Measured::assembled, "seeds", 1,
                                      {{"from_front_left", "22 1/4"}}, now);
    CHECK(
        said_of(one, 1).box ==
        std::vector<std::string>{"read the other diagonal too: only both together say whether it is square"});
    CHECK_FALSE(said_of(one, 1).is_square);
}

TEST_CASE("a face goes by what was read in front, and the box by the back as well") {
    Session session =
        apply(open_session(tests::sample_json()), SetField{"/drawers/0/face/stock", "ply 12"}, now);
    const auto face_of = [](const Session& one) {
        for (const Part& part : one.work->plan.parts)
            if (part.size.role == Role::face) return part.size.length;
        return Length{};
    };
    const Length face = face_of(session), box = session.work->plan.boxes[0].size.width;
    const Session back = surveyed(session, {{"width_top", "14 3/8"}, {"width_back", "14 1/8"}});
    CHECK(face_of(back) == face);
    CHECK(box - back.work->plan.boxes[0].size.width == Length::inches(1, 4));
    CHECK(face - face_of(surveyed(session, {{"width_top", "14 1/4"}})) == Length::inches(1, 8));
}

TEST_CASE("readings that lie far apart are not taken for a case out of parallel") {
    const Session start = open_session(tests::sample_json());
    const auto said = [&](const char* name, const char* value) {
        const auto notes = notes_of(surveyed(start, {{name, value}}));
        return notes.empty() ? std::string() : notes.front();
    };
    for (const char* name : {"width_top", "height_left", "depth_right"})
        CHECK(said(name, "365").find("one is misread, or in another unit") != std::string::npos);
}

TEST_CASE("a reading that can't be taken is refused by name, and nothing is changed") {
    const Session start = open_session(tests::sample_json());
    const auto refused = [&](Measured what, const char* drawer, int copy, const Readings& readings) {
        const Session after = with_measured(start, what, drawer, copy, readings, now);
        CHECK(after.document == start.document);
        return after.refused;
    };
    CHECK(refused(Measured::opening, "seed", 1, {}) == "there is no drawer `seed`; did you mean `seeds`?");
    CHECK(refused(Measured::assembled, "seeds", 3, {}) == "of `seeds` there are 2: there is no number 3");
    CHECK(refused(Measured::opening, "seeds", 1, {{"width_top", "14"}, {"witdh", "1"}}) ==
          "there is no reading `witdh`");
    CHECK(refused(Measured::opening, "seeds", 1, {{"width_top", "14 1/0"}}).find("a fraction over zero") !=
          std::string::npos);
}

TEST_CASE("an opening that is too small is blamed on the place where it was read so") {
    const Session start = open_session(tests::sample_json());
    const Session small = apply(start, SetField{"/drawers/0/opening/width", "4"}, now);
    const Session narrow = surveyed(small, {{"width_bottom", "4"}, {"width_back", "2 5/8"}});
    REQUIRE(narrow.problems.size() == 1);
    CHECK(narrow.problems[0].pointer == "/drawers/0/opening/survey/width_back");
    const Session typed = apply(start, SetField{"/drawers/0/opening/width", "2"}, now);
    REQUIRE(typed.problems.size() == 1);
    CHECK(typed.problems[0].pointer == "/drawers/0/opening/width");
    const Session flat = apply(start, SetField{"/drawers/0/opening/height", "2 1/2"}, now);
    const Session low = surveyed(flat, {{"height_right", "1 1/8"}});
    REQUIRE(low.problems.size() == 1);
    CHECK(low.problems[0].pointer == "/drawers/0/opening/survey/height_right");
}

TEST_CASE("a reading or a drawer whose name is misspelt is asked for by the name that was meant") {
    const Session start = open_session(tests::sample_json());
    CHECK(surveyed(start, {{"widht_top", "14"}}).refused ==
          "there is no reading `widht_top`; did you mean `width_top`?");
    CHECK(with_measured(start, Measured::assembled, "seed", 1, {{"left_top", "1/8"}}, now).refused ==
          "there is no drawer `seed`; did you mean `seeds`?");
}

// Half the height of a box 4 1/4 in high that runs 1/4 in above the floor: 2 3/8 in, worked by hand.
TEST_CASE(
    "each end of a slide is told how far to go to its height, and what to put behind where they are not "
    "parallel") {
    const Session start = open_session(tests::sample_json());
    const auto slides_said = [&](const Readings& readings) {
        const Session read = with_measured(start, Measured::assembled, "seeds", 2, readings, now);
        REQUIRE(read.refused.empty());
        return said_of(read, 2).slides;
    };
    CHECK(slides_said({}).empty());
    CHECK(
        slides_said(
            {{"left_slide_front", "2 3/8"}, {"left_slide_rear", "2 5/16"}, {"right_slide_rear", "2 7/16"}}) ==
        std::vector<std::string>{"raise the left slide's rear end 1/16 in",
                                 "lower the right slide's rear end 1/16 in"});
    CHECK(slides_said({{"left_slide_front", "2 3/8"}, {"right_slide_front", "2 3/8"}}) ==
          std::vector<std::string>{"as far as it was read, the slides stand at one height and run parallel"});
    // One reading has nothing to be compared with.
    CHECK(slides_said({{"between_front", "13 3/8"}}).front().find("read another place") == 0);
    // A slide maker's tolerance, here 1/32 in each, is taken up without a shim.
    CHECK(slides_said({{"between_front", "13 3/8"}, {"between_rear", "13 5/16"}})
              .front()
              .find("at one height") != std::string::npos);
    CHECK(slides_said({{"between_front", "13 3/8"}, {"between_rear", "13 1/4"}}) ==
          std::vector<std::string>{
              "the slides stand 1/8 in wider apart at the front than at the rear: put 1/16 in behind "
              "each at the front"});
    CHECK(
        slides_said({{"between_front", "13 1/4"}, {"between_rear", "13 3/8"}}).front().find("at the rear") !=
        std::string::npos);
}

TEST_CASE("the height of corner slides is not that of their middle: only whether they stand alike is said") {
    Json job = tests::sample_json();
    job["drawers"][0]["slide"] = Json{{"kind", "bottom corner"}};
    const Session start = tests::opened(job);
    const auto slides_said = [&](const Readings& readings) {
        const Session read = with_measured(start, Measured::assembled, "seeds", 1, readings, now);
        REQUIRE(read.refused.empty());
        return said_of(read, 1).slides;
    };
    CHECK(
        slides_said({{"left_slide_front", "1"}, {"right_slide_front", "1"}}).front().find("at one height") !=
        std::string::npos);
    CHECK(slides_said({{"left_slide_front", "1"}, {"right_slide_front", "1 1/8"}}) ==
          std::vector<std::string>{"raise the left slide's front end 1/16 in",
                                   "lower the right slide's front end 1/16 in"});
}

TEST_CASE("a reading that lies far below all others is no size to cut a box by") {
    const Session start = open_session(tests::sample_json());
    const Session typed = surveyed(start, {{"depth_left", "16"}});
    REQUIRE(typed.problems.size() == 1);
    CHECK(typed.problems[0].pointer == "/drawers/0/opening/depth");
    const Session untyped = apply(start, SetField{"/drawers/0/opening/depth", nullptr}, now);
    const Session apart = surveyed(untyped, {{"depth_left", "19"}, {"depth_right", "16 15/16"}});
    REQUIRE(apart.problems.size() == 1);
    CHECK(apart.problems[0].pointer == "/drawers/0/opening/survey/depth_right");
    CHECK(surveyed(untyped, {{"depth_left", "18"}, {"depth_right", "17 15/16"}}).problems.empty());
}

TEST_CASE("a slide that is just too long for the opening is told of, with how much is missing") {
    Json job = tests::sample_json();
    job["drawers"][0]["slide"]["lengths"] = {"16", "17 13/16"};
    const auto notes_on = [](const Session& session) {
        std::string all;
        for (const Note& note : session.work->plan.notes)
            all += note.text.text(session.work->job.locale) + "\n";
        return all;
    };
    // 18 in less 1/4 in behind the box: 1/16 in is missing.
    CHECK(notes_on(tests::opened(job)).find("a slide 17 13/16 in long misses by 1/16 in") !=
          std::string::npos);
    job["drawers"][0]["slide"]["lengths"] = {"16", "18"};
    CHECK(notes_on(tests::opened(job)).find("misses") == std::string::npos);
}
