#pragma once
// Work to print: the demo job and random ones, in a language, with names as long as they get.

#include <doctest/doctest.h>

#include <string>

#include "checker/random_job.h"
#include "print/cards.h"
#include "print/labels.h"
#include "print/layout_pages.h"
#include "print/part_list.h"
#include "print/slide_templates.h"
#include "sample_job.h"
#include "session/session.h"

namespace to_print {

inline constexpr const char* day = "2026-03-01T09:00:00Z";

// Null where the job can't be made: a random one may be.
inline std::shared_ptr<const kw::Work> work_of(const kw::Json& job,
                                               kw::Language language = kw::Language::english) {
    const kw::Session session = kw::worked_out(kw::unworked_session(job, {}, day, language));
    return session.problems.empty() ? session.work : nullptr;
}

inline kw::Json random_json(unsigned seed) { return kw::Json::parse(checker::random_job(seed).dump()); }

// Forty letters, of which a line can be broken at few places or at none.
inline std::string long_name(std::size_t number) {
    const std::string name = number % 2 == 0 ? "Drawer for string, seed and other things"
                                             : "Werkzeugschubladenunterschrankbeschlaege";
    const std::string tail = std::to_string(number);
    return name.substr(0, 40 - tail.size()) + tail;
}

// The drawers renamed; what the job says of them by name goes with them.
inline kw::Json with_long_names(kw::Json job) {
    job["name"] = "A bench with a name that is a good deal longer than anybody would want to read on a card";
    for (std::size_t i = 0; i < job["drawers"].size(); ++i) job["drawers"][i]["name"] = long_name(i);
    return job;
}

// Enough to find a layout, if not the best one.
inline kw::cutting::Effort quick() { return {400'000, {}}; }

// All of its stock can be had in sheets of 96 by 48 in.
inline kw::Json with_sizes(kw::Json job) {
    job["stock"][0]["banding"] = {{"thickness", "0.5 mm"}, {"edges", {"left", "right", "top", "bottom"}}};
    for (auto& stock : job["stock"])
        stock["sizes"] = {{{"length", "96 in"}, {"width", "48 in"}, {"trim", "1/8 in"}},
                          {{"length", "30 in"}, {"width", "20 in"}, {"offcut", true}}};
    return job;
}

inline std::vector<std::vector<kw::print::Page>> all_pages(const kw::Work& work, kw::print::Paper paper) {
    const kw::LayOut layout = kw::lay_out(work.job, work.plan, work.standing, quick());
    return {kw::print::setup_cards(work, paper, {}, layout), kw::print::part_labels(work, paper),
            kw::print::part_list(work, paper), kw::print::slide_templates(work, paper),
            kw::print::layout_pages(work, layout, paper)};
}

}  // namespace to_print
