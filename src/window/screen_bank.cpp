#include "window/screen_bank.h"

#include "window/screen_fields.h"
#include "window/screen_words.h"
#include "window/text.h"

namespace kw::window {
namespace {

struct BankAt {
    Screen& screen;
    std::size_t index;
    std::string at;

    std::string operator/(const std::string& field) const { return at + "/" + field; }
    std::string text(const std::string& field) const { return text_at(screen.session, *this / field); }
    bool has(const std::string& field) const { return has_at(screen.session, *this / field); }
    bool is_inset() const { return text("style") == "inset"; }
    const Json& json() const { return screen.session.document.at(Json::json_pointer(at)); }
    const BankSpec* made() const { return made_bank(screen, index); }
};

// Of its rows, top to bottom, in the document.
std::vector<std::string> rows_of(const BankAt& bank) {
    std::vector<std::string> rows;
    const BankSpec* made = bank.made();
    for (const BankPlace& row : made ? made->rows : std::vector<BankPlace>())
        rows.push_back(capital(copy_name(bank.screen.work()->job.drawers[row.drawer], row.copy)));
    return rows;
}

// The heights as they are now, the lowest left open: a start for the maker's own.
Json present_heights(const BankAt& bank) {
    Json heights = Json::array();
    const BankSpec* made = bank.made();
    for (const BankFace& face : made ? made->made.faces : std::vector<BankFace>())
        heights.push_back(exact_text(face.height, unit_of_job(bank.screen.session)));
    if (!heights.empty()) heights.back() = nullptr;
    return heights;
}

// A rule with what it needs, in one step.
void choose_rule(const BankAt& bank, const char* rule) {
    Json changed = bank.json();
    changed["heights"] = rule;
    const std::string_view name = rule;
    const Unit unit = unit_of_job(bank.screen.session);
    if (name == "graduated" && !bank.has("step") && !bank.has("top_face"))
        changed["step"] =
            exact_text(unit == Unit::inch ? Length::inches(1, 2) : Length::millimetres(15), unit);
    if (name == "given" && !bank.has("face_heights")) changed["face_heights"] = present_heights(bank);
    if (name == "in proportion" && !bank.has("parts"))
        changed["parts"] = Json(std::vector<int>(rows_of(bank).size(), 1));
    bank.screen.done = SetField{bank.at, std::move(changed)};
}

void draw_column(const BankAt& bank) {
    Screen& screen = bank.screen;
    begin_field_card(screen, screen.text("faces.column"), bank / "opening");
    name_entry(screen, screen.text("field.name"), bank / "name", {content_width(screen.ui), {}});
    choice_entry(screen, screen.text("field.style"), bank / "style",
                 {{screen.text("field.overlay"), "overlay"}, {screen.text("field.inset"), "inset"}},
                 "overlay");
    Across across(screen, 2);
    length_entry(screen, screen.text("field.width"), bank / "opening/width", {across.next(), {}});
    open_length_entry(screen, screen.text("field.height"), bank / "opening/height",
                      {across.next(), screen.text("faces.as_follows")});
    open_length_entry(screen, screen.text("faces.rail"), bank / "rail",
                      {across.next(), screen.text("faces.no_rails")});
    length_entry(screen, screen.text("field.reveal"), bank / "reveal",
                 {across.next(), exact_text(BankSpec{}.reveal, unit_of_job(screen.session))});
    open_length_entry(screen, screen.text("field.depth"), bank / "opening/depth",
                      {across.next(), screen.text("faces.drawers_own")});
    end_card(screen.ui);
}

void draw_given_heights(const BankAt& bank) {
    Screen& screen = bank.screen;
    const auto rows = rows_of(bank);
    Across across(screen, 2);
    for (std::size_t i = 0; has_at(screen.session, bank / "face_heights") && i < rows.size(); ++i) {
        const std::string at = bank / "face_heights/" + std::to_string(i);
        const float width = across.next();
        ImGui::BeginGroup();
        length_entry(screen, rows[i], at, {width, screen.text("faces.rest")});
        const std::string back = screen.text("field.leave_open") + "##" + at;
        if (!text_at(screen.session, at).empty() &&
            quiet_button(screen.ui, back.c_str(), {.width = width, .height_px = size::least_target})) {
            screen.state.drafts.erase(at);
            screen.done = SetField{at, ""};
        }
        ImGui::EndGroup();
    }
}

void draw_rule_fields(const BankAt& bank, const std::string& rule) {
    Screen& screen = bank.screen;
    if (rule == "given") return draw_given_heights(bank);
    if (rule == "graduated") {
        Across across(screen, 2);
        if (!bank.has("top_face"))
            open_length_entry(screen, screen.text("faces.step"), bank / "step",
                              {across.next(), screen.text("faces.from_the_other")});
        if (!bank.has("step"))
            open_length_entry(screen, screen.text("faces.top_face"), bank / "top_face",
                              {across.next(), screen.text("faces.from_the_other")});
    }
    if (rule != "in proportion") return;
    const auto rows = rows_of(bank);
    Across across(screen, 2);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (!has_at(screen.session, bank / "parts/" + std::to_string(i))) continue;
        across.next();
        count_entry(screen, screen.text("faces.part", rows[i]), bank / "parts/" + std::to_string(i), 1);
    }
}

void draw_heights(const BankAt& bank) {
    Screen& screen = bank.screen;
    static constexpr std::pair<const char*, const char*> rules[] = {{"faces.equal", "equal"},
                                                                    {"faces.graduated", "graduated"},
                                                                    {"faces.in_proportion", "in proportion"},
                                                                    {"faces.given", "given"},
                                                                    {"faces.by_opening", "by opening"}};
    const std::string told = bank.text("heights"), rule = told.empty() ? "equal" : told;
    begin_field_card(screen, screen.text("faces.heights"), bank / "heights");
    std::vector<std::string> labels;
    int chosen = -1;
    for (const auto& [label, name] : rules) {
        if (rule == name) chosen = static_cast<int>(labels.size());
        labels.push_back(screen.text(label));
    }
    if (segments(screen.ui, "rule", labels, chosen, -1)) choose_rule(bank, rules[chosen].second);
    for (const char* field : {"face_heights", "step", "top_face", "parts", "reveal"})
        say_problems(screen, bank / field);
    draw_rule_fields(bank, rule);
    end_card(screen.ui);
}

void draw_four(const BankAt& bank, const std::string& under, const std::string& hint,
               const std::vector<const char*>& ends) {
    Screen& screen = bank.screen;
    Across across(screen, 2);
    for (const char* end : ends)
        open_length_entry(screen, screen.ui.shown("field.face_", end), bank / under + end,
                          {across.next(), hint});
}

void draw_ends(const BankAt& bank) {
    Screen& screen = bank.screen;
    begin_field_card(screen, screen.text(bank.is_inset() ? "faces.ends_gap" : "faces.ends_over"),
                     bank / "case");
    for (const char* end : {"left", "right", "top", "bottom"}) say_problems(screen, bank / end);
    draw_four(bank, "", screen.text("faces.as_follows"), {"left", "right", "top", "bottom"});
    if (!bank.is_inset()) {
        caption(screen.ui, screen.text("faces.edges"));
        draw_four(bank, "case/", screen.text("test.not_read"), {"left", "right", "top", "bottom"});
    }
    caption(screen.ui, screen.text("faces.beside"));
    draw_four(bank, "beside/", screen.text("faces.no_handles"), {"top", "bottom"});
    end_card(screen.ui);
}

void choose_holes(const BankAt& bank, int chosen) {
    if (chosen == 0) {
        bank.screen.done = SetField{bank / "handles", nullptr};
        return;
    }
    Json handles = bank.has("handles") ? bank.json()["handles"] : Json::object();
    handles["holes"] = chosen;
    // Three times 32 mm, as handles are mostly drilled (common practice, no source).
    if (chosen == 2 && !handles.contains("centres")) handles["centres"] = "96 mm";
    bank.screen.done = SetField{bank / "handles", std::move(handles)};
}

void draw_handles(const BankAt& bank) {
    Screen& screen = bank.screen;
    begin_field_card(screen, screen.text("faces.handles"), bank / "handles");
    const std::vector<std::string> counts{screen.text("faces.no_handles"), screen.text("faces.holes.one"),
                                          screen.text("faces.holes.many", 2)};
    const std::string holes = bank.text("handles/holes");
    int chosen = !bank.has("handles") ? 0 : holes == "1" ? 1 : 2;
    if (segments(screen.ui, "holes", counts, chosen, -1)) choose_holes(bank, chosen);
    if (bank.has("handles")) {
        choice_entry(screen, screen.text("field.height"), bank / "handles/height",
                     {{screen.text("faces.centred"), "centred"},
                      {screen.text("faces.third"), "a third down"},
                      {screen.text("faces.from_top"), "from the top"}},
                     bank.has("handles/from_top") ? "from the top" : "centred");
        Across across(screen, 2);
        if (holes != "1")
            length_entry(screen, screen.text("faces.centres"), bank / "handles/centres", {across.next(), {}});
        if (bank.text("handles/height") == "from the top" || bank.has("handles/from_top"))
            length_entry(screen, screen.text("faces.below_top"), bank / "handles/from_top",
                         {across.next(), {}});
        open_length_entry(screen, screen.text("faces.diameter"), bank / "handles/diameter",
                          {across.next(), exact_text(HandleAsk{}.diameter, Unit::millimetre)});
    }
    end_card(screen.ui);
}

}  // namespace

const BankSpec* made_bank(const Screen& screen, std::size_t bank) {
    const Work* work = screen.work();
    const std::string name = text_at(screen.session, "/banks/" + std::to_string(bank) + "/name");
    const auto* banks = work ? &work->job.banks : nullptr;
    for (std::size_t i = 0; banks && i < banks->size(); ++i)
        if ((*banks)[i].name == name) return &(*banks)[i];
    // One that has just been given another name stands where it stood.
    const bool are_as_many = banks && banks->size() == names_in(screen.session, "banks").size();
    return are_as_many && bank < banks->size() ? &(*banks)[bank] : nullptr;
}

void draw_bank_fields(Screen& screen, std::size_t index) {
    const BankAt bank{screen, index, "/banks/" + std::to_string(index)};
    ImGui::PushID(static_cast<int>(index));
    say_problems(screen, bank / "drawers");
    draw_column(bank);
    draw_heights(bank);
    draw_ends(bank);
    draw_handles(bank);
    if (confirm_button(screen.ui, screen.text("faces.dissolve").c_str(),
                       screen.text("faces.dissolve_again").c_str(), {})) {
        forget_drafts(screen.state, "/banks");
        screen.done = SetField{bank.at, nullptr};
    }
    ImGui::PopID();
}

}  // namespace kw::window
