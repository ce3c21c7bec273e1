// Banks in a job: over the year, beside doors, in the clamps, and when drawers are renamed or added.
#include <doctest/doctest.h>

#include <algorithm>
#include <regex>

#include "job/assembly.h"
#include "job/banks.h"
#include "sample_job.h"
#include "session/made_ready.h"
#include "session/say_bank.h"
#include "wood/species.h"

namespace banks_in_a_job {

using namespace kw;
using tests::now;

// Three drawers without dividers: each 200 mm of solid oak, in millimetres.
Json bank_json(const std::string& style) {
    Json job = tests::sample_json();
    job["stock"].push_back(
        {{"name", "oak"}, {"kind", "solid"}, {"species", "white oak"}, {"thickness", "19 mm"}});
    job["climate"] = {{"driest", 6.0}, {"dampest", 12.0}};
    Json& seeds = job["drawers"][0];
    seeds["count"] = 3;
    seeds["opening"] = {{"depth", "450 mm"}};
    seeds["face"] = {{"stock", "oak"}};
    job["banks"] = {{{"name", "left"},
                     {"style", style},
                     {"drawers", {"seeds"}},
                     {"opening", {{"width", "400 mm"}, {"height", "620 mm"}}},
                     {"reveal", "5 mm"}}};
    for (const char* end : {"left", "right", "top", "bottom"})
        job["banks"][0][end] = style == "inset" ? "6 mm" : "10 mm";
    return job;
}

Session opened(const Json& job) { return open_session(job, {}, "2026-01-31"); }

std::string problem_of(const Json& job) {
    const Session session = opened(job);
    if (session.problems.empty()) return "none";
    const Problem& one = session.problems.front();
    return one.pointer + ": " + one.why.text(Graduation::mm_0_1) + "; " + one.remedy.text(Graduation::mm_0_1);
}

std::vector<std::string> notes_of(const Json& job) {
    const Session session = opened(job);
    std::vector<std::string> out;
    if (!session.work) return {"not made"};
    for (const Note& note : say_bank(*session.work, session.work->job.banks[0]).notes)
        out.push_back(note.text.text(Graduation::mm_0_1));
    return out;
}

bool has(const std::vector<std::string>& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
}

TEST_CASE("each face takes half of what it swells from the reveal above it and half from the one below") {
    const Session session = opened(bank_json("overlay"));
    REQUIRE(session.problems.empty());
    const Job& job = session.work->job;
    const BankSpec& bank = job.banks[0];
    // 640 mm less two reveals of 5 mm, in three: 210 mm. Flat-sawn or unknown, its change for each percent is what the table has.
    CHECK(bank.made.faces[0].height == Length::millimetres(210));
    const double swell_mm =
        movement(*find_species("white oak"), job.stock_named("oak")->cut, Length::millimetres(210), 6.0, 12.0)
            .mm();
    const auto gaps = gaps_over_year(job, bank);
    REQUIRE(gaps.size() == 2);
    for (const GapOverYear& gap : gaps) {
        CHECK(gap.made == Length::millimetres(5));
        CHECK(gap.least.mm() == doctest::Approx(5.0 - swell_mm));  // half of two faces
        CHECK(gap.most == Length::millimetres(5));                 // it is cut as dry as it ever gets
    }
}

TEST_CASE("a reveal that is closed in the dampest month is refused with the reveal that would do") {
    Json job = bank_json("overlay");
    job["banks"][0]["reveal"] = "1 mm";
    const std::string said = problem_of(job);
    CHECK(said.find("/banks/0/reveal: in the dampest month the faces of `seeds 1` and `seeds 2` swell ") ==
          0);
    const std::string before = "; at least ";
    const std::string would_do = said.substr(said.find(before) + before.size());
    job["banks"][0]["reveal"] = would_do.substr(0, would_do.find(" mm") + 3);
    CHECK(problem_of(job) == "none");
}

TEST_CASE("an inset face at the end of its bank gives half to the case's gap, and plywood stands still") {
    Json job = bank_json("inset");
    job["banks"][0]["top"] = "1 mm";
    CHECK(problem_of(job).find("/banks/0/top: in the dampest month the face of `seeds 1` swells ") == 0);
    job["drawers"][0]["face"]["stock"] = "ply 12";
    CHECK(problem_of(job) == "none");
    const Session session = opened(job);
    for (const GapOverYear& gap : gaps_over_year(session.work->job, session.work->job.banks[0]))
        CHECK(gap.least == gap.most);
}

TEST_CASE("with rails each inset face has its gap to itself, and gives half of what it swells") {
    Json job = bank_json("inset");
    job["banks"][0]["rail"] = "20 mm";
    const Session session = opened(job);
    REQUIRE(session.problems.empty());
    const BankSpec& bank = session.work->job.banks[0];
    // 620 - 12 - 2 (20 + 10) = 548 mm for three.
    CHECK(bank.made.between == Length::millimetres(30));
    const auto gaps = gaps_over_year(session.work->job, bank);
    CHECK(gaps.size() == 6);
    CHECK(gaps[1].least - gaps[1].made == (gaps[0].least - gaps[0].made));
}

TEST_CASE("a bank lines up with the doors beside it, or is told by how much it does not") {
    Json job = bank_json("overlay");
    job["banks"][0]["beside"] = {{"top", "12 mm"}, {"bottom", "8 mm"}};
    const auto notes = notes_of(job);
    CHECK(has(notes, "the faces end 2.0 mm below the doors beside them: `top` of 12.0 mm lines them up"));
    CHECK(has(notes, "the faces begin 2.0 mm below the doors beside them: `bottom` of 8.0 mm lines them up"));
    job["banks"][0].erase("top");
    job["banks"][0].erase("bottom");
    const Session session = opened(job);
    REQUIRE(session.problems.empty());
    CHECK(session.work->job.banks[0].ends.top == Length::millimetres(12));
    CHECK(out_of_line(session.work->job.banks[0]).empty());
    // A gap is the other way round: the more there is, the lower the line.
    Json inset = bank_json("inset");
    inset["banks"][0]["beside"] = {{"top", "4 mm"}};
    CHECK(has(notes_of(inset),
              "the faces end 2.0 mm below the doors beside them: `top` of 4.0 mm lines them up"));
}

TEST_CASE("holes that miss the front or fall on its groove are told of with a height that does") {
    Json job = bank_json("overlay");
    // A face of 210 mm; the box begins 6.35 mm up and is 25.4 mm lower than its opening (for the middle one 210 mm).
    job["banks"][0]["handles"] = {{"centres", "96 mm"}, {"from_top", "12 mm"}};
    CHECK(has(notes_of(job),
              "drill its handle's holes 162.0 mm and 258.0 mm from the face's left end, 198.0 mm up from its "
              "bottom edge"));
    const auto told = [&] {
        for (const std::string& note : notes_of(job))
            if (note.find("the holes are") == 0) return note;
        return std::string();
    };
    CHECK(told().find("the holes are 12.0 mm below the face's upper edge, ") == 0);
    CHECK(told().find("too high to go through the box's front: ") != std::string::npos);
    const std::string note = told();
    const std::string height = note.substr(note.find("front: ") + 7);
    job["banks"][0]["handles"]["from_top"] = height.substr(0, height.find(" below"));
    CHECK(told().find("too high") == std::string::npos);
    job["banks"][0]["handles"] = {{"centres", "390 mm"}};
    CHECK(told().empty());
    CHECK(problem_of(job) == "none");
    job["banks"][0]["handles"] = {{"centres", "96 mm"}, {"from_top", "1 mm"}};
    CHECK(problem_of(job).find(
              "/banks/0/handles/from_top: `seeds 1`: the holes go 1.5 mm over the face's edge; ") == 0);
}

TEST_CASE("each copy is hung by its own gaps: the end of the bank above the first, the reveal below it") {
    const Session session = opened(bank_json("inset"));
    REQUIRE(session.problems.empty());
    const auto first = assembly(*session.work, "seeds", 1), last = assembly(*session.work, "seeds", 3);
    REQUIRE(first->face);
    CHECK(first->face->top == Length::millimetres(6));
    CHECK(first->face->bottom == Length::millimetres(5));
    CHECK(last->face->top == Length::millimetres(5));
    CHECK(last->face->bottom.mm() == doctest::Approx(6.0));
}

TEST_CASE("a drawer that is renamed keeps its place in the bank, and a copy of it stands outside") {
    const Session start = opened(bank_json("overlay"));
    const Session renamed = apply(start, SetField{"/drawers/0/name", "bulbs"}, now);
    CHECK(renamed.problems.empty());
    CHECK(renamed.document["banks"][0]["drawers"][0] == "bulbs");
    const Session added = apply(renamed, AddDrawer{0}, now);
    CHECK(added.problems.empty());
    CHECK(added.work->job.drawers[1].opening->height == added.work->job.drawers[0].opening->height);
}

TEST_CASE("drawers of one name may stand in several banks, each copy named, if their faces are alike") {
    Json job = bank_json("overlay");
    job["drawers"][0]["count"] = 4;
    job["drawers"][0]["face"]["stock"] = "ply 12";
    Json& bank = job["banks"][0];
    bank["drawers"] = {"seeds", "seeds"};
    Json right = bank;
    right["name"] = "right";
    job["banks"].push_back(right);
    const Session session = opened(job);
    REQUIRE(session.problems.empty());
    CHECK(session.work->job.banks[1].rows[1].copy == 4);
    CHECK(session.work->job.drawers[0].face.in_bank->gaps.size() == 4);
    job["banks"][1]["opening"]["height"] = "700 mm";
    CHECK(problem_of(job).find("/banks/1/heights: drawers of one name are alike") == 0);
    job["banks"][1]["drawers"] = {"seeds"};
    CHECK(problem_of(job).find("/banks/0/drawers/0: of `seeds` there are 4, and the banks name it 3 times") ==
          0);
    job["banks"][1]["drawers"] = {"seeds", "seeds", "seeds"};
    CHECK(problem_of(job).find("/banks/1/drawers/2: of `seeds` there are 4, and the banks name it 5 times") ==
          0);
}

// Two of one name, given, and a third drawer with what is left; rails of 20 mm, so that each opening can be read.
Json railed_json() {
    Json job = bank_json("inset");
    Json& drawers = job["drawers"];
    drawers[0]["count"] = 2;
    drawers[0]["face"]["stock"] = "ply 12";
    Json tools = drawers[0];
    tools["name"] = "tools";
    tools["count"] = 1;
    drawers.push_back(tools);
    Json& bank = job["banks"][0];
    bank["drawers"] = {"seeds", "tools"};
    bank["rail"] = "20 mm";
    bank["heights"] = "given";
    bank["face_heights"] = {"140 mm", "140 mm", nullptr};
    return job;
}

const BankSpec& bank_in(const Session& session) { return session.work->job.banks[0]; }

TEST_CASE("inset faces are cut by the narrowest opening that was read in front, and it is told which") {
    Json job = bank_json("inset");
    job["drawers"][0]["face"]["stock"] = "ply 12";
    Json& survey = job["drawers"][0]["opening"]["survey"];
    survey = {{"width_top", "399 mm"}, {"width_middle", "398.5 mm"}, {"width_back", "395 mm"}};
    const Session session = opened(job);
    REQUIRE(session.problems.empty());
    // 398.5 mm less two gaps of 6 mm; what is behind does not meet a face.
    CHECK(bank_in(session).made.face_width == Length::millimetres(386) + Length::micrometres(500));
    CHECK(has(notes_of(job),
              "the opening of `seeds 1` was read 398.5 mm wide, the narrowest: it sets the width of all "
              "faces, 386.5 mm, not the 400.0 mm of the column"));
    // An overlay face stays: 400 mm and 6 mm on each side.
    job["banks"][0]["style"] = "overlay";
    const Session overlay = opened(job);
    REQUIRE(overlay.problems.empty());
    CHECK(bank_in(overlay).made.face_width == Length::millimetres(412));
    CHECK(has(notes_of(job),
              "the opening of `seeds 1` was read 398.5 mm wide, the narrowest: overlay faces stay 412.0 mm "
              "wide, and cover 13.5 mm there, left and right together"));
}

TEST_CASE("before a wider opening an inset face has half of what it is wider on each side") {
    Json job = railed_json();
    job["drawers"][0]["opening"]["survey"] = {{"width_top", "398 mm"}};
    const Session session = opened(job);
    REQUIRE(session.problems.empty());
    const auto tools = assembly(*session.work, "tools", 1);
    REQUIRE(tools->face);
    CHECK(tools->face->left == Length::millimetres(7));
    CHECK(tools->face->right == Length::millimetres(7));
}

TEST_CASE("a height that was read a little short flags the face of its copy, and a collision is refused") {
    // Faces of 140 mm and gaps of 6 and 5 mm want openings of 151 and 150 mm.
    Json job = railed_json();
    Json& opening = job["drawers"][0]["opening"];
    opening["survey"] = {{"height_left", "151 mm"}, {"height_right", "150 mm"}};
    REQUIRE(problem_of(job) == "none");
    // The rail below the first is then 1 mm nearer, the one below the second at 320 mm: its face ends at 6 + 140 + 30 + 140 = 316 mm.
    CHECK(has(notes_of(job),
              "the face of `seeds 1` comes to 4.0 mm from its rail as that was read, not 5.0 mm: look again, "
              "and plane it there if it is so"));
    opening["survey"] = {{"height_left", "143 mm"}};
    CHECK(problem_of(job).find(
              "/banks/0/face_heights/0: the face of `seeds 1` goes 3.0 mm over its rail; "
              "make the face of `seeds 1` 8.0 mm lower and that of `seeds 2` 8.0 mm higher") == 0);
}

TEST_CASE("heights may be surveyed one drawer at a time, and what is not read yet is told of") {
    Json job = railed_json();
    job["banks"][0]["heights"] = "by opening";
    job["banks"][0].erase("face_heights");
    job["drawers"][1]["opening"]["survey"] = {{"height_left", "180 mm"}};
    // 620 mm less two rails and 180 mm: 400 mm for two. Copies of one name are alike only if their gaps are.
    job["banks"][0]["top"] = "5 mm";
    REQUIRE(problem_of(job) == "none");
    CHECK(has(notes_of(job), "2 openings are not read yet: they divide what is left alike, 200.0 mm each"));
    job["drawers"][1]["opening"].erase("survey");
    job["drawers"][0]["opening"]["survey"] = {{"height_left", "190 mm"}};
    CHECK(problem_of(job) == "none");
}

TEST_CASE("a drawer that is taken away leaves its bank, and an empty bank goes") {
    const Session start = opened(railed_json());
    REQUIRE(start.problems.empty());
    const Session without = apply(start, RemoveDrawer{1}, now);
    CHECK(without.document["banks"][0]["drawers"] == Json({"seeds"}));
    CHECK(without.document["banks"][0]["face_heights"] == Json({"140 mm", "140 mm"}));
    const Session only_tools = apply(start, RemoveDrawer{0}, now);
    CHECK(only_tools.document["banks"][0]["face_heights"] == Json::array({nullptr}));
    CHECK(only_tools.problems.empty());
    Json job = bank_json("inset");
    Json other = job["drawers"][0];
    other["name"] = "other";
    other["opening"] = {{"width", "400 mm"}, {"height", "150 mm"}, {"depth", "450 mm"}};
    job["drawers"].push_back(other);
    const Session emptied = apply(opened(job), RemoveDrawer{0}, now);
    CHECK(emptied.problems.empty());
    CHECK_FALSE(emptied.document.contains("banks"));
}

TEST_CASE("a drawer that is named for each copy is named as often as it has copies, after its last") {
    Json job = railed_json();
    job["banks"][0]["drawers"] = {"seeds", "tools", "seeds"};
    job["banks"][0]["heights"] = "in proportion";
    job["banks"][0]["parts"] = {2, 3, 2};
    job["banks"][0].erase("face_heights");
    job["banks"][0]["opening"]["height"] = "900 mm";
    const Session start = opened(job);
    const Session more = apply(start, SetField{"/drawers/0/count", 4}, now);
    CHECK(more.document["banks"][0]["drawers"] == Json({"seeds", "tools", "seeds", "seeds", "seeds"}));
    CHECK(more.document["banks"][0]["parts"] == Json({2, 3, 2, 2, 2}));
    CHECK(more.problems.empty());
    const Session fewer = apply(more, SetField{"/drawers/0/count", 1}, now);
    CHECK(fewer.document["banks"][0]["drawers"] == Json({"seeds", "tools"}));
    CHECK(fewer.document["banks"][0]["parts"] == Json({2, 3}));
    CHECK(fewer.problems.empty());
    // Named once it stands for all, however many.
    const Session again = apply(fewer, SetField{"/drawers/0/count", 2}, now);
    CHECK(again.document["banks"][0]["parts"] == Json({2, 2, 3}));
    CHECK(again.problems.empty());
}

TEST_CASE(
    "a bank is gathered of faces of one style and openings of one width, in the job's unit and language") {
    // A job in millimetres, whose lengths in inches say so.
    Json job = parse_json(std::regex_replace(tests::sample_json().dump(), std::regex("\"([0-9][0-9/ .]*)\""),
                                             "\"$1 in\""))
                   .value();
    const auto add = [&](const char* name, const char* width, const char* style) {
        Json drawer = job["drawers"][0];
        drawer["name"] = name;
        drawer["count"] = 1;
        drawer["opening"] = {{"width", width}, {"height", "150 mm"}, {"depth", "450 mm"}};
        drawer["face"] = {{"stock", "ply 12"}, {"style", style}};
        job["drawers"].push_back(drawer);
    };
    add("first", "400 mm", "inset");
    add("overlaid", "400 mm", "overlay");
    add("near", "401.5 mm", "inset");
    add("too far", "399.5 mm", "inset");  // 2 mm from `near`
    add("bare", "400 mm", "none");
    job["drawers"].erase(0);
    job["unit"] = "mm";
    Session start = opened(job);
    REQUIRE(start.problems.empty());
    start = apply(start, SpeakIn{Language::german}, now);
    const Session gathered = apply(start, GatherBank{}, now);
    REQUIRE(gathered.problems.empty());
    const Json& bank = gathered.document["banks"][0];
    CHECK(bank["name"] == "Schubladenstock");
    CHECK(bank["drawers"] == Json({"first", "near"}));
    CHECK(bank["style"] == "inset");
    CHECK(bank["rail"] == "19 mm");
    CHECK(bank["reveal"] == "3 mm");
    const Session next = apply(gathered, GatherBank{}, now);
    CHECK(next.document["banks"][1]["drawers"] == Json({"overlaid"}));
    CHECK(next.document["banks"][1]["name"] == "Schubladenstock 2");
}

TEST_CASE("over the year all gaps are told, and the least is warned of where a rule does not show it") {
    // Plywood stands still: nothing moves, and a gap of 0.9 mm is as small all the year.
    Json job = bank_json("inset");
    job["drawers"][0]["face"]["stock"] = "ply 12";
    job["banks"][0]["top"] = "0.9 mm";
    CHECK(has(notes_of(job),
              "over the year the gaps at the faces go from 0.9 mm to 6.0 mm: the least is under "
              "what a rule shows"));
    job["banks"][0]["top"] = "1 mm";
    for (const std::string& note : notes_of(job)) CHECK(note.find("over the year") == std::string::npos);
}

}  // namespace banks_in_a_job
