#pragma once
// The fifteen-point Gauss-Kronrod rule on one panel, with the seven-point Gauss rule inside it as a check of
// its own error. Nodes and weights: rule QK15 of Piessens et al., QUADPACK (1983), from memory; the tests
// prove them on polynomials, which the rule must integrate exactly up to degree 22.

#include <array>
#include <cmath>
#include <cstddef>

namespace kw {

struct PanelNode {
    double at;      // on [-1, 1]; the nodes at -at are implied
    double weight;  // of the fifteen-point rule
    double coarse;  // of the seven-point rule; 0 where that has no node
};

inline constexpr std::array<PanelNode, 8> panel_nodes = {{
    {0.991455371120812639, 0.022935322010529225, 0.0},
    {0.949107912342758525, 0.063092092629978553, 0.129484966168869693},
    {0.864864423359769073, 0.104790010322250184, 0.0},
    {0.741531185599394440, 0.140653259715525919, 0.279705391489276668},
    {0.586087235467691130, 0.169004726639267903, 0.0},
    {0.405845151377397167, 0.190350578064785410, 0.381830050505118945},
    {0.207784955007898468, 0.204432940075298892, 0.0},
    {0.0, 0.209482141084727828, 0.417959183673469388},
}};
inline constexpr std::size_t panel_points = 15;

struct PanelSum {
    double value;
    double error;  // |fifteen points - seven points|; the value itself is far better on a smooth function
};

template <typename Function>
PanelSum integrate_panel(const Function& function, double from, double to) {
    const double middle = 0.5 * (from + to);
    const double half = 0.5 * (to - from);
    double fine = 0.0;
    double coarse = 0.0;
    for (const PanelNode& node : panel_nodes) {
        double value = function(middle + half * node.at);
        if (node.at > 0.0) value += function(middle - half * node.at);
        fine += node.weight * value;
        coarse += node.coarse * value;
    }
    return {half * fine, std::abs(half * (fine - coarse))};
}

// Halves a panel until the rule's own check is below `tolerance`, or `halvings` times.
template <typename Function>
double integrate_adaptive(const Function& function, double from, double to, double tolerance, int halvings) {
    const PanelSum whole = integrate_panel(function, from, to);
    if (whole.error <= tolerance || halvings == 0) return whole.value;
    const double middle = 0.5 * (from + to);
    return integrate_adaptive(function, from, middle, 0.5 * tolerance, halvings - 1) +
           integrate_adaptive(function, middle, to, 0.5 * tolerance, halvings - 1);
}

}  // namespace kw
