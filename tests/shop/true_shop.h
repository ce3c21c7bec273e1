#pragma once
// One simulated shop: its hidden errors, drawn from its kind by a seed, and what happens when something is set,
// moved, cut and read in it.

#include <cstdint>
#include <random>

#include "shop/kind_of_shop.h"
#include "shop/true_joint.h"

namespace shop {

class TrueShop {
public:
    TrueShop(KindOfShop kind, std::uint64_t seed);

    const KindOfShop& kind() const { return kind_; }

    // A group is begun: new boards, a new spacer; the machine and the cutter are those of before.
    void begin(const kw::Group& group);

    // Sets every scale to what the dial says.
    void set(const kw::Settings& dial);
    void move(const std::string& control, double by_mm);
    void take_fresh_ends();

    // How far a control set by its scale stands beyond what that says.
    double offset(const std::string& control) const;
    const Controls& stands() const { return stands_; }
    double batch_mm() const { return batch_mm_; }
    double piece_mm() const { return piece_mm_; }
    double other_piece();
    const TrueSlot& slot() const { return slot_; }
    // How long a move of one mm really comes out.
    double gain(const std::string& control) const;

    // A reading as the maker takes it of this joint; `name` as in job files.
    double read(const std::map<std::string, double>& joint, const std::string& name);
    // A length as a hand or an eye judges it, before it is put into words.
    double judged(double value);

    double normal(double sd) { return sd * normal_(dice_); }
    double uniform() { return uniform_(dice_); }

private:
    KindOfShop kind_;
    std::mt19937_64 dice_;
    std::normal_distribution<double> normal_;
    std::uniform_real_distribution<double> uniform_;
    double fence_offset_, height_offset_, fence_gain_, height_gain_, kerf_error_;
    double shift_by_scale_ = 0.0;
    double spacer_error_ = 0.0, batch_mm_ = 0.0, piece_mm_ = 0.0;
    Controls stands_;
    TrueSlot slot_;
};

}  // namespace shop
