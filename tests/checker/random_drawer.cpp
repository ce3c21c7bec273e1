#include "checker/random_drawer.h"

#include <algorithm>
#include <cmath>

namespace checker {
namespace {

constexpr double most_undermount_side_mm = 16;

class DrawerMaker {
public:
    DrawerMaker(const Shop& shop, Dice& dice) : shop_(shop), dice_(dice) {}

    Json make(const std::string& name) {
        drawer_ = {{"name", name}, {"count", dice_.between(1, 3)}};
        side_ = dice_.one_of(shop_.boards);
        front_ = dice_.one_of(shop_.boards);
        back_ = dice_.one_of(shop_.boards);
        if (dice_.chance(60)) front_ = back_ = side_;
        if (dice_.chance(15)) given_box();
        else opening();
        front();
        drawer_["sides"] = {{"stock", side_.name}};
        back();
        bottom();
        return drawer_;
    }

private:
    Json text(const Amount& amount) { return written(amount, shop_.unit, dice_); }
    bool inches() const { return shop_.unit == Unit::inch; }

    // Of the job's rule: sixteenths (now and then 64ths), or millimetres (now and then tenths).
    Amount ruled(double low_mm, double high_mm) {
        const std::int64_t step = dice_.chance(70) ? (inches() ? 4 : 10) : 1;
        const double unit_mm = inches() ? inch_mm / 64 : 0.1;
        const auto low = static_cast<std::int64_t>(std::ceil(low_mm / unit_mm));
        const auto high = static_cast<std::int64_t>(std::floor(high_mm / unit_mm));
        const std::int64_t picked = dice_.between(low, high);
        const std::int64_t count = std::max(low, picked - picked % step);
        return inches() ? in_64ths(count) : mm_tenths(count);
    }

    void given_box() {
        drawer_["box"] = {{"width", text(ruled(220, 900))},
                          {"height", text(ruled(70, 280))},
                          {"depth", text(ruled(260, 650))}};
        if (dice_.chance(60)) drawer_["face"] = {{"style", "none"}};
    }

    void opening() {
        const Amount depth = ruled(310, 640);
        drawer_["opening"] = {
            {"width", text(ruled(300, 950))}, {"height", text(ruled(105, 300))}, {"depth", text(depth)}};
        const double face_mm = face();
        std::vector<std::string> kinds{"side mount", "bottom corner", "wooden runner"};
        if (side_.thickness_mm <= most_undermount_side_mm) kinds.push_back("undermount");
        slide(dice_.one_of(kinds), depth.mm(), face_mm);
    }

    // Returns how much of the case's depth an inset face takes.
    double face() {
        const std::int64_t which = dice_.between(1, 10);
        const bool inset = which <= 3;
        if (which == 10) {
            drawer_["face"] = {{"style", "none"}};
            return 0;
        }
        Json face{{"style", inset ? "inset" : "overlay"}};
        const ShopStock& board = dice_.one_of(shop_.boards);
        const bool named = inset || dice_.chance(40);
        if (named) face["stock"] = board.name;
        for (const char* edge : {"left", "right"}) face[edge] = text(inset ? ruled(1.5, 3.5) : ruled(4, 20));
        // Room for what a solid face swells by in its height, over the year.
        for (const char* edge : {"top", "bottom"}) face[edge] = text(inset ? ruled(4, 7) : ruled(4, 20));
        drawer_["face"] = face;
        return inset ? board.thickness_mm : 0;
    }

    void slide(const std::string& kind, double case_depth_mm, double face_mm) {
        const Amount back = ruled(3, 15);
        Json slide{{"kind", kind}};
        if (kind == "side mount" || kind == "bottom corner") slide["side"] = text(ruled(12, 14));
        const bool has_usual = kind == "undermount" || kind == "wooden runner";
        // A wooden runner's usual clearances are too little for high sides of solid wood.
        if (!has_usual || kind == "wooden runner" || dice_.chance(50)) {
            slide["top"] = text(ruled(6, 19));
            slide["bottom"] = text(ruled(2, 12));
        }
        slide["back"] = text(back);
        const bool by_length = kind == "undermount" || (kind != "wooden runner" && dice_.chance(35));
        if (by_length) slide["lengths"] = lengths(case_depth_mm - back.mm() - face_mm, case_depth_mm);
        drawer_["slide"] = slide;
    }

    // None between what fits before the back clearance and what only just fits the case: there the contract leaves it open.
    Json lengths(double fits_mm, double case_depth_mm) {
        Json list = Json::array();
        const std::int64_t shortest = inches() ? 10 : 250;
        const std::int64_t step = inches() ? 2 : 50;
        for (std::int64_t i = 0; i < 10; ++i) {
            const Amount length{shortest + i * step, 1, shop_.unit};
            if (length.mm() <= fits_mm || length.mm() > case_depth_mm) list.push_back(text(length));
        }
        return list;
    }

    // The named cutters whose kerf lies between the two; nothing is named where there is none.
    bool name_cutter(Json& part, double low_mm, double high_mm) {
        std::vector<ShopCutter> fitting;
        for (const ShopCutter& cutter : shop_.joint_cutters) {
            if (cutter.kerf_mm >= low_mm && cutter.kerf_mm <= high_mm) fitting.push_back(cutter);
        }
        if (fitting.empty()) return false;
        const ShopCutter& cutter = dice_.one_of(fitting);
        part["cutter"] = cutter.name;
        named_kerf_mm_ = cutter.kerf_mm;
        return true;
    }

    void front() {
        Json front{{"stock", front_.name}};
        if (dice_.chance(25)) {
            front["joint"] = "rabbet";
            if (dice_.chance(15)) name_cutter(front, 0, 1000);
        } else if (dice_.chance(20)) {
            front["joint"] = "half lap corner";
            if (dice_.chance(15)) name_cutter(front, 0, 1000);
            if (dice_.chance(20))
                front["depth"] = text(ruled(0.3 * side_.thickness_mm, 0.6 * side_.thickness_mm));
        } else {
            front["joint"] = "locking rabbet";
            locking(front);
        }
        drawer_["front"] = front;
    }

    // The tongue is what the dado's width leaves it; unless the job says the width, the program picks one.
    void tongue(Json& part, double thickness) {
        double widest_mm = 0.6 * thickness;
        const auto leaves = [&](double dado_mm) {
            tongue_mm_ = std::min(tongue_mm_, dado_mm - shop_.clearance_mm);
        };
        if (dice_.chance(25)) {
            const Amount width = ruled(std::max(4.4, 0.4 * thickness), std::max(5.2, 0.58 * thickness));
            part["dado_width"] = text(width);
            widest_mm = width.mm();
            leaves(width.mm());
        }
        if (dice_.chance(20) && name_cutter(part, std::max(4.4, 0.35 * thickness), widest_mm) &&
            !part.contains("dado_width"))
            leaves(named_kerf_mm_);
    }

    void locking(Json& front) {
        tongue(front, front_.thickness_mm);
        if (dice_.chance(20))
            front["depth"] = text(ruled(0.3 * side_.thickness_mm, 0.6 * side_.thickness_mm));
    }

    void back() {
        const std::int64_t which = dice_.between(1, 100);
        const bool rabbet = which <= 25;
        const bool tongued = which > 70;
        Json back{{"stock", back_.name}, {"joint", rabbet ? "rabbet" : tongued ? "tongue and dado" : "dado"}};
        if (!rabbet && dice_.chance(60)) {
            const double least_mm = tongued ? 0 : back_.thickness_mm;  // the tongue's rabbet is behind it too
            back["setback"] = text(ruled(least_mm, least_mm + 25));
        }
        if (dice_.chance(40)) back["depth"] = text(ruled(0.3 * side_.thickness_mm, 0.5 * side_.thickness_mm));
        if (tongued) tongue(back, back_.thickness_mm);
        else if (dice_.chance(10)) name_cutter(back, 0, rabbet ? 1000 : back_.thickness_mm);
        drawer_["back"] = back;
    }

    void bottom() {
        const ShopStock panel = dice_.one_of(shop_.panels);
        const bool captured = !panel.solid && dice_.chance(30);
        Json bottom{{"stock", panel.name}, {"joint", "groove"}};
        if (dice_.chance(80)) bottom["offset"] = text(ruled(6, 13));
        double deepest_mm = 0.45 * std::min(side_.thickness_mm, front_.thickness_mm);
        if (captured) deepest_mm = std::min(deepest_mm, 0.45 * back_.thickness_mm);
        deepest_mm = std::min({deepest_mm, tongue_mm_ - 0.8, 5.5});
        if (tongue_mm_ < 100 || dice_.chance(70))
            bottom["depth"] = text(ruled(2.8, std::max(3.3, deepest_mm)));
        if (captured || dice_.chance(70)) bottom["style"] = captured ? "captured" : "slide in";
        if (dice_.chance(10)) name_cutter(bottom, 0, panel.thickness_mm + shop_.groove_clearance_mm);
        drawer_["bottom"] = bottom;
    }

    const Shop& shop_;
    Dice& dice_;
    Json drawer_;
    ShopStock side_;
    ShopStock front_;
    ShopStock back_;
    double tongue_mm_ = 1000;  // no limit while the program picks it
    double named_kerf_mm_ = 0;
};

}  // namespace

Json random_drawer(const Shop& shop, const std::string& name, Dice& dice) {
    return DrawerMaker(shop, dice).make(name);
}

}  // namespace checker
