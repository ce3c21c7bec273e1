#include "cutting/checks.h"

namespace kw::cutting {

std::string field_of(const char* list, std::size_t index, const char* member) {
    return std::string(list) + "." + std::to_string(index) + "." + member;
}

Fault check_size(const std::string& field, Length size) {
    if (size <= Length{})
        return Refusal{field, Message::say("cutting.no_size"), Message::say("cutting.give_size")};
    if (size > longest)
        return Refusal{field, Message::say("cutting.too_large", size),
                       Message::say("cutting.at_most", longest)};
    return std::nullopt;
}

Fault check_not_negative(const std::string& field, Length size) {
    if (size < Length{})
        return Refusal{field, Message::say("cutting.negative", size), Message::say("cutting.give_zero")};
    if (size > longest)
        return Refusal{field, Message::say("cutting.too_large", size),
                       Message::say("cutting.at_most", longest)};
    return std::nullopt;
}

Fault check_count(const std::string& field, int count, std::int64_t in_all) {
    if (count < 1)
        return Refusal{field, Message::say("cutting.no_count", count), Message::say("cutting.give_count")};
    if (in_all > most_pieces)
        return Refusal{field, Message::say("cutting.too_many"), Message::say("cutting.fewer", most_pieces)};
    return std::nullopt;
}

Fault check_supply(const std::string& field, std::optional<int> on_hand, bool is_counted) {
    if (on_hand ? *on_hand < 0 : is_counted)
        return Refusal{field, Message::say("cutting.not_counted"), Message::say("cutting.count_them")};
    return std::nullopt;
}

Fault check_price(const std::string& field, std::optional<std::int64_t> price) {
    constexpr std::int64_t dearest = 1'000'000'000'000;  // sums over all sheets stay within 64 bits
    if (price && (*price < 0 || *price > dearest))
        return Refusal{field, Message::say("cutting.no_price"), Message::say("cutting.give_price")};
    return std::nullopt;
}

Fault check_trim(const std::string& field, Length trim, Length size) {
    if (Fault fault = check_not_negative(field, trim)) return fault;
    if (2 * trim >= size)
        return Refusal{field, Message::say("cutting.trim_takes_all", trim, size),
                       Message::say("cutting.trim_less", size.scaled(1, 2))};
    return std::nullopt;
}

Refusal left_over(const char* field, std::size_t count) {
    const Message why = count == 1 ? Message::say("cutting.left_over.one", 1)
                                   : Message::say("cutting.left_over.many", static_cast<int>(count));
    return {field, why, Message::say("cutting.more_stock")};
}

}  // namespace kw::cutting
