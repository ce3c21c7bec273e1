#include "checker/report.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace checker {
namespace {

std::string number(double value_mm) {
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.4f mm", value_mm);
    return text.data();
}

const char* name_of(Kind kind) {
    switch (kind) {
        case Kind::form: return "form";
        case Kind::list: return "list";
        case Kind::setup: return "setup";
        case Kind::order: return "order";
        case Kind::measure: return "measure";
    }
    return "";
}

}  // namespace

void Report::say(Kind kind, const std::string& about, const std::string& what) {
    findings_.push_back({kind, about, what});
}

bool Report::equal(double one_mm, double other_mm) const {
    return std::abs(one_mm - other_mm) <= tolerance_mm_;
}

// Written so that a NaN is a finding.
void Report::same(Kind kind, const std::string& about, const std::string& what, double is_mm,
                  double asked_mm) {
    if (!equal(is_mm, asked_mm))
        say(kind, about, what + " is " + number(is_mm) + ", asked " + number(asked_mm));
}

void Report::within(Kind kind, const std::string& about, const std::string& what, double is_mm,
                    Range asked_mm) {
    if (is_mm >= asked_mm.low - tolerance_mm_ && is_mm <= asked_mm.high + tolerance_mm_) return;
    say(kind, about,
        what + " is " + number(is_mm) + ", asked " + number(asked_mm.low) + " to " + number(asked_mm.high));
}

std::string text_of(const Finding& finding) {
    return std::string(name_of(finding.kind)) + ": " + finding.about + ": " + finding.what;
}

std::string text_of(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) text += text_of(finding) + "\n";
    return text;
}

}  // namespace checker
