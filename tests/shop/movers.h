#pragma once
// Who stands at the machine: three ways to come from a test cut to a fit.

#include <memory>

#include "memory/memory.h"
#include "shop/true_shop.h"
#include "testcut/correct.h"
#include "testcut/joint_model.h"

namespace shop {

struct Task {
    kw::Group group;
    std::optional<kw::Group> slot;  // that a tongue of its own is cut for
    kw::GroupTolerances tolerances;
    double wanted_chance = 0.9;

    Limits limits() const;
    const kw::Group* partner() const { return slot ? &*slot : nullptr; }
};

struct Decision {
    bool lock = false;
    std::vector<std::pair<std::string, double>> moves;  // control, mm as asked
    double chance = -1.0;        // said of the joint as it stands; below zero: nothing said
    double chance_after = -1.0;  // said of it after the moves
    int asked = 0;               // readings that were asked for beyond one of each
};

class Mover {
public:
    virtual ~Mover() = default;
    virtual kw::Settings first_setting() = 0;
    // What has been learned of the machine, once the group is locked.
    virtual std::vector<kw::Lesson> lessons() const { return {}; }
    // After a cut: looks at the joint in the shop, and says what to do.
    virtual Decision look(TrueShop& shop, const std::map<std::string, double>& joint, bool fresh_ends) = 0;
};

// Knows every hidden error, and is bound only by how finely the machine can be moved and how well it comes back.
std::unique_ptr<Mover> all_knowing(const Task& task, const TrueShop& shop);
// Reads, believes and moves as the program says.
std::unique_ptr<Mover> by_the_program(const Task& task, const TrueShop& shop, const kw::Start& start);
// One symptom at a time: the fit, then the step, then the shoulder; each is mended by one control, and tested again.
// Where someone who knows every hidden error sets the scales before the first cut.
kw::Settings all_knowing_dial(const Task& task, const TrueShop& shop);
std::unique_ptr<Mover> one_at_a_time(const Task& task, const TrueShop& shop);

struct Played {
    int cuts = 0;          // up to and with the one that was locked, and one more if that was bad
    int fresh_ends = 0;    // pairs of test ends used, the first ones included
    int asked = 0;         // readings that were asked for beyond one of each
    double wood_mm = 0.0;  // sawn off the test boards, both together
    bool bad_lock = false;
    bool first_fits = false;
};

// What was said and what came, of each decision, for reliability tables.
struct Said {
    double chance;
    bool came;
};

Played play(const Task& task, TrueShop& shop, Mover& mover, std::vector<Said>* now = nullptr,
            std::vector<Said>* after = nullptr);

}  // namespace shop
