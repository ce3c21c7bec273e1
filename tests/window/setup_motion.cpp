// The picture at the saw in time: pure at first, then in the real window.

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "draw/view_job.h"
#include "window/app.h"
#include "window/hand.h"
#include "window/platform.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

draw::SetupScene dado() {
    const auto work = view_job::work(view_job::Wanted{});
    for (const Setup& setup : work->plan.setups)
        if (setup.stage == Stage::joint) return *draw::setup_scene(*work, setup);
    FAIL("no joint");
    return {};
}

draw::SetupScene higher(draw::SetupScene scene) {
    scene.height += Length::inches(12, 1000);
    return scene;
}

// The demo job at the saw, at the first step of a joint.
class AtTheSaw {
public:
    AtTheSaw() {
        fs::copy_file(fs::path(KW_ASSET_DIR) / "demo.json", path_, fs::copy_options::overwrite_existing);
        auto opened = App::open(path_);
        REQUIRE(opened.has_value());
        app_.emplace(std::move(*opened));
        const Plan& plan = app_->session().work->plan;
        for (std::size_t i = 0; i + 1 < plan.sequence.size() && from_.empty(); ++i) {
            const auto here = scene_of(plan.sequence[i]), next = scene_of(plan.sequence[i + 1]);
            if (here && next && draw::slides(*here, *next)) from_ = plan.sequence[i];
        }
        REQUIRE_FALSE(from_.empty());
        app_->state().place = Where::saw;
        app_->state().setup = from_;
    }
    ~AtTheSaw() { fs::remove(path_); }
    AtTheSaw(const AtTheSaw&) = delete;
    AtTheSaw& operator=(const AtTheSaw&) = delete;

    void operator()(Ui& ui) { app_->frame(ui); }
    UiState& state() { return app_->state(); }
    const Work& work() { return *app_->session().work; }
    const SetupPicture& picture() { return app_->state().setup_picture; }

private:
    std::optional<draw::SetupScene> scene_of(const std::string& step) {
        const Work& work = *app_->session().work;
        const Setup* setup = work.plan.setup_with_id(step.substr(0, step.find('#')));
        return setup ? draw::setup_scene(work, *setup) : std::nullopt;
    }

    fs::path path_ = fs::temp_directory_path() / ("kerfwright-motion-" + std::to_string(getpid()) + ".json");
    std::optional<App> app_;
    std::string from_;
};

std::size_t ghosts(const draw::Drawing& drawing) {
    std::size_t count = 0;
    for (const draw::Shape& shape : drawing.shapes)
        if (const auto* line = std::get_if<draw::Line>(&shape)) count += line->stroke == draw::Stroke::stood;
    return count;
}

}  // namespace

TEST_CASE("a slide takes less than a fifth of a second, and never goes back") {
    CHECK(slide_s < 0.2);
    SetupMotion motion;
    motion.show(dado(), higher(dado()), 10);
    CHECK(motion.before);
    CHECK(motion.fraction(10) == 1);  // nothing was seen before: it just stands
    motion.show(higher(dado()), dado(), 20);
    CHECK(motion.fraction(20) == 0);
    double last = 0;
    for (double t = 20; t < 20.3; t += 0.01) {
        CHECK(motion.fraction(t) >= last);
        last = motion.fraction(t);
    }
    CHECK(motion.fraction(20 + slide_s) == 1);
}

TEST_CASE("where the machine stands stays until the next change, and what is shown twice is no change") {
    SetupMotion motion;
    motion.show(dado(), std::nullopt, 0);
    CHECK_FALSE(motion.before);
    motion.show(higher(dado()), dado(), 1);
    REQUIRE(motion.before);
    CHECK(*motion.before == dado());
    motion.show(higher(dado()), dado(), 2);
    CHECK(*motion.before == dado());
    CHECK(motion.since_s == 1);
    // Not what was seen last, but what the machine stands at.
    motion.show(higher(higher(dado())), dado(), 3);
    CHECK(*motion.before == dado());
    motion.show(std::nullopt, dado(), 4);  // a cut to size: another picture
    CHECK_FALSE(motion.before);
    motion.show(dado(), std::nullopt, 5);
    CHECK_FALSE(motion.before);
}

TEST_CASE(
    "after going back the picture's differences are from what the machine stands at, as its numbers are") {
    AtTheSaw page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    hand.press("After this");
    hand.press("After this");
    int seen = 0;
    for (int step = 0; step < 2; ++step) {
        hand.press("Before this");
        const Work& work = page.work();
        const Setup* stood = before_at_machine(work, step_of(work.plan, page.state().setup));
        const auto at_machine = stood ? draw::setup_scene(work, *stood) : std::nullopt;
        const auto& motion = page.picture().motion;
        if (!motion.shown) continue;
        CHECK(motion.before.has_value() == (at_machine && draw::slides(*at_machine, *motion.shown)));
        if (!motion.before) continue;
        CHECK(*motion.before == *at_machine);
        ++seen;
    }
    CHECK(seen > 0);
}

TEST_CASE(
    "the very frame that takes the press shows another picture, and when the slide is over no frame is "
    "drawn") {
    AtTheSaw page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    CHECK(ghosts(page.picture().section) == 0);
    const draw::Drawing before = page.picture().section;
    const auto box = hand.find("After this").seen;
    hand.move((box.left + box.right) / 2, (box.top + box.bottom) / 2);
    hand.settle();
    hand.button(true);
    hand.window().draw(std::ref(page));
    REQUIRE(page.picture().section == before);
    hand.button(false);
    const auto pictures = platform::counters().pictures;
    hand.window().draw(std::ref(page));  // takes the press
    CHECK_FALSE(page.picture().section == before);
    CHECK(platform::counters().pictures > pictures);
    CHECK(ghosts(page.picture().section) > 0);
    CHECK_FALSE(hand.window().at_rest());

    hand.settle();
    hand.move(5, 5);
    hand.settle();
    for (int i = 0; i < 200 && hand.window().step(std::ref(page)) != Pacer::forever; ++i)
        glfwWaitEventsTimeout(0.02);
    REQUIRE(hand.window().step(std::ref(page)) == Pacer::forever);
    CHECK(page.picture().fraction == 1);
    CHECK(ghosts(page.picture().section) > 0);
    const auto frames = platform::counters().frames;
    glfwWaitEventsTimeout(0.2);
    CHECK(hand.window().step(std::ref(page)) == Pacer::forever);
    CHECK(platform::counters().frames == frames);
}

TEST_CASE("the button zooms to the cut and back, and so does a double press on the picture") {
    AtTheSaw page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    hand.press("Zoom to the cut");
    CHECK(page.state().picture.zoom > 1.5);
    hand.press("See all of it");
    CHECK(page.state().picture == ViewTransform{});
    const auto box = hand.find(page.picture().section.title).box;
    for (const bool zoomed : {true, false}) {
        hand.press_at(box.left + 60, box.top + 60);
        hand.press_at(box.left + 60, box.top + 60);
        CHECK((page.state().picture.zoom > 1) == zoomed);
        for (int i = 0; i < 40; ++i) glfwWaitEventsTimeout(0.02);  // the next press is no third one
    }
}

TEST_CASE("zoomed to the cut, its sizes are still written in sight, and no smaller") {
    AtTheSaw page;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    hand.press("Zoom to the cut");
    const auto whole = hand.find(page.picture().section.title).box, button = hand.find("See all of it").box;
    int sizes = 0;
    for (const LoggedWidget& widget : hand.log().widgets) {
        if (widget.kind != "picture text" || widget.box.top < whole.top || widget.box.bottom > whole.bottom)
            continue;
        for (const char* word : {"fence ", "height ", "kerf "})
            if (widget.label.rfind(word, 0) == 0) {
                ++sizes;
                CHECK(widget.box.left >= whole.left);
                CHECK(widget.box.right <= whole.right);
                CHECK(widget.box.bottom <= button.top);
                CHECK(widget.text_px >= 18);
            }
    }
    CHECK(sizes == 3);
}

TEST_CASE("a fence at the right turns the picture and the boards") {
    AtTheSaw page;
    page.state().preferences.fence_stands = kw::Hand::left;
    Hand hand({.pixel_ratio = 1}, std::ref(page));
    const SetupPicture left = page.picture();
    page.state().preferences.fence_stands = kw::Hand::right;
    hand.ui().animate();
    hand.settle();
    // All but the pencilled loop, which keeps its hand: tests/draw holds it against the mirror.
    CHECK_FALSE(page.picture().section == left.section);
    const draw::Box right_box = draw::bounds(page.picture().section), left_box = draw::bounds(left.section);
    CHECK(right_box.left_mm == doctest::Approx(-left_box.right_mm));
    CHECK(right_box.right_mm == doctest::Approx(-left_box.left_mm));
    REQUIRE(page.picture().parts.size() == left.parts.size());
    REQUIRE_FALSE(left.parts.empty());
    CHECK_FALSE(page.picture().parts[0].drawing == left.parts[0].drawing);
    CHECK(page.picture().parts[0].caption == left.parts[0].caption);
}

}  // namespace kw::window
