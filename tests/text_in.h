#pragma once
// What stands in a file; nothing where there is none.

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace kw::tests {

inline std::string text_in(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace kw::tests
