#include "window/window.h"

#include <GLFW/glfw3.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>
#include <imgui_internal.h>

#include <cstdio>
#include <cstdlib>

#include "draw/fraction_text.h"
#include "window/gl_api.h"
#include "window/gl_picture.h"
#include "window/platform.h"
#include "window/widgets.h"

namespace kw::window {

struct Window::Inside {
    GLFWwindow* window = nullptr;
    ImGuiContext* toolkit = nullptr;
    bool back_ends = false;
    double fixed_ratio = 0;
    double applied_ratio = 0;
    draw::Theme applied_theme = draw::Theme::light;
    Counters& counters = platform::counters();
    Fonts fonts;
    Pacer pacer;
    std::unique_ptr<Pictures> pictures = std::make_unique<Pictures>();
    Ui ui{fonts, *pictures, pacer};
    Pixels* wanted_pixels = nullptr;

    Pacer::State pacing() const;
    void listen();
    void event(bool pointer = false);
    void apply_look();
    void renew_fonts();
    void page(const FrameFunction& frame);
    void present();
    std::string start(const WindowOptions& options);
    void stop();
};

namespace {

constexpr int frames_before_forgetting = 60;

// What nearly every screen uses, so that the first frame is right; the rest comes when it is asked for.
void ask_for_usual_sizes(Ui& ui) {
    ui.font(TypeSize::small);
    ui.font(TypeSize::body);
    ui.font(TypeSize::body, Face::strong);
    ui.font(TypeSize::heading, Face::strong);
    ui.font_px(em_px(TypeSize::body) * draw::fraction_digit_size, Face::figures);
    ask_for_figure_type(ui, TypeSize::number);
    ask_for_figure_type(ui, TypeSize::huge);
}

// Letters are in the texture twice as wide, each of its pixels as the screen's would be half a pixel on: the nearest is the letter
// where it stands. To blend four of them for each pixel of the screen takes an eighth of a frame where the processor draws.
void take_nearest_of_letters() {
    const ImTextureID texture = ImGui::GetIO().Fonts->TexID;
    glBindTexture(GL_TEXTURE_2D, static_cast<GLuint>(reinterpret_cast<std::uintptr_t>(texture)));
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
}

}  // namespace

Pacer::State Window::Inside::pacing() const {
    const ImGuiIO& io = toolkit->IO;
    return {toolkit->InputEventsQueue.Size > 0, io.WantTextInput && io.ConfigInputTextCursorBlink,
            io.MouseDown[0] && toolkit->ActiveId != 0};
}

void Window::Inside::event(bool pointer) {
    ++counters.events;
    if (pointer) pacer.pointer_moved(glfwGetTime());
    else pacer.event();
}

// Ours go in first; the toolkit's back end then puts its own before them and calls ours from there.
void Window::Inside::listen() {
    glfwSetWindowUserPointer(window, this);
    static const auto of = [](GLFWwindow* w) { return static_cast<Inside*>(glfwGetWindowUserPointer(w)); };
    glfwSetCursorPosCallback(window, [](GLFWwindow* w, double, double) { of(w)->event(true); });
    glfwSetCursorEnterCallback(window, [](GLFWwindow* w, int) { of(w)->event(); });
    glfwSetMouseButtonCallback(window, [](GLFWwindow* w, int, int, int) { of(w)->event(); });
    glfwSetScrollCallback(window, [](GLFWwindow* w, double, double) { of(w)->event(); });
    glfwSetKeyCallback(window, [](GLFWwindow* w, int, int, int, int) { of(w)->event(); });
    glfwSetCharCallback(window, [](GLFWwindow* w, unsigned) { of(w)->event(); });
    glfwSetFramebufferSizeCallback(window, [](GLFWwindow* w, int, int) { of(w)->event(); });
    glfwSetWindowContentScaleCallback(window, [](GLFWwindow* w, float, float) { of(w)->event(); });
    glfwSetWindowRefreshCallback(window, [](GLFWwindow* w) { of(w)->event(); });
    glfwSetWindowFocusCallback(window, [](GLFWwindow* w, int) { of(w)->event(); });
    glfwSetWindowIconifyCallback(window, [](GLFWwindow* w, int) { of(w)->event(); });
}

void Window::Inside::apply_look() {
    const double system = fixed_ratio > 0 ? fixed_ratio : platform::pixel_ratio(window);
    ui.pixel_ratio = system * ui.user_scale;
    if (ui.pixel_ratio == applied_ratio && ui.theme == applied_theme) return;
    if (ui.pixel_ratio != applied_ratio) ask_for_usual_sizes(ui);
    applied_ratio = ui.pixel_ratio;
    applied_theme = ui.theme;
    apply_style(ImGui::GetStyle(), ui.theme, ui.pixel_ratio);
    pacer.request(Pacer::settle_frames);
}

void Window::Inside::renew_fonts() {
    if (!fonts.build_wanted()) return;
    if (fonts.generation() == 1) {
        ImGui_ImplOpenGL3_CreateDeviceObjects();  // with the texture
    } else {
        ImGui_ImplOpenGL3_DestroyFontsTexture();
        ImGui_ImplOpenGL3_CreateFontsTexture();
    }
    take_nearest_of_letters();
    ImGui::GetIO().Fonts->ClearTexData();  // the GL has it now
    ImGui::GetIO().FontDefault = ui.font(TypeSize::body).font;
    pacer.request(1);
}

void Window::Inside::page(const FrameFunction& frame) {
    const ImGuiViewport* view = ImGui::GetMainViewport();
    ui.page_size = view->Size;
    ImGui::SetNextWindowPos(view->Pos);
    ImGui::SetNextWindowSize(view->Size);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(0, 0));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 0.0f);
    // Without a background of its own: clearing costs next to nothing, a blended quad over the window as much as all the rest.
    ImGui::Begin("page", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoBringToFrontOnFocus |
                     ImGuiWindowFlags_NoScrollWithMouse);
    ImGui::PopStyleVar(2);
    frame(ui);
    ImGui::End();
    draw_toasts(ui);
}

void Window::Inside::present() {
    int width = 0, height = 0;
    glfwGetFramebufferSize(window, &width, &height);
    const draw::Rgb paper = ui.colours().paper;
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glDisable(GL_SCISSOR_TEST);
    glViewport(0, 0, width, height);
    glClearColor(part(paper.red), part(paper.green), part(paper.blue), 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    if (wanted_pixels) *wanted_pixels = read_pixels(width, height);
    glfwSwapBuffers(window);
    ++counters.frames;
    if (counters.frames % frames_before_forgetting == 0) pictures->forget_unused(ImGui::GetFrameCount());
}

std::string Window::Inside::start(const WindowOptions& options) {
    if (!glfwInit()) return "no display: the window system could not be reached";
    // Once, at the very end: a display that loses its last client in between may start anew and refuse the next window.
    static const bool at_end = std::atexit(glfwTerminate) == 0;
    static_cast<void>(at_end);
    platform::set_window_hints();
    window = glfwCreateWindow(options.width, options.height, options.title.c_str(), nullptr, nullptr);
    if (!window) return "no window: OpenGL 3.3 is needed";
    glfwMakeContextCurrent(window);
    glfwSwapInterval(1);
    if (!platform::load_gl()) return "no OpenGL: its functions could not be loaded";
    toolkit = ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    std::string problem;
    if (!fonts.load(problem)) return problem;
    listen();
    ImGui_ImplGlfw_InitForOpenGL(window, true);
    ImGui_ImplOpenGL3_Init(platform::toolkit_shader_header());
    back_ends = true;
    fixed_ratio = options.pixel_ratio;
    ui.theme = options.theme;
    ui.user_scale = options.user_scale;
    return "";
}

void Window::Inside::stop() {
    pictures.reset();
    if (back_ends) {
        ImGui_ImplOpenGL3_Shutdown();
        ImGui_ImplGlfw_Shutdown();
    }
    if (toolkit) ImGui::DestroyContext(toolkit);
    if (window) glfwDestroyWindow(window);
}

Window::Window() : inside_(std::make_unique<Inside>()) {}
Window::~Window() { inside_->stop(); }

tl::expected<std::unique_ptr<Window>, std::string> Window::open(const WindowOptions& options) {
    std::unique_ptr<Window> window(new Window());
    if (std::string problem = window->inside_->start(options); !problem.empty())
        return tl::unexpected(std::move(problem));
    return window;
}

Ui& Window::ui() { return inside_->ui; }
GLFWwindow* Window::handle() const { return inside_->window; }
bool Window::at_rest() const {
    const Inside& in = *inside_;
    // Seen from where the last frame began: how long it took says nothing of what is left to draw, and beneath a widget that is
    // held down a slow frame is hardly over when the next falls due.
    constexpr double soon_s = 1.5 * Pacer::least_frame_s;
    return !in.ui.is_waiting && in.pacer.wait_s(in.ui.now_s, in.pacing()) > soon_s;
}

double Window::step(const FrameFunction& frame) {
    if (platform::take_wake_up()) inside_->pacer.event();
    if (inside_->pacer.wants_frame(glfwGetTime(), inside_->pacing())) draw(frame);
    return inside_->pacer.wait_s(glfwGetTime(), inside_->pacing());
}

void Window::draw(const FrameFunction& frame) {
    Inside& in = *inside_;
    const double began_s = glfwGetTime();
    in.ui.now_s = began_s;
    in.pacer.drew(began_s);  // before the page, so that the frames it asks for come after this one
    in.apply_look();
    in.renew_fonts();
    in.ui.opaque_areas.clear();
    in.ui.picture_copies.clear();
    in.ui.taken.clear();
    in.ui.read.clear();
    if (in.ui.log) in.ui.log->widgets.clear();
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
    in.page(frame);
    ImGui::Render();
    in.present();
}

Pixels Window::capture(const FrameFunction& frame) {
    Pixels pixels;
    inside_->wanted_pixels = &pixels;
    draw(frame);
    inside_->wanted_pixels = nullptr;
    return pixels;
}

void Window::resize(int width, int height) { glfwSetWindowSize(inside_->window, width, height); }
void Window::close() { glfwSetWindowShouldClose(inside_->window, GLFW_TRUE); }

int run_window(const WindowOptions& options, const FrameFunction& frame) {
    auto opened = Window::open(options);
    if (!opened) {
        std::fprintf(stderr, "kerfwright: %s\n", opened.error().c_str());
        return 1;
    }
    Window& window = **opened;
    platform::run_loop(
        window.handle(), [&] { return window.step(frame); }, platform::counters());
    return 0;
}

}  // namespace kw::window
