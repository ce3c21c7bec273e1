#pragma once
// The barest window that has what ours must have: GLFW, OpenGL 3.3 through glad, Dear ImGui with its own font, some lines of text, a
// list, and one picture in a texture. It clears the background instead of painting it, and waits for events.

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <glad/gl.h>
#include <imgui.h>

#include <cstdint>
#include <vector>

namespace bench {

class BareWindow {
public:
    BareWindow() {
        if (!glfwInit()) return;
        glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
        glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
        glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
        window_ = glfwCreateWindow(1280, 800, "bare", nullptr, nullptr);
        if (!window_) return;
        glfwMakeContextCurrent(window_);
        gladLoadGL(glfwGetProcAddress);
        ImGui::CreateContext();
        ImGui::GetIO().IniFilename = nullptr;
        ImGui_ImplGlfw_InitForOpenGL(window_, true);
        ImGui_ImplOpenGL3_Init("#version 330 core");
        make_picture();
    }
    ~BareWindow() {
        if (!window_) return;
        ImGui_ImplOpenGL3_Shutdown();
        ImGui_ImplGlfw_Shutdown();
        ImGui::DestroyContext();
        glfwDestroyWindow(window_);
        glfwTerminate();
    }
    BareWindow(const BareWindow&) = delete;
    BareWindow& operator=(const BareWindow&) = delete;

    bool is_open() const { return window_ != nullptr; }

    void draw() {
        ImGui_ImplOpenGL3_NewFrame();
        ImGui_ImplGlfw_NewFrame();
        ImGui::NewFrame();
        ImGui::SetNextWindowPos({0, 0});
        ImGui::SetNextWindowSize({1280, 800});
        ImGui::Begin("page", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoBackground);
        for (int i = 0; i < 12; ++i) ImGui::Text("fence 4 11/32 in, height 1/4 in, no spacer: line %d", i);
        for (int i = 0; i < 12; ++i) ImGui::Selectable(list[i], i == 3, 0, {500, 20});
        ImGui::SetCursorPos({640, 100});
        ImGui::Image(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(picture_)), {600, 600});
        ImGui::End();
        ImGui::Render();
        glViewport(0, 0, 1280, 800);
        glClearColor(0.95f, 0.95f, 0.93f, 1.0f);
        glClear(GL_COLOR_BUFFER_BIT);
        ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
        glfwSwapBuffers(window_);
    }

private:
    static constexpr const char* list[] = {"side one",  "side two", "side three", "side four",
                                           "side five", "side six", "front one",  "front two",
                                           "back one",  "back two", "bottom one", "bottom two"};

    void make_picture() {
        constexpr int side = 600;
        std::vector<std::uint32_t> pixels(std::size_t{side} * side);
        for (std::size_t i = 0; i < pixels.size(); ++i)
            pixels[i] = (i / side + i % side) % 24 < 3 ? 0xFF40505FU : 0xFFB0C8D8U;
        glGenTextures(1, &picture_);
        glBindTexture(GL_TEXTURE_2D, picture_);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
        glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
        glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA, side, side, 0, GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
    }

    GLFWwindow* window_ = nullptr;
    GLuint picture_ = 0;
};

}  // namespace bench
