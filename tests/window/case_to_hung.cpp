// A whole case: nine drawers in three sizes, of two stocks, with inset faces, from the survey of its openings to printed pages and the
// checks when they hang. Once by the window alone, once by commands alone, with the same results.
#include <doctest/doctest.h>

#include <sstream>

#include "command/run.h"
#include "text_in.h"
#include "window/maker.h"

namespace kw::window {
namespace {

Json drawer(const char* name, const char* height) {
    return {{"name", name},
            {"count", 3},
            {"opening", {{"width", "14 3/8"}, {"height", height}, {"depth", "18 3/4"}}},
            {"slide", {{"kind", "side mount"}, {"lengths", {"14", "16", "18"}}}},
            {"front", {{"stock", "birch 12"}, {"joint", "locking rabbet"}}},
            {"sides", {{"stock", "birch 12"}}},
            {"back", {{"stock", "birch 12"}, {"joint", "dado"}}},
            {"bottom", {{"stock", "birch 6"}, {"joint", "groove"}}},
            {"face",
             {{"style", "inset"},
              {"stock", "birch 12"},
              {"left", "3/32"},
              {"right", "3/32"},
              {"top", "3/32"},
              {"bottom", "3/32"}}}};
}

Json nine_drawers() {
    return {{"format", "kerfwright-job"},
            {"version", 1},
            {"name", "Print room cabinet"},
            {"unit", "in"},
            {"stock",
             {{{"name", "birch 12"}, {"thickness", "0.472"}, {"kind", "plywood"}},
              {{"name", "birch 6"}, {"thickness", "0.235"}, {"kind", "plywood"}}}},
            {"machines",
             {{{"name", "saw"}, {"kind", "table saw"}}, {{"name", "stop saw"}, {"kind", "miter saw"}}}},
            {"cutters", {{{"name", "stack"}, {"kind", "dado stack"}, {"machine", "saw"}, {"kerf", "1/4"}}}},
            {"drawers", {drawer("nibs", "4"), drawer("brushes", "5 1/2"), drawer("blocks", "7")}},
            {"log", Json::array()}};
}

struct Reading {
    std::size_t drawer;
    int copy;           // of what is read when it hangs
    const char* name;   // in the file and on the command line
    const char* shown;  // in the window
    const char* value;
};

constexpr Reading openings[] = {{0, 1, "width_top", "Width, top", "14 3/8"},
                                {0, 1, "width_bottom", "Width, bottom", "14 1/4"},
                                {0, 1, "frame_left", "Frame in, left", "3/4"},
                                {1, 1, "width_back", "Width at the back", "14 5/16"},
                                {1, 1, "height_left", "Height, left", "5 7/16"},
                                {2, 1, "width_top", "Width, top", "14 3/8"},
                                {2, 1, "height_left", "Height, left", "7"},
                                {2, 1, "diagonal_rising", "Diagonal, rising", "16 1/16"},
                                {2, 1, "diagonal_falling", "Diagonal, falling", "15 15/16"}};
constexpr Reading hung[] = {{0, 1, "from_front_left", "From front left", "22 9/16"},
                            {0, 1, "from_front_right", "From front right", "22 3/8"},
                            {2, 3, "left_top", "Gap left, top", "1/16"},
                            {2, 3, "right_top", "Gap right, top", "1/8"},
                            {2, 3, "top_left", "Gap above, left", "1/16"},
                            {2, 3, "top_right", "Gap above, right", "5/32"}};

const std::string names[] = {"nibs", "brushes", "blocks"};

// What is printed: its command, and how its file beside the job ends.
struct Pages {
    const char *command, *ending, *button;
};
constexpr Pages pages[] = {{"cards", "-cards.pdf", "Write the setup cards"},
                           {"labels", "-labels.pdf", "Write the labels"},
                           {"layout", "-layout.pdf", "Write the lay-out"},
                           {"parts", "-parts.pdf", "Write the parts list"}};

struct Results {
    std::string plan, layout, survey, assembly;
    std::vector<std::string> printed;
};

// The command line with a shop of its own; what it answers.
class Commands {
public:
    explicit Commands(std::filesystem::path job) : job_(std::move(job)) {}

    std::string run(std::vector<std::string> arguments) const {
        std::ostringstream out, err;
        const auto window = [](const std::string&, const std::string&) { return 7; };
        const auto asset = [](const std::string& name) { return std::string(KW_ASSET_DIR "/") + name; };
        arguments.insert(arguments.begin() + 1, job_.string());
        arguments.insert(arguments.end(), {"--shop", job_.string() + ".shop"});
        const int status =
            run_command(std::move(arguments), {out, err, window, window, job_.string() + ".shop", asset});
        REQUIRE_MESSAGE(status == 0, err.str());
        return out.str();
    }

    Results results(const std::vector<std::string>& printed) const {
        return {run({"plan", "--json"}), run({"layout", "--json"}), run({"survey"}), run({"assemble"}),
                printed};
    }

private:
    std::filesystem::path job_;
};

Results by_commands() {
    const std::filesystem::path job = std::filesystem::temp_directory_path() / "kw-case-by-commands.json";
    Json document = nine_drawers();
    // In an editor: what there is to cut from.
    for (Json& stock : document["stock"]) stock["sizes"] = {{{"length", "96 in"}, {"width", "48 in"}}};
    std::ofstream(job) << document.dump(2);
    const Commands commands(job);
    for (const Reading& one : openings)
        commands.run({"survey", "--drawer", names[one.drawer], "--read",
                      one.name + std::string("=") + one.value, "--save"});
    for (const Reading& one : hung)
        commands.run({"assemble", "--drawer", names[one.drawer], "--copy", std::to_string(one.copy), "--read",
                      one.name + std::string("=") + one.value, "--save"});
    std::vector<std::string> printed;
    for (const Pages& one : pages) {
        const std::string file = job.string() + one.ending;
        commands.run({one.command, "--out", file});
        printed.push_back(tests::text_in(file));
        std::filesystem::remove(file);
    }
    const Results results = commands.results(printed);
    std::filesystem::remove(job);
    return results;
}

void read_in(Maker& maker, const Reading& one) {
    maker.press(one.shown);
    maker.key_in(one.value);
}

std::vector<std::string> print_all(Maker& maker) {
    maker.press("Print");
    std::vector<std::string> printed;
    for (const Pages& one : pages) {
        const std::filesystem::path file =
            maker.path().parent_path() / (maker.path().stem().string() + one.ending);
        std::filesystem::remove(file);
        maker.press(one.button);
        maker.app().finish(maker.hand().ui());
        maker.redraw();
        printed.push_back(tests::text_in(file));
        std::filesystem::remove(file);
    }
    return printed;
}

Results by_the_window(Maker& maker) {
    maker.press("Measured at several places");
    std::size_t drawer = 0;
    for (const Reading& one : openings) {
        if (one.drawer != drawer) maker.press(capital(names[one.drawer]));
        drawer = one.drawer;
        read_in(maker, one);
    }
    maker.press("Stock");
    // The first one without sizes is asked first.
    maker.press("Add a sheet");
    maker.app().finish(maker.hand().ui());
    maker.redraw();
    maker.press_last("Add a sheet");
    maker.app().finish(maker.hand().ui());
    maker.press("The job");
    const auto printed_before = print_all(maker);
    maker.press("Put together");
    for (const Reading& one : hung) {
        maker.press(capital(names[one.drawer]) + " " + std::to_string(one.copy));
        read_in(maker, one);
    }
    maker.app().finish(maker.hand().ui());
    return Commands(maker.path()).results(printed_before);
}

}  // namespace

TEST_CASE(
    "nine drawers go from the survey of their case to printed pages and to where they hang, by window or by "
    "commands alike") {
    const Results commands = by_commands();
    CHECK(commands.plan.find("\"proved\"") != std::string::npos);
    CHECK(commands.survey.find("put a filler of 3/4 in behind the left slide") != std::string::npos);
    CHECK(commands.survey.find("leans 1/16 in + to the right") != std::string::npos);
    CHECK(commands.assembly.find("push the back right corner toward the front left one") !=
          std::string::npos);
    CHECK(commands.assembly.find("raise the face's right end") != std::string::npos);
    Maker maker(nine_drawers().dump(2));
    const Results window = by_the_window(maker);
    CHECK(window.plan == commands.plan);
    CHECK(window.layout == commands.layout);
    CHECK(window.survey == commands.survey);
    CHECK(window.assembly == commands.assembly);
    REQUIRE(window.printed.size() == commands.printed.size());
    for (std::size_t i = 0; i < window.printed.size(); ++i) {
        CAPTURE(std::string(pages[i].command));
        CHECK(window.printed[i].size() > 10'000);
        CHECK(window.printed[i] == commands.printed[i]);
    }
    // And the window says it as the commands do.
    const auto says = [&](const std::string& beginning) {
        for (const LoggedWidget& widget : maker.hand().log().widgets)
            if (widget.label.rfind(beginning, 0) == 0) return true;
        return false;
    };
    CHECK(says("Raise the face's right end"));
    CHECK(says("Move the face"));
}

}  // namespace kw::window
