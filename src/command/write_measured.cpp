// What was measured of openings and of drawers put together, and what that says.

#include "command/table.h"
#include "command/write.h"
#include "job/survey_notes.h"
#include "session/measured.h"
#include "session/say_assembly.h"
#include "session/words.h"

namespace kw {
namespace {

std::string capital_line(const std::string& mark, const std::string& text) {
    return "  " + mark + text + "\n";
}

std::string readings_text(const Job& job, const std::vector<std::pair<std::string, Length>>& readings) {
    Table table({Align::left, Align::right});
    for (const auto& [name, length] : readings) table.row({"  " + name, show_with_unit(length, job.locale)});
    return readings.empty() ? std::string() : table.text();
}

std::string survey_of(const Job& job, const DrawerSpec& drawer, const BoxSize& box) {
    std::string out = drawer.name + ": opening " + show(drawer.opening->width, job.locale) + " × " +
                      show(drawer.opening->height, job.locale) + " × " +
                      show_with_unit(drawer.opening->depth, job.locale) + ", box " +
                      show(box.width, job.locale) + " × " + show(box.height, job.locale) + " × " +
                      show_with_unit(box.depth, job.locale) + "\n";
    std::vector<std::pair<std::string, Length>> readings;
    for (const SurveyPlace place : survey_places())
        if (drawer.survey.at(place)) readings.emplace_back(name_of(place), *drawer.survey.at(place));
    if (drawer.frame) {
        readings.emplace_back("frame_left", drawer.frame->left);
        readings.emplace_back("frame_right", drawer.frame->right);
    }
    out += readings_text(job, readings);
    for (const Note& note : survey_notes(drawer, box.depth))
        out += capital_line(note.level == Level::note ? "" : "CAUTION ", note.text.text(job.locale));
    return out;
}

std::string assembly_of(const Work& work, const DrawerSpec& drawer, int copy) {
    const Job& job = work.job;
    const auto result = assembly(job, work.plan, drawer.name, copy);
    if (!result) return {};
    const SaidOfAssembly said = say_assembly(job, *result);
    std::string out = drawer.name + " " + std::to_string(copy) + ": " + said.expected + "\n";
    std::vector<std::pair<std::string, Length>> readings;
    if (const auto read = drawer.assembled.find(copy); read != drawer.assembled.end()) {
        const Assembled& its = read->second;
        if (its.from_front_left) readings.emplace_back("from_front_left", *its.from_front_left);
        if (its.from_front_right) readings.emplace_back("from_front_right", *its.from_front_right);
        for (const GapPlace place : gap_places())
            if (its.gaps.at(place)) readings.emplace_back(name_of(place), *its.gaps.at(place));
    }
    out += readings_text(job, readings);
    for (const std::string& line : said.box) out += capital_line("", line);
    for (const std::string& line : said.face) out += capital_line("", line);
    return out;
}

}  // namespace

std::string survey_text(const Work& work, const std::string& drawer) {
    std::string out;
    for (const DrawerSpec& one : work.job.drawers)
        for (const DrawerBox& box : work.plan.boxes)
            if (one.opening && box.drawer == one.name && (drawer.empty() || drawer == one.name))
                out += survey_of(work.job, one, box.size);
    return out.empty() ? "No opening is measured: these boxes are given.\n" : out;
}

std::string assembly_text(const Work& work, const std::string& drawer, int copy) {
    std::string out;
    for (const DrawerSpec& one : work.job.drawers)
        for (int c = 1; c <= one.count; ++c)
            if ((drawer.empty() || drawer == one.name) && (copy == 0 || copy == c))
                out += assembly_of(work, one, c);
    return out;
}

std::string measured_words(Measured what) {
    std::string out = "What is read (--read NAME=LENGTH):\n";
    for (const std::string& name : measured_names(what)) out += "  " + name + "\n";
    return out;
}

}  // namespace kw
