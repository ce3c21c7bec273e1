#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>

#include "wood/emc.h"

using namespace kw;

namespace {

double moisture(double temperature_c, double humidity_percent) {
    const auto percent = equilibrium_moisture_percent({temperature_c, humidity_percent});
    REQUIRE(percent.has_value());
    return *percent;
}

}  // namespace

// USDA Wood Handbook (2010), table 4-2, which is computed from eq. 4-5 (read in the table). The rows are in
// whole degrees Fahrenheit and the values rounded to 0.05 either way; over the table, the Celsius form of the
// equation strays from it by up to 0.055 (computed), so 0.07 is allowed.
TEST_CASE("the moisture that wood settles to agrees with the handbook's table") {
    constexpr std::array<double, 14> humidity = {5, 10, 20, 30, 40, 50, 60, 65, 70, 75, 80, 85, 90, 95};
    struct Row {
        double fahrenheit;
        std::array<double, 14> percent;
    };
    constexpr Row rows[] = {
        {30, {1.4, 2.6, 4.6, 6.3, 7.9, 9.5, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3}},
        {40, {1.4, 2.6, 4.6, 6.3, 7.9, 9.5, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0, 24.3}},
        {50, {1.4, 2.6, 4.6, 6.3, 7.9, 9.5, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3}},
        {60, {1.3, 2.5, 4.6, 6.2, 7.8, 9.4, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7, 24.1}},
        {70, {1.3, 2.5, 4.5, 6.2, 7.7, 9.2, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5, 23.9}},
        {80, {1.3, 2.4, 4.4, 6.1, 7.6, 9.1, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2, 23.6}},
        {90, {1.2, 2.3, 4.3, 5.9, 7.4, 8.9, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3}},
        {100, {1.2, 2.3, 4.2, 5.8, 7.2, 8.7, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5, 22.9}},
    };
    for (const Row& row : rows) {
        for (std::size_t i = 0; i < humidity.size(); ++i) {
            CAPTURE(row.fahrenheit);
            CAPTURE(humidity[i]);
            CHECK(std::abs(moisture((row.fahrenheit - 32) / 1.8, humidity[i]) - row.percent[i]) <= 0.07);
        }
    }
}

// The equation in °C worked out apart from this program, at 20 °C.
TEST_CASE("the moisture that wood settles to at 20 degrees Celsius") {
    CHECK(moisture(20, 30) == doctest::Approx(6.188).epsilon(1e-4));
    CHECK(moisture(20, 40) == doctest::Approx(7.722).epsilon(1e-4));
    CHECK(moisture(20, 50) == doctest::Approx(9.271).epsilon(1e-4));
    CHECK(moisture(20, 65) == doctest::Approx(11.996).epsilon(1e-4));
    CHECK(moisture(20, 75) == doctest::Approx(14.451).epsilon(1e-4));
    CHECK(moisture(20, 85) == doctest::Approx(18.002).epsilon(1e-4));
}

TEST_CASE("wood takes up moisture as the air gets damper, and a little less of it as the air gets warmer") {
    CHECK(moisture(20, 0) == 0);
    for (double celsius = 0; celsius <= 48; celsius += 4)
        for (double humidity = 5; humidity <= 95; humidity += 5)
            CHECK(moisture(celsius, humidity) > moisture(celsius, humidity - 5));
    for (double celsius = 14; celsius <= 48; celsius += 4)
        for (double humidity = 5; humidity <= 95; humidity += 5)
            CHECK(moisture(celsius, humidity) < moisture(celsius - 4, humidity));
}

TEST_CASE("air beyond the handbook's table is refused, by name") {
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const double celsius : {-5.0, 60.0, none}) {
        const auto percent = equilibrium_moisture_percent({celsius, 50});
        REQUIRE_FALSE(percent.has_value());
        CHECK(percent.error().field == "temperature");
        CHECK(percent.error().why.text(Graduation::in_64) ==
              "the moisture of wood is figured from −1 to 49 °C only");
    }
    for (const double humidity : {-1.0, 96.0, 100.0, none}) {
        const auto percent = equilibrium_moisture_percent({20, humidity});
        REQUIRE_FALSE(percent.has_value());
        CHECK(percent.error().field == "humidity");
        CHECK(percent.error().why.text(Graduation::in_64) ==
              "the moisture of wood is figured from 0 to 95 % humidity only");
        CHECK(percent.error().remedy.text(Graduation::in_64) == "give the wood's moisture content itself");
    }
}
