// The real window, worked as a maker works it: by pressing what is on the screen.

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "window/app.h"
#include "window/hand.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

// One drawer for side-mounted slides in half-inch stock.
const char* const one_drawer = R"({
  "format": "kerfwright-job", "version": 1, "name": "One drawer", "unit": "in", "reading": "1/64 in",
  "stock": [ { "name": "ply 12", "thickness": "0.480", "kind": "plywood" }, { "name": "ply 6", "thickness": "0.235", "kind": "plywood" } ],
  "machines": [ { "name": "saw", "kind": "table saw" }, { "name": "stop saw", "kind": "miter saw" } ],
  "cutters": [ { "name": "stack", "kind": "dado stack", "machine": "saw", "kerf": "1/4" } ],
  "drawers": [ { "name": "string", "count": 1,
    "opening": { "width": "14 3/8", "height": "5 1/4", "depth": "18" },
    "slide": { "kind": "side mount" },
    "front": { "stock": "ply 12", "joint": "locking rabbet" }, "sides": { "stock": "ply 12" },
    "back": { "stock": "ply 12", "joint": "dado" }, "bottom": { "stock": "ply 6", "joint": "groove" } } ],
  "log": [] })";

struct Shop {
    fs::path path;
    std::unique_ptr<Window> window;
    App app;

    explicit Shop(const std::string& text, int width = 1280, int height = 800)
        : path(fs::temp_directory_path() / "kerfwright-screens.json"), window(opened(width, height)), app(written(text)) {}
    ~Shop() { fs::remove(path); }
    Shop(const Shop&) = delete;
    Shop& operator=(const Shop&) = delete;

    const Work& work() const { return *app.session().work; }
    Length length_of(const std::string& part) const { return work().plan.part_with_id(part)->size.length; }
    Json on_disk() const {
        std::ifstream in(path);
        return Json::parse(in);
    }

private:
    static std::unique_ptr<Window> opened(int width, int height) {
        auto window = Window::open({.title = "test", .width = width, .height = height});
        REQUIRE_MESSAGE(window.has_value(), (window ? "" : window.error()));
        return std::move(*window);
    }
    App written(const std::string& text) const {
        std::ofstream(path) << text;
        auto app = App::open(path);
        REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
        return std::move(*app);
    }
};

std::string demo() {
    std::ifstream in(fs::path(KW_ASSET_DIR) / "demo.json");
    return {std::istreambuf_iterator<char>(in), {}};
}

const Setup& at_the_saw(Shop& shop) { return *shop.work().plan.setup_with_id(shop.app.state().setup); }

// A test cut at this setup, worked out and locked, by its buttons.
void test_and_lock(Shop& shop, Hand& hand) {
    REQUIRE(hand.press("Test cut first"));
    const bool tongue = hand.find("Tongue length") != nullptr;
    REQUIRE(hand.press(tongue ? "Tongue length" : "Depth"));
    // A sixteenth-inch relief would be far off; a sixty-fourth is what a real stop is off.
    REQUIRE(hand.key_in("0 1/4"));
    REQUIRE(hand.press("Work it out"));
    INFO(shop.app.session().refused);
    REQUIRE(shop.app.session().refused.empty());
    for (int i = 0; i < 2 && hand.find_beginning("Lock"); ++i) hand.press(hand.find_beginning("Lock"));
    REQUIRE(hand.sees("Locked. Run the parts without moving anything."));
    REQUIRE(hand.press("Picture"));
}

}  // namespace

TEST_CASE("an opening is put in on the keypad, and the box follows at once") {
    Shop shop(one_drawer);
    Hand hand(*shop.window, shop.app);
    REQUIRE(hand.press("Width"));
    REQUIRE(hand.key_in("11 3/16"));
    CHECK(shop.on_disk()["drawers"][0]["opening"]["width"] == "11 3/16 in");
    // 1/2 in of slide on either side: common practice, no source.
    CHECK(shop.work().plan.boxes[0].size.width == Length::inches(163, 16));
    REQUIRE(hand.press("Undo"));
    CHECK(shop.work().plan.boxes[0].size.width == Length::inches(214, 16));
    REQUIRE(hand.press("Redo"));
    CHECK(shop.work().plan.boxes[0].size.width == Length::inches(163, 16));
}

TEST_CASE("a width that no drawer can have is marked, and the last good plan stays") {
    Shop shop(one_drawer);
    Hand hand(*shop.window, shop.app);
    const Length before = shop.work().plan.boxes[0].size.width;
    REQUIRE(hand.press("Width"));
    REQUIRE(hand.key_in("1"));
    CHECK_FALSE(shop.app.session().problems.empty());
    CHECK(shop.work().plan.boxes[0].size.width == before);
    CHECK(hand.find("Show where") != nullptr);
    REQUIRE(hand.press("Undo"));
    CHECK(shop.app.session().problems.empty());
    CHECK(hand.find("Show where") == nullptr);
}

TEST_CASE("a whole drawer is made by pressing alone: every step run, every joint tested and locked") {
    Shop shop(one_drawer);
    Hand hand(*shop.window, shop.app);
    const Length front_designed = shop.length_of("string.1.front");
    REQUIRE(hand.press("Order of work"));
    REQUIRE(hand.press("Go on at the saw"));
    int locked = 0;
    for (std::size_t step = 0; step < shop.work().plan.sequence.size(); ++step) {
        INFO("step " << step + 1 << ": " << at_the_saw(shop).work);
        if (hand.find("Test cut first")) {
            test_and_lock(shop, hand);
            ++locked;
        }
        REQUIRE(hand.press("Tick all"));
        if (step + 1 < shop.work().plan.sequence.size()) REQUIRE(hand.press("Next"));
    }
    CHECK(locked >= 3);  // the front's joint, the back's, the groove
    for (const Setup& setup : shop.work().plan.setups)
        for (const Pass& pass : setup.passes) CHECK(has_run(shop.work(), setup, pass));
    // The front was cut to length after its joint had been locked, from the tongue that was measured.
    CHECK(shop.length_of("string.1.front") != front_designed);
    const Json log = shop.on_disk()["log"];
    const auto entries_of = [&](const char* kind) { return std::count_if(log.begin(), log.end(), [&](const Json& e) { return e["kind"] == kind; }); };
    CHECK(entries_of("test") == locked);
    CHECK(entries_of("lock") == locked);
    const auto ran = entries_of("ran");
    REQUIRE(hand.press("Undo"));
    const Json after = shop.on_disk()["log"];
    CHECK(static_cast<std::ptrdiff_t>(after.size()) < static_cast<std::ptrdiff_t>(log.size()));
    CHECK(ran > 0);
}

TEST_CASE("on every screen and in every size, what is pressed is at least 44 pixels high") {
    Shop shop(demo());
    Hand hand(*shop.window, shop.app);
    const std::string setup = [&] {
        for (const Setup& s : shop.work().plan.setups)
            if (s.test_cut) return s.id;
        return std::string();
    }();
    struct Size {
        int width, height;
    };
    for (const Size size : {Size{1280, 800}, Size{1920, 1080}, Size{800, 1280}}) {
        shop.window->resize(size.width, size.height);
        for (int screen = 0; screen < 9; ++screen) {
            UiState state;
            state.place = screen < 4 ? Where::drawers : screen == 4 ? Where::order : Where::saw;
            if (screen < 4) state.tab = static_cast<DrawersTab>(screen);
            if (screen > 4) state.saw_tab = static_cast<SawTab>(screen - 5);
            state.setup = setup;
            shop.app.state() = state;
            hand.look();
            CHECK(hand.log().widgets.size() > 8);
            for (const LoggedWidget& widget : hand.log().widgets) {
                INFO(size.width << "x" << size.height << " screen " << screen << ": " << widget.kind << " \"" << widget.label << "\"");
                if (widget.pressable) CHECK(widget.box.bottom - widget.box.top >= 44);
                if (widget.text_px > 0) CHECK(widget.text_px >= 18);
                CHECK(widget.box.right <= size.width + 0.5);
            }
        }
    }
}

}  // namespace kw::window
