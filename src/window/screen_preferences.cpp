// How the maker likes to read and to work: a page over all the others.

#include <array>
#include <set>

#include "file/read_job.h"
#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

struct Asking {
    std::string title;
    std::string why;
};

// One question with its answers side by side; true where another was chosen.
bool ask(Screen& screen, Across& across, const Asking& question, std::span<const std::string> answers,
         int& chosen) {
    Ui& ui = screen.ui;
    begin_card(ui, question.title.c_str(), across.next());
    say(ui, question.title);
    const bool changed = segments(ui, question.title.c_str(), answers, chosen, content_width(ui));
    caption(ui, question.why);
    end_card(ui);
    return changed;
}

template <class Value>
void ask(Screen& screen, Across& across, const Asking& question, const std::array<std::string, 2>& answers,
         Value& value, Value first, Value second) {
    int chosen = value == first ? 0 : 1;
    if (ask(screen, across, question, answers, chosen)) value = chosen == 0 ? first : second;
}

void ask_reading(Screen& screen, Across& across) {
    std::vector<std::string> names;
    for (const auto& [name, graduation] : graduation_names()) names.emplace_back(name);
    const Unit unit = unit_of_job(screen.session);
    std::string now = text_at(screen.session, "/reading");
    if (now.empty()) now = name_of(unit == Unit::inch ? Graduation::in_64 : Graduation::mm_0_1);
    int chosen = static_cast<int>(std::find(names.begin(), names.end(), now) - names.begin());
    const std::string why = screen.text(unit == Unit::inch         ? "options.reading_why_in"
                                        : unit == Unit::millimetre ? "options.reading_why_mm"
                                                                   : "options.reading_why_cm");
    if (!ask(screen, across, {screen.text("options.reading"), why}, names, chosen)) return;
    const std::string& name = names[static_cast<std::size_t>(chosen)];
    screen.state.preferences.reading = graduation_named(name);
    screen.done = SetField{"/reading", name};
}

void ask_language(Screen& screen, Across& across) {
    std::vector<std::string> names;
    for (const Language language : all_languages) names.emplace_back(name_of(language));
    int chosen = static_cast<int>(screen.state.preferences.language);
    if (!ask(screen, across, {screen.text("options.language"), screen.text("options.language_why")}, names,
             chosen))
        return;
    screen.state.preferences.language = all_languages[chosen];
    screen.done = SpeakIn{all_languages[chosen]};
}

// Whether the pages would still have the room that they are made for.
bool has_room(const Ui& ui, int percent) {
    constexpr double least_width_px = 1100, least_height_px = 700;
    const double ratio = ui.pixel_ratio / ui.user_scale * percent / 100;
    return static_cast<double>(ui.page_size.x) >= least_width_px * ratio &&
           static_cast<double>(ui.page_size.y) >= least_height_px * ratio;
}

void ask_size(Screen& screen, Across& across) {
    int& percent = screen.state.preferences.size_percent;
    std::set<int> sizes{100, percent};
    for (int size = least_size; size <= most_size; size += size_step)
        if (size < 100 || has_room(screen.ui, size)) sizes.insert(size);
    std::vector<std::string> names;
    for (const int size : sizes) names.push_back(std::to_string(size) + " %");
    int chosen = static_cast<int>(std::distance(sizes.begin(), sizes.find(percent)));
    if (ask(screen, across, {screen.text("options.size"), screen.text("options.size_why")}, names, chosen))
        percent = *std::next(sizes.begin(), chosen);
}

}  // namespace

void draw_preferences(Screen& screen) {
    Ui& ui = screen.ui;
    Preferences& mine = screen.state.preferences;
    const bool is_upright = !screen.is_wide() && !screen.is_low();
    const auto leave_by = [&](float width) {
        if (primary_button(ui, ui.text("options.done").c_str(), {.width = width}))
            screen.state.over = Over::none;
    };
    // Where the page is not high, the way out stands beside the title.
    const ImVec2 corner = ImGui::GetCursorPos(), page = ImGui::GetContentRegionAvail();
    heading(ui, ui.text("options.title"));
    if (!is_upright) {
        const float width = ui.px(220);
        ImGui::SetCursorPos({corner.x + page.x - width, corner.y});
        leave_by(width);
    }
    const ImVec2 room = ImGui::GetContentRegionAvail();
    begin_scroll(ui, "preferences", {room.x, is_upright ? room.y - ui.px(size::target + size::gap) : room.y});
    Across across(screen, screen.is_wide() ? 4 : screen.is_low() ? 2 : 1);
    ask_language(screen, across);
    ask_reading(screen, across);
    ask_size(screen, across);
    ask(screen, across, {screen.text("options.fence_to"), screen.text("options.fence_to_why")},
        {screen.text("options.near_side"), screen.text("options.far_side")}, mine.fence_to, CutterSide::near,
        CutterSide::far);
    ask(screen, across, {screen.text("options.fence_stands"), screen.text("options.fence_stands_why")},
        {screen.text("options.left"), screen.text("options.right")}, mine.fence_stands, Hand::left,
        Hand::right);
    ask(screen, across, {screen.text("options.hand"), screen.text("options.hand_why")},
        {screen.text("options.left"), screen.text("options.right")}, mine.works_with, Hand::left,
        Hand::right);
    ask(screen, across, {screen.text("options.look"), screen.text("options.look_why")},
        {screen.text("options.light"), screen.text("options.dark")}, mine.is_dark, false, true);
    ask(screen, across, {screen.text("options.sound"), screen.text("options.sound_why")},
        {screen.text("options.off"), screen.text("options.on")}, mine.sounds, false, true);
    end_scroll(ui);
    if (is_upright) leave_by(-1);
}

}  // namespace kw::window
