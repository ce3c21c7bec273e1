// How the maker likes to read and to work: asked on one page, kept in the shop's file, at once on the screen.
#include <doctest/doctest.h>
#include <unistd.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <sstream>

#include "file/shop_file.h"
#include "text_in.h"
#include "window/app.h"
#include "window/chime.h"
#include "window/hand.h"
#include "window/platform.h"

namespace kw::window {
namespace {

namespace fs = std::filesystem;

// The demo job, and a shop whose file begins with `shop`; gone at the end.
struct Bench {
    fs::path folder = fs::temp_directory_path() / ("kerfwright-preferences-" + std::to_string(getpid()));
    fs::path job = folder / "job.json", shop = folder / "shop.json";

    explicit Bench(const std::string& in_shop = "") {
        fs::create_directories(folder);
        fs::copy_file(fs::path(KW_ASSET_DIR) / "demo.json", job, fs::copy_options::overwrite_existing);
        if (!in_shop.empty()) std::ofstream(shop) << in_shop;
    }
    ~Bench() { fs::remove_all(folder); }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    App open() const {
        auto app = App::open(job, shop);
        REQUIRE_MESSAGE(app.has_value(), (app ? "" : app.error()));
        return std::move(*app);
    }
};

const char* const unlike_the_usual = R"({"format": "kerfwright-shop", "version": 1,
    "preferences": { "language": "de","reading": "0.1 mm", "fence_to": "far side", "fence_stands": "left", "works_with": "left",
                    "theme": "dark", "size_percent": 125, "sounds": true, "of a newer program": 7}})";

}  // namespace

TEST_CASE("what is chosen on the page of preferences is in the shop's file, and stands there the next time") {
    const Bench bench(R"({"format": "kerfwright-shop", "version": 1, "times": {"test_cut": 60}})");
    {
        App app = bench.open();
        Hand hand({.width = 1920, .height = 1080}, [&](Ui& ui) { app.frame(ui); });
        const auto height = [&](const char* label) {
            const draw::PixelBox box = hand.find(label).box;
            return box.bottom - box.top;
        };
        const double before_px = height("Undo");
        hand.press("Options");
        for (const char* answer : {"0.1 mm", "Dark", "125 %"}) hand.press(answer);
        CHECK(hand.ui().theme == draw::Theme::dark);
        hand.press("Done");
        CHECK(height("Undo") == doctest::Approx(1.25 * before_px));
        CHECK(app.session().document["reading"] == "0.1 mm");
        app.finish(hand.ui());
    }
    const Json shop = Json::parse(tests::text_in(bench.shop));
    CHECK(shop["preferences"] == Json({{"reading", "0.1 mm"}, {"theme", "dark"}, {"size_percent", 125}}));
    CHECK(shop["times"]["test_cut"] == 60);
    const Preferences again = bench.open().state().preferences;
    CHECK(again.is_dark);
    CHECK(again.size_percent == 125);
    CHECK(again.reading == Graduation::mm_0_1);
}

TEST_CASE("preferences unlike the usual are read, and written back with what a newer program put there") {
    const Json shop = Json::parse(unlike_the_usual);
    const Preferences read = read_preferences(shop);
    CHECK(read == Preferences{Language::german, Graduation::mm_0_1, CutterSide::far, kw::Hand::left,
                              kw::Hand::left, true, 125, true});
    CHECK(with_preferences(shop, read) == shop);
    const Json usual = with_preferences(shop, Preferences{});
    CHECK(usual["preferences"] == Json({{"of a newer program", 7}}));
    CHECK(read_preferences(usual) == Preferences{});
}

TEST_CASE("two windows that change other preferences keep each other's") {
    Preferences first, second;
    first.is_dark = true;
    second.sounds = true;
    const Preferences both = changed_in(first, Preferences{}, second);
    CHECK(both.is_dark);
    CHECK(both.sounds);
    second.is_dark = false;
    CHECK_FALSE(changed_in(first, first, second).is_dark);
}

TEST_CASE("a shop's file that was spoilt meanwhile is not written over, and that is said") {
    const Bench bench(R"({"format": "kerfwright-shop", "version": 1})");
    App app = bench.open();
    Hand hand({.width = 1280, .height = 800}, [&](Ui& ui) { app.frame(ui); });
    const std::string spoilt = R"({"format": "kerfwright-shop", "machines": [,]})";
    std::ofstream(bench.shop) << spoilt;
    hand.press("Options");
    hand.press("Dark");
    app.finish(hand.ui());
    CHECK(tests::text_in(bench.shop) == spoilt);
    REQUIRE_FALSE(hand.ui().toasts.empty());
    CHECK(hand.ui().toasts.back().text.rfind("The preferences are not saved: ", 0) == 0);
}

TEST_CASE("a shop's file with a wrong preference is refused with its place, and stays as it was") {
    const Bench bench(R"({"format": "kerfwright-shop", "preferences": {"size_percent": 900}})");
    const std::string before = tests::text_in(bench.shop);
    const auto app = App::open(bench.job, bench.shop);
    REQUIRE_FALSE(app.has_value());
    CHECK(app.error().find("/preferences/size_percent") != std::string::npos);
    CHECK(tests::text_in(bench.shop) == before);
}

TEST_CASE("a job that says no reading is shown to the shop's, and one that does keeps its own") {
    const Bench bench(unlike_the_usual);
    Json job = Json::parse(tests::text_in(bench.job));
    job["reading"] = "1/32 in";
    std::ofstream(bench.job) << job.dump();
    CHECK(bench.open().session().work->job.locale.graduation == Graduation::in_32);
    job.erase("reading");
    std::ofstream(bench.job) << job.dump();
    // A job in inches is not shown in millimetres for that.
    CHECK(bench.open().session().work->job.locale.graduation == Graduation::in_64);
    std::ofstream(bench.shop) << R"({"format": "kerfwright-shop", "preferences": {"reading": "1/32 in"}})";
    CHECK(bench.open().session().work->job.locale.graduation == Graduation::in_32);
}

TEST_CASE("the sound at another step is two notes from silence to silence, each at its pitch") {
    const std::vector<std::int16_t> samples = chime_samples();
    REQUIRE(samples.size() % 2 == 0);
    CHECK(samples.size() < chime_rate_hz / 4);
    CHECK(std::abs(samples.front()) < 50);
    CHECK(std::abs(samples.back()) < 50);
    const std::size_t half = samples.size() / 2;
    // The power at one pitch (a single bin of the discrete Fourier transform), against that at the other note's.
    const auto power = [&](std::size_t note, double hz) {
        double in_phase = 0, across = 0;
        for (std::size_t i = 0; i < half; ++i) {
            const double angle = 2 * std::numbers::pi * hz * static_cast<double>(i) / chime_rate_hz;
            in_phase += samples[note * half + i] * std::cos(angle);
            across += samples[note * half + i] * std::sin(angle);
        }
        return in_phase * in_phase + across * across;
    };
    CHECK(power(0, chime_notes_hz[0]) > 10 * power(0, chime_notes_hz[1]));
    CHECK(power(1, chime_notes_hz[1]) > 10 * power(1, chime_notes_hz[0]));
}

TEST_CASE("with sounds on, another step at the saw is heard, through the system's own sound library") {
    Bench bench(R"({"format": "kerfwright-shop", "preferences": {"sounds": true}})");
    const fs::path heard = bench.folder / "heard.raw", device = bench.folder / "device.conf";
    // A sound device of the library's own kind that writes what it hears to a file.
    std::ofstream(device) << "pcm.!default { type file file \"" << heard.string()
                          << "\" format raw slave.pcm { type null } }\n";
    ::setenv("ALSA_CONFIG_PATH", device.c_str(), 1);
    App app = bench.open();
    {
        Hand hand({.width = 1280, .height = 800}, [&](Ui& ui) { app.frame(ui); });
        hand.press("At the saw");
        CHECK_FALSE(fs::exists(heard));
        hand.press("After this");
        app.finish(hand.ui());
    }
    app = bench.open();  // the first one ends when its sound has
    CHECK(fs::file_size(heard) == sizeof(std::int16_t) * chime_samples().size());
}

}  // namespace kw::window
