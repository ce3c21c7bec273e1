// What a recompute costs: the job in, everything a screen shows out. Printed, never asserted.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>

#include "file/document.h"
#include "session/session.h"

using namespace kw;

namespace {

double median_ms(int runs, const std::function<void()>& work) {
    std::vector<double> times;
    for (int i = 0; i < runs; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        times.push_back(
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    }
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
}

// The demo's drawers again and again, each a little wider than the one before.
Json batch(const Json& demo, int drawers) {
    Json job = demo;
    job["drawers"] = Json::array();
    for (int i = 0; i < drawers; ++i) {
        Json drawer = demo["drawers"][static_cast<std::size_t>(i) % demo["drawers"].size()];
        drawer["name"] = drawer["name"].get<std::string>() + " " + std::to_string(i + 1);
        drawer["count"] = 1;
        const char* size = drawer.contains("opening") ? "opening" : "box";
        drawer[size]["width"] = drawer[size]["width"].get<std::string>() + " + " + std::to_string(i) +
                                (size == std::string("box") ? " mm" : "/64");
        job["drawers"].push_back(drawer);
    }
    return job;
}

void report_line(const char* name, const Json& document, int runs) {
    const Session session = open_session(document);
    if (!session.work) {
        std::printf("%-24s can't be planned\n", name);
        return;
    }
    const auto job = read_job(document).value();
    const double all = median_ms(runs, [&] { open_session(document); });
    const double designed = median_ms(runs, [&] { design(job); });
    const Plan& plan = session.work->plan;
    std::printf("%-24s %4zu parts %4zu setups  whole %9.2f ms  design %8.2f ms  %s, %lld of %lld s\n", name,
                plan.parts.size(), plan.setups.size(), all, designed, plan.proved ? "proved" : "bound",
                static_cast<long long>(plan.seconds), static_cast<long long>(plan.lower_bound_seconds));
}

}  // namespace

int main() {
    const auto text = read_file(std::string(KW_ASSET_DIR) + "/demo.json");
    if (!text) return 1;
    const Json demo = parse_json(*text).value();
    report_line("demo, 3 drawers", demo, 9);
    report_line("30 drawers", batch(demo, 30), 3);
    report_line("200 drawers", batch(demo, 200), 1);
    return 0;
}
