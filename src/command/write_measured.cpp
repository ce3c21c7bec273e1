// What was measured of openings and of drawers put together, and what that says.

#include <map>

#include "command/table.h"
#include "command/write.h"
#include "job/assembly_order.h"
#include "job/survey_notes.h"
#include "session/measured.h"
#include "session/say_assembly.h"
#include "session/words.h"

namespace kw {
namespace {

constexpr std::pair<const char*, const char*> meanings[] = {
    {"width_top", "between the sides of the case or frame, at the front and at the top"},
    {"width_middle", "the same, halfway down"},
    {"width_bottom", "the same, at the bottom"},
    {"width_back", "between the sides of the case, at its back"},
    {"height_left", "from what is below to what is above, at the left"},
    {"height_right", "the same, at the right"},
    {"depth_left", "from the front of the case or frame to the inside of its back, at the left"},
    {"depth_right", "the same, at the right"},
    {"diagonal_rising", "of the opening, from its lower left corner to its upper right one"},
    {"diagonal_falling", "from its upper left corner to its lower right one"},
    {"frame_left", "how far the face frame stands in from the inside of the case, at the left"},
    {"frame_right", "the same, at the right"},
    {"from_front_left", "of the box from above, outside: from its front left corner to its back right one"},
    {"from_front_right", "from its front right corner to its back left one"},
    {"left_slide_front",
     "on the case: from the floor of the opening to the slide's middle, at its front end"},
    {"left_slide_rear", "the same, at its rear end"},
    {"right_slide_front", "the same, of the right slide"},
    {"right_slide_rear", "the same"},
    {"between_front", "from slide to slide across the opening, at the front"},
    {"between_rear", "the same, at the rear"},
    {"left_top", "the gap at the face's left end, at the top"},
    {"left_bottom", "the same, at the bottom"},
    {"right_top", "the gap at the face's right end, at the top"},
    {"right_bottom", "the same, at the bottom"},
    {"top_left", "the gap above the face, at the left"},
    {"top_right", "the same, at the right"},
    {"bottom_left", "the gap below the face, at the left"},
    {"bottom_right", "the same, at the right"},
    {"proud_left", "how far the face's left end stands out before what is beside it; - it stands back"},
    {"proud_right", "the same, at the right"}};

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
    const auto result = assembly(work, drawer.name, copy);
    if (!result) return {};
    const SaidOfAssembly said = say_assembly(job, *result);
    std::string out = copy_name(drawer.name, copy) + ": " + said.expected + "\n";
    std::vector<std::pair<std::string, Length>> readings;
    if (const auto read = drawer.assembled.find(copy); read != drawer.assembled.end()) {
        const Assembled& its = read->second;
        if (its.from_front_left) readings.emplace_back("from_front_left", *its.from_front_left);
        if (its.from_front_right) readings.emplace_back("from_front_right", *its.from_front_right);
        for (const SlideReading reading : slide_readings())
            if (its.slides.at(reading)) readings.emplace_back(name_of(reading), *its.slides.at(reading));
        for (const GapPlace place : gap_places())
            if (its.gaps.at(place)) readings.emplace_back(name_of(place), *its.gaps.at(place));
    }
    out += readings_text(job, readings);
    for (const std::string& line : said.box) out += capital_line("", line);
    for (const std::string& line : said.slides) out += capital_line("", line);
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
    Table table({Align::left, Align::left});
    for (const std::string& name : measured_names(what))
        for (const auto& [known, meaning] : meanings)
            if (name == known) table.row({name, meaning});
    return "What is read (--read NAME=LENGTH; an empty LENGTH takes it out again):\n" + table.text();
}

std::string assembly_order_text(const Work& work, const std::string& drawer, int copy) {
    std::string out;
    for (const DrawerDesign& one : work.standing_design.drawers) {
        if (!drawer.empty() && drawer != one.spec->name) continue;
        // Once for all that are alike.
        std::map<Length, std::vector<int>> copies;
        for (int c = 1; c <= one.spec->count; ++c)
            if (copy == 0 || copy == c) copies[assembly(work, one.spec->name, c)->diagonal].push_back(c);
        for (const auto& [diagonal, alike] : copies) {
            out += one.spec->name;
            if (copies.size() > 1 || copy > 0)
                for (const int c : alike) out += (c == alike.front() ? " " : ", ") + std::to_string(c);
            out += ", in this order:\n";
            int number = 0;
            for (const AssemblyStep& step : assembly_order(work.job, one, diagonal))
                out += "  " + std::to_string(++number) + ". " + step.text.text(work.job.locale) + "\n";
        }
    }
    return out;
}

}  // namespace kw
