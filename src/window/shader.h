#pragma once
// A linked pair of shaders. The embedded bodies have no version line of their own, so that the same text serves
// GL 3.3 core and GLES 3.0.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "window/gl_api.h"

namespace kw::window {

class Program {
public:
    Program() = default;
    Program(const Program&) = delete;
    Program& operator=(const Program&) = delete;
    ~Program();

    // Our own shaders always compile; if they do not, that is our bug, and the log goes to standard error.
    void link(std::string_view vertex, const std::vector<std::string_view>& fragment);
    void use() const { glUseProgram(id_); }
    GLint uniform(const char* name) const;

private:
    GLuint id_ = 0;
    mutable std::vector<std::pair<std::string, GLint>> uniforms_;
};

}  // namespace kw::window
