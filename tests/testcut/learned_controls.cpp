// Gains, offsets and test pieces: what a model knows beside where its controls stand.
#include <doctest/doctest.h>

#include <Eigen/Dense>
#include <cmath>

#include "est_shop.h"
#include "testcut/model.h"
#include "testcut/move_search.h"
#include "testcut/observe.h"

namespace {

// A height on a scale whose offset and whose moves' gain are unknown.
kw::Model scale() {
    kw::Model model;
    kw::Control height{"height", 6.0, 0.03, true, 0.05, 0.03, 0.01, 1.0};
    height.gain = 1;
    height.offset = 2;
    model.controls = {height, {"height gain", 0.0, 0.03, false}, {"height offset", 0.0, 0.25, false}};
    model.readings = {{est::form("depth", {1, 0, 0}), 0.05, kw::ReadingKind::plain}};
    model.outcomes = {{est::form("depth", {1, 0, 0}), 6.0, 0.1, 0.1}};
    return model;
}

Eigen::MatrixXd matrix(const kw::Belief& belief) {
    const auto n = Eigen::Index(belief.size());
    return Eigen::Map<const Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>>(
        belief.covariance.data(), n, n);
}

}  // namespace

TEST_CASE("a control begins where its scale's offset puts it, and shares the offset's doubt") {
    const kw::Belief prior = kw::belief_from_priors(scale());
    const Eigen::MatrixXd p = matrix(prior);
    CHECK(p(0, 0) == doctest::Approx(0.03 * 0.03 + 0.25 * 0.25));
    CHECK(p(0, 2) == doctest::Approx(0.25 * 0.25));
    CHECK(p(2, 0) == p(0, 2));
}

TEST_CASE("moves with a gain are F P F' + Q (Eigen), in random chains of moves and readings") {
    est::Random random(901);
    const kw::Model model = scale();
    for (int chain = 0; chain < 50; ++chain) {
        kw::Belief belief = kw::belief_from_priors(model);
        Eigen::MatrixXd p = matrix(belief);
        Eigen::VectorXd m(3);
        m << 6.0, 0.0, 0.0;
        for (int step = 0; step < 6; ++step) {
            const double by = random.normal(0.5);
            belief = kw::predict_move(model, belief, {0, by});
            Eigen::Matrix3d f = Eigen::Matrix3d::Identity();
            f(0, 1) = by;
            m = f * m + Eigen::Vector3d(by, 0, 0);
            p = f * p * f.transpose();
            p(0, 0) += 0.03 * 0.03 + std::pow(0.01 * by, 2);
            const double read = m(0) + random.normal(0.1);
            belief = kw::observe(belief, model.readings[0].form, read, 0.05);
            const Eigen::Vector3d gain = p.col(0) / (p(0, 0) + 0.05 * 0.05);
            m += gain * (read - m(0));
            p -= gain * p.row(0);
        }
        for (int i = 0; i < 3; ++i) {
            CHECK(belief.mean[std::size_t(i)] == doctest::Approx(m(i)).epsilon(1e-9).scale(1.0));
            for (int j = 0; j < 3; ++j) CHECK(std::abs(matrix(belief)(i, j) - p(i, j)) < 1e-12);
        }
    }
}

TEST_CASE(
    "a handwheel whose moves come out a tenth long is found out by a long move, and told shorter moves "
    "then") {
    kw::Model model = scale();
    model.controls[1].spread_mm = 0.1;
    kw::Belief belief = kw::belief_from_priors(model);
    belief = kw::observe(belief, model.readings[0].form, 3.0, 0.02);
    belief = kw::predict_move(model, belief, {0, 2.5});
    belief = kw::observe(belief, model.readings[0].form, 3.0 + 2.75, 0.02);
    CHECK(belief.mean[1] == doctest::Approx(0.1).epsilon(0.15));
    kw::Belief again = belief;
    again.mean[0] = 5.0;
    const kw::BestMove best = kw::best_move(model, again);
    REQUIRE(best.moves.size() == 1);
    CHECK(best.moves[0].by_mm == doctest::Approx(0.9).epsilon(0.03));
}

TEST_CASE("fresh ends are another piece: what was known of the old piece is gone, the rest stays") {
    kw::Model model = scale();
    model.controls.push_back({"piece", 0.0, 0.05, false});
    model.controls.back().of_test_ends = true;
    for (kw::Reading& reading : model.readings) reading.form.weights.push_back(1.0);
    for (kw::Outcome& outcome : model.outcomes) outcome.form.weights.push_back(0.0);
    kw::Belief belief = kw::belief_from_priors(model);
    belief = kw::observe(belief, model.readings[0].form, 6.3, 0.01);
    const kw::Belief fresh = kw::predict_fresh_ends(model, belief);
    CHECK(fresh.mean[3] == 0.0);
    CHECK(matrix(fresh)(3, 3) == doctest::Approx(0.05 * 0.05));
    CHECK(matrix(fresh).row(3).head(3).norm() == 0.0);
    CHECK(fresh.mean[0] == belief.mean[0]);
    CHECK(matrix(fresh)(0, 0) == matrix(belief)(0, 0));
}
