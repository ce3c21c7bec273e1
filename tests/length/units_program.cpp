#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include <sys/wait.h>
#include <unistd.h>

#include "length/text.h"

using namespace kw;

namespace {

struct Asked {
    std::string ours;    // as a maker writes it
    std::string theirs;  // the same in the language of GNU units
};

std::vector<Asked> random_lengths() {
    std::mt19937_64 random(1875);
    const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    std::vector<Asked> all;
    for (int i = 0; i < 500; ++i) {
        const std::string whole = std::to_string(pick(0, 400));
        const std::string over = std::to_string(pick(0, 200));
        const std::string under = std::to_string(pick(1, 256));
        const std::string feet = std::to_string(pick(0, 20));
        const std::string mixed = "(" + whole + " + " + over + "|" + under + ")";
        for (const std::string unit : {"in", "mm", "cm", "m", "ft"}) {
            all.push_back({whole + " " + over + "/" + under + " " + unit, mixed + " " + unit});
            all.push_back({whole + "." + over + unit, whole + "." + over + " " + unit});
        }
        all.push_back(
            {feet + "' " + whole + " " + over + "/" + under + "\"", feet + " ft + " + mixed + " in"});
        all.push_back(
            {whole + " in - " + over + "/" + under + " cm", whole + " in - " + over + "|" + under + " cm"});
    }
    return all;
}

// One run of the program for all of them.
std::vector<double> millimetres_by_units(const std::vector<Asked>& all) {
    const auto path =
        std::filesystem::temp_directory_path() / ("kerfwright_units_" + std::to_string(getpid()));
    {
        std::ofstream file(path);
        for (const Asked& asked : all) file << asked.theirs << "\nmm\n";
    }
    std::FILE* pipe = popen(("units --terse --output-format '%.17g' < " + path.string()).c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::vector<double> answers;
    char line[256];
    while (std::fgets(line, sizeof line, pipe) != nullptr) answers.push_back(std::strtod(line, nullptr));
    const int status = pclose(pipe);
    std::filesystem::remove(path);
    if (WIFEXITED(status) && WEXITSTATUS(status) == 127)
        FAIL("the program GNU units is not installed (Debian's package: units)");
    return answers;
}

}  // namespace

TEST_CASE("lengths agree with GNU units to the nearest tick") {
    const std::vector<Asked> all = random_lengths();
    const std::vector<double> expected_mm = millimetres_by_units(all);
    REQUIRE_MESSAGE(expected_mm.size() == all.size(), "GNU units did not answer every question");
    constexpr double half_a_tick_mm = 0.625e-6;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto length = read_length(all[i].ours, Unit::millimetre);
        REQUIRE_MESSAGE(length.has_value(), all[i].ours);
        INFO(all[i].ours);
        CHECK(std::abs(length->mm() - expected_mm[i]) <= half_a_tick_mm + 1e-14 * std::abs(expected_mm[i]));
    }
}
