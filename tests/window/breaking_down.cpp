// What comes before the setups, in the window.
#include <doctest/doctest.h>

#include "job/breaking_down.h"
#include "job/on_hand.h"
#include "session/say_breaking.h"
#include "window/maker.h"

namespace kw::window {
namespace {

std::string with_sheets() {
    Json job = Json::parse(one_drawer);
    for (Json& stock : job["stock"]) stock["sizes"] = {{{"length", "48"}, {"width", "24"}}};
    return job.dump(2);
}

void rest(Maker& maker) {
    maker.app().finish(maker.hand().ui());
    maker.redraw();
}

void open_order(Maker& maker) {
    rest(maker);
    maker.press("Order of work");
    rest(maker);
}

std::string said_of_row(Maker& maker) {
    const LoggedWidget* row = maker.find("Breaking down");
    REQUIRE(row);
    return row->value;
}

}  // namespace

TEST_CASE("the order of work begins with the breaking-down, and leads to the parts laid out") {
    Maker maker(with_sheets());
    open_order(maker);
    const Work& work = maker.work();
    const BreakingDown down = breaking_down(work.job, work.plan, lay_out(work.job, work.plan, work.standing));
    CHECK(said_of_row(maker).find(say_breaking(work.job, down.all)) == 0);
    const LoggedWidget *row = maker.find("Breaking down"), *first = maker.find("1.  ", true);
    REQUIRE(first);
    CHECK(row->box.bottom <= first->box.top);
    maker.press("Breaking down");
    CHECK(maker.app().state().place == Where::job);
    CHECK(maker.app().state().job_tab == JobTab::layout);
}

TEST_CASE("without sizes of boards and sheets the row says so, and leads to where they are asked for") {
    Maker maker(one_drawer);
    open_order(maker);
    CHECK(said_of_row(maker) == "In which sizes boards and sheets can be had is not said yet");
    maker.press("Breaking down");
    rest(maker);
    maker.press("Say its sizes");
    CHECK(maker.app().state().place == Where::drawers);
    CHECK(maker.app().state().tab == DrawersTab::stock);
}

TEST_CASE("parts that have been at a machine are not broken down again") {
    Maker maker(with_sheets());
    open_order(maker);
    const std::string before = said_of_row(maker);
    const RestStep first = maker.work().rest.steps.front();
    maker.app().act(maker.hand().ui(), MarkRun{first.setup, first.open, true});
    rest(maker);
    rest(maker);  // the order, and then its parts laid out
    const Work& work = maker.work();
    const LayOut layout = lay_out(work.job, work.plan, work.standing);
    CHECK_FALSE(layout.cut_already.empty());
    const BreakingDown down = breaking_down(work.job, work.plan, layout);
    CHECK(said_of_row(maker).find(say_breaking(work.job, down.all)) == 0);
    CHECK(said_of_row(maker) != before);
}

TEST_CASE("a stock is told as broken down by one press, undo takes it back, and the row says what remains") {
    Maker maker(with_sheets());
    open_order(maker);
    const std::string before = said_of_row(maker);
    maker.press("Breaking down");
    rest(maker);
    const std::string stock = maker.work().job.stock.front().name,
                      done = "Done: " + stock + " is broken down";
    const LoggedWidget* button = maker.find(done);
    REQUIRE(button);
    CHECK(button->box.bottom - button->box.top >= 44);
    maker.press(done);
    rest(maker);
    rest(maker);  // the job, and then its parts laid out
    CHECK_FALSE(maker.find(done));
    CHECK(maker.on_disk()["log"].back()["kind"] == "broken down");
    CHECK(maker.on_disk()["log"].back()["stock"] == stock);
    maker.press("Order of work");
    rest(maker);
    const Work& work = maker.work();
    const LayOut left = lay_out(work.job, work.plan, work.standing);
    CHECK(said_of_row(maker).find(say_breaking(work.job, breaking_down(work.job, work.plan, left).all)) == 0);
    CHECK(said_of_row(maker) != before);
    for (const LaidStock& laid : left.stocks)
        maker.app().act(maker.hand().ui(), MarkBrokenDown{broken_down_of(work.job, laid)});
    rest(maker);
    rest(maker);
    CHECK(said_of_row(maker) == "All is broken down");
    for (std::size_t i = 0; i < left.stocks.size() + 1; ++i) maker.app().act(maker.hand().ui(), Undo{});
    rest(maker);
    rest(maker);
    CHECK(said_of_row(maker) == before);
}

}  // namespace kw::window
