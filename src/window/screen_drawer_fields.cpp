// One drawer's fields, a card for each part of it.

#include <algorithm>

#include "joint/joint.h"
#include "window/screen_fields.h"
#include "window/screen_measured.h"
#include "window/screen_words.h"
#include "words/names.h"

namespace kw::window {
namespace {

std::vector<Choice> joints_for(const Ui& ui, kw::Place place) {
    std::vector<Choice> choices;
    for (const JointType& type : joint_types())
        if (std::find(type.places.begin(), type.places.end(), place) != type.places.end())
            choices.push_back({capital(work_word(ui.words(), type.name)), std::string(type.name)});
    return choices;
}

std::vector<Choice> cutters(const Screen& screen) {
    std::vector<std::string> names = names_in(screen.session, "cutters");
    if (const Work* work = screen.work()) {
        const Shop& shop = work->job.shop;
        std::erase_if(names, [&](const std::string& name) {  // what only crosscuts makes no joint
            const Cutter* cutter = shop.cutter_named(name);
            const Machine* machine = cutter ? shop.machine_of(*cutter) : nullptr;
            return machine && machine->kind == MachineKind::miter_saw;
        });
    }
    std::vector<Choice> choices = choices_of(names);
    choices.insert(choices.begin(), {screen.text("field.program_chooses"), nullptr});
    return choices;
}

std::vector<Choice> stocks(const Screen& screen) { return choices_of(names_in(screen.session, "stock")); }

struct DrawerAt {
    Screen& screen;
    std::string at;

    std::string operator/(const char* field) const { return at + "/" + field; }
};

void lengths(Screen& screen, const DrawerAt& drawer, const char* part,
             const std::vector<std::pair<std::string, const char*>>& fields, const std::string& hint = {}) {
    Across across(screen, static_cast<int>(fields.size()));
    for (const auto& [label, field] : fields)
        length_entry(screen, label, drawer / part + "/" + field, {across.next(), hint});
}

// What its bank says of it needs not be said here.
bool is_in_bank(const DrawerAt& drawer) {
    const Screen& screen = drawer.screen;
    const std::string name = text_at(screen.session, drawer / "name");
    for (std::size_t i = 0; i < names_in(screen.session, "banks").size(); ++i) {
        const std::string list = "/banks/" + std::to_string(i) + "/drawers/";
        for (std::size_t j = 0; has_at(screen.session, list + std::to_string(j)); ++j)
            if (text_at(screen.session, list + std::to_string(j)) == name) return true;
    }
    return false;
}

void draw_name(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.drawer"), drawer / "name");
    Across across(screen, 2);
    name_entry(screen, screen.text("field.name"), drawer / "name", {across.next(), {}});
    across.next();
    count_entry(screen, screen.text("field.how_many"), drawer / "count", 1);
    end_card(screen.ui);
}

// The box as it is now, or the opening of its size, as a start for the maker's own numbers.
Json present_size(const DrawerAt& drawer, std::size_t index) {
    const Work* work = drawer.screen.work();
    Json size = Json::object();
    if (!work || index >= work->plan.boxes.size()) return size;
    const BoxSize& box = work->plan.boxes[index].size;
    size["width"] = exact_text(box.width, work->job.unit);
    size["height"] = exact_text(box.height, work->job.unit);
    size["depth"] = exact_text(box.depth, work->job.unit);
    return size;
}

void draw_size(const DrawerAt& drawer, std::size_t index) {
    Screen& screen = drawer.screen;
    const bool by_box = has_at(screen.session, drawer / "box");
    begin_field_card(screen, screen.text(by_box ? "field.box" : "field.opening"),
                     drawer / (by_box ? "box" : "opening"));
    int chosen = by_box ? 1 : 0;
    const std::vector<std::string> ways{screen.text("field.from_opening"), screen.text("field.box_itself")};
    if (segments(screen.ui, "way", ways, chosen, -1)) {
        if (chosen == 1) screen.done = SetField{drawer / "box", present_size(drawer, index)};
        else if (has_at(screen.session, drawer / "opening")) screen.done = SetField{drawer / "box", nullptr};
        else screen.ui.toast(screen.text("field.no_opening"), Tone::caution);
    }
    lengths(screen, drawer, by_box ? "box" : "opening",
            {{screen.text("field.width"), "width"},
             {screen.text("field.height"), "height"},
             {screen.text("field.depth"), "depth"}},
            !by_box && is_in_bank(drawer) ? screen.text("faces.as_follows") : std::string());
    if (!by_box) draw_survey(screen, index);
    end_card(screen.ui);
}

// The lengths in which its slides are to be had, and one more to be added.
void draw_slide_lengths(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    const std::string list = drawer / "slide/lengths";
    caption(screen.ui, screen.text("field.slide_lengths"));
    std::size_t count = 0;
    while (has_at(screen.session, list + "/" + std::to_string(count))) ++count;
    Across across(screen, 4);
    for (std::size_t i = 0; i < count; ++i) {
        const std::string at = list + "/" + std::to_string(i);
        const float width = across.next();
        ImGui::BeginGroup();
        length_entry(screen, screen.text("field.slide_length", i + 1), at, {width, {}});
        const std::string out = screen.text("measured.take_out") + "##" + at;
        if (quiet_button(screen.ui, out.c_str(), {.width = width, .height_px = size::least_target})) {
            forget_drafts(screen.state, list);
            screen.done = SetField{at, nullptr};
        }
        ImGui::EndGroup();
    }
    length_entry(screen, screen.text("field.slide_length_more"), list + (count == 0 ? "/0" : "/-"),
                 {across.next(), screen.text("field.any_length")});
}

void draw_slide(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    if (has_at(screen.session, drawer / "box")) return;
    begin_field_card(screen, screen.text("field.slide"), drawer / "slide");
    std::vector<Choice> kinds;
    for (const SlideKind kind : slide_kinds())
        kinds.push_back(
            {capital(slide_kind_word(screen.ui.words(), name_of(kind))), std::string(name_of(kind))});
    choice_entry(screen, screen.text("field.kind"), drawer / "slide/kind", kinds,
                 std::string(name_of(SlideKind::side_mount)));
    const Slide usual = usual_slide(
        slide_kind_named(text_at(screen.session, drawer / "slide/kind")).value_or(SlideKind::side_mount));
    const auto hint = [&](Length length) { return exact_text(length, unit_of_job(screen.session)); };
    const std::pair<const char*, Length> fields[] = {{"side", usual.side},       {"top", usual.top},
                                                     {"bottom", usual.bottom},   {"back", usual.back},
                                                     {"take_up", usual.take_up}, {"setback", usual.setback}};
    {
        Across across(screen, content_width(screen.ui) < screen.ui.px(560) ? 3 : 6);
        for (const auto& [field, length] : fields)
            length_entry(screen, screen.ui.shown("field.slide_", field), drawer / "slide" + "/" + field,
                         {across.next(), hint(length)});
    }
    draw_slide_lengths(drawer);
    note_entry(screen, screen.text("field.slide_note"), drawer / "slide/note",
               {content_width(screen.ui), screen.text("field.slide_sheet")});
    end_card(screen.ui);
}

void draw_sides(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.sides"), drawer / "sides");
    choice_entry(screen, screen.text("field.stock"), drawer / "sides/stock", stocks(screen));
    end_card(screen.ui);
}

void draw_front(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.front"), drawer / "front");
    choice_entry(screen, screen.text("field.stock"), drawer / "front/stock", stocks(screen));
    choice_entry(screen, screen.text("field.joint"), drawer / "front/joint",
                 joints_for(screen.ui, kw::Place::front), "locking rabbet");
    choice_entry(screen, screen.text("field.cutter"), drawer / "front/cutter", cutters(screen));
    Across across(screen, 2);
    open_length_entry(screen, screen.text("field.dado_width"), drawer / "front/dado_width",
                      {across.next(), screen.text("field.as_cutter")});
    open_length_entry(screen, screen.text("field.dado_depth"), drawer / "front/depth",
                      {across.next(), screen.text("field.as_joint")});
    end_card(screen.ui);
}

void draw_back(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.back"), drawer / "back");
    choice_entry(screen, screen.text("field.stock"), drawer / "back/stock", stocks(screen));
    choice_entry(screen, screen.text("field.joint"), drawer / "back/joint",
                 joints_for(screen.ui, kw::Place::back), "dado");
    choice_entry(screen, screen.text("field.cutter"), drawer / "back/cutter", cutters(screen));
    const std::string joint = text_at(screen.session, drawer / "back/joint");
    const JointType* type = find_joint_type(joint.empty() ? BackSpec{}.joint : joint, kw::Place::back);
    Across across(screen, 3);
    length_entry(screen, screen.text("field.setback"), drawer / "back/setback",
                 {across.next(), exact_text(BackSpec{}.setback, unit_of_job(screen.session))});
    open_length_entry(screen, screen.text("field.dado_width"), drawer / "back/dado_width",
                      {across.next(), type && (type->width_from_cutter || type->width_is_cutter)
                                          ? screen.text("field.as_cutter")
                                          : screen.text("field.as_back")});
    open_length_entry(screen, screen.text("field.dado_depth"), drawer / "back/depth",
                      {across.next(), type && !type->depth_follows ? screen.text("field.as_joint")
                                                                   : screen.text("field.as_front")});
    end_card(screen.ui);
}

void draw_bottom(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.bottom"), drawer / "bottom");
    choice_entry(screen, screen.text("field.stock"), drawer / "bottom/stock", stocks(screen));
    choice_entry(screen, screen.text("field.bottom_style"), drawer / "bottom/style",
                 {{screen.text("field.slides_in"), "slide in"}, {screen.text("field.captured"), "captured"}},
                 "slide in");
    choice_entry(screen, screen.text("field.cutter"), drawer / "bottom/cutter", cutters(screen));
    Across across(screen, 2);
    length_entry(screen, screen.text("field.groove_offset"), drawer / "bottom/offset",
                 {across.next(), exact_text(BottomSpec{}.offset, unit_of_job(screen.session))});
    open_length_entry(screen, screen.text("field.groove_depth"), drawer / "bottom/depth",
                      {across.next(), screen.text("field.open")});
    end_card(screen.ui);
}

void draw_face_stock(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    std::vector<Choice> choices = stocks(screen);
    choices.insert(choices.begin(), {screen.text("field.face_not_in_parts"), nullptr});
    choice_entry(screen, screen.text("field.stock"), drawer / "face/stock", choices);
}

void draw_face(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, screen.text("field.face"), drawer / "face");
    if (is_in_bank(drawer)) {
        if (list_row(screen.ui, screen.text("field.face_in_bank").c_str(), {})) {
            screen.state.place = Where::job;
            screen.state.job_tab = JobTab::faces;
        }
        draw_face_stock(drawer);
        return end_card(screen.ui);
    }
    choice_entry(screen, screen.text("field.style"), drawer / "face/style",
                 {{screen.text("field.no_face"), "none"},
                  {screen.text("field.overlay"), "overlay"},
                  {screen.text("field.inset"), "inset"}},
                 "none");
    const std::string style = text_at(screen.session, drawer / "face/style");
    if (!style.empty() && style != "none") {
        caption(screen.ui, screen.text(style == "inset" ? "field.inset_gaps" : "field.overlay_laps"));
        lengths(screen, drawer, "face",
                {{screen.text("field.face_left"), "left"},
                 {screen.text("field.face_right"), "right"},
                 {screen.text("field.face_top"), "top"},
                 {screen.text("field.face_bottom"), "bottom"}});
        if (style == "overlay") {
            Across across(screen, 4);
            length_entry(screen, screen.text("field.reveal"), drawer / "face/reveal",
                         {across.next(), exact_text(FaceSpec{}.reveal, unit_of_job(screen.session))});
        }
        draw_face_stock(drawer);
    }
    end_card(screen.ui);
}

}  // namespace

void draw_drawer_fields(Screen& screen, std::size_t index) {
    const DrawerAt drawer{screen, "/drawers/" + std::to_string(index)};
    ImGui::PushID(static_cast<int>(index));
    draw_name(drawer);
    draw_size(drawer, index);
    draw_slide(drawer);
    draw_sides(drawer);
    draw_front(drawer);
    draw_back(drawer);
    draw_bottom(drawer);
    draw_face(drawer);
    ImGui::PopID();
}

}  // namespace kw::window
