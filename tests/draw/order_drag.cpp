// Where a step that is dragged along the order's picture would come, checked against what must come before what.
#include "draw/order_drag.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "draw/order_shown.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::Pinned;
using kw::Work;
using order_shown::view_of;

namespace {

constexpr double reach_px = 22;  // of a finger
constexpr OrderRoom one_row{6000, 200}, several_rows{700, 900};

Point middle_of(const OrderView& view, std::size_t place) {
    const Box& box = view.places[place].box;
    return {(box.left_mm + box.right_mm) / 2, (box.bottom_mm + box.top_mm) / 2};
}

std::shared_ptr<const Work> with_pin(const Work& work, const std::string& step, Pinned where) {
    kw::Job job = work.job;
    const std::string name = pin_name(*work.plan.setup_with_id(step), work.design);
    (where == Pinned::first ? job.pins.first : job.pins.last).push_back(name);
    return view_job::work(job);
}

// What a step does, whatever it is called.
std::string cut_of(const Work& work, const std::string& step) {
    const kw::Setup& setup = *work.plan.setup_with_id(step);
    return setup.work + setup.passes.front().part;
}

std::size_t place_of(const Work& work, const std::string& name) {
    const auto& all = work.plan.sequence;
    const auto found = std::find_if(all.begin(), all.end(), [&](const std::string& step) {
        return pin_name(*work.plan.setup_with_id(step.substr(0, step.find('#'))), work.design) == name;
    });
    return static_cast<std::size_t>(found - all.begin());
}

}  // namespace

TEST_CASE("a step is let go at its own place, at the beginning and at the end") {
    const auto work = view_job::work(view_job::Wanted{});
    for (const OrderRoom& room : {one_row, several_rows}) {
        const OrderView view = view_of(*work, room);
        for (std::size_t i = 0; i < view.places.size(); ++i) {
            CAPTURE(view.places[i].step);
            const auto dragged = dragged_step(*work, view.places[i].step);
            REQUIRE(dragged);
            CHECK(dragged->at == i);
            CHECK(drop_at(view, *dragged, middle_of(view, i)) == Drop::stays);
            // The ends of its own row, wherever that is.
            Point at = middle_of(view, i);
            at.x_mm = 1;
            CHECK(drop_at(view, *dragged, at) == Drop::first);
            at.x_mm = room.width_px + reach_px;
            CHECK(drop_at(view, *dragged, at) == Drop::last);
        }
    }
}

TEST_CASE("let go before the first step that it does not need a step comes first, and not behind that") {
    const auto work = view_job::work(view_job::Wanted{});
    const OrderView view = view_of(*work, one_row);
    REQUIRE(view.rows.size() == 1);
    int between = 0;
    for (std::size_t i = 0; i < view.places.size(); ++i) {
        CAPTURE(view.places[i].step);
        const auto dragged = dragged_step(*work, view.places[i].step);
        // Said by the plan itself: all that stands before it when it is pinned first, it needs.
        const auto pinned = with_pin(*work, view.places[i].step, Pinned::first);
        std::vector<std::string> needed;
        for (const std::string& step : pinned->plan.sequence) {
            if (cut_of(*pinned, step) == cut_of(*work, view.places[i].step)) break;
            needed.push_back(cut_of(*pinned, step));
        }
        const auto is_needed = [&](std::size_t place) {
            return std::count(needed.begin(), needed.end(), cut_of(*work, view.places[place].step)) > 0;
        };
        std::size_t free = 0;
        while (free < i && is_needed(free)) ++free;
        for (std::size_t k = 0; k < i; ++k) {
            Point at = middle_of(view, k);
            at.x_mm -= 0.01;
            if (at.x_mm > view.places[i].box.left_mm - reach_px) continue;
            const Drop drop = drop_at(view, *dragged, at);
            CHECK((drop == Drop::first) == (k <= free));
            if (drop == Drop::stays) ++between;
        }
    }
    CHECK(between > 10);
}

TEST_CASE(
    "what is pinned is let go between, stays where it is asked for already, and has a mark that is no "
    "colour") {
    const auto before = view_job::work(view_job::Wanted{});
    const std::string last_step = before->plan.sequence.back();
    const std::string name = pin_name(*before->plan.setup_with_id(last_step), before->design);
    const auto work = with_pin(*before, last_step, Pinned::first);
    const std::size_t place = place_of(*work, name);
    const OrderView view = view_of(*work, one_row);
    const auto dragged = dragged_step(*work, view.places[place].step);
    REQUIRE(dragged);
    CHECK(dragged->pinned == Pinned::first);
    CHECK_FALSE(asked_by(*dragged, Drop::first));
    CHECK_FALSE(asked_by(*dragged, Drop::stays));
    CHECK(asked_by(*dragged, Drop::any) == Pinned::nowhere);
    CHECK(asked_by(*dragged, Drop::last) == Pinned::last);
    const auto wedges = [](const OrderView& of) {
        return std::count_if(of.drawing.shapes.begin(), of.drawing.shapes.end(), [](const Shape& shape) {
            const auto* fill = std::get_if<Fill>(&shape);
            return fill && fill->rings[0].size() == 3;
        });
    };
    CHECK(wedges(view) >= 2);  // and in the legend
    CHECK(wedges(view_of(*before, one_row)) == 0);
}

TEST_CASE("what dragging says, word for word") {
    DraggedStep dragged{"S12", 11, Pinned::nowhere, 3, 20};
    CHECK(say_drop(dragged, Drop::first, kw::words_in(kw::Language::english)).place ==
          "Step 12 first, before all that it does not need itself");
    CHECK(say_drop(dragged, Drop::first, kw::words_in(kw::Language::english)).what_then ==
          "Let go: the order is made anew, and what that takes is said");
    CHECK(say_drop(dragged, Drop::last, kw::words_in(kw::Language::english)).place ==
          "Step 12 last, after all that can be done without it");
    CHECK(say_drop(dragged, Drop::stays, kw::words_in(kw::Language::english)).place ==
          "Step 12 stays where it is");
    CHECK(say_drop(dragged, Drop::stays, kw::words_in(kw::Language::english)).what_then ==
          "To the beginning: done first. To the end: done last");
    dragged.pinned = Pinned::last;
    CHECK(say_drop(dragged, Drop::last, kw::words_in(kw::Language::english)).what_then ==
          "So it is wanted already");
    CHECK(say_drop(dragged, Drop::any, kw::words_in(kw::Language::english)).place ==
          "Step 12 any time, wherever it fits best");
    CHECK(say_drop(dragged, Drop::any, kw::words_in(kw::Language::english)).what_then ==
          "Let go: it is no longer wanted last");
}

TEST_CASE("what is done is not dragged") {
    kw::Job job = view_job::job({});
    const auto before = view_job::work(job);
    const kw::Setup& setup = *before->plan.setup_with_id(before->plan.sequence[0]);
    for (const kw::Pass& pass : setup.passes) {
        kw::LogEntry entry;
        entry.kind = kw::LogKind::ran;
        entry.time = "2026-03-01T10:00:00Z";
        entry.setup = setup.id;
        entry.key = kw::work_key(setup, before->design);
        entry.part = pass.part;
        entry.reference = std::string(kw::name_of(pass.reference));
        job.log.push_back(entry);
    }
    const auto work = view_job::work(job);
    CHECK_FALSE(dragged_step(*work, work->plan.sequence[0]));
    CHECK(dragged_step(*work, work->plan.sequence[1]));
    CHECK_FALSE(dragged_step(*work, "S99"));
}
