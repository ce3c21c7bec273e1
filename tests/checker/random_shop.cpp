#include "checker/random_shop.h"

namespace checker {
namespace {

class ShopMaker {
public:
    ShopMaker(Unit unit, Dice& dice) : dice_(dice) { shop_.unit = unit; }

    Shop make() {
        fit();
        machines();
        cutters();
        stock();
        return std::move(shop_);
    }

private:
    Json text(const Amount& amount) { return written(amount, shop_.unit, dice_); }
    bool inches() const { return shop_.unit == Unit::inch; }

    // Thickness and kerf as a caliper shows them: in either unit, whatever the job's is.
    Amount calipered(double low_mm, double high_mm) {
        const bool own = dice_.chance(75);
        if (own == inches()) {
            return in_thousandths(dice_.between(static_cast<std::int64_t>(low_mm / inch_mm * 1000) + 1,
                                                static_cast<std::int64_t>(high_mm / inch_mm * 1000)));
        }
        return mm_hundredths(
            dice_.between(static_cast<std::int64_t>(low_mm * 100), static_cast<std::int64_t>(high_mm * 100)));
    }

    Amount small(std::int64_t low_hundredths, std::int64_t high_hundredths) {
        if (!inches()) return mm_hundredths(dice_.between(low_hundredths, high_hundredths));
        return in_thousandths(
            dice_.between(low_hundredths * 10 / 254 + 1, high_hundredths * 100 / 254 / 10 + 1));
    }

    // Left out now and then, which asks for the default.
    double fit_field(const char* name, const Amount& amount, double default_mm) {
        if (dice_.chance(8)) return default_mm;
        shop_.fit[name] = text(amount);
        return amount.mm();
    }

    void fit() {
        shop_.fit = Json::object();
        shop_.clearance_mm = fit_field("clearance", small(5, 25), 0.004 * inch_mm);
        fit_field("end_relief", dice_.chance(50) ? in_64ths(dice_.between(0, 2)) : small(10, 80),
                  inch_mm / 64);
        shop_.groove_clearance_mm = fit_field("groove_clearance", small(10, 60), 0.010 * inch_mm);
        fit_field("bottom_slack", dice_.chance(50) ? in_64ths(dice_.between(1, 4)) : small(50, 200),
                  inch_mm / 32);
        const Amount none{0, 1, shop_.unit};
        fit_field("step", dice_.chance(55) ? none : small(10, 90), 0);
        if (dice_.chance(40))
            shop_.fit["tolerance"] = {{"fit", "0.1 mm"}, {"shoulder_gap", "0.1 mm"}, {"step", "0.15 mm"}};
    }

    void machines() {
        const std::vector<Amount> arbors{in_64ths(52), in_64ths(48), in_64ths(33), mm_tenths(200)};
        const Amount arbor = dice_.one_of(arbors);
        arbor_mm_ = arbor.mm();
        const Amount rise = dice_.chance(50) ? in_64ths(192) : mm_tenths(700);
        shop_.machines.push_back({{"name", "saw"},
                                  {"kind", "table saw"},
                                  {"max_dado_width", text(arbor)},
                                  {"max_height", text(rise)}});
        has_miter_ = dice_.chance(60);
        has_router_ = dice_.chance(50);
        if (has_miter_) shop_.machines.push_back({{"name", "chop"}, {"kind", "miter saw"}});
        if (has_router_) {
            Json router{{"name", "router"}, {"kind", "router table"}};
            if (dice_.chance(50)) router["max_height"] = text(in_64ths(96));
            shop_.machines.push_back(router);
        }
    }

    void cutter(const char* name, const char* kind, const char* machine, const Amount& kerf,
                bool for_joints) {
        shop_.cutters.push_back({{"name", name}, {"kind", kind}, {"machine", machine}, {"kerf", text(kerf)}});
        if (std::string(name) == "bit 8") shop_.cutters.back()["depth_per_pass"] = "2.5 mm";
        if (for_joints) shop_.joint_cutters.push_back({name, kerf.mm()});
    }

    // A stack as it is marked, or as it was measured.
    void stack(const char* name, std::int64_t sixty_fourths) {
        const Amount marked = in_64ths(sixty_fourths);
        const Amount kerf = dice_.chance(60) ? marked : calipered(marked.mm() - 0.1, marked.mm() + 0.1);
        cutter(name, "dado stack", "saw", kerf, kerf.mm() <= arbor_mm_);
    }

    // A ripping blade is always there: it makes every joint that nothing else makes, in passes.
    void cutters() {
        if (dice_.chance(60)) stack("quarter stack", 16);
        if (dice_.chance(35)) stack("three eighths stack", 24);
        if (dice_.chance(35)) stack("half stack", 32);
        if (dice_.chance(15)) stack("wide stack", 48);
        const std::vector<Amount> kerfs{in_64ths(8), in_64ths(6), mm_tenths(32), mm_tenths(28),
                                        in_thousandths(118)};
        cutter("ripping blade", "blade", "saw", dice_.one_of(kerfs), false);
        if (has_miter_ && dice_.chance(30)) cutter("chop blade", "blade", "chop", mm_tenths(26), false);
        if (!has_router_) return;
        if (dice_.chance(70)) cutter("bit 6", "bit", "router", mm_tenths(60), true);
        if (dice_.chance(50))
            cutter("bit 8", "bit", "router", dice_.chance(50) ? mm_tenths(80) : mm_hundredths(796), true);
        if (dice_.chance(30)) cutter("quarter bit", "bit", "router", in_64ths(16), true);
    }

    void board(const std::string& name, const char* kind, const Amount& thickness,
               std::vector<ShopStock>& list) {
        Json entry{{"name", name}, {"thickness", text(thickness)}, {"kind", kind}};
        const bool solid = entry["kind"] == "solid";
        if (solid && dice_.chance(50)) {
            entry["species"] =
                dice_.one_of(std::vector<std::string>{"black cherry", "white ash", "sugar maple"});
            entry["cut"] = dice_.chance(50) ? "flatsawn" : "quartersawn";
        }
        shop_.stock.push_back(entry);
        list.push_back({name, thickness.mm(), solid});
    }

    // One choice per statement: compilers differ in which argument they work out first.
    void stock() {
        const std::int64_t boards = dice_.between(2, 4);
        for (std::int64_t i = 1; i <= boards; ++i) {
            const char* kind = dice_.chance(30) ? "solid" : "plywood";
            board("board " + std::to_string(i), kind, calipered(9, 19), shop_.boards);
        }
        board("thin ply", "plywood", calipered(5, 6.5), shop_.panels);
        if (!dice_.chance(40)) return;
        const char* kind = dice_.chance(40) ? "solid" : "plywood";
        board("9 mm panel", kind, calipered(8, 9), shop_.panels);
    }

    Dice& dice_;
    Shop shop_;
    double arbor_mm_ = 0;
    bool has_miter_ = false;
    bool has_router_ = false;
};

}  // namespace

Shop random_shop(Unit unit, Dice& dice) { return ShopMaker(unit, dice).make(); }

}  // namespace checker
