#include "checker/make_drawer.h"

#include <exception>

#include "checker/asked.h"
#include "checker/assembly.h"
#include "checker/measure.h"
#include "checker/order.h"
#include "checker/part_list.h"
#include "checker/plan.h"
#include "checker/setups.h"
#include "checker/workpiece.h"

namespace checker {
namespace {

void measure_copy(const std::vector<Workpiece>& pieces, const AskedDrawer& drawer, int copy,
                  const AskedFit& fit, const PlanBox& box, Report& report) {
    const auto parts = find_pieces(pieces, drawer, copy, report);
    if (!parts) return;
    const std::string name = drawer.name + " " + std::to_string(copy);
    const auto assembly = assemble(*parts, drawer, fit, box, name, report);
    if (!assembly) return;
    measure_front(*assembly, report);
    measure_back(*assembly, report);
    measure_bottom(*assembly, report);
    measure_box(*assembly, report);
}

void check_plan(const Plan& plan, const Asked& asked, Report& report) {
    check_parts(plan, asked, report);
    check_setups(plan, asked, report);
    check_order(plan, asked, report);
    const auto pieces = make_workpieces(plan, report);
    for (const AskedDrawer& drawer : asked.drawers) {
        const PlanBox* box = check_box(plan, drawer, report);
        if (box == nullptr) continue;
        for (int copy = 1; copy <= drawer.count; ++copy)
            measure_copy(pieces, drawer, copy, asked.fit, *box, report);
    }
}

}  // namespace

std::vector<Finding> make_drawers(const Json& job, const Json& plan, double tolerance_mm) {
    const Asked asked = read_asked(job);
    Report report(tolerance_mm);
    try {
        check_plan(read_plan(plan), asked, report);
    } catch (const std::exception& error) { report.say(Kind::form, "plan", error.what()); }
    return report.findings();
}

}  // namespace checker
