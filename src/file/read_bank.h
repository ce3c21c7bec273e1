#pragma once
// A bank of drawers, as the job asks for it. Private to this folder.

#include "file/fields.h"

namespace kw {

std::optional<FaceStyle> face_style_named(std::string_view name);
std::string_view name_of(FaceStyle style);

BankSpec read_bank(Fields fields);

// The first bank that has a drawer of this name; null where none has.
const BankSpec* bank_of(const std::vector<BankSpec>& banks, const std::string& drawer);

}  // namespace kw
