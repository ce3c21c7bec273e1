// A whole job spoken of in German.
#include <doctest/doctest.h>

#include <functional>
#include <set>

#include "job/half_inch_job.h"
#include "job/notes.h"
#include "job/pin_words.h"
#include "job/pins.h"
#include "no_english.h"

using namespace kw;
using half_inch::half_inch_job;
using half_inch::in;
using half_inch::worked;

namespace {

Job german_job() {
    Job job = half_inch_job();
    job.locale = {Graduation::mm_0_1, Language::german};
    return job;
}

// All that is told of the job, German alone.
std::vector<std::string> told(const Job& job) {
    std::vector<std::string> all;
    const auto work = work_out(job);
    if (work) {
        for (const Note& note : (*work)->plan.notes) {
            all.push_back(note.text.text(job.locale));
            if (!note.title.empty()) all.push_back(note.title.text(job.locale));
        }
        for (const Affected& one : (*work)->affected) all.push_back(one.what.text(job.locale));
        for (const Setup& setup : (*work)->plan.setups)
            for (const std::string& caution : cautions_for(job, setup)) all.push_back(caution);
    } else {
        for (const Problem& problem : work.error())
            for (const Message& message : {problem.why, problem.remedy})
                all.push_back(message.text(job.locale));
    }
    for (const std::string& text : all) {
        CAPTURE(text);
        CHECK_FALSE(tests::sounds_english(text));
    }
    return all;
}

bool says(const std::vector<std::string>& all, const std::string& text) {
    return std::find(all.begin(), all.end(), text) != all.end();
}

}  // namespace

TEST_CASE("a width in another unit is asked about in German, with the length that was likely meant") {
    Job job = german_job();
    job.drawers[0].opening->width = in(365);
    DrawerSpec other = job.drawers[0];
    other.name = "b";
    job.drawers.push_back(other);
    CHECK(says(told(job),
               "die Öffnung ist 9271,0 mm breit: war eine andere Einheit gemeint? die Breite mit Einheit "
               "schreiben, also „365 mm“; eine weitere Schublade ist auch so"));
}

TEST_CASE("notes, warnings and cautions of many jobs are German") {
    const std::vector<std::function<void(Job&)>> changes = {
        [](Job&) {},
        [](Job& job) { job.shop.machines.pop_back(); },  // the saw crosscuts
        [](Job& job) { job.drawers[0].face = {"", FaceStyle::overlay, in(1), in(1), in(1), in(1)}; },
        [](Job& job) { job.drawers[0].face = {"half", FaceStyle::inset, in(6), in(6), in(1), in(1)}; },
        [](Job& job) { job.drawers[0].bottom.style = BottomStyle::captured; },
        [](Job& job) { job.drawers[0].bottom.depth = in(3, 8); },
        [](Job& job) { job.drawers[0].front.dado_width = in(3, 8); },
        [](Job& job) { job.drawers[0].front.dado_width = in(1, 64); },
        [](Job& job) { job.drawers[0].front.depth = in(7, 16); },
        [](Job& job) { job.drawers[0].back.joint = "tongue and dado"; },
        [](Job& job) { job.drawers[0].back.joint = "rabbet"; },
        [](Job& job) { job.drawers[0].back.joint = "dovetail"; },
        [](Job& job) { job.drawers[0].back.setback = in(13); },
        [](Job& job) { job.drawers[0].back.stock = "oak"; },
        [](Job& job) { job.drawers[0].back.stock.clear(); },
        [](Job& job) { job.drawers[0].front.cutter = "dull stack"; },
        [](Job& job) { job.drawers[0].opening->width = in(4); },
        [](Job& job) { job.drawers[0].opening->height = in(2); },
        [](Job& job) { job.drawers[0].opening->depth = in(3); },
        [](Job& job) { job.drawers[0].slide.lengths = {in(20)}; },
        [](Job& job) { job.shop.cutters[0].machine = "nowhere"; },
        [](Job& job) { job.shop.machines[0].is_away = true; },
        [](Job& job) { job.shop.machines[0].kind = MachineKind::router_table; },
        [](Job& job) { job.stock[1].kind = StockKind::solid; },
        [](Job& job) {
            job.stock[1] = {"quarter", in(1, 4), StockKind::solid, "red oak", GrainCut::flatsawn, 6.0};
        },
        [](Job& job) {
            job.shop.cutters.push_back({"wide", CutterKind::dado_stack, "saw", in(7, 8)});
        },
        [](Job& job) {
            job.log.emplace_back();
            job.log.back().kind = LogKind::lost;
            job.log.back().part = "a.1.side_left";
        },
    };
    std::set<std::string> kinds;
    for (std::size_t i = 0; i < changes.size(); ++i) {
        CAPTURE(i);
        Job job = german_job();
        changes[i](job);
        for (const std::string& text : told(job)) kinds.insert(text);
    }
    CHECK(kinds.size() > 40);
    CHECK(kinds.contains(
        "Queranschlag und Parallelanschlag zugleich nur, weil dieser Schnitt nicht durchgeht."));
}

TEST_CASE("what a pin holds is told in German, and in English by the pin's own name") {
    const std::string group =
        "locking rabbet, slot, end; saw, quarter stack 6.35 mm; fence 6.35 mm, height 6.35 mm, spacer 6.35 "
        "mm; miter gauge, for 12.7 mm";
    CHECK(said_pin(group).text(german_job().locale) ==
          "Falz mit Nut, Nut, Ende; saw, quarter stack 6.35 mm; Anschlag 6.35 mm, Höhe 6.35 mm, "
          "Distanzleiste 6.35 "
          "mm; Queranschlag, für 12.7 mm");
    CHECK(said_pin("rip to width on saw, from a.1.front").text(german_job().locale) ==
          "auf Breite sägen auf saw, ab a.1.front");
    for (const std::string& pin :
         {group, std::string("rip to width on saw, from a.1.front"), std::string("; ; ;"),
          std::string("a; b; c 2; 3"), std::string(", from  on ")})
        CHECK(said_pin(pin).text(Graduation::in_64) == pin);
    const auto work = worked(half_inch_job());
    for (const Setup& setup : work->plan.setups) {
        const std::string pin = pin_name(setup, work->design);
        CHECK(said_pin(pin).text(Graduation::in_64) == pin);
    }
}
