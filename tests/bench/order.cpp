// How fast orders are found and proved, and how far they may be from the best. Prints a table, judges
// nothing. With --sop FILE..., the same of sequential ordering instances (see sop.h).

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "bench/sop.h"
#include "order/batch_work.h"
#include "order/solve.h"

namespace {

using kw::order::Problem;

struct Line {
    const char* name;
    std::size_t operations = 0;
    int instances = 0;
    int proved = 0;
    std::int64_t seconds = 0;  // sums over the instances
    std::int64_t bound = 0;
    std::int64_t durations = 0;
    std::int64_t nodes = 0;
    double worst_gap = 0;  // of changes and walks, durations left out
    std::vector<double> ms{};
};

void run(Line& line, const Problem& problem) {
    const auto before = std::chrono::steady_clock::now();
    const kw::order::Result result = kw::order::solve(problem);
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - before;
    line.ms.push_back(took.count());
    std::int64_t durations = 0;
    for (const auto& operation : problem.operations) durations += operation.duration_s;
    line.operations = problem.operations.size();
    line.instances += 1;
    line.proved += result.status == kw::order::Status::proved;
    line.seconds += result.seconds;
    line.bound += result.lower_bound_seconds;
    line.durations += durations;
    line.nodes += result.nodes;
    const auto changes = static_cast<double>(result.seconds - durations);
    if (changes > 0)
        line.worst_gap = std::max(line.worst_gap,
                                  static_cast<double>(result.seconds - result.lower_bound_seconds) / changes);
}

void print(Line line) {
    std::sort(line.ms.begin(), line.ms.end());
    const auto mean = [&line](std::int64_t sum) { return static_cast<double>(sum) / line.instances; };
    std::printf("%-28s %5zu %7d/%-3d %10.0f %10.0f %10.0f %7.2f %% %10.0f %9.2f %9.2f\n", line.name,
                line.operations, line.proved, line.instances, mean(line.seconds), mean(line.bound),
                mean(line.seconds - line.durations), 100 * line.worst_gap, mean(line.nodes),
                line.ms[line.ms.size() / 2], line.ms.back());
}

void drawers(const char* name, const ord::Batch& shape, int instances) {
    Line line{name};
    for (int i = 0; i < instances; ++i) {
        ord::Random random(static_cast<std::uint32_t>(i) + 1);
        run(line, ord::batch_problem(shape, random));
    }
    print(line);
}

void random_work(const char* name, ord::Kind kind, int instances) {
    Line line{name};
    for (int i = 0; i < instances; ++i) {
        ord::Random random(static_cast<std::uint32_t>(i) + 1);
        run(line, ord::random_problem(kind, random));
    }
    print(line);
}

constexpr std::chrono::seconds sop_limit{10};

struct Found {
    kw::order::Result result;
    double took_s = 0;
    double best_after_s = 0;  // as far as the search says: to a few hundred nodes
};

Found solve_sop(const Problem& problem) {
    const auto before = std::chrono::steady_clock::now();
    const auto since = [before] {
        return std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count();
    };
    Found found;
    std::int64_t best = std::numeric_limits<std::int64_t>::max();
    const auto note = [&](std::int64_t seconds) {
        if (seconds < best) found.best_after_s = since();
        best = std::min(best, seconds);
    };
    kw::order::Options options;
    options.node_limit = std::numeric_limits<std::int64_t>::max();
    options.time_limit = sop_limit;
    options.stop = [&](const kw::order::Progress& progress) {
        note(progress.best_seconds);
        return false;
    };
    found.result = kw::order::solve(problem, options);
    note(found.result.seconds);
    found.took_s = since();
    return found;
}

void print_sop(const std::filesystem::path& path) {
    std::ifstream in(path);
    const Problem problem = sop::problem_of(sop::read_matrix(in));
    std::ifstream table(path.parent_path() / "known.csv");
    const auto known = sop::read_known(table);
    const std::string name = path.stem().string();
    const auto best_known = known.find(name);
    const Found found = solve_sop(problem);
    const bool is_proved = found.result.status == kw::order::Status::proved;
    std::printf("%-12s %5zu %-8s %10lld %10lld %7.2f %% %9.3f %10lld %9.3f %10s\n", name.c_str(),
                problem.operations.size() + 1, is_proved ? "proved" : "limited",
                static_cast<long long>(found.result.seconds),
                static_cast<long long>(found.result.lower_bound_seconds), 100 * found.result.gap(),
                found.took_s, static_cast<long long>(found.result.nodes), found.best_after_s,
                best_known == known.end() ? "-" : std::to_string(best_known->second).c_str());
    std::fflush(stdout);
}

int print_all_sop(const std::vector<std::string>& paths) {
    std::printf("%-12s %5s %-8s %10s %10s %9s %9s %10s %9s %10s\n", "instance", "nodes", "status", "best",
                "bound", "gap", "s", "looked at", "best at s", "best known");
    for (const std::string& path : paths) {
        try {
            print_sop(path);
        } catch (const sop::Refused& refused) {
            std::fprintf(stderr, "%s: %s\n", path.c_str(), refused.what());
            return 1;
        }
    }
    return 0;
}

}  // namespace

int main(int count, char** arguments) {
    if (count > 1 && std::string(arguments[1]) == "--sop")
        return print_all_sop({arguments + 2, arguments + count});
    if (count > 1) {
        std::fprintf(stderr, "usage: bench_order [--sop FILE...]\n");
        return 2;
    }
    std::printf("%-28s %5s %11s %10s %10s %10s %9s %10s %9s %9s\n", "work", "ops", "proved", "seconds",
                "bound", "changes", "worst gap", "nodes", "ms median", "worst");
    drawers("1 drawer", {1, 10, 6, 2}, 30);
    drawers("2 drawers", {2, 10, 6, 2}, 30);
    drawers("3 drawers", {3, 10, 6, 2}, 30);
    drawers("3 drawers, 3 stocks", {3, 10, 12, 3}, 30);
    drawers("3 drawers, second pass", {3, 11, 12, 3}, 30);
    drawers("4 drawers, 3 stocks", {4, 10, 12, 3}, 30);
    drawers("6 drawers, 3 stocks", {6, 10, 12, 3}, 10);
    drawers("12 drawers, 4 stocks", {12, 10, 24, 4}, 10);
    drawers("30 drawers, 4 stocks", {30, 8, 40, 4}, 5);
    drawers("100 drawers, 6 stocks", {100, 8, 60, 6}, 5);
    drawers("200 drawers, 6 stocks", {200, 8, 90, 6}, 5);
    drawers("200 drawers, 40 stocks", {200, 8, 200, 40}, 5);
    random_work("random, 2 machines", {16, 2, 3, 3, 25, 15, 1, false, true}, 20);
    random_work("random, 2 machines", {24, 2, 3, 3, 25, 10, 1, false, true}, 20);
    random_work("random, 3 machines", {30, 3, 3, 4, 25, 8, 2, false, true}, 20);
    random_work("random, no sense in it", {24, 2, 3, 3, 25, 10, 1, true, true}, 20);
}
