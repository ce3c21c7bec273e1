#include "job/notes.h"

#include <set>

#include "job/banks.h"
#include "job/seasons.h"
#include "job/slide_notes.h"
#include "job/survey_notes.h"
#include "setup/bit_passes.h"

namespace kw {
namespace {

// What runs after the lock of its group comes back to a height that was tested.
void add_bit_passes(const Job& job, const Setup& setup, Plan& plan) {
    const std::vector<Length> heights = heights_of(job.shop, setup);
    if (heights.size() < 2) return;
    Message lower;
    for (std::size_t i = 0; i + 1 < heights.size(); ++i)
        lower = lower + (i == 0 ? Message() : Message::say("list.comma")) + Message::of(heights[i]);
    plan.notes.push_back({Level::note, setup.id,
                          Message::say(setup.test_cut ? "job.raise_bit" : "job.raise_bit_again",
                                       static_cast<int>(heights.size()), lower)});
    if (setup.index)
        plan.notes.push_back({Level::note, setup.id, Message::say("job.low_pin", heights.front())});
}

void add_sacrificial(const Setup& setup, Plan& plan) {
    if (!setup.sacrificial) return;
    plan.notes.push_back({Level::warning, setup.id, Message::say("job.sacrificial")});
}

void add_open_groove(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers) {
        const JointType* type = find_joint_type(drawer.front.joint, Place::front);
        if (drawer.face.style == FaceStyle::none && type && !type->at_the_end)
            plan.notes.push_back({Level::note, drawer.name, Message::say("job.groove_runs_out")});
    }
}

// A face is sized from the opening that it covers.
void add_faces_without_opening(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        if (!drawer.opening && !drawer.face.in_bank && drawer.face.style != FaceStyle::none)
            plan.notes.push_back({Level::warning, drawer.name, Message::say("job.face_without_size")});
}

void add_faces(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers) {
        const auto size = face_size(drawer);
        if (!size || !drawer.face.stock.empty()) continue;
        plan.notes.push_back(
            {Level::note, drawer.name, Message::say("job.face_is", size->length, size->width)});
    }
}

void add_blades_and_stacks(const Job& job, Plan& plan) {
    for (const Cutter& cutter : with_implied_blades(job.shop).cutters) {
        const bool used = std::any_of(plan.setups.begin(), plan.setups.end(),
                                      [&](const Setup& setup) { return setup.cutter == cutter.name; });
        if (used && !job.shop.cutter_named(cutter.name))
            plan.notes.push_back({Level::note, cutter.machine, Message::say("job.blade_taken", cutter.kerf)});
    }
    for (const Cutter& cutter : job.shop.cutters) {
        const Machine* machine = job.shop.machine_of(cutter);
        if (machine && cutter.kerf > machine->max_dado_width && machine->kind != MachineKind::miter_saw)
            plan.notes.push_back({Level::warning, cutter.name,
                                  Message::say("job.too_wide_for_machine", cutter.kerf, machine->name,
                                               machine->max_dado_width)});
    }
}

void add_surveys(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        for (const DrawerBox& box : plan.boxes)
            if (box.drawer == drawer.name)
                for (Note& note : survey_notes(drawer, box.size.depth)) plan.notes.push_back(std::move(note));
}

void add_bands(const Job& job, Plan& plan) {
    for (const Stock& stock : job.stock) {
        std::set<Length> bands;
        for (const Part& part : plan.parts)
            if (part.stock == stock.name && !part.banded.empty()) bands.insert(part.band);
        for (const Length band : bands)
            plan.notes.push_back({Level::note, stock.name, Message::say("band.note", band)});
    }
}

void add_slide_places(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        if (const auto place = slide_place_of(job, plan, drawer)) {
            // Where there are no dividers an opening has no floor to measure from.
            const BankSpec* bank = bank_of(job.banks, drawer.name);
            plan.notes.push_back({Level::note, drawer.name,
                                  bank && !bank->rail
                                      ? Message::say("slides.on_the_tape", place->behind_front, bank->name)
                                      : say_slide_place(*place)});
        }
}

void add_slide_sheet(const Job& job, Plan& plan) {
    for (const DrawerSpec& drawer : job.drawers)
        if (drawer.opening && drawer.slide.kind != SlideKind::wooden_runner) {
            plan.notes.push_back(
                {Level::note, "slides", Message::say("job.slide_sheet"), Message::say("job.about.slides")});
            return;
        }
}

}  // namespace

void add_setup_notes(const Job& job, Plan& plan) {
    const std::vector<Setup> setups = plan.setups;
    for (const Setup& setup : setups) {
        add_bit_passes(job, setup, plan);
        add_sacrificial(setup, plan);
    }
    for (Note& note : nominal_notes(job)) plan.notes.push_back(std::move(note));
    add_surveys(job, plan);
    add_open_groove(job, plan);
    add_faces(job, plan);
    add_blades_and_stacks(job, plan);
    add_faces_without_opening(job, plan);
    add_slide_places(job, plan);
    add_slide_sheet(job, plan);
    add_bands(job, plan);
}

std::vector<std::string> cautions_for(const Job& job, const Setup& setup) {
    const Machine* machine = job.shop.machine_named(setup.machine);
    const MachineKind kind = machine ? machine->kind : MachineKind::table_saw;
    std::vector<std::string> out;
    const auto add = [&](const char* key) { out.emplace_back(job.locale.words().text(key)); };
    if (kind == MachineKind::router_table) {
        add("caution.feed_from_the_right");
        add("caution.speed_of_the_bit");
        if (setup.index) add("caution.indexing_jig");
    } else if (kind == MachineKind::miter_saw) {
        add("caution.clamp_short_parts");
    } else if (setup.height) {
        add("caution.guard_off");
        if (setup.index) add("caution.indexing_jig");
        else if (setup.guide == "miter gauge") add("caution.gauge_and_fence");
    } else if (setup.guide == "stop") {
        add("caution.offcut_at_the_stop");
    } else {
        add("caution.guard_on");
    }
    add("caution.unplug");
    return out;
}

}  // namespace kw
