#pragma once
// A bank of drawers, as the job asks for it. Private to this folder.

#include "file/fields.h"

namespace kw {

std::optional<FaceStyle> face_style_named(std::string_view name);
std::string_view name_of(FaceStyle style);

BankSpec read_bank(Fields fields);

}  // namespace kw
