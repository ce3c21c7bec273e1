#include "order/model.h"

#include <algorithm>
#include <map>

namespace kw::order {

namespace {

constexpr Mask bit(std::size_t attribute) { return Mask{1} << attribute; }

Mask mask_of(const std::vector<std::size_t>& attributes) {
    Mask mask = 0;
    for (const std::size_t a : attributes) mask |= bit(a);
    return mask;
}

std::vector<Mask> hangs_of(const Machine& machine) {
    std::vector<Mask> hangs;
    for (const Attribute& attribute : machine.attributes) hangs.push_back(mask_of(attribute.invalidates));
    for (std::size_t via = 0; via < hangs.size(); ++via)
        for (Mask& mask : hangs)
            if (mask & bit(via)) mask |= hangs[via];
    return hangs;
}

// What `attribute` hangs on, itself included.
std::vector<std::size_t> masters_of(const Shop& shop, std::size_t attribute) {
    std::vector<std::size_t> masters;
    for (std::size_t a = 0; a < shop.attributes; ++a)
        if (a == attribute || (shop.hangs[a] & bit(attribute))) masters.push_back(a);
    return masters;
}

class Maker {
public:
    Maker(const Problem& problem, std::vector<Bits> before) : problem_(problem) {
        model_.count = problem.operations.size();
        for (const Bits& firsts : before) model_.before_parts.push_back(parts_of(firsts));
        model_.before = std::move(before);
    }

    Model make() {
        for (const Operation& operation : problem_.operations) add_work(operation);
        for (const Group& group : problem_.groups) add_group(group);
        for (std::size_t m = 0; m < problem_.machines.size(); ++m) add_shop(m);
        add_place();
        for (std::size_t c = 0; c < problem_.choices.size(); ++c) add_choice(problem_.choices[c], c);
        for (std::size_t m = 0; m < problem_.machines.size(); ++m)
            model_.shops[m].orderly = all_nested_[m] && groups_are_uniform(m);
        return std::move(model_);
    }

private:
    void add_work(const Operation& operation) {
        Work work;
        work.machine = operation.machine;
        work.label.resize(operation.needs.size(), 0);
        for (std::size_t a = 0; a < operation.needs.size(); ++a)
            if (operation.needs[a] != any) work.needs |= bit(a);
        work.duration_s = operation.duration_s;
        model_.works.push_back(std::move(work));
        model_.duration_s += operation.duration_s;
    }

    void add_choice(const Choice& choice, std::size_t c) {
        std::vector<Way> ways;
        for (std::size_t o = 0; o < choice.options.size(); ++o) {
            Way way{Bits(model_.words(), 0), 0, 0};
            for (const std::size_t operation : choice.options[o]) {
                put(way.operations, operation);
                model_.works[operation].option = {c, o};
                way.duration_s += problem_.operations[operation].duration_s;
            }
            model_.duration_s -= way.duration_s;
            way.own_s = way.duration_s + set_for_it_alone(way.operations);
            ways.push_back(std::move(way));
        }
        model_.choices.push_back(std::move(ways));
    }

    // What nothing else asks for, and does not stand at the start. The first walk of all is free.
    std::int64_t set_for_it_alone(const Bits& operations) const {
        std::int64_t sum = 0;
        for (std::size_t v = 0; v < model_.views.size(); ++v) {
            const View& view = model_.views[v];
            if (v == model_.place() && view.start == model_.nowhere()) continue;
            for (std::size_t l = 1; l < view.weight.size(); ++l)
                if (l != view.start && count(view.asked_by[l]) > 0 && is_subset(view.asked_by[l], operations))
                    sum += view.weight[l];
        }
        return sum;
    }

    void add_group(const Group& group) {
        Held held{Bits(model_.words(), 0), mask_of(group.held), group.begun, Bits(model_.words(), 0)};
        for (const std::size_t operation : group.operations) {
            put(held.operations, operation);
            model_.works[operation].groups.push_back(model_.groups.size());
            put_all(held.wait_for, model_.before[operation]);
        }
        const Bits candidates = held.wait_for;
        each(candidates, [&](std::size_t i) {
            if (has(held.operations, i) || intersect(model_.before[i], held.operations))
                drop(held.wait_for, i);
        });
        model_.groups.push_back(std::move(held));
    }

    void add_shop(std::size_t m) {
        const Machine& machine = problem_.machines[m];
        Shop shop{model_.views.size(), machine.attributes.size(), hangs_of(machine), {}, false};
        for (std::size_t g = 0; g < problem_.groups.size(); ++g)
            if (problem_.operations[problem_.groups[g].operations.front()].machine == m)
                shop.groups.push_back(g);
        model_.shops.push_back(std::move(shop));
        all_nested_.push_back(true);
        for (std::size_t a = 0; a < machine.attributes.size(); ++a) add_view(m, a);
    }

    bool is_nested(std::size_t m, std::size_t attribute, const std::vector<std::size_t>& masters) const {
        const Mask all = mask_of(masters);
        return std::all_of(model_.works.begin(), model_.works.end(), [&](const Work& work) {
            return work.machine != m || !(work.needs & bit(attribute)) || (work.needs & all) == all;
        });
    }

    void add_view(std::size_t m, std::size_t attribute) {
        std::vector<std::size_t> key = masters_of(model_.shops[m], attribute);
        if (!is_nested(m, attribute, key)) {
            all_nested_[m] = false;
            key = {attribute};
        }
        View view = empty_view();
        std::map<std::vector<int>, Label> labels;
        for (std::size_t i = 0; i < model_.count; ++i) {
            Work& work = model_.works[i];
            if (work.machine != m || !(work.needs & bit(attribute))) continue;
            const std::vector<int>& needs = problem_.operations[i].needs;
            const auto [place, is_new] =
                labels.insert({values(needs, key), static_cast<Label>(labels.size() + 1)});
            if (is_new)
                add_label(view, problem_.machines[m].attributes[attribute].setting_s(needs[attribute]));
            work.label[attribute] = place->second;
            ask(view, place->second, i);
        }
        const Attribute& asked = problem_.machines[m].attributes[attribute];
        if (!asked.change_from_to_s.empty()) add_from_to(view, m, attribute, key, labels);
        const auto start = labels.find(values(problem_.machines[m].start, key));
        if (start != labels.end()) view.start = start->second;
        model_.views.push_back(std::move(view));
    }

    // The start has a label too, though no work may ask for it: the first change is from there.
    void add_from_to(View& view, std::size_t m, std::size_t attribute, const std::vector<std::size_t>& key,
                     std::map<std::vector<int>, Label>& labels) {
        const Attribute& changed = problem_.machines[m].attributes[attribute];
        const std::vector<int>& start = problem_.machines[m].start;
        if (start[attribute] != unknown &&
            labels.insert({values(start, key), static_cast<Label>(labels.size() + 1)}).second)
            add_label(view, changed.setting_s(start[attribute]));
        const std::size_t place =
            static_cast<std::size_t>(std::find(key.begin(), key.end(), attribute) - key.begin());
        std::vector<int> value(labels.size() + 1, unknown);
        for (const auto& [asked, label] : labels) value[label] = asked[place];
        view.from_to = FromTo(changed, value);
        for (std::size_t to = 1; to < value.size(); ++to)
            view.weight[to] = view.from_to.least_s(static_cast<Label>(to));
        // It is lost, for nothing, only where it hangs on others or on itself.
        const bool can_be_lost = key.size() > 1 || masters_of(model_.shops[m], attribute).size() > 1 ||
                                 (model_.shops[m].hangs[attribute] & bit(attribute));
        if (!view.from_to.is_never_dearer_direct(can_be_lost)) all_nested_[m] = false;
    }

    void add_place() {
        View view = empty_view();
        for (const Machine& machine : problem_.machines) add_label(view, machine.walk_s);
        add_label(view, 0);  // nowhere
        for (std::size_t i = 0; i < model_.count; ++i)
            ask(view, static_cast<Label>(model_.works[i].machine + 1), i);
        view.start =
            problem_.start_machine ? static_cast<Label>(*problem_.start_machine + 1) : model_.nowhere();
        model_.views.push_back(std::move(view));
    }

    View empty_view() const { return {{0}, {Bits(model_.words(), 0)}, Bits(model_.words(), 0), 0}; }

    void add_label(View& view, std::int64_t weight) const {
        view.weight.push_back(weight);
        view.asked_by.emplace_back(model_.words(), 0);
    }

    static void ask(View& view, Label label, std::size_t operation) {
        put(view.asked_by[label], operation);
        put(view.asked, operation);
    }

    static std::vector<int> values(const std::vector<int>& all, const std::vector<std::size_t>& attributes) {
        std::vector<int> some;
        for (const std::size_t a : attributes) some.push_back(all[a]);
        return some;
    }

    bool groups_are_uniform(std::size_t m) const {
        return std::all_of(model_.shops[m].groups.begin(), model_.shops[m].groups.end(),
                           [&](std::size_t g) { return is_uniform(problem_.groups[g], model_.shops[m]); });
    }

    // All its operations need all that is held, at the same values; what is held hangs on nothing that is not.
    bool is_uniform(const Group& group, const Shop& shop) const {
        const Operation& first = problem_.operations[group.operations.front()];
        const Mask held = mask_of(group.held);
        return std::all_of(group.held.begin(), group.held.end(), [&](std::size_t a) {
            const int value = first.needs[a];
            if (value == any || (mask_of(masters_of(shop, a)) & ~held)) return false;
            if (group.begun && problem_.machines[first.machine].start[a] != value) return false;
            return std::all_of(group.operations.begin(), group.operations.end(),
                               [&](std::size_t own) { return problem_.operations[own].needs[a] == value; });
        });
    }

    const Problem& problem_;
    Model model_;
    std::vector<bool> all_nested_;  // by machine; and no way round is cheaper than a direct change
};

}  // namespace

Model model_of(const Problem& problem, std::vector<Bits> before) {
    return Maker(problem, std::move(before)).make();
}

}  // namespace kw::order
