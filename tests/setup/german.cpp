// Setups spoken of in German.
#include <doctest/doctest.h>

#include "joint/kinds.h"
#include "no_english.h"
#include "setup/choose_cutter.h"
#include "words/names.h"

using namespace kw;

namespace {

const Locale german(Graduation::mm_0_1, Language::german);

std::string said(const char* work, const Locale& locale) { return work_word(locale.words(), work); }

}  // namespace

TEST_CASE("what a setup does is said piece by piece, and in English as it is named") {
    for (const char* work :
         {"locking rabbet: side dado", "back dado: side dado, pass 1 of 2", "groove", "groove, pass 2 of 3",
          "front rabbet: side rabbet", "rip to width: sides and fronts, backs", "cut to length: bottoms",
          "back tongue and dado: rabbet", "crosscut to length: fronts", "something else: odd ones", ""})
        CHECK(said(work, Graduation::in_64) == work);
    CHECK(said("back dado: side dado, pass 1 of 2", german) ==
          "Quernut hinten: Quernut in der Seite, Durchgang 1 von 2");
    CHECK(said("rip to width: sides and fronts, backs", german) ==
          "auf Breite sägen: Seiten und Vorderstücke, Hinterstücke");
    CHECK(said("locking rabbet: side dado", {Graduation::in_64, Language::british}) ==
          "locking rebate: side housing");
}

TEST_CASE("why no cutter will do is told in German, of each by its name") {
    Shop shop{
        {usual_machine("saw", MachineKind::table_saw), usual_machine("Frästisch", MachineKind::router_table)},
        {{"wide", CutterKind::dado_stack, "saw", Length::inches(7, 8)},
         {"lost", CutterKind::bit, "nowhere", Length::millimetres(6)},
         {"thick", CutterKind::bit, "Frästisch", Length::millimetres(13)}}};
    const auto chosen = choose_cutter(shop, {}, [&](Length) {
        JointAsk ask;
        ask.receiver_thickness = ask.insert_thickness = ask.near = Length::millimetres(12);
        return design_dado(ask);
    });
    REQUIRE_FALSE(chosen);
    CHECK(chosen.error().why.text(german) ==
          "kein Werkzeug der Werkstatt kann diese Verbindung machen; „wide“: das Werkzeug ist 22,2 mm breit, "
          "die Welle von „saw“ nimmt höchstens 20,6 mm + auf; „lost“: eine Maschine „nowhere“ gibt es nicht; "
          "„thick“: Schnittbreite 13,0 mm, breiter als 12,0 mm (Quernut in der Seite)");
    CHECK(chosen.error().remedy.text(german) ==
          "ein passendes Werkzeug eintragen oder die Verbindung ändern");
}
