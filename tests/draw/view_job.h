#pragma once
// Jobs to draw: one drawer in 1/2 in plywood or in solid wood, in inches or in millimetres.

#include <memory>
#include <optional>
#include <stdexcept>
#include <string>

#include "job/work.h"

namespace view_job {

using kw::Length;

struct Wanted {
    Length side = Length::inches(1, 2);
    Length front = Length::inches(1, 2);
    Length bottom = Length::inches(1, 4);
    Length kerf = Length::inches(1, 4);
    std::optional<Length> groove_depth;
    std::string groove_cutter = "stack";
    std::string front_joint = "locking rabbet";
    std::string back_joint = "dado";
    kw::StockKind kind = kw::StockKind::plywood;
    kw::Unit unit = kw::Unit::inch;
    kw::Graduation graduation = kw::Graduation::in_64;
    kw::Language language = kw::Language::english;
    std::optional<Length> bit_pass;  // the cutter is a bit on a router table, and takes so much at once
};

inline Wanted metric() {
    Wanted wanted;
    wanted.side = wanted.front = Length::micrometres(12300);
    wanted.bottom = Length::micrometres(6400);
    wanted.kerf = Length::micrometres(6200);
    wanted.kind = kw::StockKind::solid;
    wanted.unit = kw::Unit::millimetre;
    wanted.graduation = kw::Graduation::mm_0_1;
    return wanted;
}

inline Wanted fingered(Wanted wanted) {
    wanted.front_joint = wanted.back_joint = "box joint";
    return wanted;
}

inline kw::Stock stock(const char* name, Length thickness, kw::StockKind kind) {
    kw::Stock made;
    made.name = name;
    made.thickness = thickness;
    made.kind = kind;
    return made;
}

inline kw::Shop shop(Length kerf) {
    kw::Shop shop;
    shop.machines = {kw::usual_machine("saw", kw::MachineKind::table_saw)};
    shop.cutters = {{"stack", kw::CutterKind::dado_stack, "saw", kerf},
                    {"rip blade", kw::CutterKind::blade, "saw", Length::inches(1, 8)}};
    return kw::with_implied_blades(shop);
}

inline kw::Job job(const Wanted& wanted) {
    kw::Job job;
    job.name = "drawing";
    job.unit = wanted.unit;
    job.locale = {wanted.graduation, wanted.language};
    job.stock = {stock("side stock", wanted.side, wanted.kind),
                 stock("front stock", wanted.front, wanted.kind),
                 stock("bottom stock", wanted.bottom, kw::StockKind::plywood)};
    job.shop = shop(wanted.kerf);
    if (wanted.bit_pass) {
        job.shop.machines.push_back(kw::usual_machine("router", kw::MachineKind::router_table));
        job.shop.cutters.front() = {"stack", kw::CutterKind::bit, "router", wanted.kerf};
        job.shop.cutters.front().depth_per_pass = wanted.bit_pass;
    }
    kw::DrawerSpec drawer;
    drawer.name = "seeds";
    drawer.box = kw::BoxSize{Length::inches(14), Length::inches(4), Length::inches(16)};
    drawer.side_stock = "side stock";
    drawer.front.stock = "front stock";
    drawer.front.cutter = "stack";
    drawer.back.stock = "side stock";
    drawer.back.cutter = "stack";
    drawer.front.joint = wanted.front_joint;
    drawer.back.joint = wanted.back_joint;
    drawer.bottom.stock = "bottom stock";
    // No bottom slides in under a back that is as high as the sides.
    if (wanted.back_joint == "box joint") drawer.bottom.style = kw::BottomStyle::captured;
    // And no dado is as deep as sockets are.
    else if (wanted.front_joint == "box joint") drawer.back.depth = Length::inches(1, 4);
    drawer.bottom.cutter = wanted.groove_cutter;
    drawer.bottom.depth = wanted.groove_depth;
    job.drawers = {drawer};
    return job;
}

inline std::shared_ptr<const kw::Work> work(const kw::Job& asked) {
    auto made = kw::work_out(asked);
    if (made) return *made;
    const kw::Problem& problem = made.error().front();
    throw std::runtime_error(problem.pointer + ": " + problem.why.text(asked.locale));
}

inline std::shared_ptr<const kw::Work> work(const Wanted& wanted) { return work(job(wanted)); }

}  // namespace view_job
