// A thousand random jobs, made in numbers by the check, which shares nothing with the program; and jobs that can't be made.
#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <string>

#include "checker/fingered_job.h"
#include "checker/impossible_job.h"
#include "checker/make_drawer.h"
#include "checker/random_job.h"
#include "whole/plan_seam.h"

using checker::Json;

namespace {

// What is wrong with the program's answer to a job; empty where nothing is.
std::string wrong_with(const Json& job) {
    std::string error;
    const std::string text = whole::plan_json(job.dump(2), error);
    if (text.empty()) return "refused: " + error;
    const Json plan = Json::parse(text, nullptr, false);
    if (plan.is_discarded()) return "the plan is no JSON";
    return text_of(checker::make_drawers(job, plan));
}

void check_fingered(std::uint64_t first, std::uint64_t last) {
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        CAPTURE(seed);
        const std::string wrong = wrong_with(checker::with_box_joints(checker::random_job(seed)));
        CHECK(wrong == "");
    }
}

void check_seeds(std::uint64_t first, std::uint64_t last) {
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        CAPTURE(seed);
        const std::string wrong = wrong_with(checker::random_job(seed));
        CHECK(wrong == "");
    }
}

std::string lower_case(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

std::size_t skip_digits(const std::string& text, std::size_t at) {
    while (at < text.size() && std::isdigit(static_cast<unsigned char>(text[at])) != 0) ++at;
    return at;
}

// path:line:column somewhere in the message
bool names_place(const std::string& message, const std::string& path) {
    const std::size_t found = message.find(path + ":");
    if (found == std::string::npos) return false;
    const std::size_t line = found + path.size() + 1;
    const std::size_t after_line = skip_digits(message, line);
    if (after_line == line || after_line >= message.size() || message[after_line] != ':') return false;
    return skip_digits(message, after_line + 1) > after_line + 1;
}

void check_refusal(const std::string& text, const std::string& word) {
    const whole::JobFile file(text);
    const whole::Run run = whole::run_program({"plan", file.path(), "--json"});
    CAPTURE(run.err);
    CHECK(run.status == 1);
    CHECK(run.out == "");
    CHECK(names_place(run.err, file.path()));
    CHECK(lower_case(run.err).find(lower_case(word)) != std::string::npos);
    CHECK(file.text() == text);
}

}  // namespace

// Joints, boxes and order by the trade's rules (common practice, and the published slide figures in checker/asked_box.cpp). In four
// parts, so that they run side by side.
TEST_CASE("random jobs make drawers that measure as asked to 0.002 mm, 1 to 250") { check_seeds(1, 250); }
TEST_CASE("random jobs make drawers that measure as asked to 0.002 mm, 251 to 500") { check_seeds(251, 500); }
TEST_CASE("random jobs make drawers that measure as asked to 0.002 mm, 501 to 750") { check_seeds(501, 750); }
TEST_CASE("random jobs make drawers that measure as asked to 0.002 mm, 751 to 1000") {
    check_seeds(751, 1000);
}

TEST_CASE("random jobs with box joints at all corners make drawers that measure as asked to 0.002 mm") {
    check_fingered(1, 150);
}

TEST_CASE(
    "a job that can't be made is refused with the reason and the place, and its file is left as it was") {
    for (std::uint64_t seed = 0; seed < 4 * checker::impossible_reasons(); ++seed) {
        const checker::ImpossibleJob impossible = checker::impossible_job(seed);
        CAPTURE(seed);
        CAPTURE(impossible.reason);
        check_refusal(impossible.job.dump(2), impossible.word);
    }
}

TEST_CASE("a job file that breaks off is refused where it breaks off") {
    const std::string text = checker::random_job(3).dump(2);
    for (std::size_t part = 1; part <= 8; ++part) check_refusal(text.substr(0, text.size() * part / 9), "");
}

TEST_CASE("the same job gives the same plan, to the byte") {
    for (std::uint64_t seed = 2001; seed <= 2010; ++seed) {
        const std::string text = checker::random_job(seed).dump(2);
        std::string error;
        const std::string plan = whole::plan_json(text, error);
        CAPTURE(seed);
        CAPTURE(error);
        CHECK(plan != "");
        CHECK(whole::plan_json(text, error) == plan);
    }
}
