// The pictures in German: nothing English is left on them, and the longer words lie on others nowhere where the English ones do not.

#include <doctest/doctest.h>

#include <algorithm>
#include <functional>

#include "draw/joint_view.h"
#include "draw/layout.h"
#include "draw/named_drawing.h"
#include "draw/order_drag.h"
#include "draw/order_shown.h"
#include "draw/part_view.h"
#include "draw/setup_slide.h"
#include "draw/shapes_of.h"
#include "draw/svg.h"
#include "draw/symptom_view.h"
#include "draw/view_job.h"
#include "draw/words_on_words.h"
#include "words/names.h"

using namespace kw::draw;
using kw::Group;
using kw::Language;
using kw::Setup;
using kw::Work;

namespace {

kw::Settings moved_settings(const Group& group) {
    kw::Settings settings = group.stands;
    settings.height -= kw::Length::micrometres(200);
    settings.fence += kw::Length::micrometres(300);
    return settings;
}

void add_setups(std::vector<NamedDrawing>& all, const Work& work) {
    for (const Setup& setup : work.plan.setups) {
        const std::string name = setup.id + " " + setup.work;
        for (const bool left : {true, false})
            for (const bool far : {true, false})
                all.push_back({name + (left ? "" : ", fence at the right") + (far ? ", to the far side" : ""),
                               setup_view(work, setup, {left, far})});
        if (setup.stage != kw::Stage::joint) continue;
        for (const PartLie& lie : part_lies(work, setup))
            all.push_back({name + ", board", part_view(work, setup, lie)});
        const SetupScene scene = *setup_scene(work, setup);
        for (const Setup& other : work.plan.setups)
            if (const auto before = setup_scene(work, other); before && slides(*before, scene))
                all.push_back({name + ", from " + other.id, setup_slide(*before, scene, 1)});
    }
}

void add_joints(std::vector<NamedDrawing>& all, const Work& work) {
    for (const Group& group : work.plan.groups) {
        const std::string& name = group.work.label;
        all.push_back({name + ", closed", joint_view(work, group)});
        all.push_back({name + ", off", joint_view(work, group, moved_settings(group))});
        all.push_back({name + ", magnified", joint_magnified(work, group, moved_settings(group))});
        all.push_back({name + ", before and after",
                       joint_before_after(work, group, moved_settings(group), group.stands)});
        for (const kw::Sight& sight : kw::sight_table())
            all.push_back({name + ", " + std::string(sight.word), symptom_view(work, group, sight)});
    }
}

std::vector<NamedDrawing> pictures(const Work& work) {
    std::vector<NamedDrawing> all;
    add_setups(all, work);
    add_joints(all, work);
    return all;
}

Drawing order_of(const Work& work, double width, double height) {
    return order_shown::view_of(work, {width, height}).drawing;
}

std::vector<std::string> texts_of(const Drawing& drawing) {
    std::vector<std::string> texts{drawing.title};
    for (const Label& label : shapes_of::all<Label>(drawing)) texts.push_back(label.text);
    for (const Dimension& dimension : shapes_of::all<Dimension>(drawing)) {
        texts.push_back(dimension.text);
        if (dimension.change) texts.push_back(dimension.change->text);
    }
    return texts;
}

view_job::Wanted in(view_job::Wanted wanted, Language language) {
    wanted.language = language;
    return wanted;
}

std::vector<view_job::Wanted> all_wanted() {
    std::vector<view_job::Wanted> all{view_job::Wanted{}, view_job::metric()};
    all.push_back(view_job::metric());
    all.back().back_joint = "tongue and dado";
    all.push_back(view_job::metric());
    all.back().front_joint = "box joint";
    return all;
}

}  // namespace

TEST_CASE("nothing English is left on a German picture, nor in its title") {
    for (const view_job::Wanted& wanted : all_wanted()) {
        const auto us = view_job::work(in(wanted, Language::english)),
                   german = view_job::work(in(wanted, Language::german));
        auto before = pictures(*us), after = pictures(*german);
        before.push_back({"order", order_of(*us, 900, 500)});
        after.push_back({"order", order_of(*german, 900, 500)});
        REQUIRE(before.size() == after.size());
        for (std::size_t i = 0; i < after.size(); ++i) {
            CAPTURE(after[i].name);
            CHECK(after[i].drawing.title != before[i].drawing.title);
            for (const std::string& text : texts_of(after[i].drawing)) {
                CAPTURE(text);
                for (const char* word :
                     {"fence", "spacer", "height", "kerf", "dado", "rabbet", "groove", "side", "edge", "face",
                      "gap", "loose", "the ", " of ", "cut", "pass ", "lip"})
                    CHECK(text.find(word) == std::string::npos);
            }
        }
    }
}

TEST_CASE("a German picture says what is set and how it lies, with the decimal comma") {
    const auto work = view_job::work(in(view_job::metric(), Language::german));
    const auto setup = std::find_if(work->plan.setups.begin(), work->plan.setups.end(),
                                    [](const Setup& one) { return one.work == "locking rabbet: rabbet"; });
    REQUIRE(setup != work->plan.setups.end());
    CHECK(setup_view(*work, *setup).title ==
          "Falz mit Nut: Falz: Anschlag 6,2 mm, Höhe 6,2 mm, Opferleiste 6,6 mm, Außenfläche nach unten, "
          "linkes und rechtes Ende an der Distanzleiste");
    CHECK(part_view(*work, *setup, part_lies(*work, *setup).front()).title ==
          "Vorderstück von oben gesehen: Innenfläche nach oben, linkes Ende an der Distanzleiste, Oberkante "
          "zum "
          "Bediener");
    const Group& group = *work->plan.group_with_id(setup->group);
    CHECK(
        joint_magnified(*work, group, moved_settings(group)).title ==
        "Falz mit Nut, geschlossen, 0,10 mm Übermaß, Brüstungsspalt 0,10 mm +, Ende 0,50 mm vor; Spiel × 2");
}

TEST_CASE("no German words lie on others where no English ones do") {
    for (const view_job::Wanted& wanted : all_wanted()) {
        const auto us = view_job::work(in(wanted, Language::english)),
                   german = view_job::work(in(wanted, Language::german));
        const auto before = pictures(*us), after = pictures(*german);
        REQUIRE(before.size() == after.size());
        for (const auto& room : {std::pair{800.0, 500.0}, std::pair{560.0, 420.0}})
            for (std::size_t i = 0; i < after.size(); ++i) {
                CAPTURE(after[i].name);
                CAPTURE(room.first);
                const auto meeting_in = [&](const Drawing& drawing) {
                    return words_on_words(drawing,
                                          fitted(drawing, room.first, room.second, 1, paper_text_width));
                };
                const auto meeting = meeting_in(after[i].drawing);
                CAPTURE((meeting.empty() ? std::string() : meeting.front()));
                CHECK(meeting.size() <= meeting_in(before[i].drawing).size());
            }
    }
}

TEST_CASE("in the order's picture no German words lie on others, nor beside it, in any room") {
    const auto work = view_job::work(in(view_job::metric(), Language::german));
    for (const double width : {420.0, 700.0, 1100.0, 1800.0})
        for (const double height : {300.0, 700.0}) {
            CAPTURE(width);
            const Drawing drawing = order_of(*work, width, height);
            const auto meeting = words_on_words(drawing, View{});
            CAPTURE((meeting.empty() ? std::string() : meeting.front()));
            CHECK(meeting.empty());
            for (const PlacedText& text : annotate(drawing, View{}, paper_text_width).texts) {
                CAPTURE(text.text);
                CHECK(text.box.left >= -1e-6);
                CHECK(text.box.right <= width + 1e-6);
            }
        }
}

TEST_CASE("what letting go of a dragged step does is said in German") {
    const DraggedStep dragged{"S12", 3, kw::Pinned::nowhere, 1, 8};
    const kw::Words& words = kw::words_in(Language::german);
    CHECK(say_drop(dragged, Drop::first, words).place ==
          "Schritt 4 zuerst, vor allem, was es nicht selbst braucht");
    CHECK(say_drop(dragged, Drop::stays, words).place == "Schritt 4 bleibt, wo es ist");
}
