#pragma once
// A simulated shop: machines with hidden errors, boards that are never quite as thick as was typed in, and a maker
// who reads with what there is. It is written from the joints' geometry and knows nothing of the estimator.
// All hidden errors are drawn normal with these spreads, one sigma; invented, for tests and benchmarks only.

#include <string>
#include <vector>

namespace shop {

enum class Reads { caliper, rule, feel };

struct KindOfShop {
    std::string name;
    Reads reads = Reads::caliper;
    double offset_mm = 0.25;   // of each scale; stays from job to job
    double repeats_mm = 0.03;  // of each setting and each move
    double wobble = 0.01;      // of a move, per mm, anew each time
    double gain = 0.03;        // of a scale's moves, per mm; stays
    double kerf_mm = 0.08;     // of a cutter, about what was typed in; stays
    double spacer_mm = 0.10;
    double stock_mm = 0.05;      // of a batch, about what was typed in
    double uneven_mm = 0.02;     // of one piece of a batch against another
    bool tells_repeats = false;  // the maker has told the program how well a setting comes back
};

inline std::vector<KindOfShop> all_kinds() {
    KindOfShop new_owner{"new owner"};
    KindOfShop tuned{"tuned saw"};
    tuned.offset_mm = 0.08;
    tuned.repeats_mm = 0.02;
    tuned.gain = 0.01;
    KindOfShop sloppy{"sloppy fence"};
    sloppy.repeats_mm = 0.06;
    sloppy.offset_mm = 0.35;
    sloppy.tells_repeats = true;
    KindOfShop rule{"rule, no caliper", Reads::rule};
    KindOfShop feel{"feel only", Reads::feel};
    return {new_owner, tuned, sloppy, rule, feel};
}

}  // namespace shop
