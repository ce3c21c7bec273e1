#include "window/screen_fields.h"

#include <algorithm>

#include "window/press.h"
#include "window/screen_words.h"

namespace kw::window {
namespace {

constexpr std::size_t most_recent = 5;

const Json* found_at(const Session& session, const std::string& pointer) {
    const Json::json_pointer at(pointer);
    return session.document.contains(at) ? &session.document.at(at) : nullptr;
}

void remember(UiState& state, const std::string& text) {
    std::erase(state.recent, text);
    state.recent.insert(state.recent.begin(), text);
    if (state.recent.size() > most_recent) state.recent.pop_back();
}

std::string shown_text(const Screen& screen, const std::string& pointer) {
    const auto draft = screen.state.drafts.find(pointer);
    return draft != screen.state.drafts.end() ? draft->second.text : text_at(screen.session, pointer);
}

std::string words_of(const Session& session, const Problem& problem) {
    const Locale locale = locale_of_job(session);
    const std::string why = problem.why.text(locale), remedy = problem.remedy.text(locale);
    return remedy.empty() ? why : why + ": " + remedy;
}

std::string with_id(const std::string& label, const std::string& pointer) { return label + "##" + pointer; }

}  // namespace

Unit unit_of_job(const Session& session) {
    const std::string unit = text_at(session, "/unit");
    return unit == "mm" ? Unit::millimetre : unit == "cm" ? Unit::centimetre : Unit::inch;
}

Locale locale_of_job(const Session& session) {
    return {unit_of_job(session) == Unit::inch ? Graduation::in_64 : Graduation::mm_0_1, session.language};
}

std::string unit_name(const Session& session) {
    const std::string unit = text_at(session, "/unit");
    return unit.empty() ? "in" : unit;
}

std::string text_at(const Session& session, const std::string& pointer) {
    const Json* value = found_at(session, pointer);
    if (!value) return {};
    return value->is_string() ? value->get<std::string>() : value->dump();
}

bool has_at(const Session& session, const std::string& pointer) {
    return found_at(session, pointer) != nullptr;
}

std::vector<std::string> names_in(const Session& session, const std::string& list) {
    std::vector<std::string> names;
    const Json* items = found_at(session, "/" + list);
    if (!items || !items->is_array()) return names;
    for (std::size_t i = 0; i < items->size(); ++i)
        names.push_back(text_at(session, "/" + list + "/" + std::to_string(i) + "/name"));
    return names;
}

std::string reason_at(const Screen& screen, const std::string& pointer) {
    const auto draft = screen.state.drafts.find(pointer);
    if (draft != screen.state.drafts.end() && !draft->second.why.empty()) return draft->second.why;
    return problems_at(screen.session, pointer).empty() ? std::string() : screen.text("field.see_above");
}

void forget_drafts(UiState& state, const std::string& list) {
    std::erase_if(state.drafts, [&](const auto& draft) { return draft.first.rfind(list + "/", 0) == 0; });
}

void name_entry(Screen& screen, const std::string& label, const std::string& pointer, const FieldLook& look) {
    const std::string before = text_at(screen.session, pointer), why = reason_at(screen, pointer);
    std::string text = shown_text(screen, pointer);
    const bool left = text_field(screen.ui, with_id(label, pointer).c_str(), text,
                                 {.error = why, .hint = look.hint, .width = look.width});
    if (text == before) {
        screen.state.drafts.erase(pointer);
    } else if (!left) {
        screen.state.drafts[pointer] = {text, {}};
    } else if (text.empty()) {
        screen.state.drafts[pointer] = {text, screen.text("field.needs_name")};
    } else {
        screen.state.drafts.erase(pointer);
        screen.done = SetField{pointer, text};
    }
}

void note_entry(Screen& screen, const std::string& label, const std::string& pointer, const FieldLook& look) {
    const std::string before = text_at(screen.session, pointer), why = reason_at(screen, pointer);
    std::string text = shown_text(screen, pointer);
    const bool left = text_field(screen.ui, with_id(label, pointer).c_str(), text,
                                 {.error = why, .hint = look.hint, .width = look.width});
    if (text == before || left) screen.state.drafts.erase(pointer);
    else screen.state.drafts[pointer] = {text, {}};
    if (left && text != before) screen.done = SetField{pointer, text.empty() ? Json(nullptr) : Json(text)};
}

// "38.5", "38,50": a whole number, and behind one mark at most two more digits.
static std::optional<double> read_price(std::string text) {
    std::replace(text.begin(), text.end(), ',', '.');
    const std::size_t mark = text.find('.');
    const bool is_number = !text.empty() && text != "." &&
                           text.find_first_not_of("0123456789.") == std::string::npos && text.size() <= 12,
               has_one_mark =
                   mark == std::string::npos || (text.rfind('.') == mark && text.size() - mark <= 3);
    if (!is_number || !has_one_mark) return std::nullopt;
    return std::strtod(text.c_str(), nullptr);
}

void price_entry(Screen& screen, const std::string& label, const std::string& pointer,
                 const FieldLook& look) {
    const std::string before = text_at(screen.session, pointer), why = reason_at(screen, pointer);
    std::string text = shown_text(screen, pointer);
    const std::string shown = text;
    const bool left = text_field(screen.ui, with_id(label, pointer).c_str(), text,
                                 {.error = why, .hint = look.hint, .width = look.width});
    if (text == before) {
        screen.state.drafts.erase(pointer);
        return;
    }
    const auto price = read_price(text);
    if (left && (price || text.empty())) {
        screen.state.drafts.erase(pointer);
        screen.done = SetField{pointer, price ? Json(*price) : Json(nullptr)};
    } else if (left || text != shown) {
        // What is wrong with it is said once it is left, until it is typed on.
        screen.state.drafts[pointer] = {text, left ? screen.text("field.no_price") : std::string()};
    }
}

void length_entry(Screen& screen, const std::string& label, const std::string& pointer,
                  const FieldLook& look) {
    const std::string why = reason_at(screen, pointer), unit = unit_name(screen.session);
    std::string text = shown_text(screen, pointer);
    const FieldOptions options{
        .unit = unit, .error = why, .hint = look.hint, .width = look.width, .recent = screen.state.recent};
    if (!length_field(screen.ui, with_id(label, pointer).c_str(), text, options)) return;
    Draft draft{text, {}};
    Length read;
    if (!take_length(screen, draft, read)) {
        screen.state.drafts[pointer] = draft;
        return;
    }
    screen.state.drafts.erase(pointer);
    screen.done = SetField{pointer, text};
}

void open_length_entry(Screen& screen, const std::string& label, const std::string& pointer,
                       const FieldLook& look) {
    ImGui::BeginGroup();
    length_entry(screen, label, pointer, look);
    if (has_at(screen.session, pointer)) {
        const std::string back = screen.text("field.leave_open") + "##" + pointer;
        if (quiet_button(screen.ui, back.c_str(), {.width = look.width, .height_px = size::least_target})) {
            screen.state.drafts.erase(pointer);
            screen.done = SetField{pointer, nullptr};
        }
    }
    ImGui::EndGroup();
}

void count_entry(Screen& screen, const std::string& label, const std::string& pointer, int least) {
    Ui& ui = screen.ui;
    const Json* value = found_at(screen.session, pointer);
    const int count = value && value->is_number_integer() ? value->get<int>() : 1;
    ImGui::BeginGroup();
    caption(ui, label);
    if (secondary_button(ui, ("\u2212##fewer" + pointer).c_str(),
                         {.width = ui.px(56), .enabled = count > least}))
        screen.done = SetField{pointer, count - 1};
    ImGui::SameLine();
    const float top = ImGui::GetCursorPosY();
    ImGui::SetCursorPosY(top + ui.px(10));
    say(ui, std::to_string(count), TypeSize::heading, Tone::plain, ui.px(60));
    ImGui::SameLine();
    ImGui::SetCursorPosY(top);
    if (secondary_button(ui, ("+##more" + pointer).c_str(), {.width = ui.px(56)}))
        screen.done = SetField{pointer, count + 1};
    const std::string why = reason_at(screen, pointer);
    if (!why.empty()) say(ui, why, TypeSize::small, Tone::wrong);
    ImGui::EndGroup();
}

void choice_entry(Screen& screen, const std::string& label, const std::string& pointer,
                  const std::vector<Choice>& choices, const Json& when_left_out) {
    Ui& ui = screen.ui;
    const Json* held = found_at(screen.session, pointer);
    const Json value = held ? *held : when_left_out;
    const auto is_it = [&](const Choice& choice) { return choice.value == value; };
    const auto found = std::find_if(choices.begin(), choices.end(), is_it);
    int chosen = found == choices.end() ? -1 : static_cast<int>(found - choices.begin());
    std::vector<std::string> labels;
    for (const Choice& choice : choices) labels.push_back(choice.shown);
    ImGui::BeginGroup();
    caption(ui, label);
    if (segments(ui, pointer.c_str(), labels, chosen, -1))
        screen.done = SetField{pointer, choices[static_cast<std::size_t>(chosen)].value};
    const std::string why = reason_at(screen, pointer);
    if (!why.empty()) say(ui, std::string(sign(Tone::wrong)) + " " + why, TypeSize::small, Tone::wrong);
    ImGui::EndGroup();
}

std::vector<Choice> choices_of(const std::vector<std::string>& names) {
    std::vector<Choice> choices;
    for (const std::string& name : names) choices.push_back({name, name});
    return choices;
}

void say_problems(Screen& screen, const std::string& pointer) {
    for (const Problem& problem : problems_at(screen.session, pointer))
        notice(screen.ui, Tone::wrong, capital(words_of(screen.session, problem)), "");
}

void begin_field_card(Screen& screen, const std::string& title, const std::string& pointer, float width) {
    const auto problems = problems_at(screen.session, pointer);
    begin_card(screen.ui, pointer.c_str(), width, problems.empty() ? Tone::plain : Tone::wrong);
    if (!title.empty()) heading(screen.ui, title);
    say_problems(screen, pointer);
}

bool take_length(Screen& screen, Draft& draft, Length& length) {
    const auto read = read_length(draft.text, unit_of_job(screen.session));
    draft.why =
        read ? std::string() : read.error().message.text({Graduation::in_64, screen.session.language});
    if (!read) return false;
    length = *read;
    remember(screen.state, draft.text);
    return true;
}

void draft_entry(Screen& screen, const std::string& label, Draft& draft, const FieldLook& look) {
    const std::string unit = unit_name(screen.session);
    const FieldOptions options{
        .unit = unit, .error = draft.why, .hint = look.hint, .width = look.width, .recent = {}};
    Length read;
    if (length_field(screen.ui, label.c_str(), draft.text, options)) take_length(screen, draft, read);
}

Across::Across(Screen& screen, int columns)
    : ui_(screen.ui),
      columns_(columns),
      width_((content_width(screen.ui) - static_cast<float>(columns - 1) * screen.ui.px(size::gap)) /
             static_cast<float>(columns)) {}

float Across::next() {
    if (index_ % columns_ != 0) {
        ImGui::SameLine(0, ui_.px(size::gap));
        const float before = static_cast<float>(index_ % columns_) * (width_ + ui_.px(size::gap));
        ImGui::SetCursorScreenPos({corner_.x + before, corner_.y});
    } else {
        corner_ = ImGui::GetCursorScreenPos();
    }
    ++index_;
    return width_;
}

}  // namespace kw::window
