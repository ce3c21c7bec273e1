#include "shop/many_shops.h"

namespace shop {

ManyShops in_many_shops(const KindOfShop& kind, const Task& task, int shops) {
    ManyShops all;
    for (int s = 0; s < shops; ++s) {
        TrueShop of_one_who_knows(kind, std::uint64_t(s)), of_the_program(kind, std::uint64_t(s));
        of_one_who_knows.begin(task.group);
        all.knows += play(task, of_one_who_knows, *all_knowing(task, of_one_who_knows)).cuts;
        of_the_program.begin(task.group);
        const Played played =
            play(task, of_the_program, *by_the_program(task, of_the_program, {task.group.designed}));
        all.program += played.cuts;
        all.bad_locks += played.bad_lock;
    }
    all.knows /= shops;
    all.program /= shops;
    return all;
}

}  // namespace shop
