// A bank that is asked for, as its tests begin with: a column 15 by 27 in.
#pragma once

#include "drawer/bank.h"

namespace kw::tests {

inline Length in(std::int64_t n, std::int64_t d = 1) { return Length::inches(n, d); }

inline BankAsk bank_ask(std::size_t drawers) {
    BankAsk ask;
    ask.width = in(15);
    ask.height = in(27);
    ask.reveal = in(1, 8);
    ask.ends = {in(5, 8), in(5, 8), in(5, 8), in(3, 4)};
    for (std::size_t i = 0; i < drawers; ++i) ask.rows.push_back({"d" + std::to_string(i + 1), {}, {}, 1});
    return ask;
}

}  // namespace kw::tests
