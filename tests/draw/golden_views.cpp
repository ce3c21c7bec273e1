// Pictures as they were when someone looked at them: see golden.h. And no words lie on others, in any of them.

#include <doctest/doctest.h>

#include <functional>

#include "draw/golden.h"
#include "draw/joint_view.h"
#include "draw/named_drawing.h"
#include "draw/setup_view.h"
#include "draw/view_job.h"
#include "draw/words_on_words.h"

using namespace kw::draw;
using kw::Group;
using kw::Setup;
using kw::Stage;

namespace {

// "locking rabbet: side dado" becomes "locking_rabbet_side_dado".
std::string file_name(const std::string& prefix, const std::string& text) {
    std::string name = prefix;
    bool gap = true;
    for (const char c : text) {
        const bool kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (kept && gap) name += '_';
        if (kept) name += c;
        gap = !kept;
    }
    return name;
}

kw::Settings lowered(const Group& group) {
    kw::Settings settings = group.stands;
    settings.height -= kw::Length::micrometres(200);
    return settings;
}

std::vector<NamedDrawing> pictures(const std::string& prefix, const view_job::Wanted& wanted) {
    const auto work = view_job::work(wanted);
    std::vector<NamedDrawing> all;
    for (const Setup& setup : work->plan.setups)
        all.push_back({file_name(prefix + "_setup", setup.work), setup_view(*work, setup)});
    for (const Group& group : work->plan.groups) {
        all.push_back({file_name(prefix + "_joint", group.work.label), joint_view(*work, group)});
        all.push_back({file_name(prefix + "_magnified", group.work.label), joint_magnified(*work, group)});
        all.push_back({file_name(prefix + "_before_after", group.work.label),
                       joint_before_after(*work, group, lowered(group), group.stands)});
    }
    return all;
}

std::vector<NamedDrawing> pictures_named(const std::string& prefix, const view_job::Wanted& wanted,
                                         const std::string& word) {
    std::vector<NamedDrawing> all = pictures(prefix, wanted);
    std::erase_if(all, [&](const NamedDrawing& named) { return named.name.find(word) == std::string::npos; });
    return all;
}

// Of drawers with other joints, the pictures that no other has.
std::vector<NamedDrawing> pictures_of_other_joints(const std::string& prefix,
                                                   const view_job::Wanted& wanted) {
    view_job::Wanted tongued = wanted, lapped = wanted, fingered = wanted;
    tongued.back_joint = "tongue and dado";
    lapped.front_joint = "half lap corner";
    fingered.front_joint = fingered.back_joint = "box joint";
    std::vector<NamedDrawing> all = pictures_named(prefix, tongued, "tongue");
    for (const NamedDrawing& named : pictures_named(prefix, lapped, "half_lap")) all.push_back(named);
    for (const NamedDrawing& named : pictures_named(prefix, fingered, "box_joint")) all.push_back(named);
    return all;
}

void for_all_pictures(const std::function<void(const NamedDrawing&)>& check) {
    for (const NamedDrawing& named : pictures("inch", view_job::Wanted{})) check(named);
    for (const NamedDrawing& named : pictures("metric", view_job::metric())) check(named);
    for (const NamedDrawing& named : pictures_of_other_joints("inch", view_job::Wanted{})) check(named);
    for (const NamedDrawing& named : pictures_of_other_joints("metric", view_job::metric())) check(named);
}

}  // namespace

TEST_CASE("the pictures are as they were kept") {
    for_all_pictures([](const NamedDrawing& named) {
        CAPTURE(named.name);
        CHECK(golden::is_as_kept(named.name, named.drawing));
    });
}

TEST_CASE("no words lie on others, whichever way the picture is seen") {
    for_all_pictures([](const NamedDrawing& named) {
        CAPTURE(named.name);
        CHECK(words_on_words(named.drawing, 800, 500).empty());
        CHECK(words_on_words(mirrored_about_x(named.drawing, 0), 800, 500).empty());
    });
}

TEST_CASE("every picture says in words what it shows") {
    for_all_pictures([](const NamedDrawing& named) { CHECK(named.drawing.title.size() > 20); });
}
