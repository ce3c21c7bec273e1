// The commands that write pages to print.

#include "command/pages.h"

#include <doctest/doctest.h>

#include <filesystem>

#include "command/bench.h"
#include "text_in.h"

using namespace kw;
using tests::Said;

namespace fs = std::filesystem;

namespace {

// A folder of its own, with a job in it; the program's fonts are where the build has put them.
class Shelf {
public:
    explicit Shelf(const Json& job = tests::sample_json())
        : folder_(fs::temp_directory_path() / ("kw-pages-" + std::to_string(getpid()))) {
        fs::create_directories(folder_);
        std::ofstream(path("job.json")) << to_text(job);
    }
    ~Shelf() { fs::remove_all(folder_); }
    Shelf(const Shelf&) = delete;
    Shelf& operator=(const Shelf&) = delete;

    std::string path(const std::string& name) const { return (folder_ / name).string(); }
    std::size_t files() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }

    Said run(const std::string& verb, std::vector<std::string> more,
             const std::string& fonts = KW_ASSET_DIR) const {
        std::ostringstream out, err;
        const auto window = [](const std::string&, const std::string&) { return 7; };
        std::vector<std::string> arguments{verb, path("job.json"), "--shop", path("shop.json")};
        arguments.insert(arguments.end(), more.begin(), more.end());
        CommandIo io{out, err, window, window, {}};
        io.asset = [&](const std::string& name) { return fonts + "/" + name; };
        const int status = run_command(std::move(arguments), io);
        return {status, out.str(), err.str()};
    }

private:
    fs::path folder_;
};

bool holds(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

}  // namespace

TEST_CASE("cards, labels and parts are written as PDF and as SVG, by the file's ending") {
    const Shelf shelf;
    for (const std::string verb : {"cards", "labels", "parts"}) {
        CAPTURE(verb);
        const std::string pdf = shelf.path(verb + ".pdf"), svg = shelf.path(verb + ".SVG");
        const Said said = shelf.run(verb, {"--out", pdf});
        CHECK(said.status == 0);
        CHECK(said.err.empty());
        CHECK(said.out.rfind(pdf + ": ", 0) == 0);
        CHECK(tests::text_in(pdf).rfind("%PDF-", 0) == 0);
        CHECK(shelf.run(verb, {"--out", svg}).status == 0);
        CHECK(tests::text_in(svg).rfind("<svg ", 0) == 0);
    }
}

TEST_CASE("the paper follows the job's unit, where none is asked for") {
    Json metric = tests::sample_json();
    metric["unit"] = "mm";
    metric["drawers"][0].erase("opening");
    metric["drawers"][0].erase("slide");
    metric["drawers"][0].erase("face");
    metric["drawers"][0]["box"] = {{"width", 340}, {"height", 100}, {"depth", 400}};
    for (const char* place : {"back", "bottom"}) metric["drawers"][0][place]["depth"] = "1/4 in";
    metric["drawers"][0]["back"]["setback"] = "1 in";
    metric["drawers"][0]["bottom"]["offset"] = "3/8 in";
    metric["fit"] = Json::object();
    for (Json& cutter : metric["cutters"]) cutter["kerf"] = cutter["kerf"].get<std::string>() + " in";
    for (const char* limit : {"max_dado_width", "max_height"})
        metric["machines"][0][limit] = metric["machines"][0][limit].get<std::string>() + " in";
    const auto paper_of = [](const Shelf& shelf, std::vector<std::string> more) {
        more.insert(more.begin(), {"--out", shelf.path("x.svg")});
        return shelf.run("parts", std::move(more)).out;
    };
    CHECK(holds(paper_of(Shelf(), {}), "1 page, Letter."));
    CHECK(holds(paper_of(Shelf(), {"--paper", "a4"}), "1 page, A4."));
    CHECK(holds(paper_of(Shelf(metric), {"--paper", "letter"}), "1 page, Letter."));
    const Shelf shelf(metric);
    const std::string said = paper_of(shelf, {});
    CHECK(holds(said, "1 page, A4."));
    CHECK(holds(tests::text_in(shelf.path("x.svg")), "width=\"210mm\" height=\"297mm\""));
}

TEST_CASE("another ending, another paper, or no file at all is wrong usage, and nothing is written") {
    const Shelf shelf;
    const std::vector<std::vector<std::string>> all{{"--out", shelf.path("cards.png")},
                                                    {"--out", shelf.path("cards")},
                                                    {"--out", ".pdf"},
                                                    {},
                                                    {"--paper", "a4"},
                                                    {"--out", shelf.path("x.pdf"), "--paper", "a5"}};
    for (const auto& more : all) {
        const Said said = shelf.run("cards", more);
        CHECK(said.status == 2);
        CHECK_FALSE(said.err.empty());
    }
    CHECK(shelf.run("parts", {"--json", "--out", shelf.path("x.pdf")}).status == 2);
    CHECK(shelf.files() == 1);
    CHECK(holds(shelf.run("cards", all.front()).err, "pages are written as .pdf or .svg"));
}

TEST_CASE("a file that can't be written is said, and nothing is left half written") {
    const Shelf shelf;
    const Said nowhere = shelf.run("cards", {"--out", shelf.path("no/such/folder/cards.pdf")});
    CHECK(nowhere.status == 1);
    CHECK(holds(nowhere.err, "no/such/folder/cards.pdf"));
    fs::create_directory(shelf.path("taken.svg"));
    const Said taken = shelf.run("labels", {"--out", shelf.path("taken.svg")});
    CHECK(taken.status == 1);
    CHECK_FALSE(taken.err.empty());
    CHECK(shelf.files() == 2);
}

TEST_CASE("without the program's fonts a PDF is refused with a remedy, and what was there stays") {
    const Shelf shelf;
    const std::string pdf = shelf.path("cards.pdf");
    std::ofstream(pdf) << "before";
    const Said said = shelf.run("cards", {"--out", pdf}, "/no/fonts");
    CHECK(said.status == 1);
    CHECK(holds(said.err, "or write .svg"));
    CHECK(tests::text_in(pdf) == "before");
    CHECK(shelf.run("cards", {"--out", shelf.path("cards.svg")}, "/no/fonts").status == 0);
}

TEST_CASE("a job that can't be made gives no cards") {
    Json job = tests::sample_json();
    job["drawers"][0]["front"]["stock"] = "stock that nobody has";
    const Shelf shelf(job);
    const Said said = shelf.run("cards", {"--out", shelf.path("cards.pdf")});
    CHECK(said.status == 1);
    CHECK(holds(said.err, "stock that nobody has"));
    CHECK(shelf.files() == 1);
}

TEST_CASE("pages speak the language, and measure to the side, that is chosen in the window's options") {
    const Shelf shelf;
    const std::string svg = shelf.path("cards.svg");
    CHECK(shelf.run("cards", {"--out", svg}).status == 0);
    const std::string english = tests::text_in(svg);
    CHECK(holds(english, ">Step 1 of "));
    CHECK(holds(english, ">Fence to near side<"));
    std::ofstream(shelf.path("shop.json"))
        << R"({"format": "kerfwright-shop", "version": 1, "preferences": {"language": "de", "fence_to": "far side"}})";
    CHECK(shelf.run("cards", {"--out", svg}).status == 0);
    const std::string german = tests::text_in(svg);
    CHECK(holds(german, ">Schritt 1 von "));
    CHECK_FALSE(holds(german, ">Step "));
    CHECK(holds(german, ">Anschlag bis ferne Seite<"));
}

// What README shows of a setup, and what its card says, are the same numbers.
TEST_CASE("the numbers of each setup in the printed plan are on its card") {
    const Shelf shelf;
    const std::string svg = shelf.path("cards.svg");
    CHECK(shelf.run("cards", {"--out", svg}).status == 0);
    // Each run of letters by itself: fractions come in pieces.
    const std::string cards = tests::text_in(svg);
    std::string words;
    for (std::size_t at = cards.find("<text"); at != std::string::npos; at = cards.find("<text", at + 1)) {
        const std::size_t begin = cards.find('>', at) + 1;
        words += cards.substr(begin, cards.find("</text>", begin) - begin) + "|";
    }
    std::istringstream plan(shelf.run("plan", {}).out);
    int numbers = 0;
    for (std::string line; std::getline(plan, line);) {
        std::istringstream in(line);
        std::string control, first, second;
        in >> control >> first >> second;
        if ((control != "fence" && control != "height" && control != "spacer" && control != "stop") ||
            first == "none")
            continue;
        const auto pieces = [](const std::string& number) {
            const std::size_t slash = number.find('/');
            return slash == std::string::npos
                       ? number + "|"
                       : number.substr(0, slash) + "|\u2044|" + number.substr(slash + 1) + "|";
        };
        const std::string told = second == "in" ? pieces(first) : first + "|" + pieces(second);
        CAPTURE(line);
        CHECK(holds(words, "|" + told));
        ++numbers;
    }
    CHECK(numbers > 10);
}
