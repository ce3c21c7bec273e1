// Gloves, one hand, three seconds: nothing is hidden, lost or opened by a slip, and what is next is one tap away.
#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <algorithm>

#include "session/made_ready.h"
#include "window/in_sight.h"
#include "window/screen_next.h"
#include "window/screen_stand.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

// What can be pressed and lies under the toast; pictures may: they are seen again in four seconds.
std::string under_toast(const WidgetLog& log) {
    const LoggedWidget* toast = toast_in(log);
    if (!toast) return "no toast";
    std::string out;
    for (const LoggedWidget& widget : log.widgets) {
        if (!widget.pressable || widget.kind == "block" || widget.kind == "picture") continue;
        if (common(toast->box.left, toast->box.right, widget.seen.left, widget.seen.right) > 1 &&
            common(toast->box.top, toast->box.bottom, widget.seen.top, widget.seen.bottom) > 1)
            out += widget.label + "\n";
    }
    return out;
}

}  // namespace

TEST_CASE("every step opens at its top, however far the one before was scrolled") {
    Maker maker(one_drawer, 800, 700);
    go_to_test(maker);
    const double top = maker.find("Test cut first")->box.top;
    maker.hand().move(400, 430);
    maker.hand().wheel(-8);
    REQUIRE(maker.find("Test cut first")->box.top < top - 40);
    maker.press("After this");
    maker.press("Before this");
    CHECK(maker.find("Test cut first")->box.top == doctest::Approx(top));
}

TEST_CASE("at every cut of a joint, locked or not, one tap leads to what helps where it fits tight") {
    Maker maker(one_drawer);
    const auto helps_at = [&](const std::string& step, const char* label) {
        maker.app().state().place = Where::saw;
        maker.app().state().setup = step;
        maker.app().state().saw_tab = SawTab::picture;
        maker.redraw();
        maker.press(label);
        return maker.app().state().saw_tab == SawTab::test;
    };
    int cuts = 0;
    for (const std::string& step : maker.work().plan.sequence) {
        const Setup& setup = *setup_of_step(maker.work().plan, step);
        if (setup.group.empty()) continue;
        INFO(setup.work);
        CHECK(helps_at(step, "Test cut first"));
        ++cuts;
    }
    CHECK(cuts > 3);
    const auto first = std::find_if(maker.work().plan.setups.begin(), maker.work().plan.setups.end(),
                                    [](const Setup& setup) { return setup.test_cut; });
    const std::string id = first->id, group = first->group;
    TestCut lock;
    lock.setup = id;
    maker.app().act(maker.hand().ui(), LockGroup{lock});
    maker.app().finish(maker.hand().ui());
    for (const Setup& setup : std::vector<Setup>(maker.work().plan.setups))
        if (setup.group == group) CHECK(helps_at(setup.id, "Too tight or loose?"));
}

TEST_CASE(
    "a tick that comes too early says so at the ends, by the part's own name, and leads to what comes "
    "first") {
    Maker maker(one_drawer);
    const auto& plan = maker.work().plan;
    const auto joint = std::find_if(plan.setups.begin(), plan.setups.end(), [](const Setup& setup) {
        return setup.work == "locking rabbet: rabbet";
    });
    REQUIRE(joint != plan.setups.end());
    maker.app().state().place = Where::saw;
    maker.app().state().setup = joint->id;
    maker.redraw();
    maker.hand().ui().toasts.clear();
    maker.press(part_words(maker.hand().ui().words(), maker.work().plan, joint->passes.front().part));
    maker.app().finish(maker.hand().ui());
    maker.redraw();
    CHECK(maker.hand().ui().toasts.empty());
    const std::string& refused = maker.app().session().refused;
    CHECK(refused.find("string 1, front can't have gone through") == 0);
    CHECK(refused.find("string.1") == std::string::npos);
    const std::string first = maker.app().session().refused_first;
    REQUIRE_FALSE(first.empty());
    maker.press("Go to " + step_name(maker.hand().ui().words(), maker.work().plan, first));
    CHECK(maker.app().state().setup == first);
    CHECK(maker.find("Not ticked") == nullptr);
}

TEST_CASE("a tick of a part that has come out too short leads to where it is told as spoilt") {
    Session session = tests::opened(parse_json(one_drawer).value());
    const std::string crosscut = tests::setup_of(session, "crosscut to length: front"),
                      groove = tests::setup_of(session, "groove", "string.1.front"), front = "string.1.front";
    session = tests::ran(session, crosscut, tests::passes_of(session, crosscut, front), tests::now);
    session = tests::made_ready(session, groove, tests::passes_of(session, groove, front), tests::now);
    for (Json& entry : session.document["log"])
        if (entry.value("key", "") == "crosscut" && entry.value("part", "") == front)
            entry["readings"]["size"] = "10";
    for (const auto& size : {std::pair{1280, 800}, std::pair{1024, 600}}) {
        Maker maker(to_text(session.document), size.first, size.second);
        maker.app().state().place = Where::saw;
        maker.app().state().setup = groove;
        maker.redraw();
        const std::string its_name = part_words(maker.hand().ui().words(), maker.work().plan, front);
        maker.press(its_name);
        maker.app().finish(maker.hand().ui());
        maker.redraw();
        CHECK(maker.app().session().refused.find("too short by") != std::string::npos);
        maker.press(its_name + " is spoilt");
        CHECK(maker.find(its_name));
        maker.hold(its_name);
        maker.app().finish(maker.hand().ui());
        maker.redraw();
        CHECK(maker.app().session().refused.empty());
        CHECK(maker.work().job.log.back().kind == LogKind::lost);
    }
}

TEST_CASE("a toast lies over nothing that can be pressed") {
    for (const auto& size : {std::pair{1280, 800}, std::pair{800, 1280}, std::pair{1024, 600}}) {
        const int width = size.first, height = size.second;
        Maker maker(one_drawer, width, height);
        for (const Where place : {Where::drawers, Where::order, Where::saw, Where::job}) {
            maker.app().state().place = place;
            maker.hand().ui().toasts.clear();
            maker.hand().ui().toast("Undone: parts run at step 12");
            maker.redraw();
            INFO(width << " x " << height << ", place " << static_cast<int>(place));
            CHECK(under_toast(maker.hand().log()) == "");
        }
    }
}

TEST_CASE("what stands in the empty fields of a test cut is read whole") {
    for (const auto& size : {std::pair{1280, 800}, std::pair{800, 1280}, std::pair{1024, 600}}) {
        Maker maker(one_drawer, size.first, size.second);
        go_to_test(maker);
        maker.press("Test cut");
        int fields = 0;
        for (const LoggedWidget& widget : maker.hand().log().widgets) {
            if (widget.kind != "length field") continue;
            ++fields;
            INFO(widget.label);
            CHECK_FALSE(widget.hint_cut_off);
        }
        CHECK(fields > 3);
    }
}

// Of a note that is as long as what comes from a file that others have changed.
TEST_CASE("a toast lies over words only where there is no place without") {
    Maker maker(one_drawer, 1280, 800);
    maker.press("At the saw");
    maker.hand().ui().toasts.clear();
    maker.hand().ui().toast("The file was changed by others: that is taken up");
    maker.redraw();
    const LoggedWidget* toast = toast_in(maker.hand().log());
    REQUIRE(toast);
    double least = 1e9, covered = 0;
    const auto over = [&](double left, double top) {
        double area = 0;
        for (const ImVec4& read : maker.hand().ui().read)
            area += std::max(0.0, common(left, left + toast->box.right - toast->box.left, read.x, read.z)) *
                    std::max(0.0, common(top, top + toast->box.bottom - toast->box.top, read.y, read.w));
        for (const ImVec4& taken : maker.hand().ui().taken)
            if (&taken != &maker.hand().ui().taken.back())
                area +=
                    1000 *
                    std::max(0.0, common(left, left + toast->box.right - toast->box.left, taken.x, taken.z)) *
                    std::max(0.0, common(top, top + toast->box.bottom - toast->box.top, taken.y, taken.w));
        return area;
    };
    covered = over(toast->box.left, toast->box.top);
    const double wide = toast->box.right - toast->box.left, high = toast->box.bottom - toast->box.top;
    for (double y = 0; y + high < 800; y += 8)
        for (const double x : {20.0, (1280 - wide) / 2, 1260 - wide}) least = std::min(least, over(x, y));
    CHECK(covered <= least + 40);
}

TEST_CASE("a steep drag over the order's picture opens nothing") {
    Maker maker(one_drawer);
    maker.press("Order of work");
    const std::string step = maker.work().plan.sequence.front();
    const draw::PixelBox box = maker.find(step)->box;
    const double x = (box.left + box.right) / 2, y = (box.top + box.bottom) / 2;
    maker.hand().drag(x - 5, y - 40, x, y);
    CHECK(maker.app().state().place == Where::order);
    maker.press(step);
    CHECK(maker.app().state().place == Where::saw);
}

TEST_CASE("the page stays with its setup when the order is numbered anew") {
    Maker maker(one_drawer);
    maker.app().state().place = Where::saw;
    const std::size_t steps = maker.work().plan.sequence.size();
    maker.app().state().setup = maker.work().plan.sequence.at(steps - 2);
    maker.redraw();
    const std::string work = maker.setup().work, id = maker.setup().id;
    // The last is wanted first, so that all others have other numbers.
    maker.app().act(maker.hand().ui(), PinSetup{maker.work().plan.sequence.back(), Pinned::first});
    maker.app().finish(maker.hand().ui());
    maker.redraw();
    CHECK(maker.setup().work == work);
    CHECK(maker.setup().id != id);
}

TEST_CASE("what is next is one tap away from everywhere") {
    Maker maker(one_drawer, 800, 1280);
    for (const char* place : {"Drawers", "Order of work", "The job"}) {
        maker.press(place);
        maker.press("To do now: step 1");
        CHECK(maker.app().state().place == Where::saw);
        CHECK(maker.app().state().setup == maker.work().plan.sequence.front());
    }
}

TEST_CASE("when a step is done, the next one is what is next to do") {
    Maker maker(one_drawer);
    maker.press("At the saw");
    maker.press("Tick all");
    CHECK(maker.find("To do now: step 2"));
}

TEST_CASE("the job's stages add up to the work, and a tap leads to the first step that is left") {
    Maker maker(one_drawer);
    maker.press("The job");
    Screen screen{maker.hand().ui(), maker.app().session(), maker.app().state(), std::nullopt};
    const auto counted = [&] {
        int of = 0;
        for (const JobStage& stage : job_stages(screen))
            if (stage.counts == "job.cuts_done") of += stage.of;
        return of;
    };
    CHECK(counted() == progress_of(maker.work()).of);
    const auto stages = job_stages(screen);
    CHECK(stages.front().name == "Measure the openings, slides and stock");
    CHECK(stages.front().done == 1);
    CHECK(stages.back().name == "Assemble and hang");
    CHECK(stages.back().done == 0);
    CHECK(stages.back().of == 1);
    // What is counted are drawers that could be, not those that were.
    const auto dry_fit = std::find_if(stages.begin(), stages.end(),
                                      [](const JobStage& stage) { return stage.name == "Dry fit"; });
    REQUIRE(dry_fit != stages.end());
    CHECK(maker.find(std::to_string(dry_fit - stages.begin() + 1) + ".  Dry fit")->value ==
          "0 of 1 drawers ready for it");
    const auto crosscut = std::find_if(stages.begin(), stages.end(), [](const JobStage& stage) {
        return stage.name == "Crosscut to length";
    });
    REQUIRE(crosscut != stages.end());
    maker.press(std::to_string(crosscut - stages.begin() + 1) + ".  Crosscut to length");
    CHECK(maker.setup().stage == Stage::crosscut);
}

TEST_CASE("what changes at the machine is said, and what stays") {
    Maker maker(one_drawer);
    const Work& work = maker.work();
    Setup before = *setup_of_step(work.plan, work.plan.sequence.front());
    before.guide = "fence";
    before.height = Length::inches(1, 4);
    before.fence = Length::inches(1, 2);
    before.spacer = {};
    Setup now = before;
    now.group = before.group = {};  // of no joint: no scale of it is known to be off
    CHECK(setup_changes(work, &before, now, CutterSide::near).change.empty());
    CHECK(setup_changes(work, &before, now, CutterSide::near).leave ==
          "Leave the " + now.cutter + ", the fence and the height as they are");
    now.fence = Length::inches(5, 8);
    now.height = Length::inches(7, 32);
    now.spacer = Length::inches(3, 8);
    const SetupChanges said = setup_changes(work, &before, now, CutterSide::near);
    CHECK(said.change == std::vector<std::string>{"Move the fence out, from 1/2 in to 5/8 in",
                                                  "Lower the blade from 1/4 in to 7/32 in",
                                                  "Put a spacer of 3/8 in on the fence"});
    CHECK(said.leave == "Leave the " + now.cutter + " as it is");
    CHECK(setup_changes(work, nullptr, now, CutterSide::near).change.size() == 1);
    // To the far side it is farther by the kerf, from either setting.
    before.kerf = now.kerf = Length::inches(1, 4);
    CHECK(setup_changes(work, &before, now, CutterSide::far).change.front() ==
          "Move the fence out, from 3/4 in to 7/8 in");
}

TEST_CASE("the section is drawn large: it takes most of its room one way, whatever is said beside it") {
    constexpr std::pair<int, int> sizes[] = {{1280, 800}, {1920, 1080}, {800, 1280}, {1024, 600}};
    for (const auto& size : sizes) {
        Maker maker(one_drawer, size.first, size.second);
        for (const std::string& step : maker.work().plan.sequence) {
            if (maker.work().plan.setup_with_id(step)->stage != Stage::joint) continue;
            maker.app().state().place = Where::saw;
            maker.app().state().setup = step;
            maker.redraw();
            CAPTURE(size.first);
            CAPTURE(step);
            const auto& widgets = maker.hand().log().widgets;
            const auto picture = std::find_if(widgets.begin(), widgets.end(), [](const LoggedWidget& one) {
                return one.kind == "picture" && whole_in_sight(one);
            });
            REQUIRE(picture != widgets.end());
            const draw::PixelBox &all = picture->box, &drawn = picture->drawn;
            const double across = (drawn.right - drawn.left) / (all.right - all.left),
                         up = (drawn.bottom - drawn.top) / (all.bottom - all.top);
            CHECK(std::max(across, up) >= 0.45);
        }
    }
}

TEST_CASE("on a panel of 1024 x 600 the numbers, the picture and what is next are in sight at every step") {
    Maker maker(one_drawer, 1024, 600);
    for (const std::string& step : maker.work().plan.sequence) {
        maker.app().state().place = Where::saw;
        maker.app().state().setup = step;
        maker.redraw();
        INFO(step);
        int numbers = 0, pictures = 0;
        for (const LoggedWidget& widget : maker.hand().log().widgets) {
            if (widget.kind == "number" && widget.pressable) {
                CHECK_MESSAGE(whole_in_sight(widget), widget.label);
                ++numbers;
            }
            if (widget.kind == "picture" && whole_in_sight(widget)) ++pictures;
        }
        CHECK(numbers >= 1);
        CHECK(pictures == 1);
        for (const char* label : {"Before this", "After this"}) CHECK(whole_in_sight(*maker.find(label)));
        const auto here = maker.find("Do this now");
        CHECK(whole_in_sight(here ? *here : maker.hand().find("To do now: step 1")));
    }
}

TEST_CASE("the keyboard alone: to the saw, through the steps, and a part has run") {
    Maker maker(one_drawer);
    Hand& hand = maker.hand();
    hand.key(GLFW_KEY_4);
    CHECK(maker.app().state().place == Where::job);
    hand.key(GLFW_KEY_N);
    CHECK(maker.app().state().setup == maker.work().plan.sequence.front());
    hand.key(GLFW_KEY_PAGE_DOWN);
    CHECK(maker.app().state().setup == maker.work().plan.sequence.at(1));
    hand.key(GLFW_KEY_PAGE_UP);
    hand.key(GLFW_KEY_PAGE_UP);  // there is none before the first
    CHECK(maker.app().state().setup == maker.work().plan.sequence.front());
    hand.key(GLFW_KEY_R);
    CHECK(maker.on_disk()["log"].size() == 1);
    hand.key(GLFW_KEY_F);
    CHECK(maker.find("Back to the setup"));
    hand.key(GLFW_KEY_ESCAPE);
    CHECK_FALSE(maker.find("Back to the setup"));
    hand.key(GLFW_KEY_L);
    CHECK(maker.app().state().saw_tab == SawTab::log);
    hand.key(GLFW_KEY_F1);
    CHECK(maker.find("Back to the work"));
    hand.key(GLFW_KEY_F1);
    CHECK_FALSE(maker.find("Back to the work"));
}

TEST_CASE("no key is heard beside the keypad or a field") {
    Maker maker(one_drawer);
    maker.press("Width");
    maker.hand().key(GLFW_KEY_4);
    maker.hand().key(GLFW_KEY_N);
    CHECK(maker.app().state().place == Where::drawers);
    maker.hand().key(GLFW_KEY_ESCAPE);
    maker.press("Name");
    maker.hand().key(GLFW_KEY_2);
    CHECK(maker.app().state().place == Where::drawers);
}

}  // namespace kw::window
