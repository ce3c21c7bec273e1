// The first place: what is to be made, of what, and with what.

#include <array>

#include "window/screen_fields.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

int drawers_in(const Screen& screen) { return static_cast<int>(names_in(screen.session, "drawers").size()); }

std::string box_words(const Work& work, const std::string& drawer) {
    for (const DrawerBox& box : work.plan.boxes) {
        if (box.drawer != drawer) continue;
        return size_words(work.job, box.size.width, box.size.height, box.size.depth);
    }
    return {};
}

std::string row_detail(const Screen& screen, int index, const std::string& name) {
    const std::string at = "/drawers/" + std::to_string(index),
                      count = text_at(screen.session, at + "/count");
    const std::string detail = count.empty() || count == "1" ? screen.text("drawers.count.one", "1")
                                                             : screen.text("drawers.count.many", count);
    const std::string box = screen.work() ? box_words(*screen.work(), name) : std::string();
    return box.empty() ? detail : screen.text("drawers.count_of_size", detail, box);
}

void draw_list(Screen& screen) {
    Ui& ui = screen.ui;
    const auto names = names_in(screen.session, "drawers");
    begin_card(ui, "list");
    rows_in_sight(ui, screen.state.drawer_heights, names.size(), [&](std::size_t i) {
        const int index = static_cast<int>(i);
        const bool wrong = !problems_at(screen.session, "/drawers/" + std::to_string(i)).empty();
        const std::string label = capital(names[i]) + "##drawer" + std::to_string(i);
        const std::string detail = row_detail(screen, index, names[i]);
        if (list_row(ui, label.c_str(), detail, index == screen.state.drawer,
                     wrong ? Tone::wrong : Tone::plain))
            screen.state.drawer = index;
    });
    if (secondary_button(ui, ui.text("drawers.add").c_str(), {.width = content_width(ui)})) {
        screen.done = AddDrawer{static_cast<std::size_t>(screen.state.drawer)};
        screen.state.drawer = static_cast<int>(names.size());
    }
    if (confirm_button(ui, ui.text("drawers.remove").c_str(), ui.text("drawers.remove_again").c_str(),
                       {.width = content_width(ui), .enabled = names.size() > 1}))
        screen.done = RemoveDrawer{static_cast<std::size_t>(screen.state.drawer)};
    end_card(ui);
}

// On a narrow page: the drawers side by side, on top.
void draw_chips(Screen& screen) {
    Ui& ui = screen.ui;
    const auto names = names_in(screen.session, "drawers");
    std::vector<std::string> labels;
    for (const std::string& name : names) labels.push_back(capital(name));
    begin_card(ui, "chips");
    segments(ui, "drawers", labels, screen.state.drawer, -1);
    const float half = (content_width(ui) - ui.px(size::gap)) / 2;
    if (secondary_button(ui, ui.text("drawers.add").c_str(), {.width = half})) {
        screen.done = AddDrawer{static_cast<std::size_t>(screen.state.drawer)};
        screen.state.drawer = static_cast<int>(names.size());
    }
    ImGui::SameLine();
    if (confirm_button(ui, ui.text("drawers.remove").c_str(), ui.text("drawers.remove_again").c_str(),
                       {.width = half, .enabled = names.size() > 1}))
        screen.done = RemoveDrawer{static_cast<std::size_t>(screen.state.drawer)};
    end_card(ui);
}

void draw_box_sizes(Screen& screen, const BoxSize& box) {
    Ui& ui = screen.ui;
    const Job& job = screen.work()->job;
    const std::array<std::pair<std::string, Length>, 3> sizes{{{ui.text("field.width"), box.width},
                                                               {ui.text("field.height"), box.height},
                                                               {ui.text("field.depth"), box.depth}}};
    Across across(screen, 3);
    for (const auto& [name, length] : sizes) {
        const float width = across.next();
        const std::string value = value_of(job, length);
        figure(ui, {.caption = name,
                    .value = value,
                    .unit = {},
                    .changed_from = {},
                    .note = {},
                    .value_px = 34,
                    .width = width});
    }
}

void draw_part(Screen& screen, const Part& part) {
    Ui& ui = screen.ui;
    const Job& job = screen.work()->job;
    rule(ui);
    ImGui::BeginGroup();
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, ImVec2(0, ui.px(2)));
    say(ui, capital(role_words(ui.words(), part.size.role)) + ", " + part.stock, TypeSize::small, Tone::soft);
    say(ui, size_words(job, part.size.length, part.size.width, part.size.thickness));
    if (const std::string band = band_words(job, part.band, part.banded); !band.empty()) caption(ui, band);
    ImGui::PopStyleVar();
    ImGui::EndGroup();
}

const DrawerBox* shown_box(Screen& screen) {
    const Work* work = screen.work();
    const auto index = static_cast<std::size_t>(screen.state.drawer);
    return work && index < work->plan.boxes.size() ? &work->plan.boxes[index] : nullptr;
}

// Of the last job that could be made, while this one can't be.
Tone tone_of_results(const Screen& screen) {
    return screen.session.problems.empty() ? Tone::plain : Tone::soft;
}

void draw_box(Screen& screen) {
    const DrawerBox* box = shown_box(screen);
    if (!box) return;
    begin_card(screen.ui, "box", 0, tone_of_results(screen));
    heading(screen.ui, screen.text("drawers.box_outside", unit_words(screen.work()->job)));
    draw_box_sizes(screen, box->size);
    end_card(screen.ui);
}

void draw_parts(Screen& screen) {
    const DrawerBox* box = shown_box(screen);
    if (!box) return;
    begin_card(screen.ui, "results", 0, tone_of_results(screen));
    heading(screen.ui, screen.text("drawers.parts"));
    caption(screen.ui, screen.text("drawers.parts_why"));
    for (const Part& part : screen.work()->plan.parts)
        if (part.drawer == box->drawer && part.copy == 1) draw_part(screen, part);
    end_card(screen.ui);
}

void draw_results(Screen& screen) {
    draw_box(screen);
    draw_parts(screen);
}

void column(Screen& screen, const char* id, float width, void (*draw)(Screen&)) {
    begin_scroll(screen.ui, id, {width, 0});
    draw(screen);
    end_scroll(screen.ui);
}

void draw_fields(Screen& screen) {
    draw_drawer_fields(screen, static_cast<std::size_t>(screen.state.drawer));
}

void draw_three_columns(Screen& screen) {
    Ui& ui = screen.ui;
    const float gap = ui.px(size::gap), room = ImGui::GetContentRegionAvail().x;
    const float list = std::max(ui.px(270), room * 0.2f), results = std::max(ui.px(330), room * 0.26f);
    column(screen, "drawers", list, draw_list);
    ImGui::SameLine(0, gap);
    column(screen, "fields", room - list - results - 2 * gap, draw_fields);
    ImGui::SameLine(0, gap);
    column(screen, "sizes", results, draw_results);
}

void draw_one_column(Screen& screen) {
    begin_scroll(screen.ui, "drawers", {0, 0});
    draw_chips(screen);
    draw_box(screen);  // in sight while the fields that make it are
    draw_fields(screen);
    draw_parts(screen);
    end_scroll(screen.ui);
}

}  // namespace

void draw_drawers(Screen& screen) {
    const std::array<std::string, 4> tabs{
        screen.text("drawers.tab_drawers"), screen.text("drawers.tab_stock"),
        screen.text("drawers.tab_machines"), screen.text("drawers.tab_fit")};
    int tab = static_cast<int>(screen.state.tab);
    if (segments(screen.ui, "tabs", tabs, tab, std::min(screen.ui.px(720), content_width(screen.ui))))
        screen.state.tab = static_cast<DrawersTab>(tab);
    screen.state.drawer = std::max(0, std::min(screen.state.drawer, drawers_in(screen) - 1));
    if (screen.state.tab == DrawersTab::drawers)
        return screen.is_wide() ? draw_three_columns(screen) : draw_one_column(screen);
    begin_scroll(screen.ui, tabs[static_cast<std::size_t>(tab)].c_str(), {0, 0});
    if (screen.state.tab == DrawersTab::stock) draw_stock_fields(screen);
    if (screen.state.tab == DrawersTab::shop) draw_shop_fields(screen);
    if (screen.state.tab == DrawersTab::fit) draw_fit_fields(screen);
    end_scroll(screen.ui);
}

}  // namespace kw::window
