// What the order's screen says of how good the order is.
#include <doctest/doctest.h>

#include "window/screen_words.h"

namespace kw::window {

TEST_CASE(
    "while the order is searched it is said how much better it can be at most, in whole minutes rounded up") {
    const std::string begin = "The order is still being searched: ";
    CHECK(search_words(words_in(Language::english), {}) == begin + "this is the last one");
    CHECK(search_words(words_in(Language::english), 0) ==
          begin + "at most 0 minutes better than what is found");
    CHECK(search_words(words_in(Language::english), 1) ==
          begin + "at most 1 minute better than what is found");
    CHECK(search_words(words_in(Language::english), 60) ==
          begin + "at most 1 minute better than what is found");
    CHECK(search_words(words_in(Language::english), 61) ==
          begin + "at most 2 minutes better than what is found");
    CHECK(search_words(words_in(Language::english), 3600) ==
          begin + "at most 60 minutes better than what is found");
}

TEST_CASE(
    "when the search has ended it is said whether the order is proved, and if not, how much better another "
    "can be") {
    Plan plan;
    plan.seconds = 10560;
    plan.lower_bound_seconds = 10560;
    plan.proved = true;
    CHECK(proof_words(words_in(Language::english), plan) ==
          "2 h 56 min in all, proved to be the least with the machines as assigned");
    plan.proved = false;
    plan.lower_bound_seconds = 10560 - 241;
    CHECK(proof_words(words_in(Language::english), plan) ==
          "2 h 56 min in all, the best order that was found: another is at most 5 minutes better");
    plan.lower_bound_seconds = 10560 - 60;
    CHECK(proof_words(words_in(Language::english), plan) ==
          "2 h 56 min in all, the best order that was found: another is at most 1 minute better");
    plan.lower_bound_seconds = 0;
    CHECK(proof_words(words_in(Language::english), plan) ==
          "2 h 56 min in all, the best order that was found");
}

TEST_CASE(
    "what a pin takes is said in minutes, or in seconds where it is less than one, or that it can't be "
    "kept") {
    Work before, after;
    Setup setup;
    setup.id = "S7";
    setup.work = "groove";
    before.plan.setups.push_back(setup);
    before.rest.seconds = after.rest.seconds = 6000;
    CHECK(pin_news(words_in(Language::english), before, after, {"S7", Pinned::first}) ==
          "Groove is wanted first: as long as before");
    after.rest.seconds = 6360;
    CHECK(pin_news(words_in(Language::english), before, after, {"S7", Pinned::last}) ==
          "Groove is wanted last: 6 min more than before");
    after.rest.seconds = 5955;
    CHECK(pin_news(words_in(Language::english), before, after, {"S7", Pinned::nowhere}) ==
          "Groove is done where it fits best: 45 s less than before");
    after.plan.notes.push_back({Level::warning, "order", Message::of("what is pinned can't be kept")});
    CHECK(pin_news(words_in(Language::english), before, after, {"S7", Pinned::first}) ==
          "Groove is wanted first: that can't be kept with what else is wanted first and last");
}

}  // namespace kw::window
