// Joints spoken of in German.
#include <doctest/doctest.h>

#include <random>
#include <set>

#include "joint/kinds.h"
#include "no_english.h"

using namespace kw;

namespace {

const Locale german(Graduation::mm_0_1, Language::german);

}  // namespace

TEST_CASE("a dado that leaves too little of the side is refused in German, with a decimal comma") {
    JointAsk ask;
    ask.receiver_thickness = Length::micrometres(12'700);
    ask.insert_thickness = ask.receiver_thickness;
    ask.near = Length::millimetres(20);
    ask.depth = Length::micrometres(9'500);
    const auto joint = design_dado(ask);
    REQUIRE_FALSE(joint);
    CHECK(joint.error().why.text(german) ==
          "zu wenig Restdicke: eine Nut 9,5 mm tief lässt 3,2 mm von einem Brett mit 12,7 mm Dicke");
    CHECK(joint.error().remedy.text(german) == "höchstens 8,5 mm − tief machen oder dickeres Holz nehmen");
}

TEST_CASE("no joint that is refused, or remarked on, has English left in its German") {
    std::mt19937 random(20);
    const auto between = [&](std::int64_t low_um, std::int64_t high_um) {
        return Length::micrometres(std::uniform_int_distribution<std::int64_t>(low_um, high_um)(random));
    };
    std::set<std::string> seen;
    for (int i = 0; i < 2000; ++i) {
        JointAsk ask;
        ask.receiver_thickness = between(3'000, 20'000);
        ask.insert_thickness = between(3'000, 20'000);
        ask.clearance = between(0, 300);
        ask.end_relief = between(0, 2'000);
        ask.near = between(0, 20'000);
        if (i % 2 == 0) ask.depth = between(500, 12'000);
        if (i % 3 == 0) ask.slot_width = between(1'000, 12'000);
        for (const JointType& type : joint_types()) {
            const auto joint = type.design(ask);
            std::vector<Message> said;
            if (joint) said = joint->remarks;
            else said = {joint.error().why, joint.error().remedy};
            for (const Message& message : said) {
                const std::string text = message.text(german);
                CAPTURE(text);
                REQUIRE_FALSE(tests::sounds_english(text));
                REQUIRE(text != message.text(german.graduation));
                seen.insert(text.substr(0, 12));
            }
        }
    }
    CHECK(seen.size() > 10);
    for (const Place place : {Place::front, Place::back, Place::bottom})
        CHECK(joint_names_for(place).text(german).find("`") == std::string::npos);
}
