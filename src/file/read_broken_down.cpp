#include "file/read_broken_down.h"

namespace kw {
namespace {

constexpr int most_used = 10'000;

UsedPieces read_used(Fields& fields) {
    UsedPieces used;
    used.length = fields.required_length("length");
    if (fields.has("width")) used.width = fields.required_length("width");
    used.is_offcut = fields.truth("offcut", false);
    used.is_bought = fields.truth("bought", false);
    used.count = fields.count("count", 1, 1, most_used);
    return used;
}

}  // namespace

BrokenDown read_broken_down(Fields& entry) {
    BrokenDown down;
    down.stock = entry.required_text("stock");
    for (Fields& freed : entry.array("freed"))
        down.freed.push_back(
            {freed.required_text("part"), freed.required_length("length"), freed.required_length("width")});
    for (Fields& used : entry.array("used")) down.used.push_back(read_used(used));
    for (Fields& kept : entry.array("offcuts"))
        down.kept.push_back({kept.required_length("length"), kept.required_length("width")});
    return down;
}

void add_broken_down(const BrokenDown& down, Unit unit, Json& entry) {
    entry["stock"] = down.stock;
    for (const FreedPart& freed : down.freed)
        entry["freed"].push_back({{"part", freed.part},
                                  {"length", exact_text(freed.length, unit)},
                                  {"width", exact_text(freed.width, unit)}});
    for (const UsedPieces& used : down.used) {
        Json one = {{"length", exact_text(used.length, unit)}};
        if (used.width) one["width"] = exact_text(*used.width, unit);
        if (used.is_offcut) one["offcut"] = true;
        if (used.is_bought) one["bought"] = true;
        if (used.count != 1) one["count"] = used.count;
        entry["used"].push_back(std::move(one));
    }
    for (const KeptOffcut& kept : down.kept)
        entry["offcuts"].push_back(
            {{"length", exact_text(kept.length, unit)}, {"width", exact_text(kept.width, unit)}});
}

}  // namespace kw
