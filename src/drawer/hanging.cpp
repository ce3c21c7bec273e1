#include "drawer/hanging.h"

#include <algorithm>
#include <cmath>

namespace kw {
namespace {

constexpr std::size_t unknowns = 3;  // dx, dy, phi

using Row = std::array<double, unknowns>;

// What a gap grows by, per mm of dx and dy and per radian of phi; and what it is to be.
struct Gap {
    Row grows{};
    double wanted_mm = 0.0;
};

Gap gap_at(const HungFace& face, GapPlace place) {
    const double x = face.width.mm() / 2.0, y = face.height.mm() / 2.0;
    switch (place) {
        case GapPlace::left_top: return {{1.0, 0.0, -y}, face.left.mm()};
        case GapPlace::left_bottom: return {{1.0, 0.0, y}, face.left.mm()};
        case GapPlace::right_top: return {{-1.0, 0.0, y}, face.right.mm()};
        case GapPlace::right_bottom: return {{-1.0, 0.0, -y}, face.right.mm()};
        case GapPlace::top_left: return {{0.0, -1.0, x}, face.top.mm()};
        case GapPlace::top_right: return {{0.0, -1.0, -x}, face.top.mm()};
        case GapPlace::bottom_left: return {{0.0, 1.0, -x}, face.bottom.mm()};
        case GapPlace::bottom_right: return {{0.0, 1.0, x}, face.bottom.mm()};
        case GapPlace::proud_left:
        case GapPlace::proud_right: break;
    }
    return {};
}

constexpr bool is_round_it(GapPlace place) { return place < GapPlace::proud_left; }

// Normal equations of the gaps that were read. A touch on the diagonal keeps what no reading tells at zero; phi is in
// units of the face's half width, so that one touch does for all three.
class Fit {
public:
    explicit Fit(double unit_mm) : unit_mm_(unit_mm) {}

    void add(const Gap& gap, double read_mm) {
        Row row = gap.grows;
        row[2] /= unit_mm_;
        for (std::size_t i = 0; i < unknowns; ++i) {
            right_[i] += row[i] * (read_mm - gap.wanted_mm);
            for (std::size_t j = 0; j < unknowns; ++j) matrix_[i][j] += row[i] * row[j];
        }
    }

    // dx and dy in mm, phi in radians.
    Row solve() {
        // A turn is what readings must tell most plainly: one gap that is off is a face that is moved, not turned.
        for (std::size_t i = 0; i < unknowns; ++i) matrix_[i][i] += i == 2 ? touch_of_turn : touch;
        for (std::size_t pivot = 0; pivot < unknowns; ++pivot)
            for (std::size_t i = pivot + 1; i < unknowns; ++i) {
                const double factor = matrix_[i][pivot] / matrix_[pivot][pivot];
                for (std::size_t j = pivot; j < unknowns; ++j) matrix_[i][j] -= factor * matrix_[pivot][j];
                right_[i] -= factor * right_[pivot];
            }
        for (std::size_t i = unknowns; i-- > 0;) {
            for (std::size_t j = i + 1; j < unknowns; ++j) right_[i] -= matrix_[i][j] * right_[j];
            right_[i] /= matrix_[i][i];
        }
        right_[2] /= unit_mm_;
        return right_;
    }

private:
    static constexpr double touch = 1e-9, touch_of_turn = 1e-6;
    double unit_mm_;
    std::array<Row, unknowns> matrix_{};
    Row right_{};
};

}  // namespace

std::string_view name_of(GapPlace place) {
    constexpr std::array<std::string_view, gap_place_count> names = {
        "left_top",  "left_bottom", "right_top",    "right_bottom", "top_left",
        "top_right", "bottom_left", "bottom_right", "proud_left",   "proud_right"};
    return names[static_cast<std::size_t>(place)];
}

const std::vector<GapPlace>& gap_places() {
    static const std::vector<GapPlace> places = [] {
        std::vector<GapPlace> all;
        for (std::size_t i = 0; i < gap_place_count; ++i) all.push_back(static_cast<GapPlace>(i));
        return all;
    }();
    return places;
}

bool Gaps::is_empty() const {
    return std::none_of(readings.begin(), readings.end(),
                        [](const std::optional<Length>& reading) { return reading.has_value(); });
}

std::optional<Hanging> hanging(const HungFace& face, const Gaps& gaps) {
    if (gaps.is_empty()) return std::nullopt;
    const double half_mm = face.width.mm() / 2.0;
    Fit fit(half_mm);
    const auto read_at = [&](GapPlace place) { return gaps.at(place); };
    for (const GapPlace place : gap_places())
        if (is_round_it(place) && read_at(place)) fit.add(gap_at(face, place), read_at(place)->mm());
    const Row stands = fit.solve();
    Hanging out;
    out.to_right = Length::nearest_mm(-stands[0]);
    out.left_up = Length::nearest_mm(-(stands[1] - stands[2] * half_mm));
    out.right_up = Length::nearest_mm(-(stands[1] + stands[2] * half_mm));
    out.left_out = -read_at(GapPlace::proud_left).value_or(Length{});
    out.right_out = -read_at(GapPlace::proud_right).value_or(Length{});
    for (const GapPlace place : gap_places()) {
        if (!is_round_it(place) || !read_at(place)) continue;
        const Gap gap = gap_at(face, place);
        double left_mm = read_at(place)->mm() - gap.wanted_mm;
        for (std::size_t i = 0; i < unknowns; ++i) left_mm -= gap.grows[i] * stands[i];
        out.left_over = max(out.left_over, Length::nearest_mm(std::abs(left_mm)));
    }
    return out;
}

}  // namespace kw
