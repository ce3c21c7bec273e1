#pragma once
// What every widget is handed: look, type, and where to report. One Ui for each window; screens get it with each frame and
// keep nothing of it.

#include <imgui.h>

#include <cstdint>
#include <deque>
#include <string>
#include <vector>

#include "window/fonts.h"
#include "window/length_entry.h"
#include "window/pacer.h"
#include "window/scroll_state.h"
#include "window/theme.h"
#include "window/widget_log.h"

namespace kw::window {

class Pictures;

// An area painted without blending, from the draw list's callback: far cheaper than a blended rectangle where
// pixels are drawn by the processor.
struct OpaqueArea {
    ImVec4 box;  // left, top, right, bottom
    draw::Rgb rgb;
};

// A picture put on the page from its own framebuffer, from the draw list's callback.
struct PictureCopy {
    unsigned framebuffer = 0;
    ImVec2 corner;
    int width = 0, height = 0;
};

struct Toast {
    std::string text;
    Tone tone = Tone::plain;
    double until_s = 0;
};

struct CardFrame {
    ImVec2 corner;
    float width = 0;
    Tone tone = Tone::plain;
    float height = 0;  // least
    ImDrawListSplitter splitter;
};

struct Ui {
    Ui(Fonts& its_fonts, Pictures& its_pictures, Pacer& its_pacer)
        : fonts(its_fonts), pictures(its_pictures), pacer(its_pacer) {}
    Ui(const Ui&) = delete;
    Ui& operator=(const Ui&) = delete;

    // Set these at any time; they take effect with the next frame.
    draw::Theme theme = draw::Theme::light;
    double user_scale = 1;
    Language language = Language::english;

    double pixel_ratio = 1;  // device pixels per paper pixel: the system's times user_scale
    double now_s = 0;
    ImVec2 page_size;  // room for the screen, device pixels
    WidgetLog* log = nullptr;
    bool is_waiting = false;  // for what is worked out aside: a wake-up will come

    Fonts& fonts;
    Pictures& pictures;
    Pacer& pacer;

    // Widgets' own memory.
    std::deque<OpaqueArea> opaque_areas;     // of this frame: the draw list points into it
    std::deque<PictureCopy> picture_copies;  // of this frame, likewise
    std::deque<CardFrame> cards;             // open ones
    std::vector<ImVec4> taken;               // by what can be pressed, this frame: left, top, right, bottom
    std::vector<ImVec4> read;                // by words, this frame, the same
    bool opens_anew = false;  // another page than in the frame before: its regions begin at their tops
    std::vector<Toast> toasts;
    ImGuiID armed = 0;  // the confirm button that waits for its second press
    double armed_until_s = 0;
    ScrollState scroll;
    LengthEntry entry;                    // what stands on the open keypad
    Graduation rule = Graduation::in_64;  // how finely the maker reads: the keypad's step

    float px(double paper_px) const { return static_cast<float>(paper_px * pixel_ratio); }
    const kw::Words& words() const { return words_in(language); }
    // What the language says for the key, its places filled in.
    template <class... Values>
    std::string text(std::string_view key, const Values&... values) const {
        return words_in(language)(key, values...);
    }
    // What is shown for a name of the job's own ("dado stack"): the text of `prefix` and the name.
    std::string shown(std::string_view prefix, std::string_view name) const {
        return words_in(language)(key_of(prefix, name));
    }
    const draw::Palette& colours() const { return draw::palette(theme); }
    Font font(TypeSize size, Face face = Face::text) { return fonts.get(face, em_px(size) * pixel_ratio); }
    Font font_px(double paper_px, Face face = Face::text) { return fonts.get(face, paper_px * pixel_ratio); }

    // Something moves: draw on.
    void animate() { pacer.request(1); }
    void toast(std::string text, Tone tone = Tone::plain);
};

// Adds a box (screen coordinates), as far as it is in this list's sight.
void add_in_sight(std::vector<ImVec4>& areas, const ImDrawList& list, ImVec2 min, ImVec2 max);

// Marks a box (screen coordinates) as taken by something to press, as far as it is in sight: no toast comes to lie there.
void take_room(Ui& ui, ImVec2 min, ImVec2 max);

void fill_opaque(Ui& ui, ImDrawList& list, ImVec2 min, ImVec2 max, draw::Rgb rgb);
// A sheet with rounded corners (all, or those of `round`), painted mostly without blending.
void fill_sheet(Ui& ui, ImDrawList& list, ImVec2 min, ImVec2 max, draw::Rgb rgb, float radius,
                ImDrawFlags round = ImDrawFlags_RoundCornersAll);

// Adds to the test's log, if there is one. box is in screen coordinates.
void log_widget(Ui& ui, LoggedWidget widget, ImVec2 min, ImVec2 max);

}  // namespace kw::window
