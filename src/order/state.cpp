#include "order/state.h"

#include <algorithm>

namespace kw::order {

namespace {

// A label that no work asks for any more is as good as none: fewer states to tell apart.
Label worth_keeping(const View& view, Label label, const Bits& done) {
    // Where the time of a change hangs on what stands, that counts as long as anything is left to be set.
    const Bits& asking = view.from_to.is_given() ? view.asked : view.asked_by[label];
    return any_left(asking, done) ? label : Label{0};
}

// Those of the views [from, to) and of where the person stands, as far as no work asks for them any more.
void drop_labels(const Model& model, std::size_t from, std::size_t to, State& state) {
    for (std::size_t v = from; v < to; ++v)
        state.label[v] = worth_keeping(model.views[v], state.label[v], state.done);
    Label& here = state.label.back();
    if (here != model.nowhere()) here = worth_keeping(model.views.back(), here, state.done);
}

// What is left out is as good as done.
void decide(const Model& model, const OptionOf& option, State& state) {
    state.picked[option.choice] = static_cast<std::uint8_t>(option.option);
    const auto& ways = model.choices[option.choice];
    for (std::size_t o = 0; o < ways.size(); ++o)
        if (o != option.option) put_all(state.done, ways[o].operations);
}

}  // namespace

State start_of(const Model& model) {
    State state{Bits(model.words(), 0), {}, 0, std::vector<std::uint8_t>(model.choices.size(), open_choice)};
    for (const View& view : model.views) state.label.push_back(worth_keeping(view, view.start, state.done));
    if (model.views.back().start == model.nowhere()) state.label.back() = model.nowhere();
    return state;
}

Move move_of(const Model& model, const std::vector<Label>& stands, std::size_t operation) {
    const Work& work = model.works[operation];
    const Shop& shop = model.shops[work.machine];
    Mask hanging = 0;
    Move move;
    move.operation = operation;
    for (std::size_t a = 0; a < shop.attributes; ++a) {
        if (work.label[a] == 0 || work.label[a] == stands[shop.first_view + a]) continue;
        move.changed |= Mask{1} << a;
        hanging |= shop.hangs[a];
    }
    move.touched = move.changed | hanging;
    move.changed |= hanging & work.needs;
    for (std::size_t a = 0; a < shop.attributes; ++a)
        if (move.changed >> a & 1) {
            const View& view = model.views[shop.first_view + a];
            const Label from = hanging >> a & 1 ? Label{0} : stands[shop.first_view + a];
            move.cost_s += view.from_to.is_given() ? view.from_to.seconds(from, work.label[a])
                                                   : view.weight[work.label[a]];
        }
    const Label here = stands.back();
    if (here != work.machine + 1 && here != model.nowhere())
        move.cost_s += model.views.back().weight[work.machine + 1];
    return move;
}

std::size_t deciding_move(const Model& model, const OptionOf& option) {
    return model.count + option.choice * most_options + option.option;
}

std::optional<OptionOf> decided_by(const Model& model, std::size_t move) {
    if (move < model.count) return std::nullopt;
    return OptionOf{(move - model.count) / most_options, (move - model.count) % most_options};
}

Move move_from(const Model& model, const State& state, std::size_t number) {
    const std::optional<OptionOf> alone = decided_by(model, number);
    Move move;
    move.operation = number;
    if (!alone) move = move_of(model, state.label, number);
    if (alone || is_open(model, state, number)) {
        const OptionOf option = alone ? *alone : model.works[number].option;
        move.cost_s += model.choices[option.choice][option.option].duration_s;
    }
    return move;
}

void set_labels(const Model& model, const Move& move, std::vector<Label>& stands) {
    const Work& work = model.works[move.operation];
    const Shop& shop = model.shops[work.machine];
    for (std::size_t a = 0; a < shop.attributes; ++a) {
        if (work.label[a] != 0) stands[shop.first_view + a] = work.label[a];
        else if (move.touched >> a & 1) stands[shop.first_view + a] = 0;
    }
    stands.back() = static_cast<Label>(work.machine + 1);
}

void take(const Model& model, const Move& move, State& state) {
    const std::optional<OptionOf> alone = decided_by(model, move.operation);
    const bool decides = alone || is_open(model, state, move.operation);
    if (decides) decide(model, alone ? *alone : model.works[move.operation].option, state);
    state.spent_s += move.cost_s;
    if (!alone) {
        put(state.done, move.operation);
        set_labels(model, move, state.label);
    }
    if (decides) return drop_labels(model, 0, model.place(), state);
    const Shop& shop = model.shops[model.works[move.operation].machine];
    drop_labels(model, shop.first_view, shop.first_view + shop.attributes, state);
}

bool is_open(const Model& model, const State& state, std::size_t operation) {
    const OptionOf& option = model.works[operation].option;
    return option.choice != no_choice && state.picked[option.choice] == open_choice;
}

std::vector<std::uint8_t> picked_by(const Model& model, const Bits& done) {
    std::vector<std::uint8_t> picked;
    for (const auto& ways : model.choices) {
        const bool is_begun = std::any_of(ways.begin(), ways.end(),
                                          [&](const Way& way) { return intersect(way.operations, done); });
        picked.push_back(is_begun ? closed_choice : open_choice);
        for (std::size_t o = 0; is_begun && o < ways.size(); ++o)
            if (any_left(ways[o].operations, done)) picked.back() = static_cast<std::uint8_t>(o);
    }
    return picked;
}

bool is_ready(const Model& model, const State& state, std::size_t operation) {
    return !has(state.done, operation) && !any_left(model.before_parts[operation], state.done);
}

bool is_untouched(const Model& model, const State& state, std::size_t group) {
    const Held& held = model.groups[group];
    return !held.begun && !intersect(held.operations, state.done);
}

std::vector<std::size_t> open_groups(const Model& model, const State& state, std::size_t machine) {
    std::vector<std::size_t> open;
    for (const std::size_t g : model.shops[machine].groups)
        if (!is_untouched(model, state, g) && any_left(model.groups[g].operations, state.done))
            open.push_back(g);
    return open;
}

bool disturbs(const Model& model, const std::vector<std::size_t>& open, const Move& move) {
    return std::any_of(open.begin(), open.end(), [&](std::size_t g) {
        const Held& held = model.groups[g];
        return (held.held & move.touched) && !has(held.operations, move.operation);
    });
}

}  // namespace kw::order
