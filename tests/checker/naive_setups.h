// Collects cuts into setups, in the contract's form.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "checker/asked.h"
#include "checker/json.h"

namespace checker {

// A cut as a joint wants it: the span from the reference, the face down, the height. mm.
struct WantedCut {
    std::string part;
    std::string reference;
    std::string down;
    double from_mm = 0;
    double to_mm = 0;
    double height_mm = 0;
};

class NaiveSetups {
public:
    // When in the day a setup comes; within a stage in the order of first use.
    enum Stage { rips, side_lengths, side_joints, other_lengths, end_joints, grooves, back_widths, bottoms };

    // In one pass where the cutter is as wide as the span; in several where it is narrower; at an end from z = 0, nibbling, or with
    // the cutter running in a sacrificial spacer. Throws where the cutter is too wide.
    void add(Stage stage, const char* guide, const WantedCut& cut, const AskedCutter& cutter);

    // A row of sockets up an end, `cut.reference`, from `cut.from_mm` above the bottom edge; nothing or one finger's width.
    void row(Stage stage, const WantedCut& cut, double finger_mm, double height_mm,
             const AskedCutter& cutter);

    void rip(Stage stage, const std::string& part, double width_mm, const AskedCutter& blade);
    void crosscut(Stage stage, const std::string& part, double length_mm, const std::string& reference,
                  const std::string& machine, const std::string& cutter);

    // "work" is "a pass between" for setups whose fence could move a little and still leave the joint as it is.
    void write(Json& plan) const;

private:
    struct Settings {
        std::string machine;
        std::string cutter;
        std::string guide;
        double kerf_mm = 0;
        double fence_mm = 0;
        double height_mm = -1;  // through
        double spacer_mm = 0;
        int stage = 0;  // of through cuts, that come more than once
        auto key() const {
            return std::tie(machine, cutter, guide, kerf_mm, fence_mm, height_mm, spacer_mm, stage);
        }
        bool operator<(const Settings& other) const { return key() < other.key(); }
    };
    struct Entry {
        Settings settings;
        int stage = 0;
        bool between = true;  // serves only passes between a first and a last
        std::optional<double> most_at_once_mm = std::nullopt;
        std::optional<double> index_mm = std::nullopt;
        Json passes = Json::array();
    };

    Entry& entry_of(Stage stage, const Settings& settings);
    Entry& pass(Stage stage, const Settings& settings, const WantedCut& cut, bool nibble);

    std::vector<Entry> entries_;
    std::map<Settings, std::size_t> by_settings_;
};

// As the contract writes a length: millimetres with six decimals.
double six_decimals(double value_mm);

}  // namespace checker
