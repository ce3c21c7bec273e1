#ifndef __EMSCRIPTEN__

#include "window/platform.h"

#include <GLFW/glfw3.h>
#include <fcntl.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <unistd.h>

#include <atomic>
#include <cstdlib>
#include <new>
#include <vector>

#include "window/gl_api.h"

namespace kw::window::platform {
namespace fs = std::filesystem;
namespace {

std::atomic<bool> woken = false;

std::string environment(const char* name) {
    const char* value = std::getenv(name);
    return value ? value : "";
}

fs::path user_data_folder() {
    if (const std::string own = environment("KERFWRIGHT_DATA"); !own.empty()) return own;
    if (const std::string data = environment("XDG_DATA_HOME"); !data.empty())
        return fs::path(data) / "kerfwright";
    return fs::path(environment("HOME")) / ".local" / "share" / "kerfwright";
}

std::vector<fs::path> asset_folders() {
    std::vector<fs::path> folders;
    if (const std::string own = environment("KERFWRIGHT_ASSETS"); !own.empty()) folders.emplace_back(own);
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error);
    if (!error) folders.push_back(program.parent_path().parent_path() / "share" / "kerfwright");
    folders.emplace_back(KW_ASSET_DIR);  // of the build tree, for runs without installing
    return folders;
}

Counters* mapped_counters() {
    const std::string file = environment("KERFWRIGHT_STATS");
    if (file.empty()) return nullptr;
    const int fd = ::open(file.c_str(), O_RDWR | O_CREAT | O_TRUNC, 0644);
    if (fd < 0) return nullptr;
    void* memory = MAP_FAILED;
    if (::ftruncate(fd, sizeof(Counters)) == 0) {
        memory = ::mmap(nullptr, sizeof(Counters), PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
    }
    ::close(fd);
    return memory == MAP_FAILED ? nullptr : new (memory) Counters{};
}

}  // namespace

const char* shader_header() { return "#version 330 core\n"; }
const char* toolkit_shader_header() { return "#version 330 core"; }

void set_window_hints() {
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    // Nothing here is drawn with depth, and edges are smoothed in the shaders.
    glfwWindowHint(GLFW_DEPTH_BITS, 0);
    glfwWindowHint(GLFW_STENCIL_BITS, 0);
    glfwWindowHint(GLFW_ALPHA_BITS, 0);
    glfwWindowHint(GLFW_SAMPLES, 0);
}

bool load_gl() { return gladLoadGL(glfwGetProcAddress) != 0; }

double pixel_ratio(GLFWwindow* window) {
    float x = 1, y = 1;
    glfwGetWindowContentScale(window, &x, &y);
    return static_cast<double>(x);
}

fs::path data_folder() {
    fs::path folder = user_data_folder();
    std::error_code ignored;  // whoever writes there next reports it
    fs::create_directories(folder, ignored);
    return folder;
}

void commit_data() {}

fs::path asset(const std::string& name) {
    for (const fs::path& folder : asset_folders()) {
        std::error_code error;
        if (fs::exists(folder / name, error)) return folder / name;
    }
    return name;
}

void run_loop(GLFWwindow* window, const std::function<double()>& step, Counters& counters) {
    while (!glfwWindowShouldClose(window)) {
        const double wait = step();
        if (wait <= 0) {
            glfwPollEvents();
            continue;
        }
        if (wait > 1e6) glfwWaitEvents();
        else glfwWaitEventsTimeout(wait);
        ++counters.wake_ups;
    }
}

bool has_threads() { return true; }

void step_back() {
#ifdef __linux__
    // Of the calling thread alone, as Linux takes it. Where it is refused, all goes on as it is.
    constexpr int modest = 5;
    (void)::setpriority(PRIO_PROCESS, 0, modest);
#endif
}

void post_wake_up() {
    woken = true;
    glfwPostEmptyEvent();
}

bool take_wake_up() { return woken.exchange(false); }

Counters& counters() {
    static Counters in_memory;
    static Counters* const chosen = [] {
        Counters* mapped = mapped_counters();
        return mapped ? mapped : &in_memory;
    }();
    return *chosen;
}

}  // namespace kw::window::platform

#endif
