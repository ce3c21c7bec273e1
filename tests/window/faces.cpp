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

}  // namespace kw::window
