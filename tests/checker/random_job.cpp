#include "checker/random_job.h"

#include "checker/random_drawer.h"
#include "checker/random_shop.h"

namespace checker {

Json random_job(std::uint64_t seed) {
    Dice dice(seed);
    const Unit unit = dice.chance(50) ? Unit::inch : Unit::millimetre;
    const Shop shop = random_shop(unit, dice);
    Json job{{"format", "kerfwright-job"}, {"version", 1}, {"name", "random " + std::to_string(seed)}};
    job["unit"] = unit == Unit::inch ? "in" : "mm";
    if (!shop.fit.empty()) job["fit"] = shop.fit;
    job["stock"] = shop.stock;
    job["machines"] = shop.machines;
    job["cutters"] = shop.cutters;
    job["drawers"] = Json::array();
    const std::int64_t drawers = dice.between(1, 5);
    for (std::int64_t i = 1; i <= drawers; ++i)
        job["drawers"].push_back(random_drawer(shop, "drawer " + std::to_string(i), dice));
    if (dice.chance(70)) job["log"] = Json::array();
    return job;
}

}  // namespace checker
