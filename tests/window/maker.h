#pragma once
// Someone at the real window with one job open, who presses what is on the screen.

#include <doctest/doctest.h>
#include <unistd.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>

#include "window/app.h"
#include "window/hand.h"

namespace kw::window {

// One drawer for side-mounted slides in half-inch stock.
inline const char* const one_drawer = R"({
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

// The job file and the program that has it open.
struct OpenJob {
    std::filesystem::path path;
    App app;

    explicit OpenJob(const std::string& text)
        : path(std::filesystem::temp_directory_path() /
               ("kerfwright-screens-" + std::to_string(getpid()) + ".json")),
          app(opened(text)) {}
    ~OpenJob() { std::filesystem::remove(path); }
    OpenJob(const OpenJob&) = delete;
    OpenJob& operator=(const OpenJob&) = delete;

private:
    App opened(const std::string& text) const {
        std::ofstream(path) << text;
        auto read = App::open(path);
        REQUIRE_MESSAGE(read.has_value(), (read ? "" : read.error()));
        return std::move(*read);
    }
};

// Someone at the window, who scrolls until what is wanted can be seen.
class Maker {
public:
    // A press, short or held, or a turn of the wheel there (+ up).
    struct Input {
        double x = 0, y = 0;
        int wheel = 0;
        bool is_held = false;
    };
    std::function<void(const Input&)> on_input;  // after each

    explicit Maker(const std::string& text, int width = 1280, int height = 800)
        : job_(text),
          hand_({.title = "test", .width = width, .height = height}, [this](Ui& ui) { job_.app.frame(ui); }) {
    }

    App& app() { return job_.app; }
    const std::filesystem::path& path() const { return job_.path; }
    Hand& hand() { return hand_; }
    const Work& work() const { return *job_.app.session().work; }
    Length box_width() const { return work().plan.boxes.at(0).size.width; }
    Length length_of(const std::string& part) const { return work().plan.part_with_id(part)->size.length; }
    const Setup& setup() { return *work().plan.setup_with_id(job_.app.state().setup); }
    Json on_disk() const {
        std::ifstream in(job_.path);
        return Json::parse(in);
    }

    const LoggedWidget* find(const std::string& label, bool beginning = false) const {
        for (const LoggedWidget& widget : hand_.log().widgets)
            if (widget.pressable && (beginning ? widget.label.rfind(label, 0) == 0 : widget.label == label))
                return &widget;
        return nullptr;
    }

    // Of several with the same label the last.
    const LoggedWidget* find_last(const std::string& label) const {
        const auto& widgets = hand_.log().widgets;
        for (auto widget = widgets.rbegin(); widget != widgets.rend(); ++widget)
            if (widget->pressable && widget->label == label) return &*widget;
        return nullptr;
    }
    void press_last(const std::string& label) {
        const LoggedWidget* widget = find_last(label);
        REQUIRE_MESSAGE(widget, "nothing to press with the label ", label);
        REQUIRE_MESSAGE(widget->seen.bottom - widget->seen.top > 0.9 * (widget->box.bottom - widget->box.top),
                        label, " is not in sight");
        hand_.press_at(std::round((widget->seen.left + widget->seen.right) / 2),
                       std::round((widget->seen.top + widget->seen.bottom) / 2));
    }

    void press(const std::string& label, bool beginning = false) { put_finger_on(label, beginning, false); }
    void hold(const std::string& label, bool beginning = false) { put_finger_on(label, beginning, true); }

    // "11 3/16" or "0.25" on the open keypad, by its keys alone.
    void key_in(const std::string& length) {
        const std::size_t slash = length.find('/'), space = length.find(' ');
        const bool is_fraction = slash != std::string::npos;
        const std::size_t numerator = space == std::string::npos ? 0 : space + 1;
        if (!is_fraction || numerator > 0)
            for (const char c : length.substr(0, space)) press(std::string(1, c));
        if (is_fraction) {
            press(length.substr(slash));
            for (const char c : length.substr(numerator, slash - numerator)) press(std::string(1, c));
        }
        press("Use ", true);
    }

    // After the state was set from outside.
    void redraw() {
        hand_.ui().animate();
        hand_.settle();
    }
    void step() {
        hand_.window().step([this](Ui& ui) { job_.app.frame(ui); });
    }

private:
    void put_finger_on(const std::string& label, bool beginning, bool held) {
        const LoggedWidget* widget = in_sight(label, beginning);
        REQUIRE_MESSAGE(widget, "nothing to press with the label ", label, " in:\n", dump(hand_.log()));
        REQUIRE_MESSAGE(widget->enabled, label, " cannot be pressed now");
        const draw::PixelBox box = widget->seen;
        const Input input{std::round((box.left + box.right) / 2), std::round((box.top + box.bottom) / 2), 0,
                          held};
        if (held) hand_.hold_at(input.x, input.y);
        else hand_.press_at(input.x, input.y);
        if (on_input) on_input(input);
    }

    const LoggedWidget* in_sight(const std::string& label, bool beginning) {
        constexpr int far_too_many = 200;
        for (int i = 0; i < far_too_many; ++i) {
            const LoggedWidget* widget = find(label, beginning);
            if (!widget ||
                widget->seen.bottom - widget->seen.top > 0.9 * (widget->box.bottom - widget->box.top))
                return widget;
            const bool above = widget->box.top < 150;
            const Input input{std::round((widget->box.left + widget->box.right) / 2), 430, above ? 1 : -1};
            hand_.move(input.x, input.y);
            hand_.wheel(input.wheel);
            if (on_input) on_input(input);
        }
        return nullptr;
    }

    OpenJob job_;
    Hand hand_;
};

}  // namespace kw::window
