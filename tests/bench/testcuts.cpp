// Test cuts to a fit, over thousands of simulated shops: the program against a mover that knows every hidden error, and
// against the habit of mending one symptom at a time.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <numeric>

#include "file/document.h"
#include "job/design.h"
#include "job/standing.h"
#include "setup/shims.h"
#include "shop/movers.h"
#include "shop/slips.h"
#include "testcut/doubt.h"
#include "testcut/first_setting.h"

using namespace kw;

namespace {

std::vector<shop::Task> tasks() {
    const auto text = read_file(std::string(KW_TEST_DIR) + "/files/test_cut_joints.json");
    const Job job = read_job(parse_json(text.value()).value()).value();
    const Design made = design(job).value();
    std::vector<shop::Task> out;
    for (const Group& group : made.groups) {
        const Group* slot = partner_of(made, group);
        out.push_back(
            {group, slot ? std::optional(*slot) : std::nullopt, tolerances_of(job), job.fit.wanted_chance});
    }
    return out;
}

struct Tally {
    std::vector<int> cuts;
    double wood_mm = 0.0, bad = 0.0, asked = 0.0;

    void add(const shop::Played& played) {
        cuts.push_back(played.cuts);
        wood_mm += played.wood_mm;
        bad += played.bad_lock;
        asked += played.asked;
    }
    double count() const { return double(cuts.size()); }
    double mean() const { return double(std::accumulate(cuts.begin(), cuts.end(), 0)) / count(); }
    int median() const {
        std::vector<int> sorted = cuts;
        std::sort(sorted.begin(), sorted.end());
        return sorted[sorted.size() / 2];
    }
    double within(int most) const {
        return 100.0 * double(std::count_if(cuts.begin(), cuts.end(), [&](int c) { return c <= most; })) /
               count();
    }
};

struct Row {
    Tally knows, program, habit;
};

void print_row(const std::string& shop, const std::string& joint, const Row& row) {
    const auto part = [](const Tally& tally) {
        std::printf(" | %5.3f %2d %5.1f%% %5.0f %4.1f%%", tally.mean(), tally.median(), tally.within(2),
                    tally.wood_mm / tally.count(), 100.0 * tally.bad / tally.count());
    };
    std::printf("%-17s %-24s", shop.c_str(), joint.c_str());
    part(row.knows);
    part(row.program);
    part(row.habit);
    std::printf(" | %5.3f %5.1f%% %4.1f | %5.3f\n", row.program.mean() / row.knows.mean(),
                100.0 * row.program.within(2) / row.knows.within(2), row.program.asked / row.program.count(),
                row.habit.mean() / row.knows.mean());
}

// Chances said, in tenths of what is left to one, against how often it came so.
void print_reliability(const char* what, const std::vector<shop::Said>& said) {
    std::printf("  %s: said -> came (times)  ", what);
    for (int bin = 0; bin < 20; ++bin) {
        double n = 0.0, sum = 0.0, came = 0.0;
        for (const shop::Said& one : said) {
            if (std::min(19, int(one.chance * 20.0)) != bin) continue;
            n += 1.0;
            sum += one.chance;
            came += one.came;
        }
        if (n > 100.0) std::printf(" %4.1f->%4.1f (%.0f)", 100.0 * sum / n, 100.0 * came / n, n);
    }
    std::printf("\n");
    double n = 0.0, sum = 0.0, came = 0.0;
    for (const shop::Said& one : said) {
        if (one.chance < 0.85 || one.chance > 0.95) continue;
        n += 1.0;
        sum += one.chance;
        came += one.came;
    }
    std::printf("  %s, where it says 85 to 95 %%: said %.1f, came %.1f (%.0f times)\n", what, 100.0 * sum / n,
                100.0 * came / n, n);
}

std::string name_of_task(const shop::Task& task) {
    const Group& group = task.group;
    const std::string cuts = group.cuts_slot && group.cuts_end ? "" : group.cuts_end ? ", tongue" : ", slot";
    return group.work.label + (group.work.chosen.joint.insert_cut() ? cuts : "") +
           (group.designed.shift > Length{} ? ", two passes" : "") +
           (lists_shims(group.work.chosen.cutter) ? ", shims" : "") +
           (group.work.chosen.cutter.kind == CutterKind::bit ? ", bit" : "");
}

// The same hidden errors for each of the three.
void play_all(const shop::Task& task, const shop::KindOfShop& kind, std::uint64_t seed, Row& row,
              std::vector<shop::Said>& now, std::vector<shop::Said>& after) {
    const auto begun = [&] {
        shop::TrueShop shop(kind, seed);
        shop.begin(task.group);
        return shop;
    };
    shop::TrueShop shop = begun();
    row.knows.add(shop::play(task, shop, *shop::all_knowing(task, shop)));
    shop = begun();
    shop::Task told = task;
    if (kind.tells_repeats) {
        told.group.work.chosen.machine.fence_repeats = Length::nearest_mm(2 * kind.repeats_mm);
        told.group.work.chosen.machine.height_repeats = Length::nearest_mm(2 * kind.repeats_mm);
    }
    Start start{task.group.designed};
    start.tool = kind.reads == shop::Reads::caliper ? Tool::caliper : Tool::rule;
    start.dial =
        first_dial(model_of(told.group, told.tolerances, told.partner(), start), task.group.designed);
    row.program.add(shop::play(told, shop, *shop::by_the_program(told, shop, start), &now, &after));
    shop = begun();
    row.habit.add(shop::play(task, shop, *shop::one_at_a_time(task, shop)));
}

void cuts_table(const std::vector<shop::Task>& tasks, int shops) {
    std::printf(
        "Test cuts to a fit. Each: mean, median, within two, wood sawn off (mm), locked though the first "
        "part was bad.\n");
    std::printf("%-17s %-24s | %-28s | %-28s | %-28s | cuts, within two, read again | habit\n", "shop",
                "joint", "knows every error", "the program", "one symptom at a time");
    for (const shop::KindOfShop& kind : shop::all_kinds()) {
        Row all;
        std::vector<shop::Said> now, after;
        for (const shop::Task& task : tasks) {
            Row row;
            for (int s = 0; s < shops / int(tasks.size()); ++s) {
                const std::uint64_t seed =
                    std::uint64_t(s) * tasks.size() + std::uint64_t(&task - tasks.data());
                play_all(task, kind, seed, row, now, after);
            }
            print_row(kind.name, name_of_task(task), row);
            for (auto [tally, part] : {std::pair{&all.knows, &row.knows},
                                       {&all.program, &row.program},
                                       {&all.habit, &row.habit}}) {
                tally->cuts.insert(tally->cuts.end(), part->cuts.begin(), part->cuts.end());
                tally->wood_mm += part->wood_mm;
                tally->bad += part->bad;
                tally->asked += part->asked;
            }
        }
        print_row(kind.name, "ALL", all);
        print_reliability("chance as it stands", now);
        print_reliability("chance after the move", after);
    }
}

void print_share(const char* what, const shop::Caught& caught) {
    std::printf(
        "  %-28s %6d times, %5.2f%% asked again, %5.1f%% of them with the culprit named; of the %d that "
        "matter %5.1f%%\n",
        what, caught.times, 100.0 * caught.asked / std::max(1, caught.times),
        100.0 * caught.named / std::max(1, caught.asked), caught.matter,
        100.0 * caught.asked_that_matter / std::max(1, caught.matter));
}

// All that is a reading gone wrong: not a move.
bool is_wrong_reading(shop::SlipMade slip) {
    return slip != shop::SlipMade::none && slip != shop::SlipMade::wrong_way;
}

shop::Caught together(const shop::Caught& a, const shop::Caught& b) {
    return {a.times + b.times, a.asked + b.asked, a.named + b.named, a.matter + b.matter,
            a.asked_that_matter + b.asked_that_matter};
}

void slips_table(const std::vector<shop::Task>& tasks, int shops) {
    std::printf(
        "\nSlips. One that matters puts a reading, or the machine, off by more than 0.2 mm, the width of the "
        "fit's tolerance.\n");
    for (const shop::KindOfShop& kind : shop::all_kinds()) {
        if (kind.reads != shop::Reads::caliper) continue;
        std::printf("%s\n", kind.name.c_str());
        shop::Caught wrong_readings;
        for (const shop::SlipMade slip : shop::all_slips) {
            shop::Caught caught;
            for (int s = 0; s < shops; ++s)
                shop::try_slip(tasks[std::size_t(s) % tasks.size()], kind, std::uint64_t(s), slip, caught);
            print_share(shop::name_of(slip), caught);
            if (is_wrong_reading(slip)) wrong_readings = together(wrong_readings, caught);
        }
        print_share("wrong readings together", wrong_readings);
    }
}

struct FirstCut {
    bool known_fits, fits;
};

// One group of the job, from the first cut to the lock, with what was learned before; and what that teaches.
FirstCut first_cut(const shop::Task& task, shop::TrueShop& shop, Memory& memory, int job) {
    char day[24];
    std::snprintf(day, sizeof day, "2026-%02d-01", job + 1);
    const ChosenJoint& chosen = task.group.work.chosen;
    Start start{task.group.designed, scales_for(memory, chosen.machine, chosen.cutter, day)};
    start.tool = shop.kind().reads == shop::Reads::caliper ? Tool::caliper : Tool::rule;
    start.dial =
        first_dial(model_of(task.group, task.tolerances, task.partner(), start), task.group.designed);
    shop.begin(task.group);
    shop::TrueShop twin = shop;  // with the same luck
    twin.set(shop::all_knowing_dial(task, twin));
    const bool known_fits =
        shop::is_good(task.group, task.limits(),
                      shop::joint_as_cut(task.group, twin.stands(), twin.slot(), twin.batch_mm()));
    const auto mover = shop::by_the_program(task, shop, start);
    const shop::Played played = shop::play(task, shop, *mover);
    for (Lesson lesson : mover->lessons()) {
        lesson.time = day;
        lesson.tests = played.cuts;
        memory.lessons.push_back(lesson);
    }
    return {known_fits, played.first_fits};
}

// The joints of one drawer: those that are cut with the stacks that this shop puts on.
std::vector<const shop::Task*> drawer_of(const std::vector<shop::Task>& tasks, shop::TrueShop& shop) {
    std::vector<const shop::Task*> out;
    const bool first = shop.uniform() < 0.5;
    for (std::size_t t : first ? std::vector<std::size_t>{0, 1, 2} : std::vector<std::size_t>{3, 4, 5, 6})
        out.push_back(&tasks[t]);
    return out;
}

// Three jobs of one drawer each on one saw with its cutters; then the first cut of one of a fourth's joints.
void learning_table(const std::vector<shop::Task>& tasks, int shops) {
    std::printf(
        "\nThe first cut of a job fits, in per cent of the jobs in which the first setting of one who knows "
        "every error does.\n");
    std::printf("%-17s %18s %18s %18s\n", "shop", "nothing learned", "after one job", "after three");
    for (const shop::KindOfShop& kind : shop::all_kinds()) {
        std::printf("%-17s", kind.name.c_str());
        for (const int jobs : {0, 1, 3}) {
            int knows = 0, both = 0;
            for (int s = 0; s < shops; ++s) {
                shop::TrueShop shop(kind, std::uint64_t(s) * 31 + std::uint64_t(jobs));
                Memory memory;
                for (int job = 0; job < jobs; ++job)
                    for (const shop::Task* task : drawer_of(tasks, shop)) first_cut(*task, shop, memory, job);
                const FirstCut last =
                    first_cut(*drawer_of(tasks, shop)[shop.uniform() < 0.5 ? 0 : 1], shop, memory, jobs);
                knows += last.known_fits;
                both += last.known_fits && last.fits;
            }
            std::printf("  %5.1f%% (%5d)   ", 100.0 * both / std::max(1, knows), knows);
        }
        std::printf("\n");
    }
}

// What one test cut costs to work out: every reading taken in, doubted, and the advice found.
void cost_of_a_fit(const std::vector<shop::Task>& tasks) {
    std::printf(
        "\nOne fit: all readings of one cut, what contradicts, and the advice; microseconds, median and "
        "ninety-ninth of a hundred.\n");
    for (const shop::Task& task : tasks) {
        std::vector<double> micros;
        for (int s = 0; s < 2000; ++s) {
            shop::TrueShop shop(shop::all_kinds().front(), std::uint64_t(s));
            shop.begin(task.group);
            shop.set(task.group.designed);
            const Model model = model_of(task.group, task.tolerances, task.partner(), {task.group.designed});
            const Belief prior = belief_from_priors(model);
            const auto joint = shop::joint_as_cut(task.group, shop.stands(), shop.slot(), shop.piece_mm());
            std::vector<Observation> seen;
            AdviceOptions options;
            for (const Reading& reading : model.readings) {
                seen.push_back(taken(reading, shop.read(joint, reading.form.name)));
                options.already_read.push_back(reading.form.name);
            }
            const auto start = std::chrono::steady_clock::now();
            const auto doubt = find_doubt(model, prior, {}, seen);
            const Advice advice = advise(model, observe_all(prior, seen), options);
            const auto took = std::chrono::steady_clock::now() - start;
            if (advice.chance_in_tolerance >= 0.0 && (!doubt || doubt->log_odds > 0.0))
                micros.push_back(std::chrono::duration<double, std::micro>(took).count());
        }
        std::sort(micros.begin(), micros.end());
        std::printf("  %-28s %6.1f %6.1f\n", name_of_task(task).c_str(), micros[micros.size() / 2],
                    micros[micros.size() * 99 / 100]);
    }
}

}  // namespace

// bench_testcuts [SHOPS [cuts | slips | learning | fit]]
int main(int argc, char** argv) {
    const int shops = argc > 1 ? std::atoi(argv[1]) : 7000;
    const std::string only = argc > 2 ? argv[2] : "";
    const auto all = tasks();
    if (only.empty() || only == "cuts") cuts_table(all, shops);
    if (only.empty() || only == "slips") slips_table(all, shops);
    if (only.empty() || only == "learning") learning_table(all, shops);
    if (only.empty() || only == "fit") cost_of_a_fit(all);
    return 0;
}
