#include "file/read_stock.h"

#include <cmath>

namespace kw {
namespace {

constexpr int most_on_hand = 10'000;
constexpr double most_price = 1e9;

StockSize read_size(Fields& fields) {
    StockSize size;
    size.length = fields.required_length("length");
    if (fields.has("width")) size.width = fields.required_length("width");
    if (fields.has("count")) size.count = fields.count("count", 1, 0, most_on_hand);
    if (fields.has("price")) {
        const double price = fields.number("price", 0.0);
        if (price < 0.0 || price > most_price)
            fields.blame("price", Message::say("cutting.no_price"), Message::say("cutting.give_price"));
        else size.price_cents = std::llround(100.0 * price);
    }
    size.is_offcut = fields.truth("offcut", false);
    // Offcuts are counted: where it is not said, this is one.
    if (size.is_offcut && !size.count) size.count = 1;
    size.trim = fields.length("trim", {});
    for (Fields& defect : fields.array("defects"))
        size.defects.push_back({defect.length("x", {}), defect.length("y", {}),
                                defect.required_length("length"), defect.required_length("width")});
    return size;
}

// Thicker ones are lippings, which are planed to size when they are on (common practice, no source).
constexpr Length thickest_band = Length::millimetres(6);

void check_thickness(Fields& fields, Length thickness) {
    if (thickness > thickest_band)
        fields.blame("thickness", Message::say("file.band_too_thick", thickness, thickest_band),
                     Message::say("file.no_band"));
}

// Each once.
std::vector<BandedEdge> read_edges(Fields& fields) {
    Banding banding;
    for (const std::string& name : fields.texts("edges")) {
        const auto edge = banded_edge_named(name);
        if (!edge)
            fields.blame("edges", Message::say("file.no_such_edge", name), Message::say("file.band_edges"));
        else if (!banding.has(*edge)) banding.edges.push_back(*edge);
    }
    if (banding.edges.empty() && !fields.has("edges"))
        fields.blame("edges", Message::say("file.no_edges"), Message::say("file.band_edges"));
    return banding.edges;
}

Banding read_banding(Fields fields) {
    Banding banding;
    banding.thickness = fields.required_length("thickness");
    check_thickness(fields, banding.thickness);
    banding.edges = read_edges(fields);
    return banding;
}

}  // namespace

Stock read_stock(Fields fields) {
    Stock stock;
    stock.name = fields.required_text("name");
    stock.thickness = fields.required_length("thickness");
    stock.kind = fields.one_of("kind", stock_kind_named, {"plywood", "solid", "panel"}, StockKind::plywood);
    if (fields.has("species")) stock.species = fields.text("species", {});
    stock.uneven = fields.length("uneven", stock.uneven);
    stock.cut = fields.one_of("cut", grain_cut_named, {"flatsawn", "quartersawn"}, GrainCut::flatsawn);
    stock.may_turn = fields.truth("may_turn", stock.kind == StockKind::panel);
    for (Fields& size : fields.array("sizes")) stock.sizes.push_back(read_size(size));
    if (fields.has("banding")) stock.banding = read_banding(fields.object("banding"));
    if (fields.has("moisture")) stock.moisture_percent = fields.number("moisture", 0.0);
    return stock;
}

FaceBanding read_face_banding(Fields fields, const Stock* stock) {
    FaceBanding banding;
    if (fields.has("thickness")) banding.thickness = fields.required_length("thickness");
    check_thickness(fields, banding.thickness.value_or(Length{}));
    banding.edges = read_edges(fields);
    if (!banding.edges.empty() && !banding.thickness && stock && !stock->banding)
        fields.blame("thickness", Message::say("file.no_band_thickness", stock->name),
                     Message::say("file.give_band_thickness"));
    return banding;
}

CuttingRules read_cutting(Fields fields) {
    CuttingRules rules;
    rules.kerf = fields.optional_length("kerf");
    rules.over_length = fields.length("over_length", rules.over_length);
    rules.over_width = fields.length("over_width", rules.over_width);
    rules.least_offcut_length = fields.length("least_offcut_length", rules.least_offcut_length);
    rules.least_offcut_width = fields.length("least_offcut_width", rules.least_offcut_width);
    return rules;
}

}  // namespace kw
