#include "words/names.h"

#include <algorithm>

namespace kw {
namespace {

// "pass 2 of 3": nothing where it is no such count.
std::string pass_words(const Words& words, std::string_view text) {
    constexpr std::string_view begin = "pass ", middle = " of ";
    const std::size_t of = text.find(middle);
    if (!text.starts_with(begin) || of == std::string_view::npos) return {};
    return words("work.pass", text.substr(begin.size(), of - begin.size()), text.substr(of + middle.size()));
}

std::string one_work(const Words& words, std::string_view text) {
    constexpr std::string_view at_back = "back ";
    if (const std::string pass = pass_words(words, text); !pass.empty()) return pass;
    if (text.starts_with(at_back))
        return words("work.at_the_back", words.name("work.", text.substr(at_back.size())));
    return words.name("work.", text);
}

// "sides, fronts".
std::string works_in_list(const Words& words, std::string_view list) {
    std::string out;
    while (true) {
        const std::size_t end = list.find(", ");
        out += one_work(words, list.substr(0, end));
        if (end == std::string_view::npos) return out;
        out += words.text("list.comma");
        list.remove_prefix(end + 2);
    }
}

std::string_view noun_of(std::string_view reference) { return reference.substr(reference.rfind(' ') + 1); }

}  // namespace

std::string work_word(const Words& words, std::string_view work) {
    const std::size_t colon = work.find(": ");
    if (colon == std::string_view::npos) return works_in_list(words, work);
    return words("work.of", one_work(words, work.substr(0, colon)),
                 works_in_list(words, work.substr(colon + 2)));
}

std::string control_word(const Words& words, std::string_view control) {
    return words.name("control.", control);
}
std::string guide_word(const Words& words, std::string_view guide) { return words.name("guide.", guide); }
std::string reading_word(const Words& words, std::string_view reading) {
    return words.name("reading.", reading);
}
std::string feel_word(const Words& words, std::string_view feel) { return words.name("feel.", feel); }
std::string sight_word(const Words& words, std::string_view sight) { return words.name("sight.", sight); }
std::string tool_word(const Words& words, std::string_view tool) { return words.name("tool.", tool); }
std::string role_word(const Words& words, std::string_view role) { return words.name("role.", role); }
std::string end_word(const Words& words, std::string_view reference) { return words.name("end.", reference); }

std::string ends_words(const Words& words, const std::vector<std::string_view>& references) {
    if (references.size() == 1) return end_word(words, references.front());
    const bool alike = std::all_of(references.begin(), references.end(), [&](std::string_view one) {
        return noun_of(one) == noun_of(references.front());
    });
    std::vector<std::string> names;
    for (const std::string_view one : references)
        names.push_back(alike ? words.name("end_of_several.", one) : end_word(words, one));
    const std::string all = words.list(names);
    if (!alike || names.empty()) return all;
    return noun_of(references.front()) == "edge" ? words("end.edges", all) : words("end.ends", all);
}

std::string face_down_words(const Words& words, std::string_view face) {
    return words.name("face_down.", face);
}
std::string face_up_words(const Words& words, std::string_view face) { return words.name("face_up.", face); }

std::string machine_kind_word(const Words& words, std::string_view kind) {
    return words.name("machine_kind.", kind);
}
std::string cutter_kind_word(const Words& words, std::string_view kind) {
    return words.name("cutter_kind.", kind);
}
std::string stock_kind_word(const Words& words, std::string_view kind) {
    return words.name("stock_kind.", kind);
}
std::string grain_word(const Words& words, std::string_view grain) { return words.name("grain.", grain); }
std::string slide_kind_word(const Words& words, std::string_view kind) {
    return words.name("slide_kind.", kind);
}

}  // namespace kw
