// What a job asks for, read from its JSON in the checker's own way. Sizes in mm.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checker/json.h"
#include "checker/report.h"

namespace checker {

struct AskedFit {
    double clearance_mm = 0;         // dado less tongue
    double end_relief_mm = 0;        // depth of the dado less length of the tongue
    double groove_clearance_mm = 0;  // groove less bottom
    double bottom_slack_mm = 0;      // in all, across and from front to back
    double step_mm = 0;              // sides' ends in front of the front's outside face
};

struct AskedBoard {
    std::string stock;
    double thickness_mm = 0;
    bool solid = false;
};

// A front, a back or a bottom. What the job leaves open is empty; `depth` is the dado's, the rabbet's or the groove's.
struct AskedPart {
    AskedBoard board;
    std::string joint;
    std::string cutter;
    std::optional<double> dado_width_mm;  // front, back
    std::optional<double> depth_mm;
    std::optional<double> setback_mm;  // back
    std::optional<double> offset_mm;   // bottom
};

struct AskedFace {
    std::string style;
    std::optional<AskedBoard> board;
    std::optional<double> across_mm;
    std::optional<double> high_mm;
};

struct AskedDrawer {
    std::string name;
    int count = 1;
    AskedBoard sides;
    AskedPart front;
    AskedPart back;
    AskedPart bottom;
    bool captured = false;
    AskedFace face;
    // One value where the job or the trade's rule fixes it; a range where it leaves the program a choice.
    Range width_mm;
    Range height_mm;
    Range depth_mm;
};

struct AskedMachine {
    std::string name;
    std::string kind;
    std::optional<double> max_dado_width_mm;
    std::optional<double> max_height_mm;
};

struct AskedCutter {
    std::string name;
    std::string kind;
    std::string machine;
    std::optional<double> kerf_mm;
    std::optional<double> depth_per_pass_mm = std::nullopt;

    // Of a bit, in height: as the job says, else half of its width and no more than a quarter inch. CP. None for other cutters.
    std::optional<double> most_at_once_mm() const;
};

struct Asked {
    AskedFit fit;
    std::vector<AskedMachine> machines;
    std::vector<AskedCutter> cutters;
    std::vector<AskedDrawer> drawers;
};

// Throws std::exception where the JSON is not a job: a random job that can't be read is the test's own mistake.
Asked read_asked(const Json& job);

template <typename Named>
const Named* find_named(const std::vector<Named>& list, const std::string& name) {
    for (const Named& entry : list) {
        if (entry.name == name) return &entry;
    }
    return nullptr;
}

}  // namespace checker
