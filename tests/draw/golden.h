#pragma once
// Pictures kept as files, to be looked at. KW_ACCEPT=1 in the environment writes them anew.

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

#include "draw/svg.h"

namespace golden {

inline std::string path_of(const std::string& name) {
    return std::string(KW_TEST_DIR) + "/golden/" + name + ".svg";
}

inline std::string kept(const std::string& name) {
    std::ifstream file(path_of(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// Whether the drawing is, byte for byte, as it was when someone looked at it and kept it.
inline bool is_as_kept(const std::string& name, const kw::draw::Drawing& drawing) {
    const std::string svg = kw::draw::to_svg(drawing);
    const char* accept = std::getenv("KW_ACCEPT");
    if (accept && std::string(accept) == "1") std::ofstream(path_of(name), std::ios::binary) << svg;
    return svg == kept(name);
}

}  // namespace golden
