// The chance of a joint fit, against closed forms and against sums over a fine grid.

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

#include "effort.h"
#include "est_shop.h"
#include "testcut/chance.h"
#include "testcut/normal.h"

using est::cumulative, est::endless;

namespace {

constexpr double promised = kw::chance_accuracy;

// loading z with standard normal z: the covariance and a plain midpoint sum over z, the innermost in closed
// form.
struct Case {
    std::size_t sides;
    std::size_t rank;
    std::vector<double> loading;  // sides x rank
    std::vector<double> mean;
    kw::ToleranceBox box;

    std::vector<double> covariance() const {
        std::vector<double> all(sides * sides, 0.0);
        for (std::size_t i = 0; i < sides; ++i)
            for (std::size_t j = 0; j < sides; ++j)
                for (std::size_t k = 0; k < rank; ++k)
                    all[i * sides + j] += loading[i * rank + k] * loading[j * rank + k];
        return all;
    }
};

double innermost(const Case& c, const std::vector<double>& z) {
    double low = -endless;
    double high = endless;
    for (std::size_t i = 0; i < c.sides; ++i) {
        double at = c.mean[i];
        for (std::size_t k = 0; k + 1 < c.rank; ++k) at += c.loading[i * c.rank + k] * z[k];
        const double scale = c.loading[i * c.rank + c.rank - 1];
        const double a = (c.box.low[i] - at) / scale;
        const double b = (c.box.high[i] - at) / scale;
        low = std::max(low, std::min(a, b));
        high = std::min(high, std::max(a, b));
    }
    return high > low ? cumulative(high) - cumulative(low) : 0.0;
}

double on_a_grid(const Case& c, std::vector<double>& z, std::size_t level, int cells) {
    if (level + 1 == c.rank) return innermost(c, z);
    constexpr double reach = 6.0;
    const double step = 2.0 * reach / cells;
    double sum = 0.0;
    for (int i = 0; i < cells; ++i) {
        z[level] = -reach + step * (i + 0.5);
        sum += step * std::exp(-0.5 * z[level] * z[level]) * on_a_grid(c, z, level + 1, cells);
    }
    return sum / std::sqrt(2.0 * std::numbers::pi);
}

double on_a_grid(const Case& c) {
    constexpr int cells[] = {1, 1, 40000, 1500, 160};
    std::vector<double> z(c.rank, 0.0);
    return on_a_grid(c, z, 0, cells[c.rank]);
}

Case random_case(est::Random& random, std::size_t sides, std::size_t rank) {
    Case c{sides, rank, std::vector<double>(sides * rank), {}, {}};
    for (double& entry : c.loading) entry = random.normal();
    const std::vector<double> covariance = c.covariance();
    for (std::size_t i = 0; i < sides; ++i) {
        const double sd = std::sqrt(covariance[i * sides + i]);
        c.mean.push_back(random.normal(0.6 * sd));
        c.box.low.push_back(random.below(5) == 0 ? -endless : -random.uniform(0.3, 2.5) * sd);
        c.box.high.push_back(random.below(5) == 0 ? endless : random.uniform(0.3, 2.5) * sd);
    }
    return c;
}

double chance_of(const Case& c) { return kw::box_chance(c.mean, c.covariance(), c.box); }

// All sides of one variance, every two correlated alike.
std::vector<double> equicorrelated(std::size_t sides, double correlation) {
    std::vector<double> covariance(sides * sides, correlation);
    for (std::size_t i = 0; i < sides; ++i) covariance[i * (sides + 1)] = 1.0;
    return covariance;
}

kw::ToleranceBox orthant(std::size_t sides) {
    return {std::vector<double>(sides, 0.0), std::vector<double>(sides, endless)};
}

}  // namespace

TEST_CASE("independent outcomes: the chance is the product") {
    est::Random random(301);
    for (std::size_t sides = 1; sides <= 4; ++sides) {
        for (int i = 0; i < 25; ++i) {
            std::vector<double> covariance(sides * sides, 0.0);
            std::vector<double> mean;
            kw::ToleranceBox box;
            double product = 1.0;
            for (std::size_t s = 0; s < sides; ++s) {
                const double sd = random.uniform(0.05, 2.0);
                covariance[s * (sides + 1)] = sd * sd;
                mean.push_back(random.normal());
                box.low.push_back(mean.back() - random.uniform(0.0, 2.5) * sd);
                box.high.push_back(mean.back() + random.uniform(0.0, 2.5) * sd);
                product *= cumulative((box.high[s] - mean[s]) / sd) - cumulative((box.low[s] - mean[s]) / sd);
            }
            CHECK(std::abs(kw::box_chance(mean, covariance, box) - product) < promised);
        }
    }
}

TEST_CASE("perfectly correlated outcomes: the chance is that of the interval common to all") {
    for (std::size_t sides = 2; sides <= 4; ++sides) {
        kw::ToleranceBox box;
        for (std::size_t s = 0; s < sides; ++s) {
            box.low.push_back(-1.0 + 0.2 * double(s));
            box.high.push_back(1.5 - 0.1 * double(s));
        }
        const double expected = cumulative(box.high.back()) - cumulative(box.low.back());
        const std::vector<double> zero(sides, 0.0);
        CHECK(std::abs(kw::box_chance(zero, equicorrelated(sides, 1.0), box) - expected) < 1e-9);
    }
    // Opposed: y = -x, so x in [-0.5, 1] and y in [-0.2, 2] leave x in [-0.5, 0.2].
    CHECK(std::abs(kw::box_chance({0, 0}, {1, -1, -1, 1}, {{-0.5, -0.2}, {1.0, 2.0}}) -
                   (cumulative(0.2) - cumulative(-0.5))) < 1e-9);
    // Nothing in common.
    CHECK(kw::box_chance({0, 0}, {1, 1, 1, 1}, {{-1.0, 0.5}, {0.3, 2.0}}) == 0.0);
}

// Sheppard 1899, and its extension to three (David 1953); from memory.
TEST_CASE("two outcomes both positive: 1/4 + asin(rho) / 2 pi; three: 1/8 + sum of asin / 4 pi") {
    for (const double rho : {-0.99, -0.7, -0.3, 0.0, 0.2, 0.5, 0.9, 0.999, 0.999999}) {
        const double expected = 0.25 + std::asin(rho) / (2.0 * std::numbers::pi);
        CHECK(std::abs(kw::box_chance({0, 0}, equicorrelated(2, rho), orthant(2)) - expected) < promised);
    }
    for (const double rho : {-0.49, -0.2, 0.0, 0.3, 0.5, 0.9, 0.999}) {
        const double expected = 0.125 + 3.0 * std::asin(rho) / (4.0 * std::numbers::pi);
        CHECK(std::abs(kw::box_chance({0, 0, 0}, equicorrelated(3, rho), orthant(3)) - expected) < promised);
    }
}

TEST_CASE("equally correlated by a half, all of n positive: 1 / (n + 1)") {
    // By symmetry: the least of n + 1 independent normals is equally likely to be any of them.
    for (std::size_t sides = 1; sides <= 4; ++sides) {
        const std::vector<double> zero(sides, 0.0);
        const double chance = kw::box_chance(zero, equicorrelated(sides, 0.5), orthant(sides));
        CHECK(std::abs(chance - 1.0 / double(sides + 1)) < promised);
    }
}

TEST_CASE("full and degenerate covariances agree with a sum over a grid") {
    est::Random random(302);
    const struct {
        std::size_t sides;
        std::size_t rank;
        int count;
    } kinds[] = {{2, 1, 20}, {2, 2, 20}, {3, 1, 20}, {3, 2, 20}, {3, 3, 8}, {4, 2, 20}, {4, 3, 8}, {4, 4, 6}};
    for (const auto& kind : kinds) {
        CAPTURE(kind.sides);
        CAPTURE(kind.rank);
        for (int i = 0; i < kw::tests::cases(kind.count); ++i) {
            const Case c = random_case(random, kind.sides, kind.rank);
            CHECK(std::abs(chance_of(c) - on_a_grid(c)) < 2.0 * promised);  // the grid's own error in it
        }
    }
}

TEST_CASE("a covariance that is all but degenerate agrees with the degenerate one") {
    est::Random random(303);
    for (int i = 0; i < 30; ++i) {
        Case c = random_case(random, 3, 2);
        const double exact = chance_of(c);
        std::vector<double> covariance = c.covariance();
        for (const double extra : {1e-14, 1e-11, 1e-9}) {
            std::vector<double> blurred = covariance;
            for (std::size_t s = 0; s < 3; ++s) blurred[s * 4] += extra * covariance[s * 4];
            CHECK(std::abs(kw::box_chance(c.mean, blurred, c.box) - exact) < 2.0 * promised);
        }
    }
}

TEST_CASE("the chance does not depend on the order, the signs or the units of the outcomes") {
    est::Random random(304);
    for (int i = 0; i < 40; ++i) {
        const Case c = random_case(random, 3, 3);
        const double chance = chance_of(c);
        Case turned = c;
        const double inch = 25.4;
        for (std::size_t s = 0; s < 3; ++s) {
            const std::size_t from = 2 - s;
            const double sign = s == 1 ? -1.0 : 1.0;
            for (std::size_t k = 0; k < 3; ++k)
                turned.loading[s * 3 + k] = sign * c.loading[from * 3 + k] / inch;
            turned.mean[s] = sign * c.mean[from] / inch;
            turned.box.low[s] = (sign > 0 ? c.box.low[from] : -c.box.high[from]) / inch;
            turned.box.high[s] = (sign > 0 ? c.box.high[from] : -c.box.low[from]) / inch;
        }
        CHECK(std::abs(chance_of(turned) - chance) < 2.0 * promised);
    }
}

TEST_CASE("what is known exactly is in or out, its edges in") {
    const std::vector<double> none(4, 0.0);
    const kw::ToleranceBox box{{-0.1, -endless}, {0.1, 0.2}};
    CHECK(kw::box_chance({0.0, 0.0}, none, box) == 1.0);
    CHECK(kw::box_chance({0.1, 0.2}, none, box) == 1.0);
    CHECK(kw::box_chance({0.11, 0.0}, none, box) == 0.0);
    CHECK(kw::box_chance({0.0, 0.21}, none, box) == 0.0);
    CHECK(std::abs(kw::box_chance({0.05, 0.2}, {0, 0, 0, 1}, box) - 0.5) < 1e-9);
    CHECK(kw::box_chance({}, {}, {}) == 1.0);
}

TEST_CASE("a locking rabbet's chance of fit is not the product: fit, gap and step hang together") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    const std::vector<double> mean = kw::outcome_mean(shop, prior);
    const std::vector<double> covariance = kw::outcome_covariance(shop, prior);
    // By hand: var(fit) = kerf + height + stock, cov(fit, gap) = kerf - height, cov(gap, step) = fence +
    // height.
    CHECK(covariance[0] == doctest::Approx(0.01 + 0.09 + 0.01));
    CHECK(covariance[1] == doctest::Approx(0.01 - 0.09));
    CHECK(covariance[5] == doctest::Approx(0.09 + 0.09));
    CHECK(mean[0] == doctest::Approx(0.1));
    CHECK(mean[1] == doctest::Approx(-0.4));
    CHECK(mean[2] == doctest::Approx(0.0).scale(1.0));

    est::Random random(305);
    int in = 0;
    constexpr int shops = 400000;
    for (int i = 0; i < shops; ++i) {
        std::vector<double> truth;
        for (const kw::Control& control : shop.controls)
            truth.push_back(control.set_mm + random.normal(control.spread_mm));
        bool fits = true;
        for (const kw::Outcome& outcome : shop.outcomes) {
            const double value = kw::value_at(outcome.form, truth);
            fits = fits && value >= outcome.low_mm() && value <= outcome.high_mm();
        }
        in += fits ? 1 : 0;
    }
    const double counted = double(in) / shops;
    const double chance = kw::chance_in_tolerance(shop, prior);
    CHECK(std::abs(chance - counted) < 4.0 * std::sqrt(counted * (1.0 - counted) / shops));
}
