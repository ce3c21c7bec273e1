#include "window/screen_measured.h"

#include <algorithm>
#include <optional>

#include "draw/assembly_order_view.h"
#include "draw/assembly_view.h"
#include "draw/maker_triangle.h"
#include "job/slide_notes.h"
#include "job/survey_notes.h"
#include "session/measured.h"
#include "session/say_assembly.h"
#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

// A reading may be missing, and once it is there be taken out again.
void reading_entry(Screen& screen, const std::string& label, const std::string& pointer, float width) {
    ImGui::BeginGroup();
    length_entry(screen, label, pointer, {width, screen.text("test.not_read")});
    if (has_at(screen.session, pointer)) {
        const std::string out = screen.text("measured.take_out") + "##" + pointer;
        if (quiet_button(screen.ui, out.c_str(), {.width = width, .height_px = size::least_target})) {
            screen.state.drafts.erase(pointer);
            screen.done = SetField{pointer, nullptr};
        }
    } else {
        // What stands below stays where it is when a reading comes.
        ImGui::Dummy({width, screen.ui.px(size::least_target)});
    }
    ImGui::EndGroup();
}

// So many side by side as can be read there.
void reading_entries(Screen& screen, Measured what, std::size_t drawer, int copy,
                     const std::vector<std::string>& names) {
    Across across(screen, content_width(screen.ui) < screen.ui.px(520) ? 2 : 4);
    for (const std::string& name : names)
        reading_entry(screen, screen.text(key_of("measured.", name)),
                      *measured_pointer(what, drawer, copy, name), across.next());
}

std::size_t readings_of(const Screen& screen, std::size_t drawer) {
    const auto names = measured_names(Measured::opening);
    return static_cast<std::size_t>(std::count_if(names.begin(), names.end(), [&](const std::string& name) {
        return has_at(screen.session, *measured_pointer(Measured::opening, drawer, 1, name));
    }));
}

void say_survey(Screen& screen, std::size_t drawer) {
    const Work* work = screen.work();
    if (!work || drawer >= work->job.drawers.size() || !screen.session.problems.empty()) return;
    const DrawerSpec& spec = work->job.drawers[drawer];
    for (const DrawerBox& box : work->plan.boxes) {
        if (box.drawer != spec.name) continue;
        for (const Note& note : survey_notes(spec, box.size.depth))
            status(screen.ui, note.level == Level::note ? Tone::accent : Tone::caution,
                   capital(note.text.text(work->job.locale)));
    }
}

// --- put together --------------------------------------------------------------------------------------------------

struct OneDrawer {
    std::size_t drawer;  // of the work
    int copy;
};

// Where it stands in the document, which may be a newer one; nothing where it is gone from there.
std::optional<std::size_t> place_of(const Screen& screen, const OneDrawer& one) {
    const auto names = names_in(screen.session, "drawers");
    const auto found = std::find(names.begin(), names.end(), screen.work()->job.drawers[one.drawer].name);
    return found == names.end() ? std::nullopt
                                : std::optional(static_cast<std::size_t>(found - names.begin()));
}

std::string assembled_at(std::size_t drawer, int copy) {
    return "/drawers/" + std::to_string(drawer) + "/assembled/" + std::to_string(copy);
}

std::vector<OneDrawer> all_drawers(const Work& work) {
    std::vector<OneDrawer> all;
    for (std::size_t i = 0; i < work.job.drawers.size(); ++i)
        for (int copy = 1; copy <= work.job.drawers[i].count; ++copy) all.push_back({i, copy});
    return all;
}

std::string name_of(const Work& work, const OneDrawer& one) {
    return capital(copy_name(work.job.drawers[one.drawer].name, one.copy));
}

SaidOfAssembly said_of(const Work& work, const OneDrawer& one) {
    const auto result = assembly(work, work.job.drawers[one.drawer].name, one.copy);
    return result ? say_assembly(work.job, *result) : SaidOfAssembly{};
}

// In a word, for the list.
std::pair<const char*, Tone> state_of(const SaidOfAssembly& said) {
    if (said.is_misread) return {"together.misread", Tone::wrong};
    if (said.is_to_be_pushed) return {"together.push", Tone::caution};
    if (said.are_slides_to_be_set) return {"together.straighten", Tone::caution};
    if (said.is_to_be_moved) return {"together.move", Tone::caution};
    if (said.is_hung) return {"together.hangs", Tone::good};
    if (!said.face.empty()) return {"together.so_far", Tone::accent};
    if (said.is_square) return {"together.square", Tone::good};
    if (!said.box.empty()) return {"together.so_far", Tone::accent};
    return {"together.not_measured", Tone::soft};
}

void draw_drawer_list(Screen& screen, const std::vector<OneDrawer>& all) {
    const Work& work = *screen.work();
    begin_card(screen.ui, "assembled drawers");
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto state = state_of(said_of(work, all[i]));
        const std::string label = name_of(work, all[i]) + "##" + std::to_string(i);
        if (list_row(screen.ui, label.c_str(), screen.text(state.first), i == screen.state.assembled,
                     state.second))
            screen.state.assembled = i;
    }
    end_card(screen.ui);
}

// On a narrow page: one beside the other.
void draw_drawer_chips(Screen& screen, const std::vector<OneDrawer>& all) {
    std::vector<std::string> labels;
    for (const OneDrawer& one : all) labels.push_back(name_of(*screen.work(), one));
    int chosen = static_cast<int>(screen.state.assembled);
    begin_card(screen.ui, "assembled drawers");
    if (segments(screen.ui, "which", labels, chosen, -1))
        screen.state.assembled = static_cast<std::size_t>(chosen);
    end_card(screen.ui);
}

void say_lines(Screen& screen, const std::vector<std::string>& lines, bool is_good) {
    for (const std::string& line : lines)
        status(screen.ui, is_good ? Tone::good : Tone::caution, capital(line));
}

void draw_assembly_order(Screen& screen, const OneDrawer& one, Length diagonal) {
    Ui& ui = screen.ui;
    const Work& work = *screen.work();
    const DrawerDesign& drawer = work.standing_design.drawers[one.drawer];
    const auto steps = assembly_order(work.job, drawer, diagonal);
    bool& is_open = screen.state.assembly_order_open;
    begin_card(ui, "in order");
    const std::string detail = is_open ? ui.text("measured.close") : ui.text("together.steps", steps.size());
    if (list_row(ui, ui.text("together.order").c_str(), detail)) is_open = !is_open;
    if (!is_open) return end_card(ui);
    say(ui, ui.text("together.triangle"));
    draw_picture(ui, "triangle", draw::maker_triangles(work.job.locale), {content_width(ui), ui.px(170)});
    draw_picture(ui, "order of assembly", draw::assembly_order_view(drawer, steps, work.job.locale),
                 {content_width(ui), ui.px(260)});
    for (std::size_t i = 0; i < steps.size(); ++i)
        say(ui, std::to_string(i + 1) + ". " + steps[i].text.text(work.job.locale));
    end_card(ui);
}

void draw_clamps(Screen& screen, const OneDrawer& one, const AssemblyResult& result, const Assembled& read,
                 const SaidOfAssembly& said) {
    Ui& ui = screen.ui;
    const auto place = place_of(screen, one);
    begin_field_card(screen, {}, place ? assembled_at(*place, one.copy) : std::string("clamps"));
    heading(ui, ui.text("together.in_clamps"));
    say(ui, capital(said.expected) + ".");
    if (place) {
        Across across(screen, 2);
        for (const char* name : {"from_front_left", "from_front_right"})
            reading_entry(screen, ui.text(key_of("measured.", name)),
                          *measured_pointer(Measured::assembled, *place, one.copy, name), across.next());
    }
    say_lines(screen, said.box, said.is_square && !said.is_misread);
    draw_picture(ui, "clamps", draw::box_in_clamps(result, read, screen.work()->job.locale),
                 {content_width(ui), ui.px(260)});
    caption(ui, ui.text("together.how"));
    end_card(ui);
}

void draw_slides(Screen& screen, const OneDrawer& one, const SaidOfAssembly& said) {
    const Work& work = *screen.work();
    const auto wanted = slide_place_of(work.job, work.plan, work.job.drawers[one.drawer]);
    const auto place = place_of(screen, one);
    if (!wanted || !place) return;
    Ui& ui = screen.ui;
    begin_card(ui, "slides");
    heading(ui, ui.text("together.slides"));
    std::string how = ui.text("together.slides_how");
    if (wanted->above_edge && *wanted->above_edge > Length{})
        how += " " + ui.text("together.slide_height", show_with_unit(wanted->above_floor, work.job.locale));
    say(ui, how);
    std::vector<std::string> names;
    for (const SlideReading reading : slide_readings()) names.emplace_back(kw::name_of(reading));
    reading_entries(screen, Measured::assembled, *place, one.copy, names);
    say_lines(screen, said.slides, said.are_slides_true);
    end_card(ui);
}

// Above the fields, where it is seen while they are filled in; two moves have room without pushing those down.
void say_face(Screen& screen, const SaidOfAssembly& said) {
    const float top = ImGui::GetCursorPosY(), room = screen.ui.px(84);
    if (said.face.empty()) caption(screen.ui, screen.text("together.read_gaps"));
    say_lines(screen, said.face, !said.is_to_be_moved);
    ImGui::SetCursorPosY(std::max(ImGui::GetCursorPosY(), top + room));
}

void draw_hanging(Screen& screen, const OneDrawer& one, const AssemblyResult& result, const Assembled& read,
                  const SaidOfAssembly& said) {
    Ui& ui = screen.ui;
    begin_card(ui, "hanging");
    heading(ui, ui.text("together.face"));
    if (!result.face) {
        say(ui, ui.text("together.no_face"));
        return end_card(ui);
    }
    say_face(screen, said);
    draw_picture(ui, "face", draw::face_in_place(*result.face, read.gaps, screen.work()->job.locale),
                 {content_width(ui), ui.px(220)});
    std::vector<std::string> names;
    for (const GapPlace place : gap_places()) names.emplace_back(kw::name_of(place));
    if (const auto place = place_of(screen, one))
        reading_entries(screen, Measured::assembled, *place, one.copy, names);
    end_card(ui);
}

void draw_one_drawer(Screen& screen, const OneDrawer& one, bool beside) {
    const Work& work = *screen.work();
    const DrawerSpec& spec = work.job.drawers[one.drawer];
    const auto result = assembly(work, spec.name, one.copy);
    if (!result) return;
    const auto found = spec.assembled.find(one.copy);
    const Assembled read = found == spec.assembled.end() ? Assembled{} : found->second;
    const SaidOfAssembly said = say_assembly(work.job, *result);
    ImGui::PushID(static_cast<int>(screen.state.assembled));
    const float room = content_width(screen.ui), gap = screen.ui.px(size::gap);
    if (!beside) {
        draw_assembly_order(screen, one, result->diagonal);
        draw_clamps(screen, one, *result, read, said);
        draw_slides(screen, one, said);
        draw_hanging(screen, one, *result, read, said);
    } else {
        begin_scroll(screen.ui, "in clamps", {(room - gap) / 2, 0});
        draw_assembly_order(screen, one, result->diagonal);
        draw_clamps(screen, one, *result, read, said);
        draw_slides(screen, one, said);
        end_scroll(screen.ui);
        ImGui::SameLine(0, gap);
        begin_scroll(screen.ui, "in place", {(room - gap) / 2, 0});
        draw_hanging(screen, one, *result, read, said);
        end_scroll(screen.ui);
    }
    ImGui::PopID();
}

}  // namespace

void draw_survey(Screen& screen, std::size_t drawer) {
    Ui& ui = screen.ui;
    const std::size_t count = readings_of(screen, drawer);
    const std::string label = ui.text("measured.at_places");
    if (!screen.state.survey_open) {
        if (list_row(ui, label.c_str(), count == 0 ? std::string() : ui.text("measured.readings", count)))
            screen.state.survey_open = true;
        return say_survey(screen, drawer);
    }
    if (list_row(ui, label.c_str(), ui.text("measured.close"))) screen.state.survey_open = false;
    reading_entries(screen, Measured::opening, drawer, 1, measured_names(Measured::opening));
    say_survey(screen, drawer);
}

void draw_assembly(Screen& screen) {
    Ui& ui = screen.ui;
    const auto all = all_drawers(*screen.work());
    if (all.empty()) return;
    screen.state.assembled = std::min(screen.state.assembled, all.size() - 1);
    if (!screen.is_wide() && !screen.is_low()) {
        begin_scroll(ui, "together", {0, 0});
        draw_drawer_chips(screen, all);
        draw_one_drawer(screen, all[screen.state.assembled], false);
        return end_scroll(ui);
    }
    const float gap = ui.px(size::gap), list = std::max(ui.px(280), content_width(ui) * 0.22f);
    begin_scroll(ui, "together", {list, 0});
    draw_drawer_list(screen, all);
    end_scroll(ui);
    ImGui::SameLine(0, gap);
    if (screen.is_low()) {
        begin_scroll(ui, "one drawer", {0, 0});
        draw_one_drawer(screen, all[screen.state.assembled], false);
        return end_scroll(ui);
    }
    ImGui::BeginChild("one drawer", {0, 0}, 0, ImGuiWindowFlags_NoBackground);
    draw_one_drawer(screen, all[screen.state.assembled], true);
    ImGui::EndChild();
}

}  // namespace kw::window
