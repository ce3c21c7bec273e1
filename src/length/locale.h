#pragma once
// How the maker reads: which steps a rule or caliper has, and which language.

#include "words/words.h"

namespace kw {

enum class Unit { inch, millimetre, centimetre };

// How finely a maker reads: the step of the rule or caliper, and the unit that it is in.
enum class Graduation { in_64, in_32, in_16, in_001, mm_0_01, mm_0_1, mm_0_5 };

Unit unit_of(Graduation graduation);

struct Locale {
    Graduation graduation = Graduation::in_64;
    Language language = Language::english;

    Locale() = default;
    // A reading alone is told in English.
    Locale(Graduation its_graduation,
           Language its_language = Language::english)  // NOLINT(google-explicit-constructor)
        : graduation(its_graduation), language(its_language) {}

    const Words& words() const { return words_in(language); }
    // The same language, read in other steps.
    Locale with(Graduation other) const { return {other, language}; }

    bool operator==(const Locale&) const = default;
};

inline Unit unit_of(const Locale& locale) { return unit_of(locale.graduation); }

}  // namespace kw
