// The window against a bare Dear ImGui window (bare_window.h), both watched from outside in one run: start to the first frame, CPU and
// frames when idle, memory; and what a frame costs. Then how long typing holds up a frame, for small jobs and large ones. Printed,
// never asserted. Needs a display; ./dev bench brings one.
#include <GLFW/glfw3.h>
#include <fcntl.h>
#include <glad/gl.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "bench/bare_window.h"
#include "window/app.h"
#include "window/counters.h"

namespace {

using kw::window::Counters;

Counters* map_counters(const std::string& file) {
    const int handle = ::open(file.c_str(), O_RDWR | O_CREAT | O_TRUNC, 0644);
    if (handle < 0 || ::ftruncate(handle, sizeof(Counters)) != 0) return nullptr;
    void* memory = ::mmap(nullptr, sizeof(Counters), PROT_READ | PROT_WRITE, MAP_SHARED, handle, 0);
    ::close(handle);
    return memory == MAP_FAILED ? nullptr : static_cast<Counters*>(memory);
}

// The floor: draws a frame, and waits.
int bare_window(const std::string& stats) {
    Counters* counters = map_counters(stats);
    bench::BareWindow window;
    if (!counters || !window.is_open()) return 1;
    window.draw();
    ++counters->frames;
    for (;;) glfwWaitEvents();
}

double now_ms() {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now().time_since_epoch())
        .count();
}

// The last number behind a line's name in a file of /proc, in kB.
double proc_kb(pid_t pid, const char* file, const std::string& name) {
    std::ifstream in("/proc/" + std::to_string(pid) + "/" + file);
    for (std::string line; std::getline(in, line);)
        if (line.rfind(name, 0) == 0) return std::strtod(line.c_str() + name.size(), nullptr);
    return 0.0;
}

double cpu_ms(pid_t pid) {
    std::ifstream in("/proc/" + std::to_string(pid) + "/stat");
    std::string text;
    std::getline(in, text);
    text = text.substr(text.rfind(')') + 2);
    double user = 0.0, system = 0.0;
    std::sscanf(text.c_str(), "%*c %*d %*d %*d %*d %*d %*u %*u %*u %*u %*u %lf %lf", &user, &system);
    return (user + system) * 1000.0 / static_cast<double>(::sysconf(_SC_CLK_TCK));
}

struct Seen {
    double first_frame_ms = 0.0;
    double idle_cpu_percent = 0.0;
    double idle_frames = 0.0;
    double idle_wake_ups = 0.0;
    double rss_mb = 0.0;
    double pss_mb = 0.0;
};

pid_t start(const std::vector<std::string>& command, const std::string& stats) {
    const pid_t pid = ::fork();
    if (pid != 0) return pid;
    ::setenv("KERFWRIGHT_STATS", stats.c_str(), 1);
    std::vector<char*> arguments;
    for (const std::string& word : command) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    ::execv(arguments[0], arguments.data());
    ::_exit(127);
}

Seen watch(const std::vector<std::string>& command, double idle_s) {
    const std::string stats =
        (std::filesystem::temp_directory_path() / ("kw-bench-" + std::to_string(::getpid()))).string();
    Counters* counters = map_counters(stats);
    const double begin = now_ms();
    const pid_t pid = start(command, stats);
    // The program may make the file anew: look at the file itself until something was drawn.
    Counters seen{};
    const auto look = [&] {
        std::ifstream in(stats, std::ios::binary);
        in.read(reinterpret_cast<char*>(&seen), sizeof seen);
        return seen.frames;
    };
    while (look() == 0 && now_ms() - begin < 20000.0) ::usleep(500);
    Seen out;
    out.first_frame_ms = now_ms() - begin;
    if (idle_s > 0.0) {
        ::usleep(2'500'000);
        look();
        const Counters before = seen;
        const double cpu = cpu_ms(pid);
        ::usleep(static_cast<useconds_t>(idle_s * 1e6));
        look();
        out.idle_cpu_percent = (cpu_ms(pid) - cpu) / (10.0 * idle_s);
        out.idle_frames = static_cast<double>(seen.frames - before.frames);
        out.idle_wake_ups = static_cast<double>(seen.wake_ups - before.wake_ups);
        out.rss_mb = proc_kb(pid, "status", "VmRSS:") / 1024.0;
        out.pss_mb = proc_kb(pid, "smaps_rollup", "Pss:") / 1024.0;
    }
    ::kill(pid, SIGKILL);
    ::waitpid(pid, nullptr, 0);
    ::munmap(counters, sizeof(Counters));
    std::filesystem::remove(stats);
    return out;
}

double median_start(const std::vector<std::string>& command) {
    std::vector<double> times;
    for (int i = 0; i < 7; ++i) times.push_back(watch(command, 0.0).first_frame_ms);
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
}

void print(const char* name, double bare, double ours, const char* unit) {
    std::printf("%-28s %10.2f %10.2f %-3s  ratio %.2f\n", name, bare, ours, unit,
                bare > 0.0 ? ours / bare : 0.0);
}

// ---- a frame

double cpu_of_process_ms() {
    timespec now{};
    ::clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

// CPU of a frame that is drawn whole, GL in software included; the median over rounds of frames.
double frame_cost_ms(const std::function<void()>& draw) {
    constexpr int rounds = 15, frames = 20;
    std::vector<double> costs;
    for (int round = 0; round < rounds; ++round) {
        const double begin = cpu_of_process_ms();
        for (int i = 0; i < frames; ++i) {
            draw();
            glfwPollEvents();
        }
        costs.push_back((cpu_of_process_ms() - begin) / frames);
    }
    std::sort(costs.begin(), costs.end());
    return costs[costs.size() / 2];
}

double bare_frame_ms() {
    bench::BareWindow window;
    return window.is_open() ? frame_cost_ms([&] { window.draw(); }) : 0.0;
}

// Of the program's first step, or of the first at which a joint is cut: that has the richer picture.
double frame_at_the_saw_ms(bool at_a_joint) {
    const std::filesystem::path path =
        std::filesystem::temp_directory_path() / ("kw-bench-saw-" + std::to_string(::getpid()) + ".json");
    std::filesystem::copy_file(std::filesystem::path(KW_ASSET_DIR) / "demo.json", path);
    double cost = 0.0;
    {
        auto app = kw::window::App::open(path);
        auto window = kw::window::Window::open({});
        if (app && window) {
            app->state().place = kw::window::Where::saw;
            if (const auto& work = app->session().work; at_a_joint && work)
                for (const std::string& step : work->plan.sequence)
                    if (const kw::Setup* setup = work->plan.setup_with_id(step); setup && setup->height) {
                        app->state().setup = step;
                        break;
                    }
            cost = frame_cost_ms([&] { (*window)->draw([&](kw::window::Ui& ui) { app->frame(ui); }); });
        }
    }
    std::filesystem::remove(path);
    return cost;
}

void print_frames() {
    const double bare_ms = bare_frame_ms();
    print("a frame at the saw, its CPU", bare_ms, frame_at_the_saw_ms(false), "ms");
    print("the same at a joint's cut", bare_ms, frame_at_the_saw_ms(true), "ms");
}

// ---- typing

using kw::Json;
namespace fs = std::filesystem;

// `count` drawers like the demo's, of ever other sizes; the more kinds of sides, the more joints of their own.
Json drawers_like_the_demo(int count, int kinds_of_side) {
    std::ifstream in(fs::path(KW_ASSET_DIR) / "demo.json");
    Json job = Json::parse(in);
    const Json like = job["drawers"];
    job["drawers"] = Json::array();
    for (int kind = 1; kind < kinds_of_side; ++kind) {
        Json stock = job["stock"][2];
        stock["name"] = "side stock " + std::to_string(kind);
        stock["thickness"] = std::to_string(0.508 - 0.011 * kind);
        job["stock"].push_back(stock);
    }
    for (int i = 0; i < count; ++i) {
        Json drawer = like[static_cast<std::size_t>(i) % like.size()];
        drawer["name"] = drawer.value("name", "") + " " + std::to_string(i);
        drawer["count"] = 1;
        if (drawer.contains("opening")) {
            drawer["opening"]["width"] =
                std::to_string(11 + i % 20) + " " + std::to_string(1 + i % 3) + "/16";
            drawer["opening"]["height"] = std::to_string(5 + i / 20 % 3) + " 1/8";
        }
        if (const int kind = i % kinds_of_side; kind > 0)
            for (const char* part : {"front", "sides", "back"})
                drawer[part]["stock"] = "side stock " + std::to_string(kind);
        job["drawers"].push_back(drawer);
    }
    return job;
}

// What the program does in a frame, without what the GL makes of it.
struct Typing {
    std::size_t setups = 0;
    double work_out_ms = 0.0;                         // median, as the command line would do it
    double quiet_ms = 0.0;                            // longest frame with nothing typed
    double held_up_ms = 0.0;                          // longest frame while a width was typed
    double quiet_cpu_ms = 0.0, held_up_cpu_ms = 0.0;  // the same without waits for the processor
};

double cpu_of_thread_ms() {
    timespec now{};
    ::clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

double ms_of(const std::function<void()>& what) {
    const double begin = now_ms();
    what();
    return now_ms() - begin;
}

Typing typing(const Json& job, kw::window::Where place) {
    const fs::path path =
        fs::temp_directory_path() / ("kw-bench-typing-" + std::to_string(::getpid()) + ".json");
    std::ofstream(path) << job.dump();
    Typing out;
    auto app = kw::window::App::open(path);
    auto window = kw::window::Window::open({});
    if (!app || !window || !app->session().work) return out;
    out.setups = app->session().work->plan.setups.size();
    std::vector<double> times;
    for (int i = 0; i < 5; ++i)
        times.push_back(ms_of([&] { kw::open_session(app->session().document, {}, "2026-03-01"); }));
    std::sort(times.begin(), times.end());
    out.work_out_ms = times[times.size() / 2];
    app->state().place = place;
    const char* key = nullptr;
    double longest_ms = 0.0, longest_cpu_ms = 0.0;
    const auto frame = [&](kw::window::Ui& ui) {
        const double cpu = cpu_of_thread_ms();
        const double took_ms = ms_of([&] {
            if (key) app->act(ui, kw::SetField{"/drawers/0/opening/width", key});
            app->frame(ui);
        });
        longest_ms = std::max(longest_ms, took_ms);
        longest_cpu_ms = std::max(longest_cpu_ms, cpu_of_thread_ms() - cpu);
        key = nullptr;
    };
    const auto draw_some = [&](int frames) {
        longest_ms = longest_cpu_ms = 0.0;
        for (int i = 0; i < frames; ++i) {
            (*window)->draw(frame);
            glfwPollEvents();
        }
    };
    draw_some(20);
    draw_some(20);
    out.quiet_ms = longest_ms;
    out.quiet_cpu_ms = longest_cpu_ms;
    for (const char* typed :
         {"1", "12", "12 1", "12 1/", "12 1/8", "11", "11 3", "11 3/", "11 3/8", "11 3/8 in"}) {
        key = typed;
        draw_some(12);
        out.held_up_ms = std::max(out.held_up_ms, longest_ms);
        out.held_up_cpu_ms = std::max(out.held_up_cpu_ms, longest_cpu_ms);
    }
    fs::remove(path);
    return out;
}

void print_typing(const char* name, const Json& job) {
    for (const auto& [where, place] :
         {std::pair{"drawers", kw::window::Where::drawers}, {"order", kw::window::Where::order}}) {
        const Typing t = typing(job, place);
        std::printf("%-22s %-8s %5zu %12.2f %12.2f %12.2f %12.2f %12.2f ms\n", name, where, t.setups,
                    t.work_out_ms, t.quiet_ms, t.quiet_cpu_ms, t.held_up_ms, t.held_up_cpu_ms);
    }
}

void print_all_typing() {
    std::printf("\n%-22s %-8s %5s %12s %12s %12s %12s %12s\n", "longest part of a frame", "screen", "setups",
                "work it out", "nothing typed", "(its CPU)", "typing", "(its CPU)");
    print_typing("two drawers", drawers_like_the_demo(2, 1));
    print_typing("the demo's three", drawers_like_the_demo(3, 1));
    print_typing("six drawers", drawers_like_the_demo(6, 3));
    print_typing("200 drawers", drawers_like_the_demo(200, 1));
    print_typing("1,000 drawers", drawers_like_the_demo(1000, 1));
}

}  // namespace

int main(int argc, char** argv) {
    if (argc > 2 && std::strcmp(argv[1], "bare") == 0) return bare_window(argv[2]);
    if (argc > 1 && std::strcmp(argv[1], "--frame") == 0) {
        print_frames();
        return 0;
    }
    if (argc > 1 && std::strcmp(argv[1], "--typing") == 0) {
        print_all_typing();
        return 0;
    }
    const std::string self = std::filesystem::canonical(argv[0]).string();
    const std::string stats =
        (std::filesystem::temp_directory_path() / ("kw-bench-" + std::to_string(::getpid()))).string();
    const std::vector<std::string> bare = {self, "bare", stats};
    const std::vector<std::string> ours = {KW_PROGRAM};
    std::printf("%-28s %10s %10s\n", "", "bare", "kerfwright");
    print("start to first frame", median_start(bare), median_start(ours), "ms");
    const Seen floor = watch(bare, 10.0);
    const Seen program = watch(ours, 10.0);
    print_frames();
    print("idle CPU over 10 s", floor.idle_cpu_percent, program.idle_cpu_percent, "%");
    print("frames drawn when idle", floor.idle_frames, program.idle_frames, "");
    print("wake-ups when idle", floor.idle_wake_ups, program.idle_wake_ups, "");
    print("resident memory", floor.rss_mb, program.rss_mb, "MB");
    print("proportional memory", floor.pss_mb, program.pss_mb, "MB");
    print_all_typing();
    return 0;
}
