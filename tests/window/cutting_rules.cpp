// How parts are cut to rough size, told by pressing.
#include <doctest/doctest.h>

#include "window/maker.h"

namespace kw::window {
namespace {

void settle(Maker& maker) {
    maker.app().finish(maker.hand().ui());
    maker.redraw();
}

}  // namespace

TEST_CASE("kerf and allowances are read in under the stock, and left to the program again") {
    Maker maker(one_drawer);
    maker.press("Drawers");
    maker.press("Stock");
    maker.press("Blade's kerf");
    maker.key_in("3/32");
    settle(maker);
    CHECK(maker.on_disk()["cutting"]["kerf"].get<std::string>().find("3/32") == 0);
    CHECK(maker.work().job.cutting.kerf == Length::inches(3, 32));
    maker.press("Longer by");
    maker.key_in("1");
    settle(maker);
    CHECK(maker.work().job.cutting.over_length == Length::inches(1));
    maker.press("Leave it open");
    settle(maker);
    CHECK_FALSE(maker.on_disk()["cutting"].contains("kerf"));
    CHECK(maker.work().job.cutting.over_length == Length::inches(1));
}

TEST_CASE("a bad place is marked on a sheet, which is counted from then on, and is taken out again") {
    Maker maker(one_drawer);
    maker.press("Drawers");
    maker.press("Stock");
    maker.press("Add a sheet");
    settle(maker);
    maker.press("Mark a bad place");
    settle(maker);
    const Json size = maker.on_disk()["stock"][0]["sizes"][0];
    CHECK(size["count"] == 1);
    CHECK(size["defects"].size() == 1);
    maker.press("Along");
    maker.key_in("22 1/2");
    settle(maker);
    CHECK(maker.work().job.stock[0].sizes[0].defects[0].x == Length::inches(45, 2));
    maker.press("Take it out");
    settle(maker);
    CHECK(maker.on_disk()["stock"][0]["sizes"][0]["defects"].empty());
}

}  // namespace kw::window
