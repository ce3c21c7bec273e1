#pragma once
// The small job that many tests start from: two drawers of 12 mm plywood.

#include <fstream>
#include <sstream>
#include <string>

#include "file/document.h"
#include "text_in.h"

namespace kw::tests {

inline std::string file_text(const std::string& name) {
    return text_in(std::string(KW_TEST_DIR) + "/files/" + name);
}

inline Json sample_json() { return parse_json(file_text("seed_cabinet.json")).value(); }

// The job that the program shows when it is first opened.
inline Json demo_json() { return parse_json(text_in(KW_ASSET_DIR "/demo.json")).value(); }

}  // namespace kw::tests
