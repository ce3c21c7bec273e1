#include "words/names.h"

#include <doctest/doctest.h>

using namespace kw;

namespace {

const Words& english = words_in(Language::english);
const Words& german = words_in(Language::german);

}  // namespace

TEST_CASE("in English a setup's work is shown as it is called") {
    for (const char* work :
         {"locking rabbet: side dado", "back tongue and dado: rabbet", "front rabbet: side rabbet",
          "groove, pass 1 of 2", "back dado: side dado, pass 2 of 3",
          "rip to width: sides and fronts, bottoms", "crosscut to length: sides", "locking rabbet"}) {
        CAPTURE(work);
        CHECK(work_word(english, work) == work);
    }
}

TEST_CASE("in German all of a setup's work is German") {
    CHECK(work_word(german, "locking rabbet: side dado") == "Falz mit Nut: Quernut in der Seite");
    CHECK(work_word(german, "back dado: side dado, pass 2 of 3") ==
          "Quernut hinten: Quernut in der Seite, Durchgang 2 von 3");
    CHECK(work_word(german, "groove, pass 1 of 2") == "Nut, Durchgang 1 von 2");
    CHECK(work_word(german, "rip to width: sides and fronts") == "auf Breite sägen: Seiten und Vorderstücke");
    CHECK(work_word(german, "rip to width: backs, bottoms") == "auf Breite sägen: Hinterstücke, Böden");
}

TEST_CASE("a British setup's work is called as the trade calls it there") {
    CHECK(work_word(words_in(Language::british), "locking rabbet: side dado") ==
          "locking rebate: side housing");
}

TEST_CASE("ends that touch the fence are named once, by what they share") {
    CHECK(ends_words(english, {"left end"}) == "left end");
    CHECK(ends_words(english, {"left end", "right end"}) == "left and right ends");
    CHECK(ends_words(german, {"left end", "right end"}) == "linkes und rechtes Ende");
    CHECK(ends_words(german, {"bottom edge", "top edge"}) == "Unterkante und Oberkante");
    CHECK(ends_words(english, {"rear end", "bottom edge"}) == "rear end and bottom edge");
}

TEST_CASE("a part's role is shown as parts are called") {
    CHECK(role_word(english, "side_left") == "left side");
    CHECK(role_word(german, "side_left") == "linke Seite");
}

TEST_CASE("a name that no table has is shown as it is") {
    CHECK(guide_word(german, "my own jig") == "my own jig");
    CHECK(work_word(german, "scraping") == "scraping");
}
