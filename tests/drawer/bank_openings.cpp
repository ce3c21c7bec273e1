// Openings of a bank as they are read, one after another and with a tape.
#include <doctest/doctest.h>

#include <algorithm>

#include "drawer/bank_ask.h"

namespace bank_openings {

using namespace kw;
using tests::in;

namespace {

BankAsk ask_of(std::size_t drawers) {
    BankAsk ask = tests::bank_ask(drawers);
    ask.rail = in(3, 4);
    return ask;
}

std::string said(const tl::expected<Bank, std::vector<Refusal>>& bank) {
    return bank ? "made"
                : bank.error().front().field + ": " + bank.error().front().why.text(Graduation::in_64);
}

}  // namespace

TEST_CASE("openings may be read one at a time, in any sequence, and the rest divide what is left") {
    // 27 in less three rails of 3/4 in: 24 3/4 in for four openings.
    const Length heights[] = {in(5), in(6), in(27, 4), in(7)};
    std::vector<std::size_t> order = {0, 1, 2, 3};
    do {
        BankAsk ask = ask_of(4);
        ask.heights = FaceHeights::by_opening;
        Length left = in(99, 4);
        for (std::size_t read = 0; read < 4; ++read) {
            ask.rows[order[read]].opening = heights[order[read]];
            left -= heights[order[read]];
            const auto bank = make_bank(ask);
            REQUIRE_MESSAGE(bank, said(bank));
            const auto open = static_cast<std::int64_t>(3 - read);
            CHECK(bank->unread == static_cast<std::size_t>(open > 1 ? open : 0));
            if (open > 1) CHECK(abs(open * bank->unread_height - left).ticks() < open);
            Length sum = in(9, 4);
            for (const BankFace& face : bank->faces) sum += face.opening_height;
            CHECK(sum == in(27));
        }
    } while (std::next_permutation(order.begin(), order.end()));
}

TEST_CASE("with faces of other heights the rails of openings that are not read stay behind their reveals") {
    // Equal faces: 28 3/8 in less three reveals in four, 7 in. The first rail is 3/4 - 1/8 = 5/8 in lower than the reveal's, in halves: its
    // opening from 27 in down to the face's lower edge and 5/16 in more.
    BankAsk ask = ask_of(4);
    const auto before = make_bank(ask);
    REQUIRE(before);
    for (std::size_t read = 0; read < 4; ++read) {
        BankAsk one = ask;
        one.rows[read].opening = before->faces[read].opening_height;
        const auto bank = make_bank(one);
        REQUIRE_MESSAGE(bank, said(bank));
        CHECK(bank->unread == 3);
        CHECK(bank->faces == before->faces);
    }
    CHECK(before->faces[0].opening_bottom == in(165, 8) + in(5, 16));
}

TEST_CASE("openings that a tape reads a little off from the column are flagged") {
    BankAsk ask = ask_of(2);
    ask.height = in(13);
    ask.rows[0].opening = in(6);
    ask.rows[1].opening = in(6) + in(3, 16);
    const auto bank = make_bank(ask);
    REQUIRE_MESSAGE(bank, said(bank));
    CHECK(bank->near_misses == std::vector<NearMiss>{{Miss::openings, 1, in(1, 16)}});
    CHECK(bank->faces[1].opening_height == in(99, 16));
}

}  // namespace bank_openings
