#include "command/table.h"
#include "command/write.h"
#include "session/words.h"
#include "testcut/feel.h"

namespace kw {
namespace {

std::string standing_text(const Work& work, const FitReport& report) {
    const Locale fine = caliper_locale(work.job);
    const auto sigma = [&](const std::string& control) {
        for (const auto& [name, mm] : report.spread_mm)
            if (name == control) return "± " + show_with_unit(Length::nearest_mm(2.0 * mm), fine);
        return std::string{};
    };
    Table table({Align::left, Align::right, Align::left});
    const bool on_jig = work.plan.setup_with_id(report.setup)->index.has_value();
    table.row({on_jig ? "pin" : "fence", show_with_unit(report.now.fence, fine), sigma("fence")});
    table.row({"height", show_with_unit(report.now.height, fine), sigma("height")});
    if (report.now.spacer > Length{})
        table.row({"spacer", show_with_unit(report.now.spacer, fine),
                   on_jig ? "a finger's width" : sigma("spacer")});
    table.row({"kerf", show_with_unit(report.now.kerf, fine), sigma("kerf")});
    if (report.now.shift > Length{})
        table.row({"fence shift", show_with_unit(report.now.shift, fine), sigma("shift")});
    return table.text();
}

std::string after_text(const Work& work, const FitReport& report) {
    const Locale fine = caliper_locale(work.job);
    Table table({Align::left, Align::right, Align::left});
    const auto row = [&](const char* name, const std::optional<double>& mm, const std::string& sign) {
        if (mm) table.row({name, show_with_unit(Length::nearest_mm(*mm), fine), sign});
    };
    const std::string aimed = say_aimed(work.job, report);
    row("fit", report.fit_mm, "+ loose, − tight" + (aimed.empty() ? "" : "; " + aimed + " is aimed at"));
    row("shoulder gap", report.shoulder_gap_mm, "");
    const bool on_jig = work.plan.setup_with_id(report.setup)->index.has_value();
    row("face step", report.face_step_mm, on_jig ? "+ fingers proud" : "+ side proud");
    row("row", report.row_mm, "how much farther up than planned its last socket is, all of them added up");
    return table.text();
}

// Before the first test what to cut, and of a jig what its readings are of.
std::string how_it_is_read(const Work& work, const FitReport& report) {
    const std::vector<std::string> lines = report.test == 0
                                               ? say_test(work, report.setup, CutterSide::near)
                                               : say_jig(work, *work.plan.setup_with_id(report.setup));
    std::string out = lines.empty() ? "" : "\nThe test cut\n";
    for (const std::string& line : lines) out += "  " + line + "\n";
    return out;
}

}  // namespace

std::string fit_text(const Work& work, const FitReport& report) {
    std::string out = report.setup + " (" + report.group + "), test " + std::to_string(report.test) + "\n" +
                      say_advice(report, work.job.locale.words()) + "\n";
    if (const std::string again = say_torn_down(work, report); !again.empty()) out += again + "\n";
    for (const SaidMove& move : report.moves) out += "  " + move.say + "\n";
    if (!report.unread.empty())
        out += say_unread(report, work.job.locale.words()) + ", and tell it with --moved.\n";
    out += "\nBelieved to stand at, with what it may be out by\n" + standing_text(work, report);
    const std::string after = after_text(work, report);
    if (!after.empty())
        out += report.moves.empty() ? "\nExpected of the joint\n" + after
                                    : "\nExpected of the joint after the moves\n" + after;
    if (!report.locked) out += how_it_is_read(work, report);
    for (const Affected& affected : work.affected)
        out += "Already cut: " + affected.said().text(work.job.locale) + "\n";
    return out;
}

std::string fit_words() {
    std::string out =
        "What is read (--read NAME=LENGTH):\n"
        "  stock_thickness   of the board that enters\n"
        "  dado_width, dado_depth, lip, tongue_thickness, tongue_length   of a joint with a tongue\n"
        "  lap_thickness, lap_length   of a half lap, of the board that enters; width and depth are its "
        "mate's\n"
        "  socket_width, finger_width   of a box joint; depth is the sockets'; row is from the bottom edge "
        "to the\n"
        "                    far wall of the last whole socket, on the side, which begins with a finger;\n"
        "                    of a row that is cut alone, on its own board\n"
        "  width, depth, near   of a slot: near is from the edge or end to its near wall\n"
        "  fit               + loose: the gap beside what goes in, by feelers or paper;\n"
        "                    - tight: how much thicker it is than the slot, by a caliper on both\n"
        "  shoulder_gap      0 where it is closed, never less\n"
        "  face_step         + the side stands proud, - it is shy\n"
        "What is moved (--moved NAME=LENGTH):\n"
        "  fence + out (at a jig: pin, + away from the cutter), height + up, spacer + thicker, kerf + wider "
        "(shims), shift + the last pass farther "
        "out\n"
        "What is felt (--felt), from tight to loose:\n ";
    for (const FeelMeaning& feel : feel_table()) out += " `" + std::string(feel.word) + "`";
    std::string_view reading;
    out += "\nWhat is seen (--seen), of each place one:";
    for (const Sight& sight : sight_table()) {
        if (sight.reading != reading) out += "\n  " + plain_name(std::string(sight.reading)) + ":";
        reading = sight.reading;
        out += " `" + std::string(sight.word) + "`";
    }
    return out;
}

}  // namespace kw
