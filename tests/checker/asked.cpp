#include "checker/asked.h"

#include <algorithm>
#include <stdexcept>

#include "checker/asked_box.h"
#include "checker/written_length.h"

namespace checker {
namespace {

// The job format's own example values, for a job that says nothing. No outside source.
constexpr AskedFit default_fit{0.004 * inch_mm, inch_mm / 64, 0.010 * inch_mm, inch_mm / 32, 0};

class JobReader {
public:
    explicit JobReader(const Json& job)
        : job_(job), unit_(job.at("unit") == "in" ? Unit::inch : Unit::millimetre) {}

    Asked read() const {
        Asked asked;
        asked.fit = fit();
        for (const Json& entry : job_.at("machines")) asked.machines.push_back(machine(entry));
        for (const Json& entry : job_.at("cutters")) asked.cutters.push_back(cutter(entry));
        for (const Json& entry : job_.at("drawers")) asked.drawers.push_back(drawer(entry));
        return asked;
    }

private:
    std::optional<double> length(const Json& in, const char* field) const {
        if (!in.contains(field)) return std::nullopt;
        return read_length_mm(in.at(field), unit_);
    }

    AskedFit fit() const {
        const Json given = job_.value("fit", Json::object());
        AskedFit fit = default_fit;
        fit.clearance_mm = length(given, "clearance").value_or(fit.clearance_mm);
        fit.end_relief_mm = length(given, "end_relief").value_or(fit.end_relief_mm);
        fit.groove_clearance_mm = length(given, "groove_clearance").value_or(fit.groove_clearance_mm);
        fit.bottom_slack_mm = length(given, "bottom_slack").value_or(fit.bottom_slack_mm);
        fit.step_mm = length(given, "step").value_or(fit.step_mm);
        return fit;
    }

    AskedMachine machine(const Json& entry) const {
        return {entry.at("name"), entry.at("kind"), length(entry, "max_dado_width"),
                length(entry, "max_height")};
    }

    AskedCutter cutter(const Json& entry) const {
        return {entry.at("name"), entry.at("kind"), entry.at("machine"), length(entry, "kerf"),
                length(entry, "depth_per_pass")};
    }

    AskedBoard board(const Json& part) const {
        const std::string name = part.at("stock");
        for (const Json& entry : job_.at("stock")) {
            if (entry.at("name") != name) continue;
            return {name, length(entry, "thickness").value(), entry.value("kind", "plywood") == "solid"};
        }
        throw std::invalid_argument("no such stock: " + name);
    }

    AskedPart part(const Json& entry, const char* usual_joint) const {
        return {board(entry),
                entry.value("joint", usual_joint),
                entry.value("cutter", ""),
                length(entry, "dado_width"),
                length(entry, "depth"),
                length(entry, "setback"),
                length(entry, "offset")};
    }

    AskedFace face(const Json& drawer) const {
        AskedFace face;
        const Json given = drawer.value("face", Json::object());
        face.style = given.value("style", "none");
        if (given.contains("stock")) face.board = board(given);
        if (face.style == "none" || !drawer.contains("opening")) return face;
        const double outwards = face.style == "overlay" ? 1 : -1;
        const auto edges = [&](const char* one, const char* other) -> std::optional<double> {
            const auto first = length(given, one);
            const auto second = length(given, other);
            if (!first || !second) return std::nullopt;
            return outwards * (*first + *second);
        };
        const Json& opening = drawer.at("opening");
        if (const auto more = edges("left", "right"))
            face.across_mm = length(opening, "width").value() + *more;
        if (const auto more = edges("top", "bottom"))
            face.high_mm = length(opening, "height").value() + *more;
        return face;
    }

    void size(AskedDrawer& asked, const Json& drawer) const {
        const double face_in_case_mm =
            asked.face.style == "inset" && asked.face.board ? asked.face.board->thickness_mm : 0;
        const AskedBox box = asked_box(drawer, unit_, asked.sides.thickness_mm, face_in_case_mm);
        asked.width_mm = box.width_mm;
        asked.height_mm = box.height_mm;
        asked.depth_mm = box.depth_mm;
    }

    AskedDrawer drawer(const Json& entry) const {
        AskedDrawer asked;
        asked.name = entry.at("name");
        asked.count = entry.value("count", 1);
        asked.sides = board(entry.at("sides"));
        asked.front = part(entry.at("front"), "locking rabbet");
        asked.back = part(entry.at("back"), "dado");
        asked.bottom = part(entry.at("bottom"), "groove");
        asked.captured = entry.at("bottom").value("style", "slide in") == "captured";
        asked.face = face(entry);
        size(asked, entry);
        return asked;
    }

    const Json& job_;
    Unit unit_;
};

}  // namespace

Asked read_asked(const Json& job) { return JobReader(job).read(); }

std::optional<double> AskedCutter::most_at_once_mm() const {
    if (kind != "bit") return std::nullopt;
    return depth_per_pass_mm.value_or(std::min(kerf_mm.value() / 2, inch_mm / 4));
}

}  // namespace checker
