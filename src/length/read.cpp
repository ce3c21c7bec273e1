#include <algorithm>
#include <string>

#include "length/spellings.h"
#include "length/terms.h"

namespace kw {
namespace {

constexpr Length farthest = Length::millimetres(1'000'000);

Measure measure_of(Unit unit) {
    switch (unit) {
        case Unit::inch: return Measure::inch;
        case Unit::millimetre: return Measure::millimetre;
        case Unit::centimetre: return Measure::centimetre;
    }
    return Measure::inch;
}

std::int64_t ticks_per(Measure measure) {
    switch (measure) {
        case Measure::inch: return Length::ticks_per_inch;
        case Measure::foot: return 12 * Length::ticks_per_inch;
        case Measure::millimetre: return Length::ticks_per_mm;
        case Measure::centimetre: return 10 * Length::ticks_per_mm;
        case Measure::metre: return 1000 * Length::ticks_per_mm;
    }
    return Length::ticks_per_mm;
}

bool is_metric(Measure measure) { return measure != Measure::inch && measure != Measure::foot; }

// A bare term's unit is the first one to its right, or else `bare`. Nothing where nobody can tell: feet and
// inches to its right, inches for a job in millimetres or the other way round, or another unit than `bare` to
// its left.
std::optional<Measure> measure_of_term(const std::vector<Term>& terms, std::size_t index, Measure bare) {
    if (terms[index].measure) return terms[index].measure;
    for (std::size_t right = index + 1; right < terms.size(); ++right) {
        if (terms[right].feet) return std::nullopt;
        if (!terms[right].measure) continue;
        const bool is_plain = is_metric(*terms[right].measure) == is_metric(bare);
        return is_plain ? terms[right].measure : std::nullopt;
    }
    const bool all_bare = std::all_of(terms.begin(), terms.end(),
                                      [&](const Term& term) { return term.measure.value_or(bare) == bare; });
    return all_bare ? std::optional(bare) : std::nullopt;
}

std::optional<Ratio> size_of(const Term& term, Measure measure) {
    const Ratio feet = times(term.feet.value_or(Ratio{}), ticks_per(Measure::foot));
    const auto size = sum(feet, times(term.amount, ticks_per(measure)));
    if (!size) return std::nullopt;
    return term.negative ? negated(*size) : *size;
}

tl::expected<Length, ReadError> length_of(std::string_view text, const std::vector<Term>& terms,
                                          Measure bare) {
    Ratio total;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        const Term& term = terms[i];
        const auto error = [&](Message why) {
            return tl::unexpected(ReadError{term.column, std::move(why)});
        };
        const auto measure = measure_of_term(terms, i, bare);
        if (!measure)
            return error(Message::say("read.unit_too",
                                      in_quotes(plain(text.substr(term.column, term.end - term.column)))));
        const auto size = size_of(term, *measure);
        if (size && exceeds(*size, farthest.ticks())) return error(Message::say("read.too_long"));
        const auto so_far = size ? sum(total, *size) : std::nullopt;
        if (!so_far) return error(Message::say("read.fractions_unlike"));
        if (exceeds(*so_far, farthest.ticks())) return error(Message::say("read.too_long"));
        total = *so_far;
    }
    return nearest_ticks(total);
}

tl::expected<Length, ReadError> read(std::string_view text, Measure bare) {
    const auto tokens = tokens_of(text);
    if (!tokens) return tl::unexpected(tokens.error());
    const auto terms = terms_of(*tokens);
    if (!terms) return tl::unexpected(terms.error());
    return length_of(text, *terms, bare);
}

std::string_view trimmed(std::string_view text) {
    while (const std::size_t bytes = space_at(text)) text.remove_prefix(bytes);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

}  // namespace

tl::expected<Length, ReadError> read_length(std::string_view text, Unit bare) {
    return read(text, measure_of(bare)).map_error([&](const ReadError& error) {
        const std::string_view shown = trimmed(text);
        return ReadError{error.column, shown.empty()
                                           ? error.message
                                           : Message::of(in_quotes(plain(shown)), ": ", error.message)};
    });
}

}  // namespace kw
