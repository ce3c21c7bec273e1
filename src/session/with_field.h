#pragma once
// One field of a document set, made or taken away. Private to this folder.

#include "file/document.h"

namespace kw {

// Sets what `pointer` names, making the objects on the way; a null value erases, an item of a list too. Throws what the JSON library throws
// where the pointer leads nowhere.
Json with_field(Json document, const Json::json_pointer& pointer, const Json& value);

}  // namespace kw
