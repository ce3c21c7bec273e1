#include "wood/emc.h"

namespace kw {
namespace {

// At t in degrees Celsius, and h the relative humidity as a part of one.
double equation_4_5(double t, double h) {
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * h;
    const double once = k1 * kh;
    const double twice = k1 * k2 * kh * kh;
    return 1800 / w * (kh / (1 - kh) + (once + 2 * twice) / (1 + once + twice));
}

}  // namespace

tl::expected<double, Refusal> equilibrium_moisture_percent(const Air& air) {
    const Message remedy = Message::say("wood.give_moisture");
    if (!(air.temperature_c >= -1.2 && air.temperature_c <= 49))
        return tl::unexpected(Refusal{"temperature", Message::say("wood.temperature"), remedy});
    if (!(air.humidity_percent >= 0 && air.humidity_percent <= 95))
        return tl::unexpected(Refusal{"humidity", Message::say("wood.humidity"), remedy});
    return equation_4_5(air.temperature_c, air.humidity_percent / 100);
}

}  // namespace kw
