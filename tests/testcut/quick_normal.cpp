// The table of the normal, against Boost.Math, and the seven-point rule that readings to come are weighed with.
#include "testcut/quick_normal.h"

#include <doctest/doctest.h>

#include <boost/math/distributions/normal.hpp>
#include <cmath>

#include "testcut/normal.h"

TEST_CASE("chance and density from the table are those of the normal, to 1e-9, and flat beyond it") {
    const boost::math::normal normal;
    for (double z = -8.0; z <= 8.0; z += 0.0137) {
        CHECK(std::abs(kw::quick_normal().below(z) - boost::math::cdf(normal, z)) < 1e-9);
        CHECK(std::abs(kw::quick_normal().density(z) - boost::math::pdf(normal, z)) < 1e-8);
    }
    CHECK(kw::quick_normal().below(-1e300) == 0.0);
    CHECK(kw::quick_normal().below(INFINITY) == 1.0);
    CHECK(kw::quick_normal().between(-INFINITY, INFINITY) == 1.0);
    CHECK(kw::quick_normal().between(1.0, -1.0) == 0.0);
}

TEST_CASE("the quantile is the inverse of the chance (Boost.Math)") {
    const boost::math::normal normal;
    for (const double chance : {1e-9, 0.01, 0.1, 0.5, 0.9, 0.975, 0.999999})
        CHECK(kw::normal_quantile(chance) ==
              doctest::Approx(boost::math::quantile(normal, chance)).epsilon(1e-10).scale(1.0));
}
