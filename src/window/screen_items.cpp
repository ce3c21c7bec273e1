#include "window/screen_items.h"

#include <algorithm>

namespace kw::window {

std::string item_at(const char* list, std::size_t index) {
    return std::string("/") + list + "/" + std::to_string(index);
}

void add_button(Screen& screen, const std::string& label, const char* list, const Json& fallback) {
    if (!secondary_button(screen.ui, label.c_str())) return;
    const auto names = names_in(screen.session, list);
    Json item = names.empty()
                    ? fallback
                    : screen.session.document.at(Json::json_pointer(item_at(list, names.size() - 1)));
    if (!item.is_object()) item = fallback;
    std::string name;
    for (std::size_t number = names.size() + 1;
         name.empty() || std::find(names.begin(), names.end(), name) != names.end(); ++number)
        name = screen.ui.shown("shop.new_", list) + " " + std::to_string(number);
    item.erase("sizes");  // an offcut is there once
    item["name"] = name;
    screen.done =
        SetField{names.empty() ? std::string("/") + list + "/0" : std::string("/") + list + "/-", item};
}

void cards(Screen& screen, const char* list, const std::function<void(const std::string&)>& draw) {
    Ui& ui = screen.ui;
    const int columns = std::max(1, static_cast<int>(content_width(ui) / ui.px(560)));
    const float gap = ui.px(size::gap), width = (content_width(ui) - static_cast<float>(columns - 1) * gap) /
                                                static_cast<float>(columns);
    const auto names = names_in(screen.session, list);
    for (std::size_t i = 0; i < names.size(); ++i) {
        const std::string at = item_at(list, i);
        if (static_cast<int>(i) % columns != 0) ImGui::SameLine(0, gap);
        begin_field_card(screen, "", at, width);
        draw(at);
        end_card(ui);
    }
}

}  // namespace kw::window
