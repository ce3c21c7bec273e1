#pragma once
// Everything that a screen is made of. Each widget is drawn at the toolkit's cursor and moves it on, as the toolkit's own
// do, so ImGui::SameLine and the like work between them. Widths are in device pixels (0: as wide as the words need,
// negative: all the room that is left); other sizes in paper pixels. Labels are shown as they are; what stands after
// "##" only tells equal labels apart. Whatever can be pressed is at least size::least_target high.

#include <imgui.h>

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "window/ui.h"

namespace kw::window {

// --- words -------------------------------------------------------------------------------------------------------

// Wraps at width (0: at the room that is left).
void say(Ui& ui, std::string_view text, TypeSize size = TypeSize::body, Tone tone = Tone::plain,
         float width = 0);
void heading(Ui& ui, std::string_view text);
void caption(Ui& ui, std::string_view text);
// One line with the tone's sign before it: "✓ fits".
void status(Ui& ui, Tone tone, std::string_view text);
// A tinted sheet with the tone's sign, a bold title and text: cautions, refusals, advice.
void notice(Ui& ui, Tone tone, std::string_view title, std::string_view text);
void rule(Ui& ui);
void space(Ui& ui, double height_px);
void progress(Ui& ui, int done, int of, float width = 0);

// --- buttons -----------------------------------------------------------------------------------------------------

enum class Rank { primary, secondary, quiet };

struct ButtonOptions {
    float width = 0;
    double height_px = size::target;
    bool enabled = true;
    std::string_view detail = {};  // a second, smaller line
};

bool button(Ui& ui, const char* label, Rank rank, const ButtonOptions& options = {});
inline bool primary_button(Ui& ui, const char* label, const ButtonOptions& options = {}) {
    return button(ui, label, Rank::primary, options);
}
inline bool secondary_button(Ui& ui, const char* label, const ButtonOptions& options = {}) {
    return button(ui, label, Rank::secondary, options);
}
inline bool quiet_button(Ui& ui, const char* label, const ButtonOptions& options = {}) {
    return button(ui, label, Rank::quiet, options);
}

// Asks for a second press, with other words, before it says true: for what cannot be taken back easily.
bool confirm_button(Ui& ui, const char* label, const char* second_label, const ButtonOptions& options = {});

// True once, when it has been held down for long enough; fills up meanwhile.
bool hold_button(Ui& ui, const char* label, const ButtonOptions& options = {}, double hold_s = 0.7);
// `tapped`: it was let go too soon.
bool hold_button(Ui& ui, const char* label, const ButtonOptions& options, bool& tapped, double hold_s = 0.7);

// --- choices -----------------------------------------------------------------------------------------------------

// One of a few, side by side; true if `chosen` changed. Breaks into rows where the width is too small.
bool segments(Ui& ui, const char* id, std::span<const std::string> labels, int& chosen, float width = 0);
// A small thing to press: a recent value, a filter.
bool chip(Ui& ui, const char* label, bool chosen = false);
float chip_height(const Ui& ui);
// A row with a box to tick; the whole row can be pressed. True if `ticked` changed.
bool tick_row(Ui& ui, const char* label, bool& ticked, std::string_view detail = {}, bool enabled = true);
// A row of which a tap sets the tick, and only holding it down takes it away.
enum class Tick { none, set, taken_away, only_tapped };
Tick hold_tick_row(Ui& ui, const char* label, bool ticked, std::string_view detail = {}, double hold_s = 0.7);
// A row with words and a switch at its end.
bool toggle_row(Ui& ui, const char* label, bool& on, std::string_view detail = {});
// A row that leads somewhere: words, detail at the end, an arrow. True when pressed.
bool list_row(Ui& ui, const char* label, std::string_view detail = {}, bool chosen = false,
              Tone tone = Tone::plain);
// The places of the program, across the top or down the side.
struct PlacesLook {
    float width = 0;
    double height_px = 60;
    double pad_px = size::page;  // on either side of the words
};
bool places(Ui& ui, std::span<const std::string> labels, int& current, const PlacesLook& look = {});

// --- sheets ------------------------------------------------------------------------------------------------------

// A card as wide as given (0: the room that is left) and as high as what is in it (at least least_height, device pixels).
// A tone other than plain gives it a coloured edge. Use content_width() for what is in it.
void begin_card(Ui& ui, const char* id, float width = 0, Tone tone = Tone::plain, float least_height = 0);
void end_card(Ui& ui);
// Room to the right edge of the open card, or of the region.
float content_width(const Ui& ui);

// A region that scrolls under the finger, the wheel and the bar. Height 0: the room that is left.
void begin_scroll(Ui& ui, const char* id, ImVec2 size);
void end_scroll(Ui& ui);
// Rows of a region that scrolls, one under the other. Those out of sight are as high as they were (`heights`, device pixels, is kept
// by the caller), or as the others, and are not drawn: setting two hundred takes longer than a frame.
void rows_in_sight(Ui& ui, std::vector<float>& heights, std::size_t count,
                   const std::function<void(std::size_t)>& draw);

// --- numbers -----------------------------------------------------------------------------------------------------

struct Figure {
    std::string_view caption = {};       // "Fence to near side"
    std::string_view value = {};         // "10 15/32 +", "3.175", "−1/4"
    std::string_view unit = {};          // "in"
    std::string_view changed_from = {};  // words; empty: as in the setup before
    std::string_view note = {};          // a line beneath
    TypeSize size = TypeSize::number;
    double value_px = 0;  // em of the value where `size` is not enough; 0: as size says
    float width = 0;
    bool pressable = false;
    bool compact = false;  // what is said of it stands beside the value, where there is room
};

// A large number with its fraction set one over the other. True when pressed.
bool figure(Ui& ui, const Figure& figure);
// Asks for the type of figures of this size ahead of their first use.
void ask_for_figure_type(Ui& ui, TypeSize size);
// The value alone, at the cursor, as large as fits into width x height (device pixels): one number to fill the screen.
void filling_figure(Ui& ui, const Figure& figure, ImVec2 room);

// --- entry -------------------------------------------------------------------------------------------------------

struct FieldOptions {
    std::string_view unit = {};   // hint at the end of the field
    std::string_view error = {};  // why the value cannot be; marks the field
    std::string_view hint = {};   // shown while empty
    float width = 0;
    std::span<const std::string> recent = {};  // values to offer again (length fields)
};

// Free text; true when changed and left, or Enter was pressed. `text` follows every key.
bool text_field(Ui& ui, const char* label, std::string& text, const FieldOptions& options = {});
// A length, entered on a keypad of our own, by touch or by keyboard. True when a new value was confirmed; it is text
// as people write it ("10 1/16 in"), and reading it is up to whoever asked.
bool length_field(Ui& ui, const char* label, std::string& text, const FieldOptions& options = {});

// The toasts that are up; the window calls it once a frame.
void draw_toasts(Ui& ui);

}  // namespace kw::window
