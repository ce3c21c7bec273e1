#include <doctest/doctest.h>

#include "length/message.h"

using namespace kw;

TEST_CASE("a message says its lengths in the maker's own graduation") {
    const Message message = Message::of("the dado is ", Length::inches(1, 4), " deep, in ", 2, " passes");
    CHECK(message.text(Graduation::in_64) == "the dado is 1/4 in deep, in 2 passes");
    CHECK(message.text(Graduation::mm_0_1) == "the dado is 6.4 mm − deep, in 2 passes");
    CHECK_FALSE(message.empty());
    CHECK(Message{}.empty());
    CHECK((message + Message::of("; lower it by ", Length::inches(1, 64))).text(Graduation::in_001) ==
          "the dado is 0.250 in deep, in 2 passes; lower it by 0.016 in −");
}
