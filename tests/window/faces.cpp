// A bank gathered and changed at the window.
#include <doctest/doctest.h>

#include "window/maker.h"

namespace kw::window {

TEST_CASE("drawers are gathered into a bank, divided by another rule and taken apart again") {
    std::string text = one_drawer;
    const std::string one = "\"count\": 1";
    text.replace(text.find(one), one.size(), "\"count\": 3");
    Maker maker(text);
    maker.press("The job");
    maker.press("Faces");
    maker.press("Make a bank of drawers");
    REQUIRE(maker.work().job.banks.size() == 1);
    const BankSpec& bank = maker.work().job.banks[0];
    CHECK(bank.rows.size() == 3);
    // Openings of 5 1/4 in and rails of 3/4 in, of which 5/16 in are covered from each side.
    CHECK(bank.made.height == Length::inches(69, 4));
    for (const BankFace& face : bank.made.faces) CHECK(face.height == Length::inches(47, 8));
    CHECK(maker.on_disk()["banks"][0]["heights"] == "by opening");
    maker.press("Equal");
    CHECK(maker.on_disk()["banks"][0]["heights"] == "equal");
    CHECK(maker.work().job.banks[0].made.faces[0].height == Length::inches(47, 8));
    maker.press("Each higher");
    // Drawers of one name are alike.
    CHECK_FALSE(maker.app().session().problems.empty());
    maker.press("Given");
    CHECK(maker.on_disk()["banks"][0]["face_heights"].size() == 3);
    CHECK(maker.app().session().problems.empty());
    maker.press("2 holes");
    REQUIRE(maker.work().job.banks[0].handles);
    CHECK(maker.work().job.banks[0].handles->centres == Length::millimetres(96));
    maker.press("Inset");
    CHECK(maker.on_disk()["banks"][0]["style"] == "inset");
}

TEST_CASE(
    "a bank gets its name, the depth of its openings and the size of its handles' holes, and loses them "
    "again") {
    std::string text = one_drawer;
    const std::string one = "\"count\": 1", depth = ", \"depth\": \"18\"";
    text.replace(text.find(one), one.size(), "\"count\": 2");
    Maker maker(text);
    maker.press("The job");
    maker.press("Faces");
    maker.press("Make a bank of drawers");
    const std::string before = maker.work().job.banks.at(0).name;
    maker.press("Name");
    maker.hand().type("left column");
    maker.press("Faces");
    maker.app().finish(maker.hand().ui());
    maker.redraw();
    const std::string named = maker.on_disk()["banks"][0]["name"];
    CHECK(named != before);
    CHECK(named.find("left column") != std::string::npos);
    CHECK(maker.work().job.banks.at(0).name == named);
    maker.press("2 holes");
    maker.press("Holes, across");
    maker.key_in("3/16");
    CHECK(maker.work().job.banks.at(0).handles->diameter == Length::inches(3, 16));
    maker.press("Depth");
    maker.key_in("20");
    CHECK(maker.work().job.banks.at(0).depth == Length::inches(20));
    CHECK(maker.app().session().problems.empty());
}

}  // namespace kw::window
