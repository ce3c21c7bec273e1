#include "testcut/doubt.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

#include "testcut/normal.h"

namespace kw {

namespace {

constexpr double inch_mm = 25.4;
// A slip of no known kind puts a reading or a control anywhere about where it should be, one sigma.
constexpr double anywhere_mm = 5.0;

struct SlipKind {
    Slip slip;
    double factor;  // what was given is the true reading times this
    double share;   // of all slips; common practice, no source
};
constexpr std::array<SlipKind, 5> slip_kinds = {{{Slip::ten_times, 10.0, 0.20},
                                                 {Slip::tenth, 0.1, 0.03},
                                                 {Slip::inches, 1.0 / inch_mm, 0.15},
                                                 {Slip::millimetres, inch_mm, 0.04},
                                                 {Slip::sign, -1.0, 0.50}}};
constexpr double other_share = 0.08;
// Of moves that were not made as told.
constexpr double turned_share = 0.5, not_made_share = 0.3;

// In logarithms: a reading a hundred sigmas off has no density left that a double could hold.
double log_density(double value, double mean, double variance) {
    const double off = value - mean;
    return -0.5 * (off * off / variance + std::log(2.0 * std::numbers::pi * variance));
}

double log_sum(double a, double b) {
    const double most = std::max(a, b);
    return std::isinf(most) ? most : most + std::log1p(std::exp(std::min(a, b) - most));
}

// The plain observations together: what is expected of them, and how they hang together.
class Plain {
public:
    Plain(const Belief& belief, const std::vector<Observation>& all) {
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].is_plain()) which_.push_back(i);
        const std::size_t n = which_.size();
        off_.resize(n);
        inverse_.assign(n * n, 0.0);
        for (std::size_t a = 0; a < n; ++a) {
            const Observation& one = all[which_[a]];
            forms_.push_back(&one.form);
            off_[a] = one.low_mm - value_at(one.form, belief.mean);
            for (std::size_t b = 0; b <= a; ++b)
                inverse_[a * n + b] = inverse_[b * n + a] = covariance(belief, one.form, *forms_[b]);
            inverse_[a * n + a] += std::max(one.spread_mm * one.spread_mm, known_variance_mm2);
        }
        invert();
        weighed_ = times(off_);
    }

    std::size_t size() const { return which_.size(); }
    std::size_t which(std::size_t a) const { return which_[a]; }
    double own(std::size_t a) const { return inverse_[a * size() + a]; }
    double weighed(std::size_t a) const { return weighed_[a]; }
    // By how much a mm of the control moves each observation.
    std::vector<double> pull(std::size_t control) const {
        std::vector<double> out;
        for (const Form* form : forms_) out.push_back(form->weights[control]);
        return out;
    }
    std::vector<double> times(const std::vector<double>& v) const {
        const std::size_t n = size();
        std::vector<double> out(n, 0.0);
        for (std::size_t a = 0; a < n; ++a)
            for (std::size_t b = 0; b < n; ++b) out[a] += inverse_[a * n + b] * v[b];
        return out;
    }
    static double dot(const std::vector<double>& a, const std::vector<double>& b) {
        double sum = 0.0;
        for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
        return sum;
    }
    const std::vector<double>& off() const { return off_; }

private:
    // Gauss-Jordan in place; the matrix is positive definite, so no pivoting is needed.
    void invert() {
        const std::size_t n = size();
        for (std::size_t p = 0; p < n; ++p) {
            const double pivot = 1.0 / inverse_[p * n + p];
            inverse_[p * n + p] = 1.0;
            for (std::size_t j = 0; j < n; ++j) inverse_[p * n + j] *= pivot;
            for (std::size_t i = 0; i < n; ++i) {
                if (i == p) continue;
                const double factor = inverse_[i * n + p];
                inverse_[i * n + p] = 0.0;
                for (std::size_t j = 0; j < n; ++j) inverse_[i * n + j] -= factor * inverse_[p * n + j];
            }
        }
    }

    std::vector<std::size_t> which_;
    std::vector<const Form*> forms_;
    std::vector<double> off_, inverse_, weighed_;
};

// A reading that is wrong by itself, the others being right.
Doubt doubt_reading(const Plain& plain, std::size_t a, double value, double rate) {
    const double variance = 1.0 / plain.own(a);
    const double off = plain.weighed(a) * variance;  // from what all the others expect
    const double expected = value - off;
    Doubt doubt{Doubt::About::reading,     plain.which(a), expected, value,
                off / std::sqrt(variance), Slip::none,     0.0};
    double as_slip =
        std::log(other_share) + log_density(value, expected, variance + anywhere_mm * anywhere_mm);
    double likeliest = as_slip;
    for (const SlipKind& kind : slip_kinds) {
        const double likelihood = std::log(kind.share / std::abs(kind.factor)) +
                                  log_density(value / kind.factor, expected, variance);
        as_slip = log_sum(as_slip, likelihood);
        if (likelihood <= likeliest) continue;
        likeliest = likelihood;
        doubt.looks_like = kind.slip;
    }
    doubt.log_odds = std::log(rate) + as_slip - log_density(value, expected, variance);
    return doubt;
}

// A control that does not stand where it was to: the readings all right.
Doubt doubt_control(const Plain& plain, const Belief& before, std::size_t control, double moved_mm,
                    double rate) {
    const std::vector<double> pull = plain.pull(control);
    const std::vector<double> weighed = plain.times(pull);
    const double across = Plain::dot(pull, weighed);
    const double along = Plain::dot(weighed, plain.off());
    const double wide = anywhere_mm * anywhere_mm;
    Doubt doubt{moved_mm == 0.0 ? Doubt::About::setting : Doubt::About::move,
                control,
                before.mean[control],
                0.0,
                0.0,
                Slip::none,
                -std::numeric_limits<double>::infinity()};
    if (across <= 0.0) return doubt;
    doubt.found_mm = doubt.expected_mm + along / across;
    doubt.sigmas = along / std::sqrt(across);
    // The logarithm of the likelihood ratio of a shift by d: along d - across d^2 / 2; of an unknown one, of its mean over d.
    const auto shifted = [&](double d) { return along * d - 0.5 * across * d * d; };
    const double unknown =
        0.5 * wide * along * along / (1.0 + wide * across) - 0.5 * std::log(1.0 + wide * across);
    if (moved_mm == 0.0) {
        doubt.log_odds = std::log(rate) + unknown;
        return doubt;
    }
    const double turned = std::log(turned_share) + shifted(-2.0 * moved_mm);
    const double not_made = std::log(not_made_share) + shifted(-moved_mm);
    const double other = std::log(1.0 - turned_share - not_made_share) + unknown;
    doubt.log_odds = std::log(rate) + log_sum(log_sum(turned, not_made), other);
    if (turned > not_made) doubt.looks_like = Slip::sign;
    return doubt;
}

// A word that hardly anyone would have said, by all that was measured.
Doubt doubt_word(const Belief& measured, const Observation& word, std::size_t which, double rate) {
    const Innovation surprise = innovation(measured, word);
    const double chance = normal_between((word.low_mm - surprise.expected_mm) / surprise.sd_mm,
                                         (word.high_mm - surprise.expected_mm) / surprise.sd_mm);
    constexpr double any_other_word = 0.2;
    return {Doubt::About::reading,
            which,
            surprise.expected_mm,
            0.0,
            surprise.sigmas,
            Slip::none,
            std::log(rate * any_other_word / std::max(chance, 1e-300))};
}

}  // namespace

std::optional<Doubt> find_doubt(const Model& model, const Belief& before, const std::vector<Move>& moves,
                                const std::vector<Observation>& observations, const DoubtRates& rates) {
    std::optional<Doubt> worst;
    const auto weigh = [&](const Doubt& doubt) {
        if (doubt.log_odds > 0.0 && (!worst || doubt.log_odds > worst->log_odds)) worst = doubt;
    };
    const Plain plain(before, observations);
    for (std::size_t a = 0; a < plain.size(); ++a)
        weigh(doubt_reading(plain, a, observations[plain.which(a)].low_mm, rates.reading));
    for (std::size_t c = 0; c < model.controls.size() && plain.size() > 0; ++c) {
        if (!model.controls[c].movable) continue;
        double moved = 0.0;
        for (const Move& move : moves)
            if (move.control == c) moved += move.by_mm;
        if (moved != 0.0 || moves.empty())
            weigh(doubt_control(plain, before, c, moved, moved == 0.0 ? rates.setting : rates.move));
    }
    Belief measured = before;
    for (const Observation& one : observations)
        if (one.is_plain()) measured = observe(measured, one.form, one.low_mm, one.spread_mm);
    for (std::size_t i = 0; i < observations.size(); ++i)
        if (!observations[i].is_plain()) weigh(doubt_word(measured, observations[i], i, rates.reading));
    return worst;
}

std::optional<Doubt> otherwise_set(const Model& model, const Belief& before,
                                   const std::vector<Observation>& observations,
                                   const std::vector<std::string>& by_hand) {
    const Plain plain(before, observations);
    std::optional<Doubt> best;
    for (std::size_t c = 0; c < model.controls.size() && plain.size() > 0; ++c) {
        const Control& control = model.controls[c];
        const bool is_by_hand =
            by_hand.empty() || std::find(by_hand.begin(), by_hand.end(), control.name) != by_hand.end();
        if (!control.movable || !is_by_hand) continue;
        const Doubt doubt = doubt_control(plain, before, c, 0.0, 1.0);
        if (doubt.log_odds > 0.0 && doubt.found_mm >= 0.0 && (!best || doubt.log_odds > best->log_odds))
            best = doubt;
    }
    return best;
}

}  // namespace kw
