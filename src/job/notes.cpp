#include "job/notes.h"

namespace kw {
namespace {

// A bit is fed in steps: half of its width at a time (common practice, no source).
Length step_of_bit(const Setup& setup) { return setup.kerf.scaled(1, 2); }

void add_router_steps(const Setup& setup, Plan& plan) {
    const Length step = step_of_bit(setup);
    if (!setup.height || *setup.height <= step || step <= Length{}) return;
    const auto steps = (setup.height->ticks() + step.ticks() - 1) / step.ticks();
    plan.notes.push_back({Level::note, setup.id,
                          Message::of("raise the bit in ", static_cast<int>(steps), " steps of at most ",
                                      step, "; the last one is the height given")});
}

void add_sacrificial(const Setup& setup, Plan& plan) {
    if (!setup.sacrificial) return;
    plan.notes.push_back(
        {Level::warning, setup.id,
         Message::of("the cutter runs into the spacer: use a sacrificial one, without nails or screws")});
}

void add_open_groove(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers) {
        const JointType* type = find_joint_type(drawer.front.joint, Place::front);
        if (drawer.face.style == FaceStyle::none && type && !type->at_the_end)
            plan.notes.push_back(
                {Level::note, drawer.name,
                 Message::of(
                     "the groove runs out through the side's lip at the front, and no face hides it")});
    }
}

// A face is sized from the opening that it covers.
void add_faces_without_opening(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        if (!drawer.opening && drawer.face.style != FaceStyle::none)
            plan.notes.push_back(
                {Level::warning, drawer.name,
                 Message::of("its face has no size, as the box was given and not the opening")});
}

void add_faces(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers) {
        if (!drawer.opening || drawer.face.style == FaceStyle::none || !drawer.face.stock.empty()) continue;
        const auto size = size_face(*drawer.opening, {drawer.face.style, drawer.face.left, drawer.face.right,
                                                      drawer.face.top, drawer.face.bottom, Length{}});
        plan.notes.push_back({Level::note, drawer.name,
                              Message::of("its face is ", size->length, " wide and ", size->width,
                                          " high; name its stock to have it in the parts")});
    }
}

void add_blades_and_stacks(const Job& job, Plan& plan) {
    for (const Cutter& cutter : with_implied_blades(job.shop).cutters) {
        const bool used = std::any_of(plan.setups.begin(), plan.setups.end(),
                                      [&](const Setup& setup) { return setup.cutter == cutter.name; });
        if (used && !job.shop.cutter_named(cutter.name))
            plan.notes.push_back(
                {Level::note, cutter.machine,
                 Message::of("no blade is listed for it: one with a kerf of ", cutter.kerf, " is taken")});
    }
    for (const Cutter& cutter : job.shop.cutters) {
        const Machine* machine = job.shop.machine_of(cutter);
        if (machine && cutter.kerf > machine->max_dado_width && machine->kind != MachineKind::miter_saw)
            plan.notes.push_back(
                {Level::warning, cutter.name,
                 Message::of("it is ", cutter.kerf, " wide and `", machine->name, "` takes no more than ",
                             machine->max_dado_width, ": it is not used")});
    }
}

void add_slide_sheet(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        if (drawer.opening && drawer.slide.kind != SlideKind::wooden_runner) {
            plan.notes.push_back({Level::note, "slides",
                                  Message::of("the slide maker's sheet wins over the clearances used here")});
            return;
        }
}

}  // namespace

void add_setup_notes(const Job& job, Plan& plan) {
    const std::vector<Setup> setups = plan.setups;
    for (const Setup& setup : setups) {
        const Machine* machine = job.shop.machine_named(setup.machine);
        if (machine && machine->kind == MachineKind::router_table) add_router_steps(setup, plan);
        add_sacrificial(setup, plan);
    }
    add_open_groove(job, plan);
    add_faces(job, plan);
    add_blades_and_stacks(job, plan);
    add_faces_without_opening(job, plan);
    add_slide_sheet(job, plan);
}

std::vector<std::string> cautions_for(const Job& job, const Setup& setup) {
    const Machine* machine = job.shop.machine_named(setup.machine);
    const MachineKind kind = machine ? machine->kind : MachineKind::table_saw;
    std::vector<std::string> out;
    if (kind == MachineKind::router_table) {
        out.push_back(
            "WARNING Feed from right to left as you stand at the table. Never between the bit and the "
            "fence.");
        out.push_back("Keep to the speed marked on the bit. Featherboards and push blocks.");
    } else if (kind == MachineKind::miter_saw) {
        out.push_back("WARNING Clamp short parts. Let the blade stop before you lift it.");
    } else if (setup.height) {
        out.push_back(
            "WARNING Guard and riving knife are off for this cut: hands 6 in (150 mm) from the cutter, push "
            "blocks and featherboards. Refit both before the next through cut.");
        if (setup.guide == "miter gauge")
            out.push_back("Gauge and fence together only because this cut does not go through.");
    } else if (setup.guide == "stop") {
        out.push_back(
            "WARNING Guard and riving knife on. The stop ends before the blade: the offcut must never be "
            "trapped.");
    } else {
        out.push_back(
            "WARNING Guard and riving knife on. Push stick when hands come within 6 in (150 mm). Stand out "
            "of the "
            "line of kickback.");
    }
    out.push_back(
        "Unplug to change or adjust the cutter. The machine's manual, local rules and qualified instruction "
        "come first.");
    return out;
}

}  // namespace kw
