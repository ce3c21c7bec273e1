#include "window/keypad.h"

#include <algorithm>
#include <cmath>

#include "window/press.h"
#include "window/text.h"
#include "window/widgets.h"

namespace kw::window {
namespace {

struct Key {
    const char* label;
    double span = 1;      // columns
    bool figure = false;  // large and bold
};

struct Grid {
    float unit;  // width of a column
    float gap;
    float height;
    bool beside;  // the keys to the right of what they write: the page is low
};

Grid grid_for(const Ui& ui) {
    const float gap = ui.px(8);
    const float page = ui.page_size.x - ui.px(2 * size::page + 2 * size::pad);
    const bool beside = ui.page_size.y < ui.px(720) && page > ui.px(900);
    const float room = std::min(beside ? (page - ui.px(24)) / 2 : page, ui.px(560));
    const float tallest = (ui.page_size.y - ui.px(beside ? 140 : 440)) / 5;
    return {std::floor((room - 4 * gap) / 5), gap, std::clamp(tallest, ui.px(size::least_target), ui.px(68)),
            beside};
}

float whole_width(const Grid& grid) { return 5 * grid.unit + 4 * grid.gap; }

bool key(Ui& ui, const Grid& grid, const Key& k) {
    const float width = grid.unit * static_cast<float>(k.span) + grid.gap * static_cast<float>(k.span - 1);
    const Press press = press_area(ui, k.label, {width, grid.height});
    const draw::Palette& p = ui.colours();
    const bool held = press.held && press.hovered;
    const draw::Rgb ground = held ? p.accent_tint : k.figure ? p.well : p.paper;
    canvas().AddRectFilled(press.box.Min, press.box.Max, colour(ground), ui.px(size::radius));
    canvas().AddRect(press.box.Min, press.box.Max, colour(p.edge), ui.px(size::radius), 0, ui.px(1.5));
    const Font font = ui.font(TypeSize::heading, k.figure ? Face::strong : Face::text);
    const std::string_view words = shown_label(k.label);
    draw_text(ui, canvas(),
              {(press.box.Min.x + press.box.Max.x - text_width(ui, words, font)) / 2,
               std::round((press.box.Min.y + press.box.Max.y - font.line) / 2)},
              words, font, colour(p.ink));
    log_widget(ui, pressable("key", words, em_px(TypeSize::heading), p.ink, ground), press.box.Min,
               press.box.Max);
    return press.pressed;
}

// A part of the display that can be pressed to go on there.
void slot_box(Ui& ui, const char* id, std::string_view digits, ImVec2 size, bool active, const Font& font,
              LengthEntry& entry, Slot slot) {
    const Press press = press_area(ui, id, size);
    const draw::Palette& p = ui.colours();
    canvas().AddRectFilled(press.box.Min, press.box.Max, colour(active ? p.accent_tint : p.well),
                           ui.px(size::radius));
    canvas().AddRect(press.box.Min, press.box.Max, colour(active ? p.accent : p.hairline),
                     ui.px(size::radius), 0, ui.px(active ? 3 : 1.5));
    const draw::Rgb rgb = entry.fresh ? p.soft_ink : p.ink;
    const float x = (press.box.Min.x + press.box.Max.x - text_width(ui, digits, font)) / 2;
    draw_text(ui, canvas(), {x, std::round((press.box.Min.y + press.box.Max.y - font.line) / 2)}, digits,
              font, colour(rgb));
    LoggedWidget logged = pressable("slot", id, static_cast<double>(font.em) / ui.pixel_ratio, rgb,
                                    active ? p.accent_tint : p.well);
    logged.value = digits;
    logged.chosen = active;
    log_widget(ui, logged, press.box.Min, press.box.Max);
    if (!press.pressed) return;
    entry.fresh = false;
    entry.slot = slot;
    if (slot == Slot::numerator || slot == Slot::denominator) entry.decimals.clear();
}

void display(Ui& ui, const Grid& grid, LengthEntry& put_in) {
    LengthEntry entry = with_numerator(put_in);
    const LengthEntry shown = entry;
    const Font large = ui.font(TypeSize::number, Face::strong),
               middle = ui.font(TypeSize::heading, Face::strong);
    const float whole = whole_width(grid), fraction = 2 * grid.unit + grid.gap, half = ui.px(48);
    const bool decimal = entry.slot == Slot::decimals || !entry.decimals.empty();
    const std::string digits = (entry.negative ? "\u2212" : "") + entry.whole +
                               (decimal ? ui.text("decimal.mark") + entry.decimals : "");
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    slot_box(ui, "whole", digits, {whole - fraction - grid.gap, 2 * half + ui.px(8)},
             entry.slot == Slot::whole || decimal, large, entry, decimal ? Slot::decimals : Slot::whole);
    const float x = corner.x + whole - fraction;
    ImGui::SetCursorScreenPos({x, corner.y});
    slot_box(ui, "numerator", entry.numerator, {fraction, half}, entry.slot == Slot::numerator, middle, entry,
             Slot::numerator);
    ImGui::SetCursorScreenPos({x, corner.y + half + ui.px(8)});
    slot_box(ui, "denominator", entry.denominator, {fraction, half}, entry.slot == Slot::denominator, middle,
             entry, Slot::denominator);
    const float bar = corner.y + half + ui.px(4);
    canvas().AddLine({x + ui.px(20), bar}, {x + fraction - ui.px(20), bar}, colour(ui.colours().ink),
                     ui.px(3));
    if (!(entry == shown)) put_in = entry;
}

void digit_row(Ui& ui, const Grid& grid, LengthEntry& entry, const char* const (&labels)[3]) {
    for (const char* label : labels) {
        if (key(ui, grid, {label, 1, true})) entry = digit(entry, label[0]);
        ImGui::SameLine(0, grid.gap);
    }
}

void part_keys(Ui& ui, const Grid& grid, LengthEntry& entry, int first, int second) {
    for (const int value : {first, second}) {
        const std::string label = "/" + std::to_string(value);
        if (key(ui, grid, {label.c_str()})) entry = denominator(entry, value);
        if (value == first) ImGui::SameLine(0, grid.gap);
    }
}

// "1/64" or "0.1": a step, without what zeros are behind it.
std::string step_words(const LengthEntry& entry, Graduation rule) {
    const Graduation step = step_of(entry, rule);
    return show(graduation_step(step), step);
}

// Steps at once, and goes on as long as it is held.
bool step_key(Ui& ui, const Grid& grid, const Key& k) {
    const ImGuiID id = ImGui::GetID(k.label);
    key(ui, grid, k);
    const bool is_held = ImGui::GetActiveID() == id;
    if (is_held) ui.animate();
    return is_held && ImGui::IsMouseClicked(ImGuiMouseButton_Left, true);
}

void step_row(Ui& ui, const Grid& grid, LengthEntry& entry) {
    const std::string step = step_words(entry, ui.rule), less = ui.text("keypad.less", step) + "##less",
                      more = ui.text("keypad.more", step) + "##more";
    if (step_key(ui, grid, {less.c_str(), 1.5})) entry = nudged(entry, -1, ui.rule);
    ImGui::SameLine(0, grid.gap);
    if (step_key(ui, grid, {more.c_str(), 1.5})) entry = nudged(entry, 1, ui.rule);
    ImGui::SameLine(0, grid.gap);
    if (key(ui, grid, {"+"})) entry = next_term(entry, '+');
    ImGui::SameLine(0, grid.gap);
    if (key(ui, grid, {"\u2212"})) entry = next_term(entry, '-');
}

void keys(Ui& ui, const Grid& grid, LengthEntry& entry) {
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(grid.gap, grid.gap));
    step_row(ui, grid, entry);
    digit_row(ui, grid, entry, {"7", "8", "9"});
    part_keys(ui, grid, entry, 2, 4);
    digit_row(ui, grid, entry, {"4", "5", "6"});
    part_keys(ui, grid, entry, 8, 16);
    digit_row(ui, grid, entry, {"1", "2", "3"});
    part_keys(ui, grid, entry, 32, 64);
    if (key(ui, grid, {"+/\u2212"})) entry = change_sign(entry);
    ImGui::SameLine(0, grid.gap);
    if (key(ui, grid, {"0", 1, true})) entry = digit(entry, '0');
    ImGui::SameLine(0, grid.gap);
    if (key(ui, grid, {(ui.text("decimal.mark") + "##point").c_str()})) entry = point(entry);
    ImGui::SameLine(0, grid.gap);
    if (key(ui, grid, {"\u232b", 2})) entry = erased(entry);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
}

void unit_row(Ui& ui, const Grid& grid, LengthEntry& entry) {
    static const char* const names[] = {"in", "mm"};
    // What stood there stays as long as it is; what was put in is of the unit that is chosen.
    const std::string converts[] = {ui.text("keypad.to_inches"), ui.text("keypad.to_mm")},
                      means[] = {ui.text("keypad.in_inches"), ui.text("keypad.in_mm")};
    const bool stood = entry.fresh && !text_of(entry).empty();
    int chosen = entry.unit == "mm" ? 1 : entry.unit == "in" ? 0 : -1;
    if (segments(ui, "unit", stood ? converts : means, chosen, whole_width(grid)))
        entry = with_unit(entry, names[chosen]);
}

// What was used last, in one row; as many as there is room for.
bool recent_row(Ui& ui, const Grid& grid, std::span<const std::string> recent, std::string& text) {
    const Font font = ui.font(TypeSize::body);
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    float used = 0;
    bool chosen = false;
    for (std::size_t i = 0; i < recent.size() && i < 5; ++i) {
        used += text_width(ui, recent[i], font) + ui.px(2 * size::pad) + grid.gap;
        if (used > whole_width(grid) + grid.gap) break;
        if (i > 0) ImGui::SameLine(0, grid.gap);
        if (chip(ui, (recent[i] + "##recent" + std::to_string(i)).c_str())) {
            text = recent[i];
            chosen = true;
        }
    }
    // The keys stand where they will stand when there are some.
    ImGui::SetCursorScreenPos(corner);
    ImGui::Dummy({whole_width(grid), chip_height(ui)});
    return chosen;
}

// What stands before the term that is put in, with the sign as a maker writes it.
std::string title_words(std::string_view title, const LengthEntry& entry) {
    std::string terms = entry.terms;
    for (std::size_t at = terms.find(" - "); at != std::string::npos; at = terms.find(" - ", at + 1))
        terms.replace(at, 3, " \u2212 ");
    return std::string(title) + (terms.empty() ? "" : ":  " + terms);
}

enum class Ended { none, use, cancel };

Ended from_keyboard(const Ui& ui, LengthEntry& entry) {
    const ImGuiIO& io = ImGui::GetIO();
    for (const ImWchar c : io.InputQueueCharacters) {
        if (c == 'i') entry = with_unit(entry, "in");
        else if (c == 'm') entry = with_unit(entry, "mm");
        else if (c < 0x80) entry = typed(entry, static_cast<char>(c));
    }
    if (ImGui::IsKeyPressed(ImGuiKey_Backspace)) entry = erased(entry);
    if (ImGui::IsKeyPressed(ImGuiKey_UpArrow)) entry = nudged(entry, 1, ui.rule);
    if (ImGui::IsKeyPressed(ImGuiKey_DownArrow)) entry = nudged(entry, -1, ui.rule);
    if (ImGui::IsKeyPressed(ImGuiKey_Escape, false)) return Ended::cancel;
    const bool enter =
        ImGui::IsKeyPressed(ImGuiKey_Enter, false) || ImGui::IsKeyPressed(ImGuiKey_KeypadEnter, false);
    return enter && is_complete(entry) ? Ended::use : Ended::none;
}

Ended answer_row(Ui& ui, const Grid& grid, const LengthEntry& entry) {
    const float two = 2 * grid.unit + grid.gap;
    Ended answer = Ended::none;
    if (secondary_button(ui, ui.text("keypad.cancel").c_str(), {.width = two})) answer = Ended::cancel;
    ImGui::SameLine(0, grid.gap);
    const std::string value = worked_text(entry);
    const std::string label =
        ui.text("keypad.use", is_complete(entry) ? value : std::string("\u2026")) + "##use";
    if (primary_button(ui, label.c_str(),
                       {.width = 3 * grid.unit + 2 * grid.gap, .enabled = is_complete(entry)}))
        answer = Ended::use;
    return answer;
}

}  // namespace

void open_keypad(Ui& ui, std::string_view text, std::string_view unit) {
    ui.entry = entry_of(text, unit);
    ImGui::OpenPopup("keypad");
}

bool keypad(Ui& ui, std::string_view title, std::string& text, std::span<const std::string> recent) {
    ImGui::SetNextWindowPos({ui.page_size.x / 2, ui.page_size.y / 2}, ImGuiCond_Always, {0.5f, 0.5f});
    const ImGuiWindowFlags flags = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize |
                                   ImGuiWindowFlags_NoMove | ImGuiWindowFlags_AlwaysAutoResize |
                                   ImGuiWindowFlags_NoNavInputs | ImGuiWindowFlags_NoSavedSettings;
    if (!ImGui::BeginPopupModal("keypad", nullptr, flags)) return false;
    std::deque<CardFrame> behind;
    behind.swap(ui.cards);  // the popup has its own room
    const Grid grid = grid_for(ui);
    Ended answer = ImGui::IsWindowAppearing() ? Ended::none : from_keyboard(ui, ui.entry);
    ImGui::BeginGroup();
    say(ui, title_words(title, ui.entry), TypeSize::body, Tone::soft, whole_width(grid));
    display(ui, grid, ui.entry);
    const bool again = recent_row(ui, grid, recent, text);
    if (!grid.beside) keys(ui, grid, ui.entry);
    unit_row(ui, grid, ui.entry);
    if (const Ended pressed = answer_row(ui, grid, ui.entry); pressed != Ended::none) answer = pressed;
    ImGui::EndGroup();
    if (grid.beside) {
        ImGui::SameLine(0, ui.px(24));
        keys(ui, grid, ui.entry);
    }
    if (answer == Ended::use) text = worked_text(ui.entry);
    if (answer != Ended::none || again) ImGui::CloseCurrentPopup();
    ImGui::EndPopup();
    behind.swap(ui.cards);
    return answer == Ended::use || again;
}

}  // namespace kw::window
