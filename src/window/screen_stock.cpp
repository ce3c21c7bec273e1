// What parts are cut from: its thickness and kind, and in which sizes it is to be had.

#include "job/lay_out.h"
#include "session/say_layout.h"
#include "window/screen_fields.h"
#include "window/screen_items.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

// The size with that said of it; what is no offcut any more isn't counted either.
Json as_offcut(const Screen& screen, const std::string& at, bool offcut) {
    Json size = screen.session.document.at(Json::json_pointer(at));
    size.erase("count");
    size.erase("offcut");
    if (offcut) size["offcut"] = true;
    return size;
}

std::size_t count_at(const Screen& screen, const std::string& list) {
    std::size_t count = 0;
    while (has_at(screen.session, list + "/" + std::to_string(count))) ++count;
    return count;
}

void take_out_button(Screen& screen, const std::string& at) {
    if (!quiet_button(screen.ui, (screen.text("measured.take_out") + "##" + at).c_str(), {})) return;
    forget_drafts(screen.state, at.substr(0, at.rfind('/')));
    screen.done = SetField{at, nullptr};
}

// Places of a sheet that no part may have.
void draw_defects(Screen& screen, const std::string& sheet) {
    Ui& ui = screen.ui;
    const std::string list = sheet + "/defects";
    const std::size_t count = count_at(screen, list);
    if (count > 0) caption(ui, ui.text("stock.defect"));
    for (std::size_t i = 0; i < count; ++i) {
        const std::string at = list + "/" + std::to_string(i);
        {
            Across across(screen, content_width(ui) < ui.px(480) ? 2 : 4);
            length_entry(screen, ui.text("stock.defect_x"), at + "/x", {across.next(), "0"});
            length_entry(screen, ui.text("stock.defect_y"), at + "/y", {across.next(), "0"});
            length_entry(screen, ui.text("stock.length"), at + "/length", {across.next(), {}});
            length_entry(screen, ui.text("stock.width"), at + "/width", {across.next(), {}});
        }
        take_out_button(screen, at);
    }
    if (!quiet_button(ui, (ui.text("stock.add_defect") + "##" + sheet).c_str(), {})) return;
    // Of a sheet with a bad place it is known how many are here.
    const char* const usual = unit_of_job(screen.session) == Unit::inch ? "1 in" : "25 mm";
    Json size = screen.session.document.at(Json::json_pointer(sheet));
    size["defects"].push_back({{"x", 0}, {"y", 0}, {"length", usual}, {"width", usual}});
    if (!size.contains("count") && !size.contains("offcut")) size["count"] = 1;
    screen.done = SetField{sheet, std::move(size)};
}

// One board or sheet; `at` is its place in the document.
void draw_size(Screen& screen, const std::string& at, bool is_board) {
    Ui& ui = screen.ui;
    bool offcut = text_at(screen.session, at + "/offcut") == "true";
    {
        Across across(screen, content_width(ui) < ui.px(480) ? 2 : 4);
        length_entry(screen, ui.text("stock.length"), at + "/length", {across.next(), {}});
        open_length_entry(screen, ui.text("stock.width"), at + "/width",
                          {across.next(), ui.text(is_board ? "stock.as_parts" : "stock.needed")});
        length_entry(screen, ui.text("stock.trim"), at + "/trim", {across.next(), ui.text("stock.none")});
        const float width = across.next();
        if (offcut || has_at(screen.session, at + "/count"))
            count_entry(screen, ui.text("stock.how_many"), at + "/count", 1);
        else price_entry(screen, ui.text("stock.price"), at + "/price", {width, ui.text("stock.no_price")});
    }
    if (toggle_row(ui, (ui.text("stock.is_offcut") + "##" + at).c_str(), offcut))
        screen.done = SetField{at, as_offcut(screen, at, offcut)};
    if (has_at(screen.session, at + "/width")) draw_defects(screen, at);
    take_out_button(screen, at);
    rule(ui);
}

Json usual_size(const Screen& screen, bool is_board) {
    const bool inches = unit_of_job(screen.session) == Unit::inch;
    Json size = {{"length", inches ? "96 in" : "2440 mm"}};
    if (!is_board) size["width"] = inches ? "48 in" : "1220 mm";
    return size;
}

void draw_sizes(Screen& screen, const std::string& stock) {
    Ui& ui = screen.ui;
    const bool is_board = text_at(screen.session, stock + "/kind") == "solid";
    const std::string list = stock + "/sizes";
    const std::size_t count = count_at(screen, list);
    caption(ui, ui.text(count == 0 ? "stock.no_sizes" : "stock.sizes"));
    for (std::size_t i = 0; i < count; ++i) draw_size(screen, list + "/" + std::to_string(i), is_board);
    if (const Work* work = screen.work())
        if (const std::string left = say_on_hand(work->job, text_at(screen.session, stock + "/name"));
            !left.empty())
            say(ui, left, TypeSize::small);
    const std::string more = ui.text(is_board ? "stock.add_board" : "stock.add_sheet") + "##" + list;
    if (secondary_button(ui, more.c_str()))
        screen.done = SetField{list + (count == 0 ? "/0" : "/-"), usual_size(screen, is_board)};
}

// How parts are laid out on all of it.
void draw_cutting(Screen& screen) {
    Ui& ui = screen.ui;
    const CuttingRules usual;
    const auto shown = [&](Length length) {
        return without_mark(show(length, locale_of_job(screen.session)));
    };
    begin_field_card(screen, ui.text("stock.cutting"), "/cutting");
    caption(ui, ui.text("stock.cutting_why"));
    const std::string kerf = screen.work() ? shown(layout_kerf(screen.work()->job)) : std::string();
    Across across(screen, content_width(ui) < ui.px(480) ? 2 : 3);
    const auto entry = [&](const char* label, const char* field, const std::string& hint) {
        open_length_entry(screen, ui.text(label), std::string("/cutting/") + field, {across.next(), hint});
    };
    entry("stock.kerf", "kerf", kerf);
    entry("stock.over_length", "over_length", shown(usual.over_length));
    entry("stock.over_width", "over_width", shown(usual.over_width));
    entry("stock.least_offcut_length", "least_offcut_length", shown(usual.least_offcut_length));
    entry("stock.least_offcut_width", "least_offcut_width", shown(usual.least_offcut_width));
    end_card(ui);
}

}  // namespace

void draw_stock_fields(Screen& screen) {
    caption(screen.ui, screen.text("shop.thickness_why"));
    cards(screen, "stock", [&](const std::string& at) {
        Across across(screen, 2);
        name_entry(screen, screen.text("field.name"), at + "/name", {across.next(), {}});
        length_entry(screen, screen.text("field.thickness"), at + "/thickness", {across.next(), {}});
        choice_entry(screen, screen.text("field.kind"), at + "/kind",
                     kinds_of(screen.ui, stock_kind_word, stock_kinds()), "plywood");
        if (text_at(screen.session, at + "/kind") == "solid") {
            choice_entry(screen, screen.text("field.sawn"), at + "/cut",
                         kinds_of(screen.ui, grain_word, grain_cuts()), "flatsawn");
            note_entry(screen, screen.text("stock.species"), at + "/species",
                       {content_width(screen.ui), screen.text("stock.species_hint")});
        }
        draw_sizes(screen, at);
    });
    add_button(screen, screen.text("shop.add_stock"), "stock",
               {{"name", ""}, {"thickness", "1/2 in"}, {"kind", "plywood"}});
    draw_cutting(screen);
}

}  // namespace kw::window
