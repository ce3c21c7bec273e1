#pragma once
// A shown length taken apart for setting in large type.

#include <string>
#include <string_view>

namespace kw::window {

// "−10 15/32 +" -> before "−10", numerator "15", denominator "32", after "+". Decimal values and words stand in `before`.
struct FigureParts {
    std::string before;
    std::string numerator;
    std::string denominator;
    std::string after;
    bool operator==(const FigureParts&) const = default;
};

FigureParts figure_parts(std::string_view value);

}  // namespace kw::window
