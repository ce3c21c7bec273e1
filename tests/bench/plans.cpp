// The order of random jobs: how long it takes until it is proved, whether a short search finds as good a one, and how the time grows with
// the batch. Prints tables, judges nothing.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

#include "checker/random_job.h"
#include "job/scheduling.h"
#include "session/session.h"

using namespace kw;

namespace {

double ms_since(std::chrono::steady_clock::time_point start) {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

struct Timed {
    order::Result result;
    double ms = 0.0;
};

Timed timed(const order::Problem& problem, const order::Options& options) {
    const auto start = std::chrono::steady_clock::now();
    order::Result result = order::solve(problem, options);
    return {std::move(result), ms_since(start)};
}

// Stops a search by the clock, as the window does.
order::Result within_ms(const order::Problem& problem, double most_ms) {
    const auto start = std::chrono::steady_clock::now();
    return order::solve(problem, {.node_limit = 1'000'000'000,
                                  .stop = [&](const order::Progress&) { return ms_since(start) > most_ms; }});
}

// Jobs of so many setups.
struct Row {
    std::size_t least = 0, most = 0;
    int jobs = 0, proved = 0, early = 0;
    std::vector<double> ms{};
    double worst_gap = 0.0;  // of the time of changes and walks
};

double percentile(std::vector<double> values, double part) {
    if (values.empty()) return 0.0;
    std::sort(values.begin(), values.end());
    return values[std::min(values.size() - 1, std::size_t(part * double(values.size())))];
}

void add(Row& row, const order::Problem& problem) {
    const Timed full =
        timed(problem, {.node_limit = problem.operations.size() > 40 ? 400'000 : 20'000'000, .stop = {}});
    if (full.result.order.empty()) return;
    ++row.jobs;
    row.proved += full.result.status == order::Status::proved;
    row.ms.push_back(full.ms);
    row.early += within_ms(problem, 10.0).seconds == full.result.seconds;
    std::int64_t cuts = 0;
    for (const std::size_t i : full.result.order) cuts += problem.operations[i].duration_s;
    const auto changes = double(full.result.seconds - cuts);
    if (changes > 0)
        row.worst_gap =
            std::max(row.worst_gap, double(full.result.seconds - full.result.lower_bound_seconds) / changes);
}

void print(const Row& row) {
    std::printf(
        "%3zu to %-3zu setups %5d jobs %5d proved   ms: median %8.2f  95th %8.2f  worst %9.2f   as good in "
        "10 ms: "
        "%5.1f %%   worst gap %5.2f %%\n",
        row.least, row.most, row.jobs, row.proved, percentile(row.ms, 0.5), percentile(row.ms, 0.95),
        percentile(row.ms, 1.0), 100.0 * row.early / std::max(1, row.jobs), 100.0 * row.worst_gap);
}

void random_jobs(int jobs) {
    std::vector<Row> rows = {{1, 10}, {11, 20}, {21, 30}, {31, 40}, {41, 60}};
    for (int seed = 1; seed <= jobs; ++seed) {
        const Session session =
            open_session(checker::random_job(std::uint64_t(seed)), {}, "2026-03-01T00:00:00Z");
        if (!session.work) continue;
        const Work& work = *session.work;
        const order::Problem problem =
            order_problem(work.job, work.plan.setups, precedence_of(work.design, work.plan.setups).before);
        for (Row& row : rows)
            if (problem.operations.size() >= row.least && problem.operations.size() <= row.most)
                add(row, problem);
    }
    std::printf("random jobs, as they are planned\n");
    for (const Row& row : rows) print(row);
}

// Drawers of three kinds, as the demo has them, each kind in so many widths.
Json batch(const Json& demo, int drawers, int widths) {
    Json job = demo;
    job["drawers"] = Json::array();
    const int kinds = int(demo["drawers"].size());
    for (int w = 0; w < widths; ++w)
        for (int k = 0; k < kinds; ++k) {
            Json drawer = demo["drawers"][std::size_t(k)];
            const int number = w * kinds + k, all = widths * kinds;
            drawer["count"] = drawers * (number + 1) / all - drawers * number / all;
            if (drawer["count"] == 0) continue;
            drawer["name"] = drawer["name"].get<std::string>() + " " + std::to_string(w + 1);
            const char* size = drawer.contains("opening") ? "opening" : "box";
            drawer[size]["width"] = drawer[size]["width"].get<std::string>() + " + " + std::to_string(w) +
                                    (size == std::string("box") ? " mm" : "/64");
            job["drawers"].push_back(drawer);
        }
    return job;
}

// A whole recompute: job in, plan out.
void growth(const Json& demo, const char* name, int most_widths) {
    std::printf("\n%s\n", name);
    for (const int drawers : {10, 20, 50, 100, 200, 500, 1000}) {
        const Json job = batch(demo, drawers, std::min(most_widths, (drawers + 2) / 3));
        std::vector<double> ms;
        std::shared_ptr<const Work> work;
        for (int run = 0; run < 3; ++run) {
            const auto start = std::chrono::steady_clock::now();
            work = open_session(job, {}, "2026-03-01T00:00:00Z").work;
            ms.push_back(ms_since(start));
        }
        if (!work) {
            std::printf("%5d drawers can't be planned\n", drawers);
            continue;
        }
        std::printf(
            "%5d drawers %6zu parts %5zu setups  %8.1f ms  %6.2f ms a drawer  %lld s, none less than %lld "
            "s\n",
            drawers, work->plan.parts.size(), work->plan.setups.size(), percentile(ms, 0.5),
            percentile(ms, 0.5) / drawers, static_cast<long long>(work->plan.seconds),
            static_cast<long long>(work->plan.lower_bound_seconds));
    }
}

}  // namespace

int main(int argc, char** argv) {
    std::setvbuf(stdout, nullptr, _IOLBF, 0);
    random_jobs(argc > 1 ? std::atoi(argv[1]) : 300);
    const auto text = read_file(std::string(KW_ASSET_DIR) + "/demo.json");
    if (!text) return 1;
    const Json demo = parse_json(*text).value();
    growth(demo, "a batch of three kinds of drawer, a whole plan", 1);
    growth(demo, "in ten widths each", 10);
    growth(demo, "each drawer with a width of its own", 1000);
    return 0;
}
