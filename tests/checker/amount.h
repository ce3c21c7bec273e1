// A length as a count of what a rule or a caliper shows, and the many ways to write it down.
#pragma once

#include <cstdint>
#include <string>

#include "checker/dice.h"
#include "checker/json.h"
#include "checker/written_length.h"

namespace checker {

// count / per, in inches or millimetres. `per` is a power of two up to 64 for a rule's fractions (inches only), else 1, 10, 100 or
// 1000.
struct Amount {
    std::int64_t count = 0;
    std::int64_t per = 1;
    Unit unit = Unit::millimetre;

    double mm() const;
};

inline Amount in_64ths(std::int64_t count) { return {count, 64, Unit::inch}; }
inline Amount in_thousandths(std::int64_t count) { return {count, 1000, Unit::inch}; }
inline Amount mm_tenths(std::int64_t count) { return {count, 10, Unit::millimetre}; }
inline Amount mm_hundredths(std::int64_t count) { return {count, 100, Unit::millimetre}; }

// The amount as a person would write it in a job whose bare numbers are in `bare`: fraction, mixed, with hyphen, feet, decimal point or
// comma, sum or difference, with unit or without, or a JSON number.
Json written(const Amount& amount, Unit bare, Dice& dice);

}  // namespace checker
