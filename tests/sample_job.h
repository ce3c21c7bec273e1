#pragma once
// The small job that many tests start from: two drawers of 12 mm plywood.

#include <fstream>
#include <sstream>
#include <string>

#include "file/document.h"

namespace kw::tests {

inline std::string file_text(const std::string& name) {
    std::ifstream in(std::string(KW_TEST_DIR) + "/files/" + name, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

inline Json sample_json() { return parse_json(file_text("seed_cabinet.json")).value(); }

// The job that the program shows when it is first opened.
inline Json demo_json() {
    std::ifstream in(KW_ASSET_DIR "/demo.json", std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return parse_json(text.str()).value();
}

}  // namespace kw::tests
