// The most valuable pattern with no limit on how many: held to the search for the value of one panel, which goes another way about it.
#include "cutting/pattern_value.h"

#include <doctest/doctest.h>

#include "cutting/panel_value.h"
#include "effort.h"
#include "jobs.h"

using namespace kw;
using namespace kw::cutting;
using laid::mm;

namespace {

struct Asked {
    PanelJob panel;
    std::vector<Piece> pieces;
    std::vector<std::int32_t> values;
    Region sheet;
};

// As many of each piece as the sheet has room for.
Asked random_asked(laid::Random& random) {
    Asked asked;
    asked.panel.length = mm(random.between(60, 90));
    asked.panel.width = mm(random.between(40, 60));
    asked.sheet = {asked.panel.length.ticks(), asked.panel.width.ticks()};
    for (int kind = random.between(1, 4); kind > 0; --kind) {
        PanelPiece piece{mm(random.between(13, 50)), mm(random.between(9, 35)), random.between(1, 200), 1,
                         random.chance(30)};
        piece.count = static_cast<int>((asked.panel.length.mm() * asked.panel.width.mm()) /
                                       (piece.length.mm() * piece.width.mm()));
        asked.pieces.push_back({piece.length.ticks(), piece.width.ticks(), 1, piece.may_turn, 0});
        asked.values.push_back(static_cast<std::int32_t>(piece.value));
        asked.panel.pieces.push_back(piece);
    }
    return asked;
}

std::int64_t worth_on(const PackingTree& tree, const std::vector<std::int32_t>& values) {
    std::int64_t worth = 0;
    for (const TreeNode& node : tree.nodes())
        if (node.is_used && !node.is_group()) worth += values[static_cast<std::size_t>(node.piece)];
    return worth;
}

}  // namespace

TEST_CASE(
    "with all cuts a pattern is worth as much as a proved panel, with fewer cuts no more, and it has what it "
    "is worth") {
    laid::Random random(311);
    int proved = 0;
    for (int i = 0; i < tests::cases(150); ++i) {
        CAPTURE(i);
        const Asked asked = random_asked(random);
        const auto plan = most_valuable(asked.panel, {3'000'000, {}});
        REQUIRE(plan);
        PatternValue patterns(asked.pieces, raster_points(asked.pieces, asked.sheet.length, true, 4000),
                              raster_points(asked.pieces, asked.sheet.width, false, 4000));
        std::int64_t before = 0;
        for (const CutsTried cuts : {CutsTried::strips, CutsTried::at_pieces, CutsTried::all}) {
            const std::int64_t most = patterns.most(asked.values, cuts);
            CHECK(worth_on(patterns.pattern(asked.values), asked.values) == most);
            CHECK(most >= before);
            before = most;
        }
        CHECK(before >= plan->value);
        if (plan->proved) CHECK(before == plan->value);
        proved += plan->proved ? 1 : 0;
    }
    CHECK(proved > tests::cases(150) / 2);
}
