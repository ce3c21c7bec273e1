#include "testcut/match_row.h"

#include <algorithm>

#include "testcut/joint_model.h"

namespace kw {
namespace {

const std::string row_cut = "row cut before";

bool has_row_outcome(const Model& model) {
    return std::any_of(model.outcomes.begin(), model.outcomes.end(),
                       [](const Outcome& outcome) { return outcome.form.name == "row"; });
}

// Every form of the model, to which a control more is nothing.
void add_control(Model& model, Control control) {
    model.controls.push_back(std::move(control));
    for (Reading& reading : model.readings) reading.form.weights.push_back(0.0);
    for (Outcome& outcome : model.outcomes) outcome.form.weights.push_back(0.0);
    for (Form& form : model.removed) form.weights.push_back(0.0);
}

// The belief with its control `at`, which may be one more than it has, known as the form is: exactly that sum of the others.
Belief holding(const Belief& belief, std::size_t at, const Form& form) {
    const std::size_t n = std::max(belief.size(), at + 1);
    Belief out{std::vector<double>(n, 0.0), std::vector<double>(n * n, 0.0)};
    for (std::size_t i = 0; i < belief.size(); ++i) {
        out.mean[i] = belief.mean[i];
        for (std::size_t j = 0; j < belief.size(); ++j)
            out.covariance[i * n + j] = belief.covariance[i * belief.size() + j];
    }
    const auto with = [&](std::size_t i) {
        double sum = 0.0;
        for (std::size_t j = 0; j < n; ++j)
            if (j != at) sum += form.weights[j] * out.covariance[i * n + j];
        return sum;
    };
    double variance = 0.0;
    out.mean[at] = form.constant;
    for (std::size_t i = 0; i < n; ++i) {
        if (i == at) continue;
        out.mean[at] += form.weights[i] * out.mean[i];
        out.covariance[at * n + i] = out.covariance[i * n + at] = with(i);
        variance += form.weights[i] * out.covariance[i * n + at];
    }
    out.covariance[at * n + at] = variance;
    return out;
}

}  // namespace

Belief with_pin_known(const Model& model, Belief belief, const Model& leads, const Belief& known) {
    const std::size_t n = belief.size();
    for (const char* name : {"fence", "kerf", "pin offset", "kerf offset"})
        if (const auto at = control_named(model, name))
            for (std::size_t i = 0; i < n; ++i)
                belief.covariance[*at * n + i] = belief.covariance[i * n + *at] = 0.0;
    for (const char* name : {"fence", "kerf"}) {
        const std::size_t at = *control_named(model, name), there = *control_named(leads, name);
        belief.mean[at] = known.mean[there];
        for (const char* other : {"fence", "kerf"})
            belief.covariance[at * n + *control_named(model, other)] =
                known.covariance[there * known.size() + *control_named(leads, other)];
    }
    return belief;
}

RowBelief row_to_match(RowBelief row, int sockets, double tolerance_mm) {
    Model& model = row.model;
    if (has_row_outcome(model)) return row;
    auto at = control_named(model, row_cut);
    if (!at) {
        add_control(model, {row_cut, 0.0, 0.0, false});
        at = model.controls.size() - 1;
    }
    Form form{"row", std::vector<double>(model.controls.size(), 0.0), 0.0};
    for (const char* control : {"fence", "kerf"}) form.weights[*control_named(model, control)] = sockets;
    row.now = holding(row.now, *at, form);
    row.next = holding(row.next, *at, form);
    form.weights[*at] = -1.0;
    model.outcomes.push_back({form, 0.0, tolerance_mm, tolerance_mm});
    return row;
}

Model without_row_to_match(Model model) {
    std::erase_if(model.outcomes, [](const Outcome& outcome) { return outcome.form.name == "row"; });
    return model;
}

}  // namespace kw
