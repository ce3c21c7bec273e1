#include "command/run.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <filesystem>

#include <CLI/CLI.hpp>

#include "command/shop.h"
#include "command/write.h"
#include "file/shop_file.h"

namespace kw {
namespace {

struct Options {
    std::string job;
    std::string setup;
    bool json = false;
    bool csv = false;
    bool explain = false;
    bool save = false;
    bool fresh_end = false;
    bool anyway = false;
    std::vector<std::string> readings;
    std::vector<std::string> moved;
    std::vector<std::string> parts;
    bool first = false;
    bool last = false;
    std::string away;
    std::string back;
    std::string felt;
    bool sure = false;
    std::vector<std::string> seen;
    std::string with;
    std::string shots;
    std::string shop;
    int forget = 0;
    std::string correct;
    std::string unit = "mm";
};

std::string utc_now() {
    const std::time_t now = std::time(nullptr);
    char text[32];
    std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", std::gmtime(&now));
    return text;
}

struct Opened {
    std::string text;
    Session session;
    Json shop;  // the shop's file as it is
};

class Commands {
public:
    Commands(const Options& options, const CommandIo& io) : options_(options), io_(io) {}

    int plan() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            io_.out << (options_.json      ? plan_json(work)
                        : options_.explain ? cost_text(work)
                                           : plan_text(work));
            return 0;
        });
    }

    int parts() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            io_.out << (options_.json ? parts_json(work) : options_.csv ? parts_csv(work) : parts_text(work));
            return 0;
        });
    }

    int check() const {
        return with_work([](const Opened&) { return 0; });
    }

    int fit() const {
        return with_work([&](const Opened& opened) {
            auto cut = test_cut(*opened.session.work);
            if (!cut) return refuse(cut.error());
            const Session after = apply(opened.session, SaveTest{*cut}, utc_now());
            return answer(opened, after, options_.save);
        });
    }

    int lock() const {
        return with_work([&](const Opened& opened) {
            auto cut = test_cut(*opened.session.work);
            if (!cut) return refuse(cut.error());
            if (const auto out = out_of_tolerance(*opened.session.work, *cut); out && !options_.anyway)
                return refuse(*out);
            const auto report = fit_report(*opened.session.work, options_.setup);
            const Session after = apply(opened.session, LockGroup{*cut}, utc_now());
            const bool assumed = report && !report->moves.empty() && !cut->moved && after.refused.empty();
            if (assumed && !options_.json)
                io_.out << "The moves advised after test " << report->test << " are taken as made.\n";
            return answer(opened, after, true);
        });
    }

    // Marks what has gone through a setup: all of it, or all ends of these parts.
    int ran() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            const RestStep* step = step_named(work.rest, options_.setup);
            const Setup* setup = work.plan.setup_with_id(step ? step->setup : options_.setup);
            if (!setup) return refuse("there is no setup `" + options_.setup + "`; `plan` lists them");
            MarkRun mark{setup->id, {}, true};
            for (const std::size_t i : step ? step->open : std::vector<std::size_t>{})
                if (options_.parts.empty() || among(options_.parts, setup->passes[i].part))
                    mark.passes.push_back(i);
            for (const std::string& part : options_.parts)
                if (std::none_of(setup->passes.begin(), setup->passes.end(),
                                 [&](const Pass& pass) { return pass.part == part; }))
                    return refuse("no part `" + part + "` goes through " + setup->id);
            return keep(apply(opened.session, mark, utc_now()));
        });
    }

    int lost() const {
        return with_work([&](const Opened& opened) {
            Session session = opened.session;
            for (const std::string& part : options_.parts) {
                session = apply(session, MarkLost{part}, utc_now());
                if (!session.refused.empty()) break;
            }
            return keep(session);
        });
    }

    // Pins a setup, or lends a machine out and takes it back; says what that takes.
    int pin() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            if (options_.setup.empty() && options_.away.empty() && options_.back.empty())
                return refuse("name a --setup, or a machine that is --away or --back");
            const RestStep* step = step_named(work.rest, options_.setup);
            Session after = opened.session;
            if (!options_.setup.empty())
                after =
                    apply(after,
                          PinSetup{step ? step->setup : options_.setup, options_.first  ? Pinned::first
                                                                        : options_.last ? Pinned::last
                                                                                        : Pinned::nowhere},
                          utc_now());
            for (const auto& [name, is_away] :
                 {std::pair{options_.away, true}, std::pair{options_.back, false}}) {
                if (name.empty()) continue;
                const auto& machines = work.job.shop.machines;
                const auto found = std::find_if(
                    machines.begin(), machines.end(),
                    [&, &wanted = name](const Machine& machine) { return machine.name == wanted; });
                if (found == machines.end() || !after.document.contains("machines"))
                    return refuse("there is no machine `" + name + "` in the job");
                after = apply(
                    after,
                    SetField{"/machines/" + std::to_string(found - machines.begin()) + "/away", is_away},
                    utc_now());
            }
            return keep_order(opened, after);
        });
    }

    int shop() const {
        auto file = read_shop();
        if (!file) return tell({}, file.error(), shop_file());
        const Unit unit = options_.unit == "in" ? Unit::inch : Unit::millimetre;
        return run_shop({shop_file(), options_.forget, options_.correct, unit}, *file, io_, utc_now());
    }

private:
    // Why a tested joint had better not be locked; nothing where it is more likely in tolerance than out, or not tested.
    static std::optional<std::string> out_of_tolerance(const Work& work, const TestCut& lock) {
        const auto chance = chance_when_locked(work, lock);
        constexpr double even = 0.5;
        if (!chance || *chance >= even) return std::nullopt;
        return "not locked: as tested, the joint is " + std::to_string(std::lround(100 * *chance)) +
               " % likely to be in tolerance; `kerfwright fit` says what to do, --anyway locks it all the "
               "same";
    }

    template <class Then>
    int with_work(Then then) const {
        const auto text = read_file(options_.job);
        if (!text) return tell({}, text.error());
        auto json = parse_json(*text);
        if (!json) return tell(*text, json.error());
        auto shop = read_shop();
        if (!shop) return tell({}, shop.error(), shop_file());
        const auto memory = read_memory(*shop);
        if (!memory) return refuse_shop(shop_file(), memory.error().front(), io_);
        add_shop(*json, *shop);
        const Opened opened{*text, open_session(std::move(*json), *memory, utc_now()), std::move(*shop)};
        for (const Problem& problem : opened.session.problems)
            tell(*text, to_file_error(problem, *text, graduation_of(opened)));
        return opened.session.problems.empty() ? then(opened) : 1;
    }

    const std::string& shop_file() const { return options_.shop.empty() ? io_.shop_file : options_.shop; }

    // A shop without a file has learned nothing.
    tl::expected<Json, FileError> read_shop() const {
        std::error_code error;
        if (shop_file().empty() || !std::filesystem::exists(shop_file(), error)) return Json::object();
        const auto text = read_file(shop_file());
        if (!text) return tl::unexpected(text.error());
        return parse_json(*text);
    }

    // The unit may be all that could be read.
    static Graduation graduation_of(const Opened& opened) {
        const Json& document = opened.session.document;
        const bool inch = !document.is_object() || document.value("unit", "in") == "in";
        return inch ? Graduation::in_64 : Graduation::mm_0_1;
    }

    int tell(const std::string& text, const FileError& error) const {
        return tell(text, error, options_.job);
    }
    int tell(const std::string& text, const FileError& error, const std::string& file) const {
        io_.err << report(file, text, error);
        return 1;
    }

    int refuse(const std::string& why) const {
        io_.err << options_.job << ": " << why << "\n";
        return 1;
    }

    static bool among(const std::vector<std::string>& all, const std::string& one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    }

    int keep_order(const Opened& before, const Session& after) const {
        if (!after.refused.empty()) return refuse(after.refused);
        for (const Problem& problem : after.problems)
            tell(before.text, to_file_error(problem, before.text, graduation_of(before)));
        if (!after.problems.empty()) return 1;
        if (const auto saved = save_file(options_.job, to_text(after.document)); !saved)
            return tell({}, saved.error());
        io_.out << order_text(*before.session.work, *after.work);
        return 0;
    }

    // Saves the job, and says what is left.
    int keep(const Session& after) const {
        if (!after.refused.empty()) return refuse(after.refused);
        if (const auto saved = save_file(options_.job, to_text(after.document)); !saved)
            return tell({}, saved.error());
        io_.out << rest_text(*after.work);
        return 0;
    }

    int answer(const Opened& before, const Session& after, bool save) const {
        if (!after.refused.empty())
            return refuse(after.refused + (after.refused_field == "doubt"       ? ": --sure"
                                           : after.refused_field == "fresh_end" ? ": --fresh-end"
                                                                                : ""));
        if (save)
            if (const auto saved = save_file(options_.job, to_text(after.document)); !saved)
                return tell({}, saved.error());
        // The job is safe by now; what it has taught is kept for the next.
        if (save && after.memory != before.session.memory)
            if (const auto saved = save_file(shop_file(), to_text(with_memory(before.shop, after.memory)));
                !saved)
                return tell({}, saved.error(), shop_file());
        const auto report = fit_report(*after.work, options_.setup);
        io_.out << (options_.json ? fit_json(*report) : fit_text(*after.work, *report));
        if (!save && !options_.json) io_.out << "\nNot kept: --save logs it in the job.\n";
        return 0;
    }

    tl::expected<TestCut, std::string> test_cut(const Work& work) const {
        TestCut cut{options_.setup, {},           options_.felt, std::nullopt, options_.fresh_end,
                    "command line", options_.seen};
        cut.sure = options_.sure;
        if (!options_.with.empty()) {
            cut.tool = tool_named(options_.with);
            if (!cut.tool)
                return tl::unexpected("there is no tool `" + options_.with + "`: write `caliper` or `rule`");
        }
        if (auto problem = read_pairs(options_.readings, work.job.unit, cut.readings))
            return tl::unexpected(*problem);
        if (options_.moved.empty()) return cut;
        cut.moved.emplace();
        if (auto problem = read_pairs(options_.moved, work.job.unit, *cut.moved))
            return tl::unexpected(*problem);
        return cut;
    }

    static std::optional<std::string> read_pairs(const std::vector<std::string>& pairs, Unit unit,
                                                 std::vector<NamedLength>& out) {
        for (const std::string& pair : pairs) {
            const std::size_t equals = pair.find('=');
            if (equals == std::string::npos) return "`" + pair + "`: write NAME=LENGTH";
            const auto length = read_length(pair.substr(equals + 1), unit);
            if (!length) return pair.substr(0, equals) + ": " + length.error().message;
            out.push_back({pair.substr(0, equals), *length});
        }
        return std::nullopt;
    }

    const Options& options_;
    const CommandIo& io_;
};

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

}  // namespace

int run_command(std::vector<std::string> arguments, const CommandIo& io) {
    Options options;
    CLI::App app("Kerfwright: drawers, from the opening to the corrected cut.", "kerfwright");
    app.set_version_flag("--version", "kerfwright 0.1.0");
    app.add_option("JOB", options.job, "opens the window on this job; without one, on the last");
    add_shop_option(&app, options);
    app.add_option("--shots", options.shots, "writes a picture of every screen into this folder");
    CLI::App* plan = add_command(app, options, "plan", "boxes, parts and the ordered setups");
    plan->add_flag("--json", options.json, "for programs");
    plan->add_flag("--explain", options.explain, "what each step takes, line by line, and in all");
    CLI::App* parts = add_command(app, options, "parts", "the cut list");
    parts->add_flag("--json", options.json, "for programs");
    parts->add_flag("--csv", options.csv, "for spreadsheets");
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
    lock->add_flag("--anyway", options.anyway, "though the joint as tested is likely out of tolerance");
    CLI::App* ran =
        add_command(app, options, "ran", "marks what has gone through a setup, and says what is left");
    ran->add_option("--setup", options.setup, "the setup's name in the plan, as S3")->required();
    ran->add_option("--part", options.parts, "only this part, both its ends; may be repeated");
    CLI::App* lost = add_command(app, options, "lost", "marks a part as spoilt: it is to be made again");
    lost->add_option("--part", options.parts, "its name in the plan; may be repeated")->required();
    CLI::App* pin =
        add_command(app, options, "pin", "has a setup done first or last, or lends a machine out");
    CLI::Option* pinned = pin->add_option("--setup", options.setup,
                                          "the setup's name in the plan; alone: wherever it fits best");
    CLI::Option* first =
        pin->add_flag("--first", options.first, "before all that it does not need itself")->needs(pinned);
    pin->add_flag("--last", options.last, "not today: after all that can be done without it")
        ->needs(pinned)
        ->excludes(first);
    pin->add_option("--away", options.away, "a machine on which nothing is to be done: lent out, or broken");
    pin->add_option("--back", options.back, "a machine that is there again");
    CLI::App* shop =
        app.add_subcommand("shop", "what the shop has learned of its scales and cutters, and why");
    add_shop_option(shop, options);
    shop->add_option("--unit", options.unit, "in or mm: how lengths are shown, and read where no unit stands")
        ->check(CLI::IsMember({"in", "mm"}));
    shop->add_option("--forget", options.forget, "the number of what is wrong");
    shop->add_option("--correct", options.correct,
                     "NUMBER=LENGTH: how far it really is beyond what its scale says");
    CLI::App* check = add_command(app, options, "check", "says what is wrong with the job, or nothing");
    app.require_subcommand(0, 1);
    try {
        std::reverse(arguments.begin(), arguments.end());
        app.parse(arguments);
    } catch (const CLI::ParseError& error) { return app.exit(error, io.out, io.err) == 0 ? 0 : 2; }
    const Commands commands(options, io);
    if (*plan) return commands.plan();
    if (*parts) return commands.parts();
    if (*fit) return commands.fit();
    if (*lock) return commands.lock();
    if (*ran) return commands.ran();
    if (*lost) return commands.lost();
    if (*pin) return commands.pin();
    if (*check) return commands.check();
    if (*shop) return commands.shop();
    return options.shots.empty() ? io.open_window(options.job, options.shop)
                                 : io.take_shots(options.shots, options.job);
}

}  // namespace kw
