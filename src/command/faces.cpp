#include "command/faces.h"

#include "command/job_command.h"
#include "command/table.h"
#include "session/say_bank.h"
#include "session/setup_said.h"

namespace kw {
namespace {

std::string bank_text(const Work& work, const BankSpec& bank) {
    const Locale& locale = work.job.locale;
    const SaidBank said = say_bank(work, bank);
    const auto span = [&](Length from, Length to) { return show(from, locale) + " to " + show(to, locale); };
    Table table({Align::left, Align::right, Align::right, Align::right, Align::right, Align::right,
                 Align::right, Align::right});
    table.row({"", "lower edge", "upper edge", "high", bank.handles ? "holes" : "", "slide",
               bank.style == FaceStyle::overlay ? "covers below, above" : "gaps below, above",
               "room for the box"});
    const int sign = bank.style == FaceStyle::overlay ? 1 : -1;
    for (const TapeRow& row : said.rows)
        table.row({row.drawer, show(row.lower, locale), show(row.upper, locale),
                   show(row.upper - row.lower, locale), row.holes ? show(*row.holes, locale) : "",
                   row.slide ? show(*row.slide, locale) : "",
                   show(sign * row.over_bottom, locale) + ", " + show(sign * row.over_top, locale),
                   span(row.opening_lower, row.opening_upper)});
    std::string out =
        said.head + "\n  " + capital(said.rule) + "; " + said.measured_from + ":\n" + table.text();
    if (!said.left_over.empty()) out += "  " + said.left_over + "\n";
    for (const Note& note : said.notes)
        out += std::string("  ") + (note.level == Level::note ? "" : "CAUTION ") +
               (note.title.empty() ? note.about + ": " : "") + note.text.text(locale) + "\n";
    return out;
}

Json bank_json(const Work& work, const BankSpec& bank) {
    Json json = {{"name", bank.name},
                 {"style", bank.style == FaceStyle::overlay ? "overlay" : "inset"},
                 {"heights", name_of(bank.heights)},
                 {"reveal_mm", bank.reveal.mm()},
                 {"face_width_mm", bank.made.face_width.mm()},
                 {"opening_height_mm", bank.made.height.mm()},
                 {"zero_above_floor_mm", tape_zero(bank).mm()}};
    const auto holes = holes_of(work.design.drawers, bank, work.job);
    const auto rows = say_bank(work, bank).rows;
    json["faces"] = Json::array();
    for (std::size_t i = 0; i < bank.rows.size(); ++i) {
        const BankFace& face = bank.made.faces[i];
        Json one = {{"drawer", work.job.drawers[bank.rows[i].drawer].name},
                    {"copy", bank.rows[i].copy},
                    {"lower_mm", (face.bottom - tape_zero(bank)).mm()},
                    {"height_mm", face.height.mm()},
                    {"over_top_mm", rows[i].over_top.mm()},
                    {"over_bottom_mm", rows[i].over_bottom.mm()},
                    {"opening_lower_mm", (face.opening_bottom - tape_zero(bank)).mm()},
                    {"opening_height_mm", face.opening_height.mm()}};
        for (const RowHoles& drilled : holes) {
            if (drilled.row != i) continue;
            one["holes"] = {{"from_bottom_mm", drilled.holes.from_bottom.mm()},
                            {"from_left_mm", Json::array()}};
            for (const Length x : drilled.holes.from_left) one["holes"]["from_left_mm"].push_back(x.mm());
        }
        json["faces"].push_back(std::move(one));
    }
    json["gaps"] = Json::array();
    for (const GapOverYear& gap : gaps_over_year(work.job, bank))
        json["gaps"].push_back(
            {{"made_mm", gap.made.mm()}, {"least_mm", gap.least.mm()}, {"most_mm", gap.most.mm()}});
    return json;
}

class FacesCommand : JobCommand {
public:
    using JobCommand::JobCommand;

    int run() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            if (options_.json) {
                Json json = {{"format", "kerfwright-faces"}, {"version", 1}, {"job", work.job.name}};
                json["banks"] = Json::array();
                for (const BankSpec& bank : work.job.banks) json["banks"].push_back(bank_json(work, bank));
                io_.out << json.dump(2) << "\n";
                return 0;
            }
            if (work.job.banks.empty())
                io_.out << "No bank of drawers is asked for: name the drawers of a column under `banks`.\n";
            for (const BankSpec& bank : work.job.banks)
                io_.out << (&bank == &work.job.banks.front() ? "" : "\n") << bank_text(work, bank);
            return 0;
        });
    }
};

}  // namespace

int run_faces(const Options& options, const CommandIo& io) { return FacesCommand(options, io).run(); }

}  // namespace kw
