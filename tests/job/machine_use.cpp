// What has to be set by hand again after a machine did something else.
#include "job/machine_use.h"

#include <doctest/doctest.h>

using namespace kw;

namespace {

using Controls = std::vector<std::string>;

MachineUse use(const std::string& what, int fence_mm, int height_mm, const std::string& stack = "stack") {
    MachineUse out;
    out.what = what;
    out.stack = stack;
    out.dial.fence = Length::millimetres(fence_mm);
    out.dial.height = Length::millimetres(height_mm);
    out.dial.kerf = Length::millimetres(6);
    return out;
}

}  // namespace

TEST_CASE("what a machine was last used for still stands there, and nothing of it is set again") {
    MachineUses uses;
    uses.note("saw", use("dado", 10, 6));
    uses.note("saw", use("dado", 10, 7));
    uses.note("router", use("groove", 20, 5));
    CHECK(uses.stands("saw", "dado"));
    CHECK(uses.settings("saw") == 1);
    CHECK(uses.set_again("saw", "dado").empty());
    uses.note("saw", use("groove", 20, 7));
    CHECK_FALSE(uses.stands("saw", "dado"));
    CHECK(uses.settings("saw") == 2);
    CHECK_FALSE(uses.stands("drill", "dado"));
    CHECK(uses.settings("drill") == 0);
}

TEST_CASE("only those controls are set again that something else was done with") {
    const auto after = [](const std::vector<MachineUse>& others) {
        MachineUses uses;
        uses.note("saw", use("dado", 10, 6));
        for (const MachineUse& other : others) uses.note("saw", other);
        return uses.set_again("saw", "dado");
    };
    CHECK(after({use("groove", 20, 6)}) == Controls{"fence", "shift"});
    CHECK(after({use("groove", 10, 7)}) == Controls{"height"});
    CHECK(after({use("groove", 20, 6), use("back", 10, 7)}) == Controls{"fence", "shift", "height"});
    // Another cutter, at the same height by its scale: with the stack come its shims.
    CHECK(after({use("rip", 10, 6, "blade")}) == Controls{"height", "kerf"});
    MachineUse wider = use("groove", 10, 6);
    wider.dial.kerf += Length::micrometres(100);
    CHECK(after({wider}) == Controls{"kerf"});
    MachineUse spaced = use("tongue", 10, 6);
    spaced.dial.spacer = Length::millimetres(3);
    CHECK(after({spaced}) == Controls{"spacer"});
    // A cut to size goes through the board.
    MachineUse through = use("crosscut", 10, 6);
    through.through = true;
    CHECK(after({through}) == Controls{"height"});
}

TEST_CASE("a control that was moved and came back to the same number was set by hand all the same") {
    MachineUses uses;
    uses.note("saw", use("dado", 10, 6));
    uses.note("saw", use("groove", 10, 7));
    uses.note("saw", use("groove", 10, 6));
    CHECK(uses.set_again("saw", "dado") == Controls{"height"});
    uses.note("saw", use("dado", 10, 6));
    CHECK(uses.set_again("saw", "dado").empty());
}

TEST_CASE(
    "a slot of several passes leaves the fence at its last one: what begins at the same place is set again") {
    MachineUse shifted = use("groove", 10, 6);
    shifted.dial.shift = Length::millimetres(3);
    MachineUses uses;
    uses.note("saw", use("dado", 10, 6));
    uses.note("saw", shifted);
    CHECK(uses.set_again("saw", "dado") == Controls{"fence", "shift"});
    uses.note("saw", use("dado", 10, 6));
    CHECK(uses.set_again("saw", "groove") == Controls{"fence", "shift"});
}
