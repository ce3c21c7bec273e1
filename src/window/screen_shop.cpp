// Machines, cutters, what was learned of them, and how joints shall fit.

#include <algorithm>
#include <functional>

#include "session/words.h"
#include "window/screen_fields.h"
#include "window/screen_items.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

// What the program believes of scales and cutters, and why. Wrong ones can be put right, or forgotten.
void draw_beliefs(Screen& screen) {
    Ui& ui = screen.ui;
    const Session& session = screen.session;
    heading(ui, ui.text("shop.beliefs"));
    const auto all = believed(session.memory, session.day);
    if (all.empty()) return caption(ui, ui.text("shop.no_beliefs"));
    const Locale fine = session.work ? caliper_locale(session.work->job) : Graduation::mm_0_01;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const std::string id = "belief " + std::to_string(i);
        begin_card(ui, id.c_str());
        say(ui, capital(say_belief(all[i], fine)));
        const bool of_moves = all[i].what == Taught::fence_gain || all[i].what == Taught::height_gain;
        Across across(screen, 2);
        Draft& draft = screen.state.drafts[id];
        if (!of_moves) {
            draft_entry(screen, screen.text("shop.off_by") + "##" + id, draft,
                        {across.next(), screen.text("shop.as_learned")});
            Length length;
            if (!draft.text.empty() &&
                secondary_button(ui, (screen.text("shop.put_right") + "##" + id).c_str()) &&
                take_length(screen, draft, length)) {
                screen.done = CorrectBelief{all[i], length.mm()};
                draft = {};
            }
        }
        if (confirm_button(ui, (screen.text("shop.forget") + "##" + id).c_str(),
                           screen.text("shop.forget_again").c_str()))
            screen.done = ForgetBelief{all[i]};
        end_card(ui);
    }
}

struct PieceWords {
    std::string which;  // one of them, by its number
    std::string more;
    const char *inch, *mm;  // how thick one is to begin with
};

// The shims or chippers of a stack: one field each, a button for one more, and one for one less.
void piece_list(Screen& screen, const std::string& at, const PieceWords& words) {
    const Json::json_pointer place(at);
    Json all = screen.session.document.contains(place) ? screen.session.document.at(place) : Json::array();
    if (!all.is_array()) return;  // said at the head of the card
    Across across(screen, 3);
    for (std::size_t i = 0; i < all.size(); ++i)
        length_entry(screen, screen.text(words.which, i + 1), at + "/" + std::to_string(i),
                     {across.next(), {}});
    if (secondary_button(screen.ui, (screen.text(words.more) + "##" + at).c_str())) {
        all.push_back(unit_of_job(screen.session) == Unit::inch ? words.inch : words.mm);
        screen.done = SetField{at, all};
    }
    if (all.empty()) return;
    ImGui::SameLine();
    if (confirm_button(screen.ui, (screen.text("shop.one_less") + "##" + at).c_str(),
                       screen.text("shop.one_less_again").c_str())) {
        all.erase(all.size() - 1);
        screen.done = SetField{at, all};
    }
}

}  // namespace

void draw_shop_fields(Screen& screen) {
    Ui& ui = screen.ui;
    heading(ui, ui.text("shop.cutters"));
    caption(ui, ui.text("shop.cutters_why"));
    cards(screen, "cutters", [&](const std::string& at) {
        Across across(screen, 2);
        name_entry(screen, screen.text("field.name"), at + "/name", {across.next(), {}});
        length_entry(screen, screen.text("field.kerf"), at + "/kerf", {across.next(), {}});
        choice_entry(screen, screen.text("field.kind"), at + "/kind",
                     kinds_of(screen.ui, cutter_kind_word, cutter_kinds()), "dado stack");
        choice_entry(screen, screen.text("field.machine"), at + "/machine",
                     choices_of(names_in(screen.session, "machines")));
        if (text_at(screen.session, at + "/kind") == "bit")
            open_length_entry(screen, screen.text("shop.depth_per_pass"), at + "/depth_per_pass",
                              {across.next(), screen.text("shop.usual")});
        if (text_at(screen.session, at + "/kind") != "dado stack") return;
        piece_list(screen, at + "/shims", {"shop.shim_in_it", "shop.add_shim_in_it", "0.004 in", "0.1 mm"});
        piece_list(screen, at + "/spare_shims",
                   {"shop.spare_shim", "shop.add_spare_shim", "0.004 in", "0.1 mm"});
        piece_list(screen, at + "/spare_chippers",
                   {"shop.spare_chipper", "shop.add_spare_chipper", "1/8 in", "3 mm"});
    });
    add_button(screen, screen.text("shop.add_cutter"), "cutters",
               {{"name", ""}, {"kind", "dado stack"}, {"kerf", "1/4 in"}});
    space(ui, 6);
    heading(ui, ui.text("shop.machines"));
    cards(screen, "machines", [&](const std::string& at) {
        Across across(screen, 2);
        name_entry(screen, screen.text("field.name"), at + "/name", {across.next(), {}});
        open_length_entry(screen, screen.text("shop.height_per_turn"), at + "/height_per_turn",
                          {across.next(), screen.text("shop.not_measured")});
        choice_entry(screen, screen.text("field.kind"), at + "/kind",
                     kinds_of(screen.ui, machine_kind_word, machine_kinds()), "table saw");
        choice_entry(screen, screen.text("shop.where"), at + "/away",
                     {{screen.text("shop.here"), false}, {screen.text("shop.lent_out"), true}}, false);
        length_entry(screen, screen.text("shop.widest_dado"), at + "/max_dado_width",
                     {across.next(), screen.text("shop.usual")});
        length_entry(screen, screen.text("shop.greatest_height"), at + "/max_height",
                     {across.next(), screen.text("shop.usual")});
        length_entry(screen, screen.text("shop.fence_repeats"), at + "/fence_repeats",
                     {across.next(), screen.text("shop.usual")});
    });
    add_button(screen, screen.text("shop.add_machine"), "machines", {{"name", ""}, {"kind", "table saw"}});
    space(ui, 6);
    draw_beliefs(screen);
}

void draw_fit_fields(Screen& screen) {
    const Unit unit = unit_of_job(screen.session);
    const FitRules usual;
    const auto hint = [&](Length length) { return exact_text(length, unit); };
    begin_field_card(screen, screen.text("fit.title"), "/fit");
    Across across(screen, screen.is_wide() ? 4 : 2);
    length_entry(screen, screen.text("fit.clearance"), "/fit/clearance",
                 {across.next(), hint(usual.clearance)});
    length_entry(screen, screen.text("fit.end_relief"), "/fit/end_relief",
                 {across.next(), hint(usual.end_relief)});
    length_entry(screen, screen.text("fit.groove_clearance"), "/fit/groove_clearance",
                 {across.next(), hint(usual.groove_clearance)});
    length_entry(screen, screen.text("fit.bottom_slack"), "/fit/bottom_slack",
                 {across.next(), hint(usual.bottom_slack)});
    length_entry(screen, screen.text("fit.step"), "/fit/step", {across.next(), screen.text("fit.flush")});
    end_card(screen.ui);
    begin_field_card(screen, screen.text("fit.tolerance"), "/fit/tolerance");
    Across more(screen, screen.is_wide() ? 5 : 2);
    length_entry(screen, screen.text("fit.fit"), "/fit/tolerance/fit",
                 {more.next(), hint(usual.tolerance.fit)});
    length_entry(screen, screen.text("fit.shoulder_gap"), "/fit/tolerance/shoulder_gap",
                 {more.next(), hint(usual.tolerance.shoulder_gap)});
    length_entry(screen, screen.text("fit.face_step"), "/fit/tolerance/step",
                 {more.next(), hint(usual.tolerance.step)});
    length_entry(screen, screen.text("fit.depth"), "/fit/tolerance/depth",
                 {more.next(), hint(usual.tolerance.depth)});
    length_entry(screen, screen.text("fit.place"), "/fit/tolerance/place",
                 {more.next(), hint(usual.tolerance.place)});
    end_card(screen.ui);
}

}  // namespace kw::window
