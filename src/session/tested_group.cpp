#include "session/tested_group.h"

#include "words/names.h"

namespace kw {

tl::expected<TestedGroup, Refusal> find_group(const Work& work, const std::string& id) {
    const Setup* setup = work.plan.setup_with_id(id.substr(0, id.find('#')));
    if (!setup)
        return tl::unexpected(Refusal{"setup", Message::say("testing.no_setup", id),
                                      work.plan.setups.empty()
                                          ? Message::say("testing.none_planned")
                                          : Message::say("testing.planned", work.plan.setups.back().id)});
    const Group* group = work.plan.group_with_id(setup->group);
    if (!group)
        return tl::unexpected(
            Refusal{"setup",
                    Message::say("testing.not_a_joints", id, work_word(work.job.locale.words(), setup->work)),
                    Message::say("testing.name_another")});
    const auto standing = work.standing.groups.find(group->key);
    TestedGroup found{setup,
                      group,
                      work.design.group_with_key(group->key),
                      standing == work.standing.groups.end() ? nullptr : &standing->second,
                      {},
                      {},
                      {}};
    found.start = start_of(work, *group);
    const auto touched = work.standing.pins_touched.find(group->key);
    if (found.standing && found.standing->torn_down) found.set_again = found.standing->set_again;
    else if (touched != work.standing.pins_touched.end()) found.set_again = touched->second;
    found.model = found.standing ? found.standing->model
                                 : model_of(*group, tolerances_of(work.job),
                                            partner_of(work.standing_design, *group), found.start);
    return found;
}

std::vector<std::string> names_of_readings(const Model& model) {
    std::vector<std::string> names;
    for (const Reading& reading : model.readings) names.push_back(reading.form.name);
    return names;
}

Belief before_reading(const TestedGroup& found, const TestCut& cut) {
    if (!found.standing)
        return predict_moves(found.model, belief_from_priors(found.model),
                             cut.moved ? moves_told(found.model, *cut.moved) : std::vector<Move>{});
    const Belief moved = after_moves(*found.standing, cut.moved);
    return cut.fresh_end ? predict_fresh_ends(found.model, moved) : moved;
}

Settings settings_of(const Work& work, const TestedGroup& found, const Belief& belief) {
    return in_row(settings_by(found.model, found.designed->designed, belief), *found.group,
                  leading_row(work.standing_design, work.standing, *found.group));
}

}  // namespace kw
