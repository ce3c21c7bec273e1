// Feels and one-sided readings: truncated normals against closed forms and against numerical integration on a
// grid.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "effort.h"
#include "est_shop.h"
#include "testcut/normal.h"
#include "testcut/observe.h"
#include "testcut/quadrature.h"

using est::cumulative, est::endless;

namespace {

struct Moments {
    double mean[2];
    double covariance[2][2];
};

// Two controls with a prior, and the likelihood of any set of observations, summed over a fine grid.
Moments on_a_grid(const kw::Belief& prior, const std::vector<kw::Observation>& observations) {
    const double a = prior.covariance[0];
    const double b = prior.covariance[1];
    const double c = prior.covariance[3];
    const double determinant = a * c - b * b;
    const double sd[2] = {std::sqrt(a), std::sqrt(c)};
    constexpr int cells = kw::tests::is_sanitized ? 300 : 1200;
    constexpr double reach = 7.0;
    double sums[6] = {};
    for (int i = 0; i < cells; ++i) {
        for (int j = 0; j < cells; ++j) {
            const double x = sd[0] * reach * (2.0 * (i + 0.5) / cells - 1.0);
            const double y = sd[1] * reach * (2.0 * (j + 0.5) / cells - 1.0);
            double mass = std::exp(-0.5 * (c * x * x - 2.0 * b * x * y + a * y * y) / determinant);
            if (mass < 1e-14) continue;
            for (const kw::Observation& seen : observations) {
                const double at = kw::value_at(seen.form, {prior.mean[0] + x, prior.mean[1] + y});
                mass *= seen.is_plain() ? std::exp(-0.5 * std::pow((seen.low_mm - at) / seen.spread_mm, 2))
                                        : cumulative((seen.high_mm - at) / seen.spread_mm) -
                                              cumulative((seen.low_mm - at) / seen.spread_mm);
            }
            const double terms[6] = {1.0, x, y, x * x, x * y, y * y};
            for (int k = 0; k < 6; ++k) sums[k] += mass * terms[k];
        }
    }
    for (int k = 1; k < 6; ++k) sums[k] /= sums[0];
    Moments moments{};
    moments.mean[0] = prior.mean[0] + sums[1];
    moments.mean[1] = prior.mean[1] + sums[2];
    moments.covariance[0][0] = sums[3] - sums[1] * sums[1];
    moments.covariance[0][1] = moments.covariance[1][0] = sums[4] - sums[1] * sums[2];
    moments.covariance[1][1] = sums[5] - sums[2] * sums[2];
    return moments;
}

// The largest difference, in standard deviations of the exact answer.
double off_by(const kw::Belief& belief, const Moments& exact) {
    double worst = 0.0;
    for (std::size_t i = 0; i < 2; ++i) {
        const double sd = std::sqrt(exact.covariance[i][i]);
        worst = std::max(worst, std::abs(belief.mean[i] - exact.mean[i]) / sd);
        for (std::size_t j = 0; j < 2; ++j) {
            const double scale = sd * std::sqrt(exact.covariance[j][j]);
            worst = std::max(worst, std::abs(belief.covariance[i * 2 + j] - exact.covariance[i][j]) / scale);
        }
    }
    return worst;
}

kw::Belief random_pair(est::Random& random) {
    const double a = random.uniform(0.05, 0.4);
    const double c = random.uniform(0.05, 0.4);
    const double correlation = random.uniform(-0.9, 0.9);
    return {{random.normal(0.2), random.normal(0.2)},
            {a * a, correlation * a * c, correlation * a * c, c * c}};
}

kw::Observation random_interval(est::Random& random) {
    const double middle = random.normal(0.3);
    const double half = random.uniform(0.01, 0.3);
    kw::Observation seen{est::form("seen", {random.normal(), random.normal()}), middle - half, middle + half,
                         random.uniform(0.03, 0.15)};
    if (random.below(3) == 0) seen.low_mm = -endless;
    else if (random.below(3) == 0) seen.high_mm = endless;
    return seen;
}

}  // namespace

TEST_CASE("the quadrature panel is exact for polynomials up to degree 22, its inner rule up to 13") {
    for (int degree = 0; degree <= 24; ++degree) {
        const kw::PanelSum sum =
            kw::integrate_panel([degree](double x) { return std::pow(x, degree); }, 0.0, 1.0);
        const double off = std::abs(sum.value - 1.0 / (degree + 1));
        if (degree <= 22) CHECK(off < 1e-15);
        if (degree <= 13) CHECK(sum.error < 1e-15);
        if (degree == 14) CHECK(sum.error > 1e-12);
    }
    CHECK(kw::integrate_adaptive([](double x) { return x < 0.3 ? 1.0 : 0.0; }, 0.0, 1.0, 1e-7, 30) ==
          doctest::Approx(0.3).epsilon(1e-6));
}

TEST_CASE("normal chances keep their digits in both tails") {
    // Abramowitz and Stegun 26.2, table 26.1 and 26.2.12, from memory: Q(1) = 0.158655, Q(6) = 9.8659e-10.
    CHECK(kw::normal_below(-1.0) == doctest::Approx(0.15865525393145707).epsilon(1e-14).scale(0));
    CHECK(kw::normal_between(6.0, endless) == doctest::Approx(9.865876450377e-10).epsilon(1e-10).scale(0));
    CHECK(kw::normal_between(6.0, 7.0) ==
          doctest::Approx(kw::normal_between(-7.0, -6.0)).epsilon(1e-12).scale(0));
    CHECK(kw::normal_between(10.0, endless) == doctest::Approx(7.61985302416e-24).epsilon(1e-10).scale(0));
    CHECK(kw::normal_between(-endless, endless) == 1.0);
    CHECK(kw::normal_between(1.0, -1.0) == 0.0);
}

TEST_CASE("half a normal has the mean sqrt(2/pi) and the variance 1 - 2/pi") {
    const double mean = std::sqrt(2.0 / std::numbers::pi);
    for (const double side : {1.0, -1.0}) {
        const kw::TruncatedMoments half =
            side > 0 ? kw::truncated_moments(0.0, endless) : kw::truncated_moments(-endless, 0.0);
        CHECK(half.mean == doctest::Approx(side * mean).epsilon(1e-13).scale(0));
        CHECK(half.variance == doctest::Approx(1.0 - 2.0 / std::numbers::pi).epsilon(1e-13).scale(0));
    }
    const kw::TruncatedMoments all = kw::truncated_moments(-endless, endless);
    CHECK(std::abs(all.mean) < 1e-14);
    CHECK(all.variance == doctest::Approx(1.0).epsilon(1e-13).scale(0));
}

TEST_CASE("truncated moments agree with the closed form where that keeps its digits") {
    est::Random random(201);
    for (int i = 0; i < 500; ++i) {
        const double low = random.uniform(-4.0, 3.0);
        const double high = low + random.uniform(0.2, 5.0);
        const double mass = cumulative(high) - cumulative(low);
        const double mean = (kw::normal_density(low) - kw::normal_density(high)) / mass;
        const double variance =
            1.0 + (low * kw::normal_density(low) - high * kw::normal_density(high)) / mass - mean * mean;
        const kw::TruncatedMoments moments = kw::truncated_moments(low, high);
        CHECK(moments.mean == doctest::Approx(mean).epsilon(1e-9).scale(0));
        CHECK(moments.variance == doctest::Approx(variance).epsilon(1e-8).scale(0));
    }
}

TEST_CASE("truncated moments hold far out, where the closed form fails") {
    // Asymptotic series of the normal's tail: mean a + 1/a - 2/a^3 + 10/a^5, variance 1/a^2 - 6/a^4 + 50/a^6.
    for (const double a : {30.0, 100.0, 1e3, 1e5, 1e8}) {
        const kw::TruncatedMoments tail = kw::truncated_moments(a, endless);
        // Above 1e5 the mean itself has no digits left for the difference.
        if (a <= 1e5)
            CHECK(tail.mean - a ==
                  doctest::Approx(1 / a - 2 / std::pow(a, 3) + 10 / std::pow(a, 5)).epsilon(1e-5).scale(0));
        CHECK(tail.variance ==
              doctest::Approx(1 / (a * a) - 6 / std::pow(a, 4) + 50 / std::pow(a, 6)).epsilon(1e-5).scale(0));
        const kw::TruncatedMoments other = kw::truncated_moments(-endless, -a);
        CHECK(other.mean == -tail.mean);
        CHECK(other.variance == tail.variance);
    }
    // A narrow interval is uniform: variance width^2 / 12.
    for (const double at : {0.0, 1.0, -3.0, 50.0}) {
        const kw::TruncatedMoments narrow = kw::truncated_moments(at, at + 1e-5);
        CHECK(narrow.variance == doctest::Approx(1e-10 / 12.0).epsilon(1e-3).scale(0));
        CHECK(narrow.mean == doctest::Approx(at + 0.5e-5).epsilon(1e-7));
    }
    CHECK(kw::truncated_moments(2.0, 2.0).variance == 0.0);
}

TEST_CASE("one interval gives the exact mean and covariance (grid)") {
    est::Random random(202);
    for (int shop = 0; shop < 12; ++shop) {
        const kw::Belief prior = random_pair(random);
        const kw::Observation seen = random_interval(random);
        const kw::Belief after =
            kw::observe_interval(prior, seen.form, seen.low_mm, seen.high_mm, seen.spread_mm);
        CHECK(off_by(after, on_a_grid(prior, {seen})) < 1e-5);
    }
}

TEST_CASE("an interval far from what was expected still gives the exact mean and covariance (grid)") {
    const kw::Belief prior{{0.0, 0.1}, {0.04, 0.01, 0.01, 0.02}};
    const kw::Form form = est::form("far", {1.0, -1.0});
    for (const double low : {0.7, 1.0}) {
        const kw::Observation seen{form, low, endless, 0.10};
        const kw::Belief after = kw::observe_interval(prior, form, low, endless, 0.10);
        CHECK(off_by(after, on_a_grid(prior, {seen})) < 1e-4);
    }
}

// Matching moments is exact for one interval. For two it is an approximation; a tenth of a sigma is its size
// here.
TEST_CASE("plain readings and two intervals together come near to the exact belief (grid)") {
    est::Random random(203);
    for (int shop = 0; shop < 10; ++shop) {
        const kw::Belief prior = random_pair(random);
        const kw::Form plain = est::form("plain", {1.0, 0.5});
        const std::vector<kw::Observation> seen = {
            random_interval(random), {plain, 0.1, 0.1, 0.2}, random_interval(random)};
        CHECK(off_by(kw::observe_all(prior, seen), on_a_grid(prior, seen)) < 0.1);
    }
}

TEST_CASE("observations of one cut give the same belief to the bit in any order") {
    est::Random random(204);
    for (int shop = 0; shop < 50; ++shop) {
        const kw::Belief prior = random_pair(random);
        std::vector<kw::Observation> seen;
        for (int i = 0; i < 3; ++i) seen.push_back(random_interval(random));
        for (int i = 0; i < 3; ++i) {
            const double value = random.normal(0.2);
            seen.push_back({est::form("plain", {random.normal(), random.normal()}), value, value, 0.1});
        }
        const kw::Belief first = kw::observe_all(prior, seen);
        for (int turn = 0; turn < 6; ++turn) {
            std::swap(seen[random.below(6)], seen[random.below(6)]);
            CHECK(kw::observe_all(prior, seen) == first);
        }
    }
}

TEST_CASE("plain readings are the same together and one by one") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    const std::vector<kw::Observation> seen = {kw::taken(shop.readings[1], 5.7),
                                               kw::taken(shop.readings[6], 0.2)};
    const kw::Belief together = kw::observe_all(prior, seen);
    const kw::Belief apart =
        kw::observe(kw::observe(prior, seen[0].form, 5.7, 0.05), seen[1].form, 0.2, 0.03);
    for (std::size_t i = 0; i < 5; ++i)
        CHECK(together.mean[i] == doctest::Approx(apart.mean[i]).epsilon(1e-12));
}

TEST_CASE("an interval that ends nowhere says nothing; one that closes is a plain reading") {
    const kw::Belief prior{{0.0, 0.1}, {0.04, 0.01, 0.01, 0.02}};
    const kw::Form form = est::form("any", {1.0, -1.0});
    CHECK(kw::observe_interval(prior, form, -endless, endless, 0.05) == prior);
    const kw::Belief plain = kw::observe(prior, form, 0.2, 0.05);
    CHECK(kw::observe_interval(prior, form, 0.2, 0.2, 0.05) == plain);
    const kw::Belief narrow = kw::observe_interval(prior, form, 0.2 - 1e-5, 0.2 + 1e-5, 0.05);
    for (std::size_t i = 0; i < 2; ++i)
        CHECK(narrow.mean[i] == doctest::Approx(plain.mean[i]).epsilon(1e-6).scale(0));
    for (std::size_t i = 0; i < 4; ++i)
        CHECK(narrow.covariance[i] == doctest::Approx(plain.covariance[i]).epsilon(1e-6).scale(0));
}

TEST_CASE("a shoulder gap of zero says that there is none, and nothing more where none was expected") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Reading& gap = shop.readings[7];
    kw::Belief relieved = kw::belief_from_priors(shop);
    const kw::Belief after = kw::observe_all(relieved, {kw::taken(gap, 0.0)});
    CHECK(kw::marginal(after, gap.form).mean_mm < kw::marginal(relieved, gap.form).mean_mm);
    CHECK(kw::marginal(after, gap.form).sd_mm < kw::marginal(relieved, gap.form).sd_mm);

    relieved.mean[est::spacer] += 5.0;  // a tongue five millimetres short: zero is no news
    const kw::Belief same = kw::observe_all(relieved, {kw::taken(gap, 0.0)});
    CHECK(same.mean[est::fence] == doctest::Approx(relieved.mean[est::fence]).epsilon(1e-12));

    relieved.mean[est::spacer] -= 11.0;  // a gap was all but certain: zero takes the belief to about zero
    const kw::Belief surprised = kw::observe_all(relieved, {kw::taken(gap, 0.0)});
    CHECK(std::abs(kw::marginal(surprised, gap.form).mean_mm) < 0.05);
}

TEST_CASE("a gap that is there is a plain reading") {
    const kw::Reading gap = est::locking_rabbet().readings[7];
    CHECK(kw::taken(gap, 0.2).is_plain());
    CHECK_FALSE(kw::taken(gap, 0.0).is_plain());
    CHECK(kw::taken(est::locking_rabbet().readings[8], 0.0).is_plain());
    CHECK(kw::taken(gap, 0.2, 0.25).spread_mm == 0.25);
}

TEST_CASE("the five feels cover every fit, each once, from tight to loose") {
    const auto& table = kw::feel_table();
    CHECK(table.front().low_mm == -endless);
    CHECK(table.back().high_mm == endless);
    for (std::size_t i = 0; i < table.size(); ++i) {
        CHECK(kw::feel_of_word(table[i].word) == table[i].feel);
        CHECK(kw::meaning(table[i].feel).word == table[i].word);
        CHECK(table[i].low_mm < table[i].high_mm);
        if (i > 0) CHECK(table[i].low_mm == table[i - 1].high_mm);
    }
    CHECK_FALSE(kw::feel_of_word("snug"));
}

TEST_CASE("each feel moves the fit to its own side, and the tighter word to the tighter fit") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief prior = kw::belief_from_priors(shop);
    double last = -endless;
    double mean = 0.0;
    for (const kw::FeelMeaning& row : kw::feel_table()) {
        const kw::Belief after = kw::observe_all(prior, {kw::felt(est::fit_form(), row.feel)});
        const kw::Marginal fit = kw::marginal(after, est::fit_form());
        CHECK(fit.mean_mm > last);
        CHECK(fit.sd_mm < kw::marginal(prior, est::fit_form()).sd_mm);
        last = fit.mean_mm;
        const kw::Marginal before = kw::marginal(prior, est::fit_form());
        const double sd = std::hypot(before.sd_mm, kw::feel_spread_mm);
        mean += fit.mean_mm *
                kw::normal_between((row.low_mm - before.mean_mm) / sd, (row.high_mm - before.mean_mm) / sd);
    }
    // Law of total expectation: before anything is felt, the five answers average out to what was believed.
    CHECK(mean == doctest::Approx(kw::marginal(prior, est::fit_form()).mean_mm).epsilon(1e-9));
}

TEST_CASE("an innovation counts the sigmas between a reading and what was expected") {
    const kw::Belief prior{{10.0}, {0.09}};
    const kw::Form form = est::form("lip", {1.0});
    const kw::Innovation plain = kw::innovation(prior, {form, 12.5, 12.5, 0.4});
    CHECK(plain.expected_mm == 10.0);
    CHECK(plain.sd_mm == doctest::Approx(0.5));
    CHECK(plain.sigmas == doctest::Approx(5.0));
    CHECK(kw::innovation(prior, {form, 9.0, 9.0, 0.4}).sigmas == doctest::Approx(-2.0));
    CHECK(kw::innovation(prior, {form, 9.0, endless, 0.4}).sigmas == 0.0);
    CHECK(kw::innovation(prior, {form, -endless, 8.5, 0.4}).sigmas == doctest::Approx(-3.0));
    CHECK(kw::innovation(prior, {form, 12.5, 12.5, endless}).sigmas == 0.0);
}
