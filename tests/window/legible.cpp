// Everything on every screen can be read and hit: in every size of window, both units, both themes, and with names as long as a
// maker would give.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "window/app.h"
#include "window/hand.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

// The demo job with names of forty letters. Without spare chippers and shims it is planned sooner.
Json long_names(const std::string& unit) {
    std::ifstream in(fs::path(KW_ASSET_DIR) / "demo.json");
    Json job = Json::parse(in);
    job["unit"] = unit;
    job["reading"] = unit == "in" ? "1/64 in" : "0.1 mm";
    job["name"] = "Potting bench by the south wall, mark two";
    const std::string drawer_names[] = {"twine, string and raffia by the window ",
                                        "hand tools with long ash handles, oiled",
                                        "seed trays of the third kind, stackable"};
    for (std::size_t i = 0; i < job["drawers"].size(); ++i) job["drawers"][i]["name"] = drawer_names[i % 3];
    for (Json& cutter : job["cutters"]) {
        cutter.erase("spare_chippers");
        cutter.erase("spare_shims");
    }
    return job;
}

// The demo's plain lengths are inches.
Json with_units(Json json) {
    for (auto& [key, value] : json.items()) {
        static_cast<void>(key);
        if (value.is_structured()) value = with_units(value);
        else if (value.is_string() && !value.get<std::string>().empty() &&
                 value.get<std::string>().find_first_not_of("0123456789 ./+") == std::string::npos)
            value = value.get<std::string>() + " in";
    }
    return json;
}

struct Place {
    const char* name;
    Where place;
    DrawersTab tab;
    SawTab saw_tab;
};

constexpr Place all_places[] = {
    {"drawers", Where::drawers, DrawersTab::drawers, SawTab::picture},
    {"stock", Where::drawers, DrawersTab::stock, SawTab::picture},
    {"machines", Where::drawers, DrawersTab::shop, SawTab::picture},
    {"fit", Where::drawers, DrawersTab::fit, SawTab::picture},
    {"order", Where::order, DrawersTab::drawers, SawTab::picture},
    {"picture", Where::saw, DrawersTab::drawers, SawTab::picture},
    {"joint closed", Where::saw, DrawersTab::drawers, SawTab::closed},
    {"test cut", Where::saw, DrawersTab::drawers, SawTab::test},
    {"log", Where::saw, DrawersTab::drawers, SawTab::log},
    {"job", Where::job, DrawersTab::drawers, SawTab::picture},
};

struct Look {
    int width, height;
    double pixel_ratio;
};

double common(double a_low, double a_high, double b_low, double b_high) {
    return std::min(a_high, b_high) - std::max(a_low, b_low);
}

// What is wrong with what can be seen, one line each.
std::string faults(const WidgetLog& log, const Look& look) {
    std::string out;
    const auto fault = [&](const LoggedWidget& widget, const std::string& what) {
        out += widget.kind + " \"" + widget.label + "\" " + what + "\n";
    };
    for (std::size_t i = 0; i < log.widgets.size(); ++i) {
        const LoggedWidget& widget = log.widgets[i];
        const double height = widget.box.bottom - widget.box.top;
        if (widget.pressable && height < 44 * look.pixel_ratio - 0.5)
            fault(widget, "is " + std::to_string(height) + " high");
        if (widget.text_px > 0 && widget.text_px < 18 - 0.01)
            fault(widget, "has words of " + std::to_string(widget.text_px));
        // WCAG 2.2, 1.4.3 and, for the numbers at the saw, 1.4.6. What is disabled is exempt there.
        const double least = widget.kind == "number" ? 7.0 : 4.5;
        if (widget.contrast > 0 && widget.enabled && widget.contrast < least - 0.005)
            fault(widget, "has a contrast of " + std::to_string(widget.contrast));
        if (widget.cut_off) fault(widget, "is cut off");
        if (widget.box.left < 0 || widget.box.right > look.width + 0.5) fault(widget, "is beyond the page");
        for (std::size_t j = 0; j < i; ++j) {
            const LoggedWidget& other = log.widgets[j];
            if (!widget.pressable || !other.pressable) continue;
            const double across =
                common(widget.seen.left, widget.seen.right, other.seen.left, other.seen.right);
            const double down =
                common(widget.seen.top, widget.seen.bottom, other.seen.top, other.seen.bottom);
            if (across > 1 && down > 1) fault(widget, "lies over \"" + other.label + "\"");
        }
    }
    return out;
}

}  // namespace

TEST_CASE("everything can be read and hit: every screen, size, unit and theme, with names of forty letters") {
    for (const std::string unit : {"in", "mm"}) {
        const fs::path path = fs::temp_directory_path() /
                              ("kerfwright-legible-" + std::to_string(getpid()) + "-" + unit + ".json");
        std::ofstream(path) << (unit == "in" ? long_names(unit) : with_units(long_names(unit))).dump();
        auto app = App::open(path);
        REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
        REQUIRE(app->session().work);
        std::string tested;
        for (const Setup& setup : app->session().work->plan.setups)
            if (setup.test_cut && tested.empty()) tested = setup.id;
        for (const Look look : {Look{1280, 800, 1}, Look{800, 1280, 1}, Look{1920, 1080, 1},
                                Look{1024, 600, 1}, Look{3840, 2160, 2}}) {
            Hand hand({.title = "test",
                       .width = look.width,
                       .height = look.height,
                       .pixel_ratio = look.pixel_ratio},
                      [&](Ui& ui) { app->frame(ui); });
            if (look.width == 800)
                for (const std::string& step : app->session().work->plan.sequence) {
                    app->state() = {};
                    app->state().place = Where::saw;
                    app->state().setup = step;
                    hand.ui().animate();
                    hand.settle();
                    INFO(step << ", " << unit);
                    CHECK(faults(hand.log(), look) == "");
                }
            for (const Place& place : all_places) {
                const bool both = look.width == 1280;  // colours hang on no size
                for (const draw::Theme theme : {draw::Theme::light, draw::Theme::dark}) {
                    if (theme == draw::Theme::dark && !both) continue;
                    UiState& state = app->state();
                    state = {};
                    state.place = place.place;
                    state.tab = place.tab;
                    state.saw_tab = place.saw_tab;
                    state.setup = tested;
                    hand.ui().theme = theme;
                    hand.ui().animate();
                    hand.settle();
                    INFO(place.name << ", " << unit << ", " << look.width << "x" << look.height);
                    CHECK(hand.log().widgets.size() > 8);
                    CHECK(faults(hand.log(), look) == "");
                }
            }
        }
        fs::remove(path);
    }
}

}  // namespace kw::window
