// The one library that the checker stands on. Nothing in this folder includes anything from src.
#pragma once

#include <nlohmann/json.hpp>

namespace checker {

using Json = nlohmann::ordered_json;

}  // namespace checker
