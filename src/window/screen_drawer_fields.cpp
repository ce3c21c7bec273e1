// One drawer's fields, a card for each part of it.

#include <algorithm>

#include "joint/joint.h"
#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

std::vector<Choice> joints_for(kw::Place place) {
    std::vector<Choice> choices;
    for (const JointType& type : joint_types())
        if (std::find(type.places.begin(), type.places.end(), place) != type.places.end())
            choices.push_back({capital(std::string(type.name)), std::string(type.name)});
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
    choices.insert(choices.begin(), {"The program chooses", nullptr});
    return choices;
}

std::vector<Choice> stocks(const Screen& screen) { return choices_of(names_in(screen.session, "stock")); }

struct DrawerAt {
    Screen& screen;
    std::string at;

    std::string operator/(const char* field) const { return at + "/" + field; }
};

void lengths(Screen& screen, const DrawerAt& drawer, const char* part,
             const std::vector<std::pair<const char*, const char*>>& fields) {
    Across across(screen, static_cast<int>(fields.size()));
    for (const auto& [label, field] : fields)
        length_entry(screen, label, drawer / part + "/" + field, {across.next(), {}});
}

void draw_name(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Drawer", drawer / "name");
    Across across(screen, 2);
    name_entry(screen, "Name", drawer / "name", {across.next(), {}});
    across.next();
    count_entry(screen, "How many", drawer / "count", 1);
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
    begin_field_card(screen, by_box ? "Box" : "Opening in the case", drawer / (by_box ? "box" : "opening"));
    int chosen = by_box ? 1 : 0;
    static const std::vector<std::string> ways{"From the opening", "The box itself"};
    if (segments(screen.ui, "way", ways, chosen, -1)) {
        if (chosen == 1) screen.done = SetField{drawer / "box", present_size(drawer, index)};
        else if (has_at(screen.session, drawer / "opening")) screen.done = SetField{drawer / "box", nullptr};
        else screen.ui.toast("This drawer has no opening to go back to", Tone::caution);
    }
    lengths(screen, drawer, by_box ? "box" : "opening",
            {{"Width", "width"}, {"Height", "height"}, {"Depth", "depth"}});
    end_card(screen.ui);
}

// "14, 16, 18 in"; empty where the job lists none.
std::string slide_lengths(const Screen& screen, std::size_t index) {
    const Work* work = screen.work();
    if (!work || index >= work->job.drawers.size()) return {};
    std::vector<std::string> words;
    for (const Length length : work->job.drawers[index].slide.lengths)
        words.push_back(value_of(work->job, length));
    return words.empty() ? std::string() : joined(words) + " " + unit_words(work->job);
}

void draw_slide(const DrawerAt& drawer, std::size_t index) {
    Screen& screen = drawer.screen;
    if (has_at(screen.session, drawer / "box")) return;
    begin_field_card(screen, "Slide", drawer / "slide");
    std::vector<Choice> kinds;
    for (const SlideKind kind : slide_kinds())
        kinds.push_back({capital(std::string(name_of(kind))), std::string(name_of(kind))});
    choice_entry(screen, "Kind", drawer / "slide/kind", kinds, std::string(name_of(SlideKind::side_mount)));
    const Slide usual = usual_slide(
        slide_kind_named(text_at(screen.session, drawer / "slide/kind")).value_or(SlideKind::side_mount));
    const auto hint = [&](Length length) { return exact_text(length, unit_of_job(screen.session)); };
    const std::pair<const char*, Length> fields[] = {
        {"side", usual.side}, {"top", usual.top}, {"bottom", usual.bottom}, {"back", usual.back}};
    Across across(screen, 4);
    for (const auto& [field, length] : fields)
        length_entry(screen, capital(field), drawer / "slide" + "/" + field, {across.next(), hint(length)});
    if (const std::string lengths = slide_lengths(screen, index); !lengths.empty())
        caption(screen.ui, "Slides of " + lengths + " are to be had: the longest that fits sets the depth");
    end_card(screen.ui);
}

void draw_sides(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Sides", drawer / "sides");
    choice_entry(screen, "Stock", drawer / "sides/stock", stocks(screen));
    end_card(screen.ui);
}

void draw_front(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Front", drawer / "front");
    choice_entry(screen, "Stock", drawer / "front/stock", stocks(screen));
    choice_entry(screen, "Joint", drawer / "front/joint", joints_for(kw::Place::front), "locking rabbet");
    choice_entry(screen, "Cutter", drawer / "front/cutter", cutters(screen));
    Across across(screen, 2);
    open_length_entry(screen, "Dado width", drawer / "front/dado_width", {across.next(), "as the cutter"});
    open_length_entry(screen, "Dado depth", drawer / "front/depth", {across.next(), "as the joint asks"});
    end_card(screen.ui);
}

void draw_back(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Back", drawer / "back");
    choice_entry(screen, "Stock", drawer / "back/stock", stocks(screen));
    choice_entry(screen, "Joint", drawer / "back/joint", joints_for(kw::Place::back), "dado");
    choice_entry(screen, "Cutter", drawer / "back/cutter", cutters(screen));
    const std::string joint = text_at(screen.session, drawer / "back/joint");
    const JointType* type = find_joint_type(joint.empty() ? BackSpec{}.joint : joint, kw::Place::back);
    Across across(screen, 3);
    length_entry(screen, "Rear end to back", drawer / "back/setback",
                 {across.next(), exact_text(BackSpec{}.setback, unit_of_job(screen.session))});
    open_length_entry(screen, "Dado width", drawer / "back/dado_width",
                      {across.next(), type && type->width_from_cutter ? "as the cutter" : "as the back"});
    open_length_entry(screen, "Dado depth", drawer / "back/depth",
                      {across.next(), type && !type->depth_follows ? "as the joint asks" : "as the front"});
    end_card(screen.ui);
}

void draw_bottom(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Bottom", drawer / "bottom");
    choice_entry(screen, "Stock", drawer / "bottom/stock", stocks(screen));
    choice_entry(screen, "How it goes in", drawer / "bottom/style",
                 {{"Slides in from behind", "slide in"}, {"Captured all round", "captured"}}, "slide in");
    choice_entry(screen, "Cutter", drawer / "bottom/cutter", cutters(screen));
    Across across(screen, 2);
    length_entry(screen, "Edge to groove", drawer / "bottom/offset",
                 {across.next(), exact_text(BottomSpec{}.offset, unit_of_job(screen.session))});
    open_length_entry(screen, "Groove depth", drawer / "bottom/depth",
                      {across.next(), "the program chooses"});
    end_card(screen.ui);
}

void draw_face(const DrawerAt& drawer) {
    Screen& screen = drawer.screen;
    begin_field_card(screen, "Face", drawer / "face");
    choice_entry(screen, "Style", drawer / "face/style",
                 {{"None", "none"}, {"Overlay", "overlay"}, {"Inset", "inset"}}, "none");
    const std::string style = text_at(screen.session, drawer / "face/style");
    if (!style.empty() && style != "none") {
        caption(screen.ui, style == "inset" ? "Gaps round it" : "How far it lies over the opening's edges");
        lengths(screen, drawer, "face",
                {{"Left", "left"}, {"Right", "right"}, {"Top", "top"}, {"Bottom", "bottom"}});
        std::vector<Choice> choices = stocks(screen);
        choices.insert(choices.begin(), {"Not in the parts", nullptr});
        choice_entry(screen, "Stock", drawer / "face/stock", choices);
    }
    end_card(screen.ui);
}

}  // namespace

void draw_drawer_fields(Screen& screen, std::size_t index) {
    const DrawerAt drawer{screen, "/drawers/" + std::to_string(index)};
    ImGui::PushID(static_cast<int>(index));
    draw_name(drawer);
    draw_size(drawer, index);
    draw_slide(drawer, index);
    draw_sides(drawer);
    draw_front(drawer);
    draw_back(drawer);
    draw_bottom(drawer);
    draw_face(drawer);
    ImGui::PopID();
}

}  // namespace kw::window
