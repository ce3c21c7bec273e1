#include "command/run.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "command/broken_down.h"
#include "command/faces.h"
#include "command/job_command.h"
#include "command/layout.h"
#include "command/measured.h"
#include "command/pages.h"
#include "command/report_after.h"
#include "command/shop.h"
#include "command/told.h"
#include "command/write.h"
#include "file/shop_file.h"
#include "job/pins.h"
#include "session/say_log.h"

namespace kw {
namespace {

class Commands : JobCommand {
public:
    using JobCommand::JobCommand;

    int plan() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            const std::vector<Note> notes = notes_of(unread_in_files(opened.text));
            const LayOut layout = lay_out(work.job, work.plan, work.standing);
            io_.out << (options_.json ? plan_json(work, layout, notes)
                        : options_.explain
                            ? cost_text(work, layout)
                            : plan_text(work, layout, notes, read_preferences(opened.shop).fence_to));
            return 0;
        });
    }

    // Pages speak the language of the window, and not that of the command line.
    int pages(print::PagesOf what) const {
        return with_work(
            [&](const Opened& opened) {
                const Work& work = *opened.session.work;
                const LayOut layout =
                    print::needs_layout(what) ? lay_out(work.job, work.plan, work.standing) : LayOut{};
                return write_pages(work, read_preferences(opened.shop),
                                   {what, options_.out, options_.paper, layout}, io_);
            },
            Speaks::as_the_window);
    }

    int parts() const {
        if (!options_.out.empty()) return pages(print::PagesOf::parts);
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            io_.out << (options_.json ? parts_json(work) : options_.csv ? parts_csv(work) : parts_text(work));
            return 0;
        });
    }

    int check() const {
        return with_work([&](const Opened& opened) {
            io_.out << report(unread_in_files(opened.text));
            return 0;
        });
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
            const Work& work = *opened.session.work;
            if (is_locked_so(work, *cut)) {
                io_.err << options_.setup << " is locked so already: nothing was logged.\n";
                const auto report = *fit_report(work, options_.setup);
                io_.out << (options_.json ? fit_json(report) : fit_text(work, report));
                return 0;
            }
            if (const auto out = out_of_tolerance(work, *cut); out && !options_.anyway) return refuse(*out);
            const auto report = fit_report(*opened.session.work, options_.setup);
            const Session after = apply(opened.session, LockGroup{*cut}, utc_now());
            const bool assumed = report && !report->moves.empty() && !cut->moved && after.refused.empty();
            if (assumed && !options_.json)
                io_.out << "The moves advised after test " << report->test << " are taken as made.\n";
            if (after.refused.empty() && !options_.json) io_.out << unlikely_words(work, *cut);
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
            for (const std::string& part : options_.parts)
                if (std::none_of(setup->passes.begin(), setup->passes.end(),
                                 [&](const Pass& pass) { return pass.part == part; }))
                    return refuse("no part `" + part + "` goes through " + setup->id);
            // A part that is named may be one that waits for the setup to be set again.
            MarkRun mark{setup->id, {}, true, options_.before_torn_down};
            for (const RestStep& its : work.rest.steps)
                for (const std::size_t i : its.setup == setup->id ? its.open : std::vector<std::size_t>{})
                    if (options_.parts.empty() ? &its == step : among(options_.parts, setup->passes[i].part))
                        mark.passes.push_back(i);
            const Session after = apply(opened.session, mark, utc_now());
            if (!after.refused_part.empty())
                return refuse(after.refused + "; `kerfwright lost " + options_.job + " --part " +
                              after.refused_part + "` marks it");
            if (!after.refused.empty() && options_.parts.empty() && some_may(work, *setup, mark.passes))
                return refuse(after.refused + ", or name with --part what has gone through");
            const bool is_late = options_.before_torn_down && is_torn_down(work, *setup);
            return keep(opened, after, ran_words(*after.work, *setup, mark.passes.size(), is_late));
        });
    }

    int lost() const {
        return with_work([&](const Opened& opened) {
            Session session = opened.session;
            for (const std::string& part : options_.parts) {
                session = apply(session, MarkLost{part, part != options_.parts.front()}, utc_now());
                if (!session.refused.empty()) break;
            }
            return keep(opened, session, lost_words(*session.work, options_.parts));
        });
    }

    // Pins a setup, or lends a machine out and takes it back; says what that takes, or with nothing asked what there is.
    int pin() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            if (options_.free) return free_all(opened);
            if (options_.setup.empty() && options_.away.empty() && options_.back.empty()) {
                io_.out << pins_text(work);
                return 0;
            }
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
                 {std::pair{options_.back, false}, std::pair{options_.away, true}}) {
                if (name.empty() || !after.refused.empty()) continue;
                const auto& machines = work.job.shop.machines;
                const auto found = std::find_if(
                    machines.begin(), machines.end(),
                    [&, &wanted = name](const Machine& machine) { return machine.name == wanted; });
                if (found == machines.end() || !after.document.contains("machines"))
                    return refuse("there is no machine `" + name + "` in the job");
                after = apply(after, SetField{away_field(found - machines.begin()), is_away}, utc_now());
                if (is_away && !after.problems.empty())
                    return refuse(cannot_lend(work.job, name, after.problems));
            }
            return keep_order(opened, after);
        });
    }

    // Takes back what was told last; what a lock taught with it.
    int undo() const {
        return with_work([&](const Opened& opened) {
            const Work& work = *opened.session.work;
            const Session after = apply(opened.session, TakeBack{}, utc_now());
            if (!after.refused.empty()) return refuse(after.refused);
            if (!is_made(opened, after) || !save(opened, after)) return 1;
            io_.out << "Took back: " << say_last(work, last_told(work.job.log)) << "\n";
            if (after.memory != opened.session.memory)
                io_.out << "What that taught the shop is as it was before.\n";
            io_.out << next_text(*after.work);
            return 0;
        });
    }

    int shop() const {
        const auto file = read_shop_file(shop_file());
        if (!file) return tell({}, file.error(), shop_file());
        std::optional<Unit> unit;
        if (!options_.unit.empty()) unit = options_.unit == "in" ? Unit::inch : Unit::millimetre;
        else if (const auto reading = read_preferences(file->json).reading) unit = unit_of(*reading);
        return run_shop({shop_file(), options_.forget, options_.correct, unit}, *file, io_, utc_now());
    }

private:
    static bool among(const std::vector<std::string>& all, const std::string& one) {
        return std::find(all.begin(), all.end(), one) != all.end();
    }

    static std::string away_field(std::ptrdiff_t machine) {
        return "/machines/" + std::to_string(machine) + "/away";
    }

    int free_all(const Opened& opened) const {
        Session after = opened.session;
        if (after.document.contains("pins")) after = apply(after, SetField{"/pins", nullptr}, utc_now());
        const auto& machines = opened.session.work->job.shop.machines;
        for (std::size_t i = 0; i < machines.size(); ++i)
            if (machines[i].is_away)
                after = apply(after, SetField{away_field(std::ptrdiff_t(i)), nullptr}, utc_now());
        if (after.document != opened.session.document) return keep_order(opened, after);
        io_.out << pins_text(*opened.session.work);
        return 0;
    }

    // A pinned setup goes by another number in the new order.
    std::string new_name(const Opened& before, const Work& after) const {
        const RestStep* step = step_named(before.session.work->rest, options_.setup);
        const Setup* was = before.session.work->plan.setup_with_id(step ? step->setup : options_.setup);
        if (!was) return {};
        const std::string name = pin_name(*was, before.session.work->design);
        for (const Setup& setup : after.plan.setups)
            if (pin_name(setup, after.design) == name)
                return "What was " + was->id + " (" + was->work + ") is now " + setup.id + ".\n";
        return {};
    }

    int keep_order(const Opened& before, const Session& after) const {
        if (!after.refused.empty()) return refuse(after.refused);
        if (!is_made(before, after) || !save(before, after)) return 1;
        io_.out << order_text(*before.session.work, *after.work) << new_name(before, *after.work);
        return 0;
    }

    // Saves the job, and says what was told and what comes next.
    int keep(const Opened& before, const Session& after, const std::string& words) const {
        if (!after.refused.empty()) return refuse(after.refused);
        if (!save(before, after)) return 1;
        io_.out << words << torn_down_words(*before.session.work, *after.work) << next_text(*after.work);
        return 0;
    }

    int answer(const Opened& before, const Session& after, bool save) const {
        if (!after.refused.empty())
            return refuse(after.refused + (after.refused_field == "doubt"       ? ": --sure"
                                           : after.refused_field == "fresh_end" ? ": --fresh-end"
                                                                                : ""));
        if (save && !this->save(before, after)) return 1;
        if (save && !options_.json) io_.out << torn_down_words(*before.session.work, *after.work);
        const auto report = report_after(*before.session.work, *after.work, options_.setup);
        if (!report) io_.out << rest_text(*after.work);
        else io_.out << (options_.json ? fit_json(*report) : fit_text(*after.work, *report));
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
            if (!length) return pair.substr(0, equals) + ": " + length.error().message.text({});
            out.push_back({pair.substr(0, equals), *length});
        }
        return std::nullopt;
    }
};

}  // namespace

int run_command(std::vector<std::string> arguments, const CommandIo& io) {
    Options options;
    if (const auto over = parse(std::move(arguments), io, options)) return *over;
    const Commands commands(options, io);
    if (options.command == "layout") return run_layout(options, io);
    if (options.command == "faces") return run_faces(options, io);
    if (options.command == "survey") return run_measured(Measured::opening, options, io);
    if (options.command == "assemble") return run_measured(Measured::assembled, options, io);
    if (options.command == "plan") return commands.plan();
    if (options.command == "parts") return commands.parts();
    if (options.command == "cards") return commands.pages(print::PagesOf::cards);
    if (options.command == "templates") return commands.pages(print::PagesOf::templates);
    if (options.command == "labels") return commands.pages(print::PagesOf::labels);
    if (options.command == "fit") return commands.fit();
    if (options.command == "lock") return commands.lock();
    if (options.command == "ran" && !options.stocks.empty()) return run_broken_down(options, io);
    if (options.command == "ran") return commands.ran();
    if (options.command == "lost") return commands.lost();
    if (options.command == "pin") return commands.pin();
    if (options.command == "undo") return commands.undo();
    if (options.command == "check") return commands.check();
    if (options.command == "shop") return commands.shop();
    return options.shots.empty() ? io.open_window(options.job, options.shop)
                                 : io.take_shots(options.shots, options.job);
}

}  // namespace kw
