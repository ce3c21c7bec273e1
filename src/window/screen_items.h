#pragma once
// Lists of the document whose items have names, as cards: stock, machines, cutters.

#include <functional>

#include "window/screen_fields.h"
#include "window/screen_words.h"

namespace kw::window {

// What is shown for the names of a kind, as choices.
using KindWord = std::string (*)(const Words&, std::string_view);

template <class Values>
std::vector<Choice> kinds_of(const Ui& ui, KindWord word, const Values& values) {
    std::vector<Choice> choices;
    for (const auto value : values)
        choices.push_back({capital(word(ui.words(), name_of(value))), std::string(name_of(value))});
    return choices;
}

std::string item_at(const char* list, std::size_t index);

// A copy of the last item under a name of its own, as a start for another.
void add_button(Screen& screen, const std::string& label, const char* list, const Json& fallback);

// Cards in columns, as many as there is room for; `draw` is called with each item's pointer.
void cards(Screen& screen, const char* list, const std::function<void(const std::string&)>& draw);

}  // namespace kw::window
