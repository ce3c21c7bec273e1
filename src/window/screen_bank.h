#pragma once
// What a bank is asked for, field by field.

#include "window/screen.h"

namespace kw::window {

// The bank of this index as it was last worked out, which may be of an older document; null where it was not.
const BankSpec* made_bank(const Screen& screen, std::size_t bank);

void draw_bank_fields(Screen& screen, std::size_t bank);

}  // namespace kw::window
