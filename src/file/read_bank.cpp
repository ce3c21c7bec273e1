#include "file/read_bank.h"

namespace kw {
namespace {

// More than nothing.
std::optional<Length> optional_size(Fields& fields, const std::string& name) {
    if (!fields.has(name)) return std::nullopt;
    return fields.required_length(name);
}

void read_column(Fields opening, BankSpec& bank) {
    bank.width = opening.required_length("width");
    bank.height = optional_size(opening, "height");
    bank.depth = optional_size(opening, "depth");
}

CaseEdges read_edges(Fields fields) {
    return {fields.optional_length("left"), fields.optional_length("right"), fields.optional_length("top"),
            fields.optional_length("bottom")};
}

HandleAsk read_handles(Fields fields) {
    HandleAsk ask;
    ask.holes = fields.count("holes", ask.holes, 1, 2);
    ask.centres = ask.holes == 2 ? fields.required_length("centres") : fields.length("centres", {});
    const bool told = fields.has("from_top");
    ask.height = fields.one_of("height", handle_height_named, {"centred", "a third down", "from the top"},
                               told ? HandleHeight::from_top : HandleHeight::centred);
    ask.from_top = ask.height == HandleHeight::from_top ? fields.required_length("from_top")
                                                        : fields.length("from_top", {});
    if (fields.has("diameter")) ask.diameter = fields.required_length("diameter");
    return ask;
}

}  // namespace

std::optional<FaceStyle> face_style_named(std::string_view name) {
    if (name == "none") return FaceStyle::none;
    if (name == "overlay") return FaceStyle::overlay;
    if (name == "inset") return FaceStyle::inset;
    return std::nullopt;
}

std::string_view name_of(FaceStyle style) {
    return style == FaceStyle::overlay ? "overlay" : style == FaceStyle::inset ? "inset" : "none";
}

BankSpec read_bank(Fields fields) {
    BankSpec bank;
    bank.name = fields.required_text("name");
    bank.drawers = fields.texts("drawers");
    if (bank.drawers.empty())
        fields.blame("drawers", Message::say("bank.no_drawers"), Message::say("bank.name_drawers"));
    const auto style = [](std::string_view name) {
        return name == "none" ? std::nullopt : face_style_named(name);
    };
    bank.style = fields.one_of("style", style, {"overlay", "inset"}, FaceStyle::overlay);
    read_column(fields.object("opening", true), bank);
    bank.rail = optional_size(fields, "rail");
    bank.reveal = fields.length("reveal", bank.reveal);
    bank.left = fields.optional_length("left");
    bank.right = fields.optional_length("right");
    bank.top = fields.optional_length("top");
    bank.bottom = fields.optional_length("bottom");
    bank.edges = read_edges(fields.object("case"));
    std::vector<std::string_view> rules;
    for (const FaceHeights rule : face_heights_rules()) rules.push_back(kw::name_of(rule));
    bank.heights = fields.one_of("heights", face_heights_named, rules, FaceHeights::equal);
    bank.step = fields.optional_length("step");
    bank.top_face = optional_size(fields, "top_face");
    bank.parts = fields.counts("parts", 1, 1000);
    bank.face_heights = fields.open_lengths("face_heights");
    Fields beside = fields.object("beside");
    bank.beside_top = beside.optional_length("top");
    bank.beside_bottom = beside.optional_length("bottom");
    Fields handles = fields.object("handles");
    if (fields.has("handles")) bank.handles = read_handles(std::move(handles));
    return bank;
}

}  // namespace kw
