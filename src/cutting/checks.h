#pragma once
// What is refused of any job before it is laid out. Private to this folder.

#include <optional>
#include <string>

#include "length/message.h"

namespace kw::cutting {

inline constexpr Length longest =
    Length::millimetres(100'000);  // sums and products of ticks stay within 64 bits
inline constexpr int most_pieces = 20'000;

using Fault = std::optional<Refusal>;  // nothing: all is well

// "pieces.2.length"
std::string field_of(const char* list, std::size_t index, const char* member);

Fault check_size(const std::string& field, Length size);
Fault check_not_negative(const std::string& field, Length size);
Fault check_count(const std::string& field, int count, std::int64_t in_all);
// How many there are of an offcut, or of a sheet with marked defects, is known; nothing is bought at less than nothing.
Fault check_supply(const std::string& field, std::optional<int> on_hand, bool is_counted);
Fault check_price(const std::string& field, std::optional<std::int64_t> price);
Fault check_trim(const std::string& field, Length trim, Length size);
Refusal left_over(const char* field, std::size_t count);

}  // namespace kw::cutting
