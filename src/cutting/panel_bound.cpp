#include "cutting/panel_bound.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "cutting/points.h"

namespace kw::cutting {

std::vector<Ticks> cut_points(const std::vector<Piece>& pieces, Ticks size, bool is_length,
                              std::size_t most) {
    std::set<Ticks> points{0};
    for (const Piece& piece : pieces)
        for (int copy = 0; copy < piece.count; ++copy) {
            std::set<Ticks> more;
            for (const Ticks point : points)
                for (const bool is_turned : {false, true}) {
                    if (is_turned && !piece.may_turn) break;
                    const Ticks sum = point + (is_length != is_turned ? piece.length : piece.width);
                    if (sum <= size && points.count(sum) == 0) more.insert(sum);
                }
            if (more.empty()) break;
            points.insert(more.begin(), more.end());
            if (points.size() > most) return {};
        }
    points.insert(size);
    return {points.begin(), points.end()};
}

PanelBound::PanelBound(const Packing& panel, std::vector<Ticks> xs, std::vector<Ticks> ys)
    : xs_(std::move(xs)), ys_(std::move(ys)), x_rests_(rests_of(xs_)), y_rests_(rests_of(ys_)) {
    within_.assign(xs_.size() * ys_.size(), 0);
    around_.assign(within_.size(), 0);
    place_single(panel);
    fill_within();
    fill_around();
}

void PanelBound::place_single(const Packing& panel) {
    for (const Piece& piece : panel.pieces)
        for (const bool is_turned : {false, true}) {
            if (is_turned && !piece.may_turn) break;
            const Ticks length = is_turned ? piece.width : piece.length;
            const Ticks width = is_turned ? piece.length : piece.width;
            if (length > xs_.back() || width > ys_.back()) continue;
            std::int64_t& value = within_[at(index_below(xs_, length), index_below(ys_, width))];
            value = std::max(value, piece.value);
        }
}

void PanelBound::fill_within() {
    for (std::size_t x = 0; x < xs_.size(); ++x)
        for (std::size_t y = 0; y < ys_.size(); ++y) {
            std::int64_t most = within_[at(x, y)];
            if (x > 0) most = std::max(most, within_[at(x - 1, y)]);
            if (y > 0) most = std::max(most, within_[at(x, y - 1)]);
            for (std::size_t k = 1; 2 * xs_[k] <= xs_[x]; ++k)
                most = std::max(most, within_[at(k, y)] + within_[at(x_rests_[x][k], y)]);
            for (std::size_t k = 1; 2 * ys_[k] <= ys_[y]; ++k)
                most = std::max(most, within_[at(x, k)] + within_[at(x, y_rests_[y][k])]);
            within_[at(x, y)] = most;
        }
}

// A rectangle is cut from a larger one beside or above which something else lies, and that again, up to the panel.
void PanelBound::fill_around() {
    for (std::size_t x = xs_.size(); x-- > 0;)
        for (std::size_t y = ys_.size(); y-- > 0;) {
            std::int64_t most = 0;
            for (std::size_t k = x + 1; k < xs_.size(); ++k)
                most = std::max(most, within_[at(x_rests_[k][x], y)] + around_[at(k, y)]);
            for (std::size_t k = y + 1; k < ys_.size(); ++k)
                most = std::max(most, within_[at(x, y_rests_[k][y])] + around_[at(x, k)]);
            around_[at(x, y)] = most;
        }
}

AreaBound::AreaBound(const Packing& panel) {
    for (std::size_t p = 0; p < panel.pieces.size(); ++p) {
        const Piece& piece = panel.pieces[p];
        pieces_.push_back({p, piece.count,
                           static_cast<double>(piece.length) * static_cast<double>(piece.width),
                           piece.value});
    }
    std::stable_sort(pieces_.begin(), pieces_.end(), [](const Dense& a, const Dense& b) {
        return static_cast<double>(a.value) * b.area > static_cast<double>(b.value) * a.area;
    });
}

std::int64_t AreaBound::of(double area, const std::vector<int>& used) const {
    double value = 0;
    for (const Dense& piece : pieces_) {
        const double wanted = piece.count - used[piece.piece];
        if (wanted * piece.area >= area)
            return static_cast<std::int64_t>(
                std::floor(value + area / piece.area * static_cast<double>(piece.value) + 1e-6));
        value += wanted * static_cast<double>(piece.value);
        area -= wanted * piece.area;
    }
    return static_cast<std::int64_t>(std::floor(value + 1e-6));
}

}  // namespace kw::cutting
