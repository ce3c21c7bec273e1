// Test cuts to a fit, over thousands of simulated shops: the program against a mover that knows every hidden error, and
// against the habit of mending one symptom at a time.
#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "file/document.h"
#include "job/design.h"
#include "job/standing.h"
#include "shop/movers.h"

using namespace kw;

namespace {

std::vector<shop::Task> tasks() {
    const auto text = read_file(std::string(KW_TEST_DIR) + "/files/test_cut_joints.json");
    const Job job = read_job(parse_json(text.value()).value()).value();
    const Design made = design(job).value();
    std::vector<shop::Task> out;
    for (const Group& group : made.groups) {
        const Group* slot = partner_of(made, group);
        out.push_back({group, slot ? std::optional(*slot) : std::nullopt, tolerances_of(job), job.fit.wanted_chance});
    }
    return out;
}

struct Tally {
    std::vector<int> cuts;
    double ends = 0.0, bad = 0.0, first = 0.0;

    void add(const shop::Played& played) {
        cuts.push_back(played.cuts);
        ends += played.fresh_ends;
        bad += played.bad_locks;
        first += played.first_fits;
    }
    double mean() const {
        double sum = 0.0;
        for (const int c : cuts) sum += c;
        return sum / double(cuts.size());
    }
    int median() {
        std::nth_element(cuts.begin(), cuts.begin() + std::ptrdiff_t(cuts.size() / 2), cuts.end());
        return cuts[cuts.size() / 2];
    }
    double within(int most) const {
        return 100.0 * double(std::count_if(cuts.begin(), cuts.end(), [&](int c) { return c <= most; })) /
               double(cuts.size());
    }
};

}  // namespace

int main(int argc, char** argv) {
    const int shops = argc > 1 ? std::atoi(argv[1]) : 5000;
    const auto all = tasks();
    for (const shop::Task& task : all) std::printf("%s\n", task.group.key.c_str());
    std::printf("%-20s %-36s | %6s %6s | %6s %3s %6s %6s %6s %5s | %5s\n", "shop", "joint", "knows", "in two", "cuts",
                "med", "in two", "ends", "bad%", "first", "ratio");
    for (const shop::KindOfShop& kind : shop::all_kinds()) {
        if (argc > 2 && kind.name.find(argv[2]) == std::string::npos) continue;
        Tally knows_all, program_all;
        for (const shop::Task& task : all) {
            Tally knows, program;
            for (int s = 0; s < shops / int(all.size()); ++s) {
                shop::TrueShop one(kind, std::uint64_t(s));
                one.begin(task.group);
                const auto know = shop::all_knowing(task, one);
                const auto k = shop::play(task, one, *know);
                knows.add(k);
                knows_all.add(k);
                shop::TrueShop two(kind, std::uint64_t(s));
                two.begin(task.group);
                Group group = task.group;
                shop::Task told = task;
                if (kind.tells_repeats) {
                    told.group.work.chosen.machine.fence_repeats = Length::nearest_mm(2 * kind.repeats_mm);
                    told.group.work.chosen.machine.height_repeats = Length::nearest_mm(2 * kind.repeats_mm);
                }
                const auto mover = shop::by_the_program(told, two, {task.group.designed, usual_scales()});
                const auto p = shop::play(told, two, *mover);
                program.add(p);
                program_all.add(p);
            }
            const auto line = [&](const char* name, Tally& k, Tally& p) {
                std::printf("%-20s %-36s | %6.3f %5.1f%% %5.2f | %6.3f %3d %5.1f%% %6.3f %6.2f %4.0f%% | %5.3f\n", kind.name.c_str(), name,
                            k.mean(), k.within(2), 100.0 * k.bad / double(k.cuts.size()), p.mean(), p.median(), p.within(2), p.ends / double(p.cuts.size()),
                            100.0 * p.bad / double(p.cuts.size()), 100.0 * p.first / double(p.cuts.size()), p.mean() / k.mean());
            };
            line(task.group.work.label.c_str(), knows, program);
            if (&task == &all.back()) line("all", knows_all, program_all);
        }
    }
    return 0;
}
