#include "session/with_field.h"

namespace kw {
namespace {

// Makes the objects that `pointer` runs through, also one whose next name is a number: by itself that would become a list.
void make_objects(Json& document, const Json::json_pointer& pointer) {
    if (pointer.empty() || (document.contains(pointer) && !document[pointer].is_null())) return;
    make_objects(document, pointer.parent_pointer());
    // No item is put into a list on the way: one that isn't there is refused.
    if (document[pointer.parent_pointer()].is_array()) (void)document.at(pointer);
    document[pointer] = Json::object();
}

}  // namespace

Json with_field(Json document, const Json::json_pointer& pointer, const Json& value) {
    if (value.is_null()) {
        if (!document.contains(pointer)) return document;
        Json& parent = document[pointer.parent_pointer()];
        if (parent.is_array()) parent.erase(std::stoul(pointer.back()));
        else parent.erase(pointer.back());
    } else {
        // An item of a list makes its list, where there is none.
        const bool is_item = pointer.back() == "0" || pointer.back() == "-";
        make_objects(document,
                     is_item ? pointer.parent_pointer().parent_pointer() : pointer.parent_pointer());
        document[pointer] = value;
    }
    return document;
}

}  // namespace kw
