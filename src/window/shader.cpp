#include "window/shader.h"

#include <cassert>
#include <cstdio>

#include "window/platform.h"

namespace kw::window {
namespace {

GLuint compiled(GLenum kind, const std::vector<std::string_view>& pieces) {
    std::string source = platform::shader_header();
    for (const std::string_view piece : pieces) source += piece;
    const char* text = source.c_str();
    const GLuint shader = glCreateShader(kind);
    glShaderSource(shader, 1, &text, nullptr);
    glCompileShader(shader);
    GLint good = 0;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &good);
    if (!good) {
        char log[2048];
        glGetShaderInfoLog(shader, sizeof log, nullptr, log);
        std::fprintf(stderr, "shader: %s\n", log);
    }
    assert(good);
    return shader;
}

}  // namespace

Program::~Program() {
    if (id_) glDeleteProgram(id_);
}

void Program::link(std::string_view vertex, const std::vector<std::string_view>& fragment) {
    const GLuint v = compiled(GL_VERTEX_SHADER, {vertex}), f = compiled(GL_FRAGMENT_SHADER, fragment);
    id_ = glCreateProgram();
    glAttachShader(id_, v);
    glAttachShader(id_, f);
    glLinkProgram(id_);
    glDeleteShader(v);
    glDeleteShader(f);
    GLint good = 0;
    glGetProgramiv(id_, GL_LINK_STATUS, &good);
    assert(good);
}

GLint Program::uniform(const char* name) const {
    for (const auto& [known, location] : uniforms_) {
        if (known == name) return location;
    }
    const GLint location = glGetUniformLocation(id_, name);
    uniforms_.emplace_back(name, location);
    return location;
}

}  // namespace kw::window
