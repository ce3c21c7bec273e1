#include "command/options.h"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "command/pages.h"
#include "command/write.h"

namespace kw {
namespace {

void add_shop_option(CLI::App* command, Options& options) {
    command->add_option(
        "--shop", options.shop,
        "the shop's file: what it has learned, and machines and cutters for jobs that list none");
}

CLI::App* add_command(CLI::App& app, Options& options, const std::string& name, const std::string& what) {
    CLI::App* command = app.add_subcommand(name, what);
    command->add_option("JOB", options.job, "the job's file")->required();
    add_shop_option(command, options);
    return command;
}

void add_test_options(CLI::App* command, Options& options) {
    command->add_option("--setup", options.setup, "the setup, as the plan numbers it: S3")->required();
    command->add_option("--moved", options.moved,
                        "CONTROL=LENGTH: what was moved since the last test, if not as advised");
    command->add_flag("--json", options.json, "answer for programs");
}

// What can be written is known by the file's ending alone.
CLI::Validator printable() {
    return CLI::Validator(
        [](const std::string& file) {
            return pages_format(file) ? std::string() : "`" + file + "`: pages are written as .pdf or .svg";
        },
        "FILE.pdf or FILE.svg", "ending");
}

CLI::Option* add_print_options(CLI::App* command, Options& options, const std::string& what) {
    CLI::Option* out =
        command
            ->add_option("--out", options.out,
                         what + "; the pages of an .svg lie under each other, each at its true size")
            ->check(printable());
    command
        ->add_option("--paper", options.paper,
                     "a4 or letter; otherwise letter for a job in inches and a4 for one in millimetres")
        ->check(CLI::IsMember({"a4", "letter"}))
        ->needs(out);
    return out;
}

void add_parts_and_pages(CLI::App& app, Options& options) {
    CLI::App* parts = add_command(app, options, "parts", "the cut list");
    CLI::Option* parts_json = parts->add_flag("--json", options.json, "for programs");
    CLI::Option* parts_csv = parts->add_flag("--csv", options.csv, "for spreadsheets");
    add_print_options(parts, options, "for the bench, on paper: the file to write")
        ->excludes(parts_json)
        ->excludes(parts_csv);
    const std::string in_the_language = ", in the language chosen in the window's options";
    CLI::App* cards = add_command(app, options, "cards",
                                  "setup cards to print, in the order of the work" + in_the_language);
    add_print_options(cards, options, "the file to write")->required();
    CLI::App* labels =
        add_command(app, options, "labels", "a label to print for each part" + in_the_language);
    add_print_options(labels, options, "the file to write")->required();
    CLI::App* templates = add_command(
        app, options, "templates", "where slides are screwed on, true to size, to print" + in_the_language);
    add_print_options(templates, options, "the file to write")->required();
}

void add_measured(CLI::App& app, Options& options, Measured what) {
    const bool opening = what == Measured::opening;
    CLI::App* command = add_command(
        app, options, opening ? "survey" : "assemble",
        opening ? "an opening measured at several places: which place is out, and what takes it up"
                : "a drawer put together and hung: from its diagonals and gaps, what to push and move");
    CLI::Option* drawer =
        command->add_option("--drawer", options.drawer, "its name; without one, all of them");
    CLI::Option* read =
        command
            ->add_option("--read", options.readings,
                         opening ? "NAME=LENGTH: a reading, such as width_top=14 3/8; may be repeated"
                                 : "NAME=LENGTH: a reading, such as left_top=1/16; may be repeated")
            ->needs(drawer);
    if (!opening)
        command->add_option("--copy", options.copy, "which of the drawers of that name: 1 is the first")
            ->check(CLI::PositiveNumber)
            ->needs(drawer);
    if (!opening)
        command->add_flag("--order", options.order, "in which order it is put together, and where glue goes")
            ->excludes(read);
    command->add_flag("--save", options.save, "keeps the readings in the job")->needs(read);
    command->footer(measured_words(what));
}

}  // namespace

std::optional<int> parse(std::vector<std::string> arguments, const CommandIo& io, Options& options) {
    CLI::App app("Kerfwright: drawers, from the opening to the corrected cut.", "kerfwright");
    app.set_version_flag("--version", "kerfwright 0.1.0");
    app.add_option("JOB", options.job, "opens the window on this job; without one, on the last");
    add_shop_option(&app, options);
    app.add_option("--shots", options.shots, "writes a picture of every screen into this folder");
    CLI::App* plan = add_command(app, options, "plan", "boxes, parts and the ordered setups");
    plan->add_flag("--json", options.json, "for programs");
    plan->add_flag("--explain", options.explain, "what each step takes, line by line, and in all");
    add_parts_and_pages(app, options);
    CLI::App* layout =
        add_command(app, options, "layout", "parts laid out on boards and sheets, with the cuts in order");
    CLI::Option* layout_json = layout->add_flag("--json", options.json, "for programs");
    add_print_options(layout, options, "for the bench, on paper: the file to write")->excludes(layout_json);
    add_command(app, options, "faces",
                "the faces of banks of drawers: heights, where to mark them, handle holes")
        ->add_flag("--json", options.json, "for programs");
    add_measured(app, options, Measured::opening);
    CLI::App* fit = add_command(app, options, "fit", "a test cut's readings in, the correction out");
    add_test_options(fit, options);
    fit->add_option("--read", options.readings, "NAME=LENGTH: a reading, such as tongue_thickness=0.242in");
    fit->add_option("--felt", options.felt, "will not enter, mallet, hand tight, slides, rattles");
    fit->add_option("--seen", options.seen,
                    "a word for what is seen on the closed joint: `flush`, `shoulder open`; may be repeated");
    fit->add_option("--with", options.with, "caliper or rule: what the readings were taken with");
    fit->add_flag("--sure", options.sure, "looked at again: a reading that contradicts the rest is right");
    fit->add_flag("--fresh-end", options.fresh_end, "the readings come from new ends");
    fit->add_flag("--save", options.save, "logs it in the job");
    fit->footer(fit_words());
    CLI::App* lock = add_command(app, options, "lock", "locks a setup group as it stands");
    add_test_options(lock, options);
    lock->add_flag("--anyway", options.anyway,
                   "though the joint was never tested, or as tested is likely out of tolerance");
    CLI::App* ran =
        add_command(app, options, "ran",
                    "marks what has gone through a setup, or was broken down, and says what is left");
    CLI::Option* ran_at = ran->add_option("--setup", options.setup, "the setup's name in the plan, as S3");
    ran->add_option("--part", options.parts, "only this part, both its ends; may be repeated")->needs(ran_at);
    ran->add_flag("--before-torn-down", options.before_torn_down,
                  "they ran before the setup was torn down, and were not told then")
        ->needs(ran_at);
    CLI::Option* stock =
        ran->add_option("--stock", options.stocks,
                        "its boards or sheets were broken down as `layout` has them; may be repeated")
            ->excludes(ran_at);
    ran->callback([ran_at, stock] {
        if (ran_at->count() + stock->count() == 0) throw CLI::RequiredError("--setup or --stock");
    });
    CLI::App* lost = add_command(app, options, "lost", "marks a part as spoilt: it is to be made again");
    lost->add_option("--part", options.parts, "its name in the plan; may be repeated")->required();
    CLI::App* pin =
        add_command(app, options, "pin",
                    "has a setup done first or last, or lends a machine out; alone: lists what is so");
    CLI::Option* pinned = pin->add_option("--setup", options.setup,
                                          "the setup's name in the plan; alone: wherever it fits best");
    CLI::Option* first =
        pin->add_flag("--first", options.first, "before all that it does not need itself")->needs(pinned);
    pin->add_flag("--last", options.last, "not today: after all that can be done without it")
        ->needs(pinned)
        ->excludes(first);
    CLI::Option* away = pin->add_option("--away", options.away,
                                        "a machine on which nothing is to be done: lent out, or broken");
    CLI::Option* back = pin->add_option("--back", options.back, "a machine that is there again");
    pin->add_flag("--free", options.free, "lets all setups go, and has all machines back")
        ->excludes(pinned)
        ->excludes(away)
        ->excludes(back);
    add_measured(app, options, Measured::assembled);
    add_command(app, options, "undo",
                "takes back what the log was told last: a test cut, a lock, parts run, freed or lost");
    CLI::App* shop =
        app.add_subcommand("shop", "what the shop has learned of its scales and cutters, and why");
    add_shop_option(shop, options);
    shop->add_option("--unit", options.unit,
                     "in or mm: how lengths are shown, and read where no unit stands; as in the window where "
                     "that is told, or both")
        ->check(CLI::IsMember({"in", "mm"}));
    shop->add_option("--forget", options.forget, "the number of what is wrong");
    shop->add_option("--correct", options.correct,
                     "NUMBER=LENGTH: how far it really is beyond what its scale says");
    add_command(app, options, "check", "says what is wrong with the job, or nothing");
    app.require_subcommand(0, 1);
    try {
        std::reverse(arguments.begin(), arguments.end());
        app.parse(arguments);
    } catch (const CLI::ParseError& error) { return app.exit(error, io.out, io.err) == 0 ? 0 : 2; }
    for (const CLI::App* command : app.get_subcommands()) options.command = command->get_name();
    return std::nullopt;
}

}  // namespace kw
