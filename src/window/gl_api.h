#pragma once
// OpenGL as every part of the window sees it: 3.3 core on desktops, and only what OpenGL ES 3.0 has too.

#ifdef __EMSCRIPTEN__
#include <GLES3/gl3.h>
#else
#include <glad/gl.h>
#endif
