// What parts are cut from: its thickness and kind, and in which sizes it is to be had.

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
    if (quiet_button(ui, (ui.text("measured.take_out") + "##" + at).c_str(), {})) {
        forget_drafts(screen.state, at.substr(0, at.rfind('/')));
        screen.done = SetField{at, nullptr};
    }
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
    std::size_t count = 0;
    while (has_at(screen.session, list + "/" + std::to_string(count))) ++count;
    caption(ui, ui.text(count == 0 ? "stock.no_sizes" : "stock.sizes"));
    for (std::size_t i = 0; i < count; ++i) draw_size(screen, list + "/" + std::to_string(i), is_board);
    const std::string more = ui.text(is_board ? "stock.add_board" : "stock.add_sheet") + "##" + list;
    if (secondary_button(ui, more.c_str()))
        screen.done = SetField{list + (count == 0 ? "/0" : "/-"), usual_size(screen, is_board)};
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
}

}  // namespace kw::window
