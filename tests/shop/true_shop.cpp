#include "shop/true_shop.h"

#include <algorithm>
#include <cmath>

namespace shop {

TrueShop::TrueShop(KindOfShop kind, std::uint64_t seed) : kind_(std::move(kind)), dice_(seed) {
    fence_offset_ = normal(kind_.offset_mm);
    height_offset_ = normal(kind_.offset_mm);
    fence_gain_ = normal(kind_.gain);
    height_gain_ = normal(kind_.gain);
    kerf_error_ = normal(kind_.kerf_mm);
}

void TrueShop::begin(const kw::Group& group) {
    spacer_error_ = normal(kind_.spacer_mm);
    batch_mm_ = kw::entering_thickness(group).mm() + normal(kind_.stock_mm);
    take_fresh_ends();
    // A tongue alone meets a slot that was locked: near what was planned.
    constexpr double locked_mm = 0.04;
    const kw::Cut& slot = group.slot();
    slot_ = {slot.width.mm() + normal(locked_mm), slot.depth.mm() + normal(locked_mm),
             slot.near.mm() + normal(locked_mm)};
}

void TrueShop::set(const kw::Settings& dial) {
    stands_.fence = dial.fence.mm() + fence_offset_ + normal(kind_.repeats_mm);
    stands_.height = dial.height.mm() + height_offset_ + normal(kind_.repeats_mm);
    stands_.spacer = dial.spacer.mm() + (dial.spacer > kw::Length{} ? spacer_error_ : 0.0);
    stands_.kerf = dial.kerf.mm() + kerf_error_;
    shift_by_scale_ = dial.shift.mm();
    // The second of two marks on the same scale: its offset is the first one's.
    stands_.shift =
        dial.shift > kw::Length{} ? dial.shift.mm() * (1.0 + fence_gain_) + normal(kind_.repeats_mm) : 0.0;
}

double TrueShop::offset(const std::string& control) const {
    if (control == "fence") return fence_offset_;
    if (control == "height") return height_offset_;
    if (control == "kerf") return kerf_error_;
    return control == "spacer" ? spacer_error_ : 0.0;
}

double TrueShop::gain(const std::string& control) const {
    if (control == "fence" || control == "shift") return 1.0 + fence_gain_;
    return control == "height" ? 1.0 + height_gain_ : 1.0;
}

void TrueShop::move(const std::string& control, double by_mm) {
    if (by_mm == 0.0) return;
    const bool by_hand = control == "spacer" || control == "kerf";  // paper and shims, not a scale
    const double jitter = by_hand ? 0.02 : kind_.repeats_mm;
    stands_.named(control) += by_mm * gain(control) + normal(jitter) + by_mm * normal(kind_.wobble);
    if (control != "shift") return;
    // A second pass that is left out is none.
    shift_by_scale_ += by_mm;
    if (std::abs(shift_by_scale_) < 1e-9) stands_.shift = 0.0;
}

void TrueShop::take_fresh_ends() { piece_mm_ = other_piece(); }

double TrueShop::other_piece() { return batch_mm_ + normal(kind_.uneven_mm); }

double TrueShop::read(const std::map<std::string, double>& joint, const std::string& name) {
    const bool gap = name == "fit" || name == "shoulder_gap";
    const double sd = kind_.reads != Reads::caliper ? 0.25 : gap ? 0.03 : 0.05;
    // A gap that is closed can't be read as anything; what is negative is read as closed.
    const double value = joint.at(name) + normal(sd);
    return name == "shoulder_gap" ? (joint.at(name) <= 0.0 ? 0.0 : std::max(0.0, value)) : value;
}

double TrueShop::judged(double value) {
    constexpr double hand_mm = 0.05;
    return value + normal(hand_mm);
}

}  // namespace shop
