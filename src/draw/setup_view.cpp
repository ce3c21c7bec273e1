#include "draw/setup_view.h"

#include <algorithm>
#include <cassert>

#include "draw/setup_parts.h"

namespace kw::draw {
namespace {

// "left end" and "right end" are said as "left and right ends".
std::string joined(const std::vector<std::string_view>& names) {
    if (names.size() < 2) return names.empty() ? std::string{} : std::string(names.front());
    const std::string_view last = names.back();
    const std::string_view noun = last.substr(last.rfind(' '));
    std::string text;
    for (std::size_t i = 0; i + 1 < names.size(); ++i) {
        std::string_view name = names[i];
        if (name.size() > noun.size() && name.substr(name.size() - noun.size()) == noun)
            name.remove_suffix(noun.size());
        if (i > 0) text += ", ";
        text += name;
    }
    return text + " and " + std::string(last) + "s";
}

}  // namespace

std::string references_text(const Setup& setup) {
    std::vector<std::string_view> names;
    for (const Pass& pass : setup.passes) {
        const std::string_view name = name_of(pass.reference);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return joined(names);
}

const Stock& stock_of(const Work& work, const Setup& setup) {
    assert(!setup.passes.empty());
    const Part* part = work.plan.part_with_id(setup.passes.front().part);
    assert(part);
    const Stock* stock = work.job.stock_named(part->stock);
    assert(stock);
    return *stock;
}

std::string measure_text(const Locale& locale, const char* what, Length length) {
    return std::string(what) + " " + show_with_unit(length, locale);
}

Drawing setup_view(const SetupScene& scene, const SetupViewOptions& options) {
    Drawing drawing = joint_cut_view({scene, scene, reach_of(scene)}, options);
    return options.fence_left ? drawing : mirrored_about_x(drawing, 0);
}

Drawing setup_view(const Work& work, const Setup& setup, const SetupViewOptions& options) {
    if (const auto scene = setup_scene(work, setup)) return setup_view(*scene, options);
    Drawing drawing = size_cut_view(work, setup);
    return options.fence_left || setup.guide != "rip fence" ? drawing : mirrored_about_x(drawing, 0);
}

}  // namespace kw::draw
