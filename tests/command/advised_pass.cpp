// A second pass that is only advised, as long as something is to be measured first.
#include <doctest/doctest.h>

#include "command/bench.h"

using namespace kw;
using tests::Bench, tests::setup_of;

TEST_CASE("a joint that is locked by the name of its advised second pass is reported by its first") {
    const Bench shop;
    shop.write(parse_json(tests::file_text("test_cut_joints.json")).value());
    const std::string groove = setup_of(shop, "groove");
    REQUIRE(shop.run({"lock", shop.job(), "--setup", groove, "--anyway"}).status == 0);
    REQUIRE(shop.run({"fit", shop.job(), "--setup", groove, "--fresh-end", "--felt", "slides", "--save"})
                .status == 0);
    const std::string second = setup_of(shop, "groove, pass 2 of 2");
    REQUIRE(second == groove + "b");
    const tests::Said said = shop.run({"lock", shop.job(), "--setup", second, "--anyway"});
    CHECK(said.status == 0);
    CHECK(said.out.find(groove + " (") != std::string::npos);
    CHECK(said.out.find("\nLocked") != std::string::npos);
    CHECK(shop.read()["log"].back()["kind"] == "lock");
}
