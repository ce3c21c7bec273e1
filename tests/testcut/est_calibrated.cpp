// Calibration: when the estimator says 90 %, nine in ten of the shops must fit. The shops are drawn from the
// priors and the readings from the model, so only the estimator's own arithmetic is on trial.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "est_shop.h"
#include "testcut/chance.h"
#include "testcut/move_search.h"
#include "testcut/observe.h"

namespace {

// Chances said against outcomes seen, in ten bins.
class Reliability {
public:
    void add(double chance, bool fits) {
        Bin& bin = bins_[std::min<std::size_t>(9, std::size_t(chance * 10.0))];
        bin.count += 1.0;
        bin.said += chance;
        bin.variance += chance * (1.0 - chance);
        bin.seen += fits ? 1.0 : 0.0;
    }

    // Each bin's frequency within four sigmas of what was said, and `slack` for what moment matching
    // approximates.
    void check(double slack) const {
        double used = 0.0;
        for (const Bin& bin : bins_) {
            if (bin.count < 30.0) continue;
            used += bin.count;
            CAPTURE(bin.count);
            CAPTURE(bin.said / bin.count);
            CHECK(std::abs(bin.seen - bin.said) < 4.0 * std::sqrt(bin.variance) + slack * bin.count + 1.0);
        }
        CHECK(used > 1000.0);
    }

private:
    struct Bin {
        double count = 0.0;
        double said = 0.0;
        double seen = 0.0;
        double variance = 0.0;
    };
    std::array<Bin, 10> bins_{};
};

bool fits(const kw::Model& shop, const std::vector<double>& truth) {
    return std::all_of(shop.outcomes.begin(), shop.outcomes.end(), [&](const kw::Outcome& outcome) {
        const double value = kw::value_at(outcome.form, truth);
        return value >= outcome.low_mm() && value <= outcome.high_mm();
    });
}

kw::Observation take(const kw::Reading& reading, const std::vector<double>& truth, est::Random& random) {
    return kw::taken(reading, est::read_off(reading, truth, random));
}

kw::Observation feel(const std::vector<double>& truth, est::Random& random) {
    const double at = kw::value_at(est::fit_form(), truth) + random.normal(kw::feel_spread_mm);
    for (const kw::FeelMeaning& row : kw::feel_table())
        if (at <= row.high_mm) return kw::felt(est::fit_form(), row.feel);
    return kw::felt(est::fit_form(), kw::Feel::rattles);
}

void make(const kw::Model& shop, const std::vector<kw::Move>& moves, std::vector<double>& truth,
          est::Random& random) {
    for (const kw::Move& move : moves) {
        const kw::Control& control = shop.controls[move.control];
        truth[move.control] += move.by_mm + random.normal(control.move_spread_mm) +
                               random.normal(control.move_gain_spread) * move.by_mm;
    }
}

// A shop some way into its test cuts, where chances of all sizes occur.
kw::Model settled_rabbet() {
    kw::Model shop = est::locking_rabbet();
    for (kw::Control& control : shop.controls) control.spread_mm *= 0.4;
    return shop;
}

}  // namespace

TEST_CASE("calibrated: any subset of readings, zero gaps among them; before the move and after it") {
    est::Random random(601);
    Reliability now;
    Reliability after;
    for (int s = 0; s < 4000; ++s) {
        const kw::Model shop = s % 2 == 0 ? settled_rabbet() : est::locking_rabbet();
        std::vector<double> truth = est::draw(shop, random);
        std::vector<kw::Observation> seen;
        for (const kw::Reading& reading : shop.readings)
            if (random.below(3) == 0) seen.push_back(take(reading, truth, random));
        const kw::Belief belief = kw::observe_all(kw::belief_from_priors(shop), seen);
        now.add(kw::chance_in_tolerance(shop, belief), fits(shop, truth));
        const kw::BestMove best = kw::best_move(shop, belief);
        make(shop, best.moves, truth, random);
        after.add(best.chance_after, fits(shop, truth));
    }
    now.check(0.0);
    after.check(0.0);
}

TEST_CASE("calibrated: feels only, one or two hands, through three cuts") {
    est::Random random(602);
    Reliability now;
    Reliability after;
    for (int s = 0; s < 3000; ++s) {
        const kw::Model shop = settled_rabbet();
        std::vector<double> truth = est::draw(shop, random);
        kw::Belief belief = kw::belief_from_priors(shop);
        for (int cut = 0; cut < 3; ++cut) {
            std::vector<kw::Observation> seen = {feel(truth, random)};
            if (random.below(2) == 0) seen.push_back(feel(truth, random));
            belief = kw::observe_all(belief, seen);
            now.add(kw::chance_in_tolerance(shop, belief), fits(shop, truth));
            const kw::BestMove best = kw::best_move(shop, belief);
            make(shop, best.moves, truth, random);
            belief = kw::predict_moves(shop, belief, best.moves);
            after.add(best.chance_after, fits(shop, truth));
        }
    }
    now.check(0.02);
    after.check(0.02);
}

TEST_CASE("calibrated: errors counted in the belief's own sigmas are standard normal") {
    est::Random random(603);
    const kw::Model shop = est::locking_rabbet();
    std::array<double, 2> squares{};
    constexpr int shops = 3000;
    for (int s = 0; s < shops; ++s) {
        const std::vector<double> truth = est::draw(shop, random);
        std::vector<kw::Observation> seen;
        for (const kw::Reading& reading : shop.readings)
            if (random.below(2) == 0) seen.push_back(take(reading, truth, random));
        const kw::Belief belief = kw::observe_all(kw::belief_from_priors(shop), seen);
        const kw::Marginal fit = kw::marginal(belief, est::fit_form());
        squares[0] += std::pow((fit.mean_mm - kw::value_at(est::fit_form(), truth)) / fit.sd_mm, 2) / shops;
        // And a reading to come, against its innovation.
        const kw::Observation next = take(shop.readings[4], truth, random);
        squares[1] += std::pow(kw::innovation(belief, next).sigmas, 2) / shops;
    }
    // The mean of n squared standard normals has the spread sqrt(2 / n); four of them.
    for (const double square : squares) CHECK(std::abs(square - 1.0) < 4.0 * std::sqrt(2.0 / shops));
}
