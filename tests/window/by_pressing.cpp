#include "window/by_pressing.h"

namespace kw::window {

std::string decimals(Length length) {
    const std::string text = show(length, Graduation::in_001);
    return text.substr(0, text.find(' '));
}

void test_and_lock(Maker& maker) {
    maker.press("Test cut first");
    const Group& group = *maker.work().plan.group_with_id(maker.setup().group);
    const bool has_tongue = maker.find("Tongue length", true) != nullptr;
    const Length off = Length::inches(5, 1000);
    const Length tongue = group.stands.fence + group.stands.kerf - group.stands.spacer + off;
    maker.press(has_tongue ? "Tongue length" : "Depth", true);
    maker.key_in(decimals(has_tongue ? tongue : group.stands.height));
    maker.press("Work it out");
    REQUIRE_MESSAGE(maker.app().session().refused.empty(), maker.app().session().refused);
    if (maker.find("Lock")) maker.press("Lock");
    else maker.hold("Hold to lock", true);
    REQUIRE(is_locked(maker.work(), maker.setup()));
    maker.press("Picture");
}

int make_all(Maker& maker) {
    maker.press("Order of work");
    maker.press("Go on at the saw");
    int locked = 0;
    const std::size_t steps = maker.work().plan.sequence.size();
    for (std::size_t step = 0; step < steps; ++step) {
        INFO("step " << step + 1 << ": " << maker.setup().work);
        if (maker.find("Test cut first")) {
            test_and_lock(maker);
            ++locked;
        }
        maker.press("Tick all");
        if (step + 1 < steps) maker.press("After this");
    }
    return locked;
}

}  // namespace kw::window
