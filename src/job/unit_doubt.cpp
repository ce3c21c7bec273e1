#include "job/unit_doubt.h"

#include <utility>

#include "job/opening_field.h"

namespace kw {
namespace {

// Beyond these a drawer is a slip of the pen, or of the unit (common practice, no source).
constexpr Length least_typed = Length::millimetres(25), most_typed = Length::inches(72);

// The same number in the unit that was likely meant; empty where none was.
std::string in_the_other_unit(Length size, Unit unit) {
    const bool in_inches = unit == Unit::inch;
    if (in_inches != (size > most_typed)) return {};
    const std::string text = exact_text(size, unit);
    return text.substr(0, text.rfind(' ')) + (in_inches ? " mm" : " in");
}

}  // namespace

std::optional<UnitDoubt> doubt_unit(const DrawerSpec& drawer, Unit unit) {
    const std::string what = drawer.opening ? "opening" : "box";
    const Length width = drawer.opening ? drawer.opening->width : drawer.box ? drawer.box->width : Length{};
    const Length height = drawer.opening ? drawer.opening->height
                          : drawer.box   ? drawer.box->height
                                         : Length{};
    const Length depth = drawer.opening ? drawer.opening->depth : drawer.box ? drawer.box->depth : Length{};
    for (const auto& [size, field] :
         {std::pair{width, "width"}, std::pair{height, "height"}, std::pair{depth, "depth"}}) {
        if (size >= least_typed && size <= most_typed) continue;
        const std::string other = in_the_other_unit(size, unit);
        const Message name = Message::name("job.size.", field);
        return UnitDoubt{size_field(drawer, field), Message::say("job.its_size." + what + "_" + field, size),
                         other.empty() ? Message::say("job.another_unit", name)
                                       : Message::say("job.another_unit_as", name, other)};
    }
    return std::nullopt;
}

void ask_about_units(const Job& job, std::vector<Note>& notes) {
    std::optional<Note> first;
    int others = -1;
    for (const DrawerSpec& drawer : job.drawers) {
        const auto doubt = doubt_unit(drawer, job.unit);
        if (!doubt) continue;
        ++others;
        if (!first) first = Note{Level::note, drawer.name, doubt->size + Message::of(": ") + doubt->question};
    }
    if (!first) return;
    if (others == 1) first->text = first->text + Message::say("job.like_it.one");
    if (others > 1) first->text = first->text + Message::say("job.like_it.many", others);
    notes.push_back(std::move(*first));
}

void ask_about_units(const Job& job, std::size_t drawer, std::size_t first, std::vector<Problem>& problems) {
    const auto doubt = doubt_unit(job.drawers[drawer], job.unit);
    const std::string at = "/drawers/" + std::to_string(drawer);
    for (std::size_t i = first; doubt && i < problems.size(); ++i)
        for (const char* size : {"/opening/", "/box/", "/slide/"})
            if (problems[i].pointer.rfind(at + size, 0) == 0) {
                problems[i].remedy = problems[i].remedy + Message::say("job.or_else", doubt->question);
                return;
            }
}

}  // namespace kw
