#include "shop/slips.h"

#include <cmath>

#include "testcut/doubt.h"

namespace shop {
namespace {

// The whole width of the fit's tolerance.
constexpr double matters_mm = 0.2;

double slipped(SlipMade slip, double value) {
    switch (slip) {
        case SlipMade::ten_times: return value * 10.0;
        case SlipMade::tenth: return value / 10.0;
        case SlipMade::inches: return value / 25.4;
        case SlipMade::sign: return -value;
        default: return value;
    }
}

bool may_slip(SlipMade slip, const std::string& reading) {
    return slip != SlipMade::sign || reading == "fit" || reading == "face_step";
}

}  // namespace

const char* name_of(SlipMade slip) {
    switch (slip) {
        case SlipMade::none: return "none (false alarms)";
        case SlipMade::ten_times: return "reading ten times too large";
        case SlipMade::tenth: return "reading a tenth";
        case SlipMade::inches: return "inches for millimetres";
        case SlipMade::sign: return "reading with the wrong sign";
        case SlipMade::wrong_way: return "move in the wrong direction";
    }
    return "";
}

void try_slip(const Task& task, const KindOfShop& kind, std::uint64_t seed, SlipMade slip, Caught& caught) {
    TrueShop shop(kind, seed);
    shop.begin(task.group);
    shop.set(task.group.designed);
    Task told = task;
    told.group.work.chosen.machine.fence_repeats = told.group.work.chosen.machine.height_repeats =
        kw::Length::nearest_mm(2.0 * kind.repeats_mm);
    const kw::Model model = kw::model_of(told.group, task.tolerances, task.partner(), {task.group.designed});
    kw::Belief belief = kw::belief_from_priors(model);
    const int at_cut = slip == SlipMade::wrong_way || seed % 2 == 1 ? 2 : 1;
    std::vector<kw::Move> moves;
    for (int cut = 1; cut <= at_cut; ++cut) {
        const bool now = cut == at_cut;
        double off = 0.0;
        std::size_t culprit = model.controls.size();
        if (now && slip == SlipMade::wrong_way) {
            // A second pass can't be made on the near side of the first by the same move.
            std::vector<kw::Move> may;
            std::copy_if(moves.begin(), moves.end(), std::back_inserter(may), [&](const kw::Move& move) {
                return -move.by_mm >= model.controls[move.control].least_mm;
            });
            if (may.empty()) return;
            culprit = may[std::size_t(shop.uniform() * double(may.size()))].control;
        }
        for (const kw::Move& move : moves) {
            const bool turned = move.control == culprit;
            if (turned) off = 2.0 * move.by_mm;
            shop.move(model.controls[move.control].name, turned ? -move.by_mm : move.by_mm);
        }
        const auto joint = joint_as_cut(task.group, shop.stands(), shop.slot(), shop.piece_mm());
        std::vector<std::size_t> may;
        for (std::size_t r = 0; r < model.readings.size(); ++r)
            if (may_slip(slip, model.readings[r].form.name)) may.push_back(r);
        const bool of_reading = now && slip != SlipMade::none && slip != SlipMade::wrong_way;
        if (of_reading && may.empty()) return;
        if (of_reading) culprit = may[std::size_t(shop.uniform() * double(may.size()))];
        std::vector<kw::Observation> seen;
        for (std::size_t r = 0; r < model.readings.size(); ++r) {
            const double value = shop.read(joint, model.readings[r].form.name);
            const double given = of_reading && r == culprit ? slipped(slip, value) : value;
            if (given != value) off = given - value;
            seen.push_back(kw::taken(model.readings[r], given));
        }
        const auto doubt = kw::find_doubt(model, belief, moves, seen);
        if (now && (slip == SlipMade::none || off != 0.0)) {
            ++caught.times;
            if (doubt) ++caught.asked;
            const bool matters = std::abs(off) > matters_mm;
            if (matters) ++caught.matter;
            if (matters && doubt) ++caught.asked_that_matter;
            const bool about_reading = doubt && doubt->about == kw::Doubt::About::reading;
            if (doubt && doubt->which == culprit && about_reading == of_reading) ++caught.named;
        }
        belief = kw::observe_all(belief, seen);
        moves = kw::advise(model, belief).moves;
        if (moves.empty() && at_cut == 2 && cut == 1)
            moves = kw::best_move(model, belief, {0.0, 0.0, 3}).moves;
        belief = kw::predict_moves(model, belief, moves);
    }
}

}  // namespace shop
