#include "session/measured.h"

#include <algorithm>

#include "words/near_name.h"

namespace kw {
namespace {

constexpr const char* diagonals[] = {"from_front_left", "from_front_right"};
constexpr const char* frame_sides[] = {"frame_left", "frame_right"};

bool is_among(const char* const (&names)[2], const std::string& name) {
    return name == names[0] || name == names[1];
}

Session refused(const Session& session, const Message& why) {
    Session out = session;
    Locale locale = session.work ? caliper_locale(session.work->job) : Locale(Graduation::in_001);
    locale.language = session.language;
    out.refused = why.text(locale);
    out.refused_field = "readings";
    return out;
}

Message no_such(const char* key, const std::string& name, const std::vector<std::string>& known) {
    const std::string meant = near_name(name, known);
    Message why = Message::say(key, name);
    return meant.empty() ? why
                         : Message::say("refused.with_remedy", why,
                                        Message::say("file.did_you_mean", in_quotes(meant)));
}

}  // namespace

std::vector<std::string> measured_names(Measured what) {
    std::vector<std::string> names;
    if (what == Measured::opening) {
        for (const SurveyPlace place : survey_places()) names.emplace_back(name_of(place));
        names.insert(names.end(), std::begin(frame_sides), std::end(frame_sides));
    } else {
        names.assign(std::begin(diagonals), std::end(diagonals));
        for (const SlideReading reading : slide_readings()) names.emplace_back(name_of(reading));
        for (const GapPlace place : gap_places()) names.emplace_back(name_of(place));
    }
    return names;
}

std::optional<std::string> measured_pointer(Measured what, std::size_t drawer, int copy,
                                            const std::string& name) {
    const std::vector<std::string> names = measured_names(what);
    if (std::find(names.begin(), names.end(), name) == names.end()) return std::nullopt;
    const std::string at = "/drawers/" + std::to_string(drawer);
    if (what == Measured::opening)
        return is_among(frame_sides, name) ? at + "/opening/frame/" + name.substr(name.find('_') + 1)
                                           : at + "/opening/survey/" + name;
    const std::string its = at + "/assembled/" + std::to_string(copy) + "/";
    if (is_among(diagonals, name)) return its + name;
    const bool is_of_slide = std::any_of(slide_readings().begin(), slide_readings().end(),
                                         [&](SlideReading reading) { return name_of(reading) == name; });
    return its + (is_of_slide ? "slides/" : "gaps/") + name;
}

Session with_measured(const Session& session, Measured what, const std::string& drawer, int copy,
                      const std::vector<std::pair<std::string, std::string>>& readings,
                      const std::string& time) {
    const std::vector<DrawerSpec>& drawers = session.work->job.drawers;
    const auto found = std::find_if(drawers.begin(), drawers.end(),
                                    [&](const DrawerSpec& one) { return one.name == drawer; });
    if (found == drawers.end()) {
        std::vector<std::string> names;
        for (const DrawerSpec& one : drawers) names.push_back(one.name);
        return refused(session, no_such("measured.no_drawer", drawer, names));
    }
    if (copy < 1 || copy > found->count)
        return refused(session, Message::say("measured.no_copy", drawer, found->count, copy));
    const auto index = static_cast<std::size_t>(found - drawers.begin());
    Session after = session;
    for (const auto& [name, text] : readings) {
        const auto pointer = measured_pointer(what, index, copy, name);
        if (!pointer) return refused(session, no_such("measured.no_reading", name, measured_names(what)));
        const auto length = read_length(text, session.work->job.unit);
        if (!text.empty() && !length) return refused(session, length.error().message);
        after = edited(std::move(after), SetField{*pointer, text.empty() ? Json(nullptr) : Json(text)}, time);
        if (!after.refused.empty()) return after;
    }
    return worked_out(std::move(after));
}

}  // namespace kw
