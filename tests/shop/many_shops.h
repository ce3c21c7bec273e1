#pragma once
// The same joint in many shops of one kind: by one who knows every hidden error, and by the program.

#include "shop/movers.h"

namespace shop {

struct ManyShops {
    double knows = 0.0, program = 0.0;  // test cuts, in the mean
    int bad_locks = 0;                  // by the program
};

// `shops`: how many, each with errors of its own, and the same for both.
ManyShops in_many_shops(const KindOfShop& kind, const Task& task, int shops);

}  // namespace shop
