#include "draw/setup_view.h"

#include <algorithm>
#include <cassert>

#include "draw/setup_parts.h"
#include "words/names.h"

namespace kw::draw {
std::string references_text(const Setup& setup, const Words& words) {
    std::vector<std::string_view> names;
    for (const Pass& pass : setup.passes) {
        const std::string_view name = name_of(pass.reference);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return ends_words(words, names);
}

const Stock& stock_of(const Work& work, const Setup& setup) {
    assert(!setup.passes.empty());
    const Part* part = work.plan.part_with_id(setup.passes.front().part);
    assert(part);
    const Stock* stock = work.job.stock_named(part->stock);
    assert(stock);
    return *stock;
}

std::string measure_text(const Locale& locale, const char* key, Length length) {
    return locale.words()(key, show_with_unit(length, locale));
}

Drawing setup_view(const SetupScene& scene, const SetupViewOptions& options) {
    Drawing drawing = cut_view({scene, scene, reach_of(scene)}, options);
    return options.fence_left ? drawing : mirrored_about_x(drawing, 0);
}

Drawing setup_view(const Work& work, const Setup& setup, const SetupViewOptions& options) {
    if (const auto scene = setup_scene(work, setup)) return setup_view(*scene, options);
    Drawing drawing = size_cut_view(work, setup);
    return options.fence_left || setup.guide != "rip fence" ? drawing : mirrored_about_x(drawing, 0);
}

}  // namespace kw::draw
