// The order of work as a picture, measured against the plan that it shows.
#include "draw/order_view.h"

#include <doctest/doctest.h>

#include <map>

#include "draw/golden.h"
#include "draw/order_shown.h"
#include "draw/shapes_of.h"
#include "draw/timeline.h"
#include "draw/view_job.h"

using namespace kw::draw;
using kw::RestStep;
using kw::Work;
using order_shown::next_of;
using order_shown::view_of;

namespace {

constexpr OrderRoom rooms[] = {{800, 500}, {1190, 420}, {1830, 590}, {700, 720}};

// Two machines; `kinds` drawers, each of stock and size of its own.
kw::Job job_with(int kinds) {
    kw::Job job = view_job::job({});
    job.shop.machines.push_back(kw::usual_machine("stop saw", kw::MachineKind::miter_saw));
    job.shop.cutters.push_back(
        {"crosscut blade", kw::CutterKind::blade, "stop saw", kw::Length::inches(3, 32)});
    const kw::DrawerSpec like = job.drawers.front();
    for (int i = 1; i < kinds; ++i) {
        kw::DrawerSpec drawer = like;
        drawer.name = "seeds " + std::to_string(i + 1);
        drawer.box->width += kw::Length::inches(i);
        drawer.side_stock = "side stock " + std::to_string(i);
        drawer.back.stock = drawer.side_stock;
        job.stock.push_back(view_job::stock(drawer.side_stock.c_str(),
                                            kw::Length::inches(1, 2) + kw::Length::inches(i, 50),
                                            kw::StockKind::solid));
        job.drawers.push_back(drawer);
    }
    return job;
}

kw::LogEntry ran(const Work& work, const kw::Setup& setup, const kw::Pass& pass) {
    kw::LogEntry entry;
    entry.kind = kw::LogKind::ran;
    entry.time = "2026-03-01T10:00:00Z";
    entry.setup = setup.id;
    entry.key = kw::work_key(setup, work.design);
    entry.part = pass.part;
    entry.reference = std::string(kw::name_of(pass.reference));
    return entry;
}

// With the first so many steps done.
std::shared_ptr<const Work> under_way(kw::Job job, std::size_t done) {
    const auto before = view_job::work(job);
    for (std::size_t i = 0; i < done; ++i) {
        const kw::Setup& setup = *before->plan.setup_with_id(before->plan.sequence[i]);
        for (const kw::Pass& pass : setup.passes) job.log.push_back(ran(*before, setup, pass));
    }
    return view_job::work(job);
}

std::vector<std::shared_ptr<const Work>> works() {
    return {view_job::work(view_job::Wanted{}), under_way(job_with(1), 3), view_job::work(job_with(5)),
            under_way(job_with(5), 20)};
}

std::vector<PlacedText> words_in(const Drawing& drawing, const OrderRoom& room) {
    const View view = fitted(drawing, room.width_px + 8, room.height_px + 400, 1, paper_text_width);
    return annotate(drawing, view, paper_text_width).texts;
}

std::int64_t seconds_of(const RestStep& step) {
    std::int64_t sum = step.test_s + step.cuts_s;
    for (const kw::RestChange& change : step.changes) sum += change.seconds;
    return sum;
}

}  // namespace

TEST_CASE("the jobs that are drawn here are a small one and one of about forty setups") {
    CHECK(view_job::work(view_job::Wanted{})->plan.setups.size() <= 16);
    CHECK(view_job::work(job_with(5))->plan.setups.size() >= 36);
}

TEST_CASE("the order's pictures are as they were kept") {
    const std::string names[] = {"order_small", "order_small_under_way", "order_large",
                                 "order_large_under_way"};
    for (std::size_t i = 0; i < 4; ++i) {
        CAPTURE(names[i]);
        CHECK(golden::is_as_kept(names[i], view_of(*works()[i], {792, 492}).drawing));
    }
}

TEST_CASE("each step of the work has one place, in the lane of its machine") {
    for (const auto& work : works())
        for (const OrderRoom& room : rooms) {
            const OrderView view = view_of(*work, room);
            REQUIRE(view.places.size() == work->plan.sequence.size());
            for (std::size_t i = 0; i < view.places.size(); ++i)
                CHECK(view.places[i].step == work->plan.sequence[i]);
        }
}

TEST_CASE("a block is as wide as its step takes time, and none lies on another") {
    for (const auto& work : works())
        for (const OrderRoom& room : rooms) {
            const OrderView view = view_of(*work, room);
            std::vector<RestStep> all = work->rest.done_steps;
            all.insert(all.end(), work->rest.steps.begin(), work->rest.steps.end());
            const Box& first = view.places.front().box;
            const double px_per_s =
                (first.right_mm - first.left_mm) / static_cast<double>(seconds_of(all.front()));
            for (std::size_t i = 0; i < all.size(); ++i) {
                const Box& box = view.places[i].box;
                CHECK(box.right_mm - box.left_mm ==
                      doctest::Approx(px_per_s * static_cast<double>(seconds_of(all[i]))));
                for (std::size_t j = 0; j < i; ++j) {
                    const Box& other = view.places[j].box;
                    const bool apart =
                        box.left_mm >= other.right_mm - 1e-6 || box.right_mm <= other.left_mm + 1e-6 ||
                        box.bottom_mm >= other.top_mm - 1e-6 || box.top_mm <= other.bottom_mm + 1e-6;
                    CHECK(apart);
                }
            }
        }
}

TEST_CASE("the feet of the blocks show every second of setting, testing and cutting") {
    for (const auto& work : works()) {
        const OrderRoom room{1190, 420};
        const OrderView view = view_of(*work, room);
        const Box& first = view.places.front().box;
        std::vector<RestStep> all = work->rest.done_steps;
        all.insert(all.end(), work->rest.steps.begin(), work->rest.steps.end());
        const double px_per_s =
            (first.right_mm - first.left_mm) / static_cast<double>(seconds_of(all.front()));
        std::map<Material, double> asked, drawn;
        for (const RestStep& step : all) {
            asked[Material::test_cut] += static_cast<double>(step.test_s);
            for (const kw::RestChange& change : step.changes) {
                if (change.what == "cutter") asked[Material::cutter] += static_cast<double>(change.seconds);
                if (change.what == "fence") asked[Material::fence] += static_cast<double>(change.seconds);
                if (change.what == "height") asked[Material::height] += static_cast<double>(change.seconds);
            }
        }
        for (const Fill& fill : shapes_of::all<Fill>(view.drawing))
            if (!fill.outlined) {
                const Box box = shapes_of::box_of(fill);
                drawn[fill.material] += (box.right_mm - box.left_mm) / px_per_s;
            }
        for (const auto& [material, seconds] : asked)
            CHECK(drawn[material] == doctest::Approx(seconds).epsilon(1e-6));
    }
}

TEST_CASE("no words of the order lie on others, and none are cut off") {
    for (const auto& work : works())
        for (const OrderRoom& room : rooms) {
            const OrderView view = view_of(*work, room);
            const Box frame = bounds(view.drawing);
            CHECK(frame.right_mm == doctest::Approx(room.width_px));
            const auto texts = words_in(view.drawing, room);
            for (std::size_t i = 0; i < texts.size(); ++i) {
                CAPTURE(texts[i].text);
                CHECK(texts[i].size_px == doctest::Approx(label_px));
                CHECK(texts[i].box.left >= 0);
                CHECK(texts[i].box.right <= room.width_px + 8);
                for (std::size_t j = 0; j < i; ++j) {
                    CAPTURE(texts[j].text);
                    CHECK_FALSE(shapes_of::meet(texts[i].box, texts[j].box));
                }
            }
        }
}

TEST_CASE("neither the walks nor the mark of now run through words") {
    for (const auto& work : works())
        for (const OrderRoom& room : rooms) {
            const OrderView view = view_of(*work, room);
            for (const Label& label : shapes_of::all<Label>(view.drawing)) {
                if (label.anchor != Anchor::bottom) continue;  // above a line: cutters and minutes
                const double half =
                    paper_text_width(label.text, label_px, label.emphasis == Emphasis::strong) / 2;
                for (const Line& line : shapes_of::all<Line>(view.drawing)) {
                    if (line.stroke != Stroke::walk && line.stroke != Stroke::now) continue;
                    const Point a = line.points.front(), b = line.points.back();
                    const double y = label.at.y_mm + 12;  // its middle
                    if ((a.y_mm - y) * (b.y_mm - y) > 0) continue;
                    const double share = a.y_mm == b.y_mm ? 0 : (y - a.y_mm) / (b.y_mm - a.y_mm);
                    const double x = a.x_mm + share * (b.x_mm - a.x_mm);
                    CAPTURE(label.text);
                    const bool is_clear = x <= label.at.x_mm - half || x >= label.at.x_mm + half;
                    CHECK(is_clear);
                }
            }
        }
}

TEST_CASE(
    "a step is named within its block wherever the block is wide enough, and with room enough nearly all "
    "are") {
    const auto work = view_job::work(job_with(5));
    for (const OrderRoom& room : {OrderRoom{1190, 420}, OrderRoom{1830, 590}, OrderRoom{1830, 4000}}) {
        const OrderView view = view_of(*work, room);
        const auto labels = shapes_of::all<Label>(view.drawing);
        std::size_t named = 0;
        for (const StepPlace& place : view.places) {
            CAPTURE(place.step);
            // By where it stands in the order, and its work where there is room.
            const std::string name = std::to_string(step_of(work->plan, place.step) + 1);
            const auto label = std::find_if(labels.begin(), labels.end(), [&](const Label& one) {
                const bool is_in = one.at.x_mm > place.box.left_mm && one.at.x_mm < place.box.right_mm &&
                                   one.at.y_mm < place.box.top_mm && one.at.y_mm > place.box.bottom_mm;
                return is_in && (one.text == name || one.text.rfind(name + "  ", 0) == 0);
            });
            const double room_px = place.box.right_mm - place.box.left_mm;
            const bool is_strong = place.step == next_of(*work);
            constexpr double bare_px = 8;  // both sides of the name together
            const bool fits = paper_text_width(name, label_px, is_strong) + bare_px <= room_px;
            CHECK((label != labels.end()) == fits);
            if (!fits) continue;
            ++named;
            const double half = paper_text_width(label->text, label_px, is_strong) / 2;
            CHECK(label->at.x_mm - half >= place.box.left_mm);
            CHECK(label->at.x_mm + half <= place.box.right_mm);
        }
        if (room.height_px > 2000) CHECK(named * 20 >= view.places.size() * 17);
    }
}

TEST_CASE("a mark says how far the work has come: behind all that is done, before all that is left") {
    const auto work = under_way(job_with(5), 20);
    REQUIRE(work->rest.done.size() == 20);
    const OrderView view = view_of(*work, {6000, 300});  // one row
    const auto lines = shapes_of::all<Line>(view.drawing);
    const auto now =
        std::find_if(lines.begin(), lines.end(), [](const Line& line) { return line.stroke == Stroke::now; });
    REQUIRE(now != lines.end());
    for (const StepPlace& place : view.places) {
        const bool is_done = std::count(work->rest.done.begin(), work->rest.done.end(), place.step) > 0;
        if (is_done) CHECK(place.box.right_mm <= now->points[0].x_mm + 1e-6);
        else CHECK(place.box.left_mm >= now->points[0].x_mm - 1e-6);
    }
    CHECK(shapes_of::fills(view.drawing, Material::done).size() == 20 + 1);  // and in the legend
    CHECK(shapes_of::fills(view.drawing, Material::next).size() == 1);
}

TEST_CASE("a touch finds the block beneath it, or the nearest in its lane within reach") {
    const auto work = view_job::work(job_with(5));
    const OrderView view = view_of(*work, {1190, 420});
    for (const StepPlace& place : view.places) {
        const Point middle{(place.box.left_mm + place.box.right_mm) / 2,
                           (place.box.top_mm + place.box.bottom_mm) / 2};
        CHECK(step_at(view, middle, 22) == place.step);
    }
    const Box& first = view.places.front().box;
    CHECK(step_at(view, {first.left_mm - 10, first.bottom_mm + 5}, 22) == view.places.front().step);
    CHECK(step_at(view, {first.left_mm - 30, first.bottom_mm + 5}, 22).empty());
}

TEST_CASE("rows of time hold whole steps, each once, and are no longer than they must be") {
    const auto work = view_job::work(job_with(5));
    const Timeline timeline = timeline_of(*work);
    const auto longest = [&](const std::vector<TimeRow>& rows) {
        std::int64_t most = 0;
        for (const TimeRow& row : rows) most = std::max(most, row.to_s - row.from_s);
        return most;
    };
    // Against all ways of parting the steps into two and into three rows.
    const std::size_t n = timeline.steps.size();
    const auto length = [&](std::size_t from, std::size_t to) {
        return from == to ? 0
                          : timeline.steps[to - 1].to_s() -
                                (timeline.steps[from].from_s - timeline.steps[from].walk_s);
    };
    std::int64_t best2 = timeline.end_s(), best3 = timeline.end_s();
    for (std::size_t a = 0; a <= n; ++a)
        for (std::size_t b = a; b <= n; ++b) {
            best3 = std::min(best3, std::max({length(0, a), length(a, b), length(b, n)}));
            if (b == n) best2 = std::min(best2, std::max(length(0, a), length(a, n)));
        }
    CHECK(longest(rows_of(timeline, 1)) == timeline.end_s());
    CHECK(longest(rows_of(timeline, 2)) == best2);
    CHECK(longest(rows_of(timeline, 3)) == best3);
    std::size_t next = 0;
    for (const TimeRow& row : rows_of(timeline, 3)) {
        CHECK(row.first == next);
        next = row.end;
    }
    CHECK(next == n);
}
