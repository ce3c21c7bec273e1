#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "length/length.h"

using namespace kw;

// 1 yd = 0.9144 m exactly: addendum to NBS Circular 572, from 1 July 1959 (the value read in the addendum).
// NIST SP 811 App. B lists 1 in = 2.54 cm as exact (from memory).
TEST_CASE("an inch is 25.4 mm exactly, and a yard 914.4 mm") {
    CHECK(Length::inches(1) == Length::micrometres(25'400));
    CHECK(10 * Length::inches(1) == Length::millimetres(254));
    CHECK(Length::inches(36) == Length::micrometres(914'400));
}

// n/64 in = n x 0.396875 mm: computed from the exact inch; nanometres, so that the table is in whole numbers.
TEST_CASE("the sixty-fourths of an inch are exact in millimetres") {
    struct Row {
        int over, under;
        std::int64_t tenths_of_nm;
    };
    constexpr Row rows[] = {
        {1, 64, 3'968'750},    {1, 32, 7'937'500},    {1, 16, 15'875'000},   {3, 32, 23'812'500},
        {1, 8, 31'750'000},    {3, 16, 47'625'000},   {7, 32, 55'562'500},   {1, 4, 63'500'000},
        {3, 8, 95'250'000},    {15, 32, 119'062'500}, {31, 64, 123'031'250}, {1, 2, 127'000'000},
        {19, 32, 150'812'500}, {5, 8, 158'750'000},   {23, 32, 182'562'500}, {3, 4, 190'500'000},
    };
    for (const Row& row : rows) {
        CAPTURE(row.over);
        CAPTURE(row.under);
        // A tick is 1.25 nm.
        CHECK(2 * Length::inches(row.over, row.under).ticks() * 25 == row.tenths_of_nm * 4);
        CHECK(Length::inches(-row.over, row.under) == -Length::inches(row.over, row.under));
    }
    for (int n = 0; n <= 640; ++n) CHECK(64 * Length::inches(n, 64) == Length::inches(n));
}

TEST_CASE("every ten-thousandth and every 256th of an inch is a whole count of ticks") {
    for (int n = -20'000; n <= 20'000; n += 7) {
        CHECK(10'000 * Length::inches(n, 10'000) == Length::inches(n));
        CHECK(256 * Length::inches(n, 256) == Length::inches(n));
    }
}

TEST_CASE("a part of a length goes to the nearest tick, halves away from zero") {
    CHECK(Length::from_ticks(5).scaled(1, 2) == Length::from_ticks(3));
    CHECK(Length::from_ticks(-5).scaled(1, 2) == Length::from_ticks(-3));
    CHECK(Length::from_ticks(7).scaled(1, 3) == Length::from_ticks(2));
    CHECK(Length::from_ticks(8).scaled(1, 3) == Length::from_ticks(3));
    CHECK(Length::from_ticks(9).scaled(2, -3) == Length::from_ticks(-6));
}

TEST_CASE("the nearest length to a computed number is within half a tick, the same on both sides of zero") {
    std::mt19937_64 random(20240611);
    std::uniform_real_distribution<double> anywhere_mm(-5'000, 5'000);
    for (int i = 0; i < 10'000; ++i) {
        const double mm = anywhere_mm(random);
        CAPTURE(mm);
        const Length length = Length::nearest_mm(mm);
        CHECK(std::abs(length.mm() - mm) <= 0.625e-6 + 1e-12);
        CHECK(Length::nearest_mm(-mm) == -length);
    }
    CHECK(Length::nearest_mm(25.4) == Length::inches(1));
    CHECK(Length::nearest_mm(0.396875) == Length::inches(1, 64));
}

TEST_CASE("a length survives the trip through its double in millimetres") {
    std::mt19937_64 random(5);
    std::uniform_int_distribution<std::int64_t> ticks(-4'000'000'000, 4'000'000'000);  // 5 m
    for (int i = 0; i < 10'000; ++i) {
        const Length length = Length::from_ticks(ticks(random));
        CHECK(Length::nearest_mm(length.mm()) == length);
    }
}
