// Saving: the file on the disk is always the old one or the new one.
#include <doctest/doctest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <thread>

#include "sample_job.h"

using namespace kw;
namespace fs = std::filesystem;

namespace {

struct Folder {
    Folder() : path(fs::temp_directory_path() / ("kerfwright-test-" + std::to_string(::getpid()))) {
        fs::create_directories(path);
    }
    ~Folder() { fs::remove_all(path); }
    fs::path path;
};

}  // namespace

TEST_CASE("what is saved is what is read, and nothing is left beside it") {
    const Folder folder;
    const fs::path file = folder.path / "job.json";
    REQUIRE(save_file(file, "first"));
    REQUIRE(save_file(file, "second"));
    CHECK(read_file(file).value() == "second");
    CHECK(std::distance(fs::directory_iterator(folder.path), fs::directory_iterator()) == 1);
}

TEST_CASE("a file that was changed by another program since it was read is not written over") {
    const Folder folder;
    const auto file = folder.path / "job.json";
    REQUIRE(save_file(file, "first"));
    CHECK(save_over(file, "first", "second"));
    const auto late = save_over(file, "first", "third");
    REQUIRE_FALSE(late);
    CHECK(late.error().why.text({}).find("changed meanwhile by another program") != std::string::npos);
    CHECK(*read_file(file) == "second");
}

TEST_CASE("of several who write over the same file at once none is lost") {
    const Folder folder;
    const auto file = folder.path / "count";
    REQUIRE(save_file(file, "0"));
    constexpr int writers = 4, times = 40;
    const auto count_up = [&] {
        for (int done = 0; done < times;) {
            const std::string read = *read_file(file);
            if (save_over(file, read, std::to_string(std::stoi(read) + 1))) ++done;
        }
    };
    std::vector<std::thread> all;
    for (int i = 0; i < writers; ++i) all.emplace_back(count_up);
    for (std::thread& one : all) one.join();
    CHECK(*read_file(file) == std::to_string(writers * times));
}

TEST_CASE("where nothing can be written, the old file stays and the reason is said") {
    const Folder folder;
    const auto saved = save_file(folder.path / "missing" / "job.json", "text");
    REQUIRE_FALSE(saved);
    CHECK(saved.error().why.text({}).find("nothing can be written beside this file") == 0);
}

TEST_CASE("a link to a job stays a link") {
    const Folder folder;
    REQUIRE(save_file(folder.path / "real.json", "old"));
    fs::create_symlink(folder.path / "real.json", folder.path / "link.json");
    REQUIRE(save_file(folder.path / "link.json", "new"));
    CHECK(fs::is_symlink(folder.path / "link.json"));
    CHECK(read_file(folder.path / "real.json").value() == "new");
}

TEST_CASE("the same job gives the same bytes, and reads back the same") {
    const Json json = tests::sample_json();
    CHECK(to_text(json) == to_text(parse_json(to_text(json)).value()));
}
