#include "checker/naive_setups.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace checker {
namespace {

constexpr double same_width_mm = 1e-7;

// As many equal steps as it takes.
Json heights_up_to(double height_mm, std::optional<double> most_mm) {
    Json heights = Json::array();
    if (height_mm < 0) return heights;
    const double steps = most_mm ? std::ceil(height_mm / *most_mm - 1e-9) : 1;
    for (double step = 1; step < steps; ++step) heights.push_back(six_decimals(height_mm * step / steps));
    heights.push_back(height_mm);
    return heights;
}

}  // namespace

double six_decimals(double value_mm) { return std::round(value_mm * 1e6) / 1e6; }

NaiveSetups::Entry& NaiveSetups::entry_of(Stage stage, const Settings& settings) {
    const auto [found, is_new] = by_settings_.emplace(settings, entries_.size());
    if (is_new) entries_.push_back({settings, stage});
    Entry& entry = entries_[found->second];
    entry.stage = std::max<int>(entry.stage, stage);
    return entry;
}

NaiveSetups::Entry& NaiveSetups::pass(Stage stage, const Settings& settings, const WantedCut& cut,
                                      bool nibble) {
    Entry& entry = entry_of(stage, settings);
    entry.passes.push_back(
        {{"part", cut.part}, {"reference", cut.reference}, {"down", cut.down}, {"nibble", nibble}});
    return entry;
}

void NaiveSetups::add(Stage stage, const char* guide, const WantedCut& cut, const AskedCutter& cutter) {
    const double kerf = cutter.kerf_mm.value();
    const double width = cut.to_mm - cut.from_mm;
    const auto at = [&](double near, double spacer) {
        return Settings{cutter.machine,
                        cutter.name,
                        guide,
                        six_decimals(kerf),
                        six_decimals(near + spacer),
                        six_decimals(cut.height_mm),
                        six_decimals(spacer)};
    };
    if (cut.from_mm == 0) {
        const double near = width - kerf;
        Entry& entry = pass(stage, at(near, near < 0 ? std::ceil(-near) : 0), cut, near > 1e-6);
        entry.between = false;
        entry.most_at_once_mm = cutter.most_at_once_mm();
        return;
    }
    if (kerf > width + same_width_mm) throw std::runtime_error(cutter.name + " is too wide for " + cut.part);
    const int passes = std::max(1, static_cast<int>(std::ceil((width - same_width_mm) / kerf)));
    for (int i = 0; i < passes; ++i) {
        const double share = passes == 1 ? 0 : static_cast<double>(i) / (passes - 1);
        Entry& entry = pass(stage, at(cut.from_mm + share * (width - kerf), 0), cut, false);
        entry.most_at_once_mm = cutter.most_at_once_mm();
        entry.between = entry.between && i > 0 && i < passes - 1;
    }
}

void NaiveSetups::row(Stage stage, const WantedCut& cut, double finger_mm, double height_mm,
                      const AskedCutter& cutter) {
    const double kerf = cutter.kerf_mm.value(), pitch = six_decimals(finger_mm + kerf);
    const bool begins_with_socket = cut.from_mm == 0;
    Entry& entry = entry_of(
        stage, {cutter.machine, cutter.name, "indexing jig", six_decimals(kerf), six_decimals(finger_mm),
                six_decimals(cut.height_mm), begins_with_socket ? six_decimals(finger_mm) : 0});
    entry.between = false;
    entry.most_at_once_mm = cutter.most_at_once_mm();
    entry.index_mm = pitch;
    int sockets = 0;
    while (cut.from_mm + sockets * pitch < height_mm - 0.001) ++sockets;
    entry.passes.push_back({{"part", cut.part},
                            {"reference", "bottom edge"},
                            {"down", cut.reference},
                            {"nibble", false},
                            {"cuts", sockets}});
}

void NaiveSetups::rip(Stage stage, const std::string& part, double width_mm, const AskedCutter& blade) {
    const Settings settings{blade.machine,          blade.name, "rip fence", blade.kerf_mm.value(),
                            six_decimals(width_mm), -1,         0,           stage};
    pass(stage, settings, {part, "bottom edge", "inside"}, false).between = false;
}

void NaiveSetups::crosscut(Stage stage, const std::string& part, double length_mm,
                           const std::string& reference, const std::string& machine,
                           const std::string& cutter) {
    const Settings settings{machine, cutter, "miter gauge and stop", 0, six_decimals(length_mm), -1,
                            0,       stage};
    pass(stage, settings, {part, reference, "inside"}, false).between = false;
}

void NaiveSetups::write(Json& plan) const {
    std::vector<std::pair<int, std::string>> order;
    plan["setups"] = Json::array();
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        const Entry& entry = entries_[i];
        const Settings& s = entry.settings;
        const std::string number = std::to_string(i + 1);
        const bool through = s.height_mm < 0;
        plan["setups"].push_back({{"id", "S" + number},
                                  {"group", "G" + number},
                                  {"work", entry.between ? "a pass between" : "a cut"},
                                  {"machine", s.machine},
                                  {"cutter", s.cutter},
                                  {"kerf_mm", s.kerf_mm},
                                  {"fence_mm", s.fence_mm},
                                  {"height_mm", through ? Json() : Json(s.height_mm)},
                                  {"heights_mm", heights_up_to(s.height_mm, entry.most_at_once_mm)},
                                  {"spacer_mm", s.spacer_mm},
                                  {"sacrificial", s.spacer_mm > s.fence_mm},
                                  {"guide", s.guide},
                                  {"test_cut", !through},
                                  {"passes", entry.passes}});
        if (entry.index_mm) plan["setups"].back()["index_mm"] = *entry.index_mm;
        order.emplace_back(entry.stage, "S" + number);
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    plan["sequence"] = Json::array();
    for (const auto& entry : order) plan["sequence"].push_back(entry.second);
}

}  // namespace checker
