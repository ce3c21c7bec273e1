#include <algorithm>
#include <cmath>
#include <numbers>

#include "print/marks.h"

namespace kw::print {
namespace {

// A frame in which the hatch's lines run along x.
struct Turn {
    double cos = 1, sin = 0;

    Spot into(Spot p) const { return {p.x_mm * cos - p.y_mm * sin, p.x_mm * sin + p.y_mm * cos}; }
    Spot back(double x, double y) const { return {x * cos + y * sin, -x * sin + y * cos}; }
};

// Where the edges of all rings are crossed at this height, from the left.
std::vector<double> crossings(const std::vector<std::vector<Spot>>& rings, double y) {
    std::vector<double> all;
    for (const auto& ring : rings)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Spot &a = ring[i], &b = ring[(i + 1) % ring.size()];
            // A corner belongs to one of its two edges.
            if ((a.y_mm <= y) == (b.y_mm <= y)) continue;
            all.push_back(a.x_mm + (y - a.y_mm) / (b.y_mm - a.y_mm) * (b.x_mm - a.x_mm));
        }
    std::sort(all.begin(), all.end());
    return all;
}

struct Reached {
    double low = 1e300, high = -1e300;
};

Reached heights(const std::vector<std::vector<Spot>>& rings) {
    Reached reached;
    for (const auto& ring : rings)
        for (const Spot& p : ring) {
            reached.low = std::min(reached.low, p.y_mm);
            reached.high = std::max(reached.high, p.y_mm);
        }
    return reached;
}

// The dashes of line `k` between two crossings. Round ends stand half a width beyond them.
void add_dashes(std::vector<std::vector<Spot>>& lines, const Turn& turn, const draw::Hatch& hatch, double k,
                double y, double from, double to) {
    const double period = hatch.dash_px + hatch.space_px, half = hatch.width_px / 2;
    const double first = k * hatch.stagger_px;
    for (double n = std::floor((from - first) / period); first + n * period < to; ++n) {
        const double start = first + n * period;
        const double left = std::max(from, start + half),
                     right = std::min(to, std::max(start + hatch.dash_px - half, start + half + 0.01));
        if (left < right) lines.push_back({turn.back(left, y), turn.back(right, y)});
    }
}

}  // namespace

std::vector<std::vector<Spot>> hatch_lines(const std::vector<std::vector<Spot>>& rings_px,
                                           const draw::Hatch& hatch) {
    const double angle = hatch.angle_deg * std::numbers::pi / 180;
    const Turn turn{std::cos(angle), std::sin(angle)};
    std::vector<std::vector<Spot>> rings = rings_px;
    for (auto& ring : rings)
        for (Spot& p : ring) p = turn.into(p);
    std::vector<std::vector<Spot>> lines;
    const Reached reached = heights(rings);
    for (double k = std::ceil((reached.low - hatch.offset_px) / hatch.spacing_px);
         hatch.offset_px + k * hatch.spacing_px <= reached.high; ++k) {
        const double y = hatch.offset_px + k * hatch.spacing_px;
        const std::vector<double> xs = crossings(rings, y);
        for (std::size_t i = 0; i + 1 < xs.size(); i += 2) {
            if (xs[i + 1] - xs[i] < 0.01) continue;
            if (hatch.dash_px > 0) add_dashes(lines, turn, hatch, k, y, xs[i], xs[i + 1]);
            else lines.push_back({turn.back(xs[i], y), turn.back(xs[i + 1], y)});
        }
    }
    return lines;
}

}  // namespace kw::print
