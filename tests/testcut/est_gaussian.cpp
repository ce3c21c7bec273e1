// The belief and its update by linear readings, against Eigen (an outside library of linear algebra) and the
// GUM.

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <limits>

#include "est_shop.h"
#include "testcut/gaussian.h"

namespace {

// Few kinds of Eigen's expressions, as each costs seconds to compile.
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

Vector vector_of(const std::vector<double>& values) {
    return Eigen::Map<const Vector>(values.data(), Eigen::Index(values.size()));
}

Matrix matrix_of(const kw::Belief& belief) {
    const auto n = Eigen::Index(belief.size());
    return Eigen::Map<const Matrix>(belief.covariance.data(), n,
                                    n);  // symmetric: by rows or columns is the same
}

kw::Belief belief_of(const Vector& mean, const Matrix& covariance) {
    return {{mean.data(), mean.data() + mean.size()},
            {covariance.data(), covariance.data() + covariance.size()}};
}

Matrix solved(const Matrix& matrix, const Matrix& right) {
    return Eigen::ColPivHouseholderQR<Matrix>(matrix).solve(right);
}

using Spectrum = Eigen::SelfAdjointEigenSolver<Matrix>;

// A belief about n controls that are correlated in some way.
kw::Belief random_belief(est::Random& random, std::size_t n) {
    const auto size = Eigen::Index(n);
    Matrix root(size, size);
    for (double& entry : root.reshaped()) entry = random.normal(0.3);
    Vector mean(size);
    for (double& entry : mean) entry = random.normal(10.0);
    return belief_of(mean, root * root.transpose() + 0.01 * Matrix::Identity(size, size));
}

struct Taken {
    kw::Form form;
    double value;
    double spread;
};

std::vector<Taken> random_readings(est::Random& random, std::size_t n, std::size_t count) {
    std::vector<Taken> all;
    for (std::size_t r = 0; r < count; ++r) {
        Taken taken{est::form("reading", std::vector<double>(n), random.normal()), random.normal(10.0),
                    random.uniform(0.01, 0.5)};
        for (double& weight : taken.form.weights) weight = double(random.below(3)) - 1.0;
        all.push_back(taken);
    }
    return all;
}

kw::Belief take(kw::Belief belief, const std::vector<Taken>& readings) {
    for (const Taken& taken : readings) belief = kw::observe(belief, taken.form, taken.value, taken.spread);
    return belief;
}

double furthest(const kw::Belief& a, const kw::Belief& b) {
    double most = 0.0;
    for (std::size_t i = 0; i < a.mean.size(); ++i) most = std::max(most, std::abs(a.mean[i] - b.mean[i]));
    for (std::size_t i = 0; i < a.covariance.size(); ++i)
        most = std::max(most, std::abs(a.covariance[i] - b.covariance[i]));
    return most;
}

// Prior and readings as rows of one least-squares problem, each in its own sigmas, and its solution by QR.
kw::Belief by_least_squares(const kw::Belief& prior, const std::vector<Taken>& readings) {
    const auto n = Eigen::Index(prior.size());
    const Matrix whitening = Spectrum(matrix_of(prior)).operatorInverseSqrt();
    Matrix rows(n + Eigen::Index(readings.size()), n);
    Matrix right(rows.rows(), 1);
    rows.topRows(n) = whitening;
    right.topRows(n) = whitening * vector_of(prior.mean);
    for (std::size_t r = 0; r < readings.size(); ++r) {
        const Taken& taken = readings[r];
        const auto row = n + Eigen::Index(r);
        for (Eigen::Index i = 0; i < n; ++i) rows(row, i) = taken.form.weights[std::size_t(i)] / taken.spread;
        right(row, 0) = (taken.value - taken.form.constant) / taken.spread;
    }
    return belief_of(solved(rows, right), solved(rows.transpose() * rows, Matrix::Identity(n, n)));
}

// The normal distribution conditional on W x = value: P W' (W P W')^-1.
kw::Belief given_exactly(const kw::Belief& prior, const Matrix& w, const Vector& value) {
    const Matrix p = matrix_of(prior);
    const Matrix gain = solved(w * p * w.transpose(), w * p).transpose();
    const Vector off = value - w * vector_of(prior.mean);
    const Matrix told = gain * w;
    return belief_of(vector_of(prior.mean) + gain * off, p - told * p);
}

}  // namespace

TEST_CASE("the belief after readings is the weighted least squares of prior and readings (Eigen's QR)") {
    est::Random random(101);
    for (int shop = 0; shop < 200; ++shop) {
        const std::size_t n = 1 + random.below(8);
        const kw::Belief prior = random_belief(random, n);
        const auto readings = random_readings(random, n, random.below(12));
        CHECK(furthest(take(prior, readings), by_least_squares(prior, readings)) < 1e-8);
    }
}

TEST_CASE("exact readings leave the conditional distribution (Eigen's QR), and are met exactly") {
    est::Random random(102);
    for (int shop = 0; shop < 100; ++shop) {
        const std::size_t n = 3 + random.below(4);
        const kw::Belief prior = random_belief(random, n);
        kw::Form a = est::form("a", std::vector<double>(n, 0.0));
        kw::Form b = est::form("b", std::vector<double>(n, 0.0));
        Matrix w = Matrix::Zero(2, Eigen::Index(n));
        w(0, 0) = a.weights[0] = 1.0;
        w(0, 1) = a.weights[1] = 1.0;
        w(1, 1) = b.weights[1] = 1.0;
        w(1, 2) = b.weights[2] = -2.0;
        const kw::Belief after = kw::observe(kw::observe(prior, a, 3.0, 0.0), b, -1.0, 0.0);
        CHECK(furthest(after, given_exactly(prior, w, Eigen::Vector2d(3.0, -1.0))) < 1e-8);
        CHECK(kw::marginal(after, a).mean_mm == doctest::Approx(3.0));
        CHECK(kw::marginal(after, b).sd_mm < 1e-6);
        CHECK(furthest(kw::observe(after, a, 3.1, 0.0), after) == 0.0);  // known: no second exact reading
    }
}

TEST_CASE("the order of readings does not matter") {
    est::Random random(103);
    for (int shop = 0; shop < 200; ++shop) {
        const std::size_t n = 2 + random.below(6);
        const kw::Belief prior = random_belief(random, n);
        auto readings = random_readings(random, n, 8);
        const kw::Belief forward = take(prior, readings);
        std::reverse(readings.begin(), readings.end());
        CHECK(furthest(forward, take(prior, readings)) < 1e-10);
        std::swap(readings[random.below(8)], readings[random.below(8)]);
        CHECK(furthest(forward, take(prior, readings)) < 1e-10);
    }
}

TEST_CASE("a reading with no information changes nothing, to the bit") {
    est::Random random(104);
    const kw::Belief prior = random_belief(random, 5);
    const kw::Form form = est::form("any", {1, 2, 0, -1, 0});
    CHECK(kw::observe(prior, form, 12.0, est::endless) == prior);
    const kw::Form nothing = est::form("nothing", {0, 0, 0, 0, 0}, 1.0);
    CHECK(furthest(kw::observe(prior, nothing, 12.0, 0.1), prior) == 0.0);
}

TEST_CASE("the covariance stays symmetric and non-negative through hundreds of sharp and exact readings") {
    est::Random random(105);
    for (int shop = 0; shop < 20; ++shop) {
        kw::Belief belief = random_belief(random, 6);
        for (double& entry : belief.covariance) entry *= 100.0;  // several mm
        const double rounding = 1e-14 * matrix_of(belief).trace();
        for (const Taken& taken : random_readings(random, 6, 300)) {
            const double spread = random.below(4) == 0 ? 0.0 : taken.spread * 1e-4;
            belief = kw::observe(belief, taken.form, taken.value, spread);
            for (std::size_t i = 0; i < 6; ++i)
                for (std::size_t j = 0; j < i; ++j)
                    REQUIRE(belief.covariance[i * 6 + j] == belief.covariance[j * 6 + i]);
            REQUIRE(Spectrum(matrix_of(belief)).eigenvalues().minCoeff() > -rounding);  // nor not a number
        }
    }
}

TEST_CASE("readings never make a control less sure") {
    est::Random random(106);
    for (int shop = 0; shop < 100; ++shop) {
        const kw::Belief prior = random_belief(random, 5);
        const kw::Belief after = take(prior, random_readings(random, 5, 4));
        for (std::size_t i = 0; i < 5; ++i) CHECK(after.covariance[i * 6] <= prior.covariance[i * 6] + 1e-12);
    }
}

// JCGM 100:2008 (GUM) 5.1.2, eq. 10, with 4.3.7 for the rectangular terms; formula from memory, figures
// computed.
TEST_CASE(
    "GUM: three independent rectangular terms of 0.1 mm combine to a standard uncertainty of 0.1000 mm") {
    kw::Model model;
    for (const char* name : {"a", "b", "c"})
        model.controls.push_back({name, 0.0, 0.1 / std::sqrt(3.0), false, 0.0, 0.0, 0.0, 0.0});
    const kw::Belief belief = kw::belief_from_priors(model);
    CHECK(kw::marginal(belief, est::form("sum", {1, 1, 1})).sd_mm == doctest::Approx(0.1000).epsilon(1e-12));
    CHECK(2.0 * kw::marginal(belief, est::form("U, k = 2", {1, -1, 1})).sd_mm == doctest::Approx(0.200));
    // Sensitivities of 1, 2 and 2 give three times one term's own.
    CHECK(kw::marginal(belief, est::form("weighted", {1, 2, 2})).sd_mm ==
          doctest::Approx(0.3 / std::sqrt(3.0)));
}

// JCGM 100:2008 (GUM) 5.2.2, the example of ten resistors of 1000 ohm; from memory.
TEST_CASE("GUM: ten terms of 0.1 calibrated against one standard combine to 1, not to 0.32") {
    const std::vector<double> ones(10, 1.0);
    const kw::Belief correlated{std::vector<double>(10, 1000.0), std::vector<double>(100, 0.01)};
    CHECK(kw::marginal(correlated, est::form("sum", ones)).mean_mm == doctest::Approx(10000.0));
    CHECK(kw::marginal(correlated, est::form("sum", ones)).sd_mm == doctest::Approx(1.0));
    kw::Belief independent{std::vector<double>(10, 1000.0), std::vector<double>(100, 0.0)};
    for (std::size_t i = 0; i < 10; ++i) independent.covariance[i * 11] = 0.01;
    CHECK(kw::marginal(independent, est::form("sum", ones)).sd_mm == doctest::Approx(0.32).epsilon(0.02));
}

TEST_CASE("reading a sum makes its terms lean on each other, and their difference no surer") {
    const kw::Belief prior{{5.0, 7.0}, {0.04, 0.0, 0.0, 0.04}};
    const kw::Belief after = kw::observe(prior, est::form("sum", {1, 1}), 12.3, 0.0);
    CHECK(after.mean[0] == doctest::Approx(5.15));
    CHECK(after.mean[1] == doctest::Approx(7.15));
    CHECK(kw::covariance(after, est::form("a", {1, 0}), est::form("b", {0, 1})) == doctest::Approx(-0.02));
    CHECK(kw::marginal(after, est::form("difference", {1, -1})).sd_mm == doctest::Approx(std::sqrt(0.08)));
}

TEST_CASE("a move shifts its control, adds jitter and gain error to it alone, and no move adds nothing") {
    const kw::Model shop = est::locking_rabbet();
    const kw::Belief before = kw::belief_from_priors(shop);
    const kw::Belief after = kw::predict_move(shop, before, {est::height, -0.5});
    CHECK(after.mean[est::height] == doctest::Approx(before.mean[est::height] - 0.5));
    CHECK(after.covariance[est::height * 6] == doctest::Approx(0.09 + 0.03 * 0.03 + 0.01 * 0.01));
    for (const std::size_t other : {est::fence, est::kerf, est::spacer, est::stock}) {
        CHECK(after.mean[other] == before.mean[other]);
        CHECK(after.covariance[other * 6] == before.covariance[other * 6]);
    }
    CHECK(kw::predict_move(shop, before, {est::height, 0.0}) == before);
}

TEST_CASE("a move blurs what was read, but only in the control that moved") {
    const kw::Model shop = est::locking_rabbet();
    kw::Belief belief = kw::belief_from_priors(shop);
    belief = kw::observe(belief, est::fit_form(), 0.02, 0.001);
    const kw::Belief moved = kw::predict_move(shop, belief, {est::height, 0.1});
    CHECK(kw::marginal(moved, est::fit_form()).mean_mm ==
          doctest::Approx(kw::marginal(belief, est::fit_form()).mean_mm + 0.1));
    CHECK(kw::marginal(moved, est::fit_form()).sd_mm ==
          doctest::Approx(std::hypot(kw::marginal(belief, est::fit_form()).sd_mm, 0.03, 0.02 * 0.1)));
    const kw::Form lip = est::form("lip", {1, 0, 0, 0, 0});
    CHECK(kw::marginal(moved, lip).sd_mm == kw::marginal(belief, lip).sd_mm);
}
