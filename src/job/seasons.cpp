#include "job/seasons.h"

#include <algorithm>

namespace kw {
namespace {

// What a rule shows.
constexpr Length worth_saying = Length::millimetres(1);

// A face's grain runs across the drawer, so that it moves in its height.
struct MovingFace {
    Season season;
    Length gaps;  // above and below together
};

std::optional<MovingFace> moving_face(const Job& job, const DrawerSpec& spec) {
    const Stock* stock = job.stock_named(spec.face.stock);
    const FaceSpec& face = spec.face;
    const auto size = face_size(spec);
    if (!stock || !size || face.in_bank) return std::nullopt;
    const auto season = season_of(*stock, job.climate, size->width);
    if (!season) return std::nullopt;
    // Among faces of its kind, what one takes of the gap above it the next one takes below.
    return MovingFace{*season, face.style == FaceStyle::inset ? face.top + face.bottom : face.reveal};
}

// What is said of solid stock of no species that is known; nothing of any other.
std::optional<Message> no_species(const Stock* stock) {
    if (!stock || stock->kind != StockKind::solid) return std::nullopt;
    if (!stock->species) return Message::say("season.no_species", stock->name, species_names());
    if (find_species(*stock->species)) return std::nullopt;
    return Message::say("season.unknown_species", *stock->species, stock->name, species_names());
}

Message fields_in_all(Length needed) { return Message::say("season.at_least_in_all", needed); }

}  // namespace

std::optional<Season> season_of(const Stock& stock, const Climate& climate, Length width) {
    const Species* species = stock.species ? find_species(*stock.species) : nullptr;
    if (stock.kind != StockKind::solid || !species) return std::nullopt;
    const double now = std::clamp(stock.moisture_percent.value_or(climate.driest_percent),
                                  climate.driest_percent, climate.dampest_percent);
    return Season{movement(*species, stock.cut, width, now, climate.dampest_percent),
                  movement(*species, stock.cut, width, climate.driest_percent, now)};
}

std::optional<Season> season_of_bottom(const Job& job, const DrawerDesign& drawer) {
    const Stock* stock = job.stock_named(drawer.spec->bottom.stock);
    return stock ? season_of(*stock, job.climate, drawer.box.depth - drawer.back.joint.step) : std::nullopt;
}

std::vector<Problem> check_seasons(const Job& job, const DrawerDesign& drawer, const std::string& at) {
    std::vector<Problem> problems;
    const DrawerSpec& spec = *drawer.spec;
    const Stock* sides = job.stock_named(spec.side_stock);
    const auto high = sides ? season_of(*sides, job.climate, drawer.box.height) : std::nullopt;
    const Length room = spec.slide.top + spec.slide.bottom;
    if (high && spec.opening && !spec.box && high->swells >= room)
        problems.push_back({at + "/slide/top", Message::say("season.sides_jam", high->swells, room),
                            fields_in_all(high->swells + worth_saying)});
    const auto face = moving_face(job, spec);
    if (face && spec.face.style == FaceStyle::inset && face->season.swells >= face->gaps)
        problems.push_back({at + "/face/top",
                            Message::say("season.face_jams", face->season.swells, face->gaps),
                            fields_in_all(face->season.swells + worth_saying)});
    return problems;
}

std::vector<Note> season_notes(const Job& job, const DrawerDesign& drawer) {
    std::vector<Note> notes;
    const DrawerSpec& spec = *drawer.spec;
    const Stock* sides = job.stock_named(spec.side_stock);
    const Stock* its_face = job.stock_named(spec.face.stock);
    for (const Stock* stock : {sides, its_face == sides ? nullptr : its_face})
        if (auto missing = no_species(stock))
            notes.push_back({Level::warning, spec.name, std::move(*missing)});
    const auto high = sides ? season_of(*sides, job.climate, drawer.box.height) : std::nullopt;
    if (high && high->swells + high->shrinks >= worth_saying)
        notes.push_back(
            {Level::note, spec.name,
             Message::say(spec.opening && !spec.box ? "season.sides_move" : "season.sides_move_by",
                          high->swells + high->shrinks)});
    const auto face = moving_face(job, spec);
    if (!face || face->season.swells + face->season.shrinks < worth_saying) return notes;
    const Length least = face->gaps - face->season.swells, most = face->gaps + face->season.shrinks;
    if (spec.face.style == FaceStyle::inset)
        notes.push_back({Level::note, spec.name, Message::say("season.face_moves", least, most)});
    else if (least < worth_saying)
        notes.push_back({Level::warning, spec.name,
                         Message::say("season.faces_meet", face->season.swells, spec.face.reveal)});
    return notes;
}

std::vector<Note> nominal_notes(const Job& job) {
    // As panels are called. What they measure: US Product Standard PS 1 lets 3/4 in be from 0.719 to 0.781 in, and unsanded 1/2 in from
    // 0.469 in; "18 mm" birch measures 17.7 (makers' data sheets).
    static const std::vector<Length> nominal = [] {
        std::vector<Length> all;
        for (const int sixteenths : {4, 6, 8, 10, 12}) all.push_back(Length::inches(sixteenths, 16));
        for (const int mm : {4, 6, 9, 12, 15, 18, 19, 21}) all.push_back(Length::millimetres(mm));
        return all;
    }();
    std::vector<Note> notes;
    for (const Stock& stock : job.stock)
        if (stock.kind == StockKind::plywood &&
            std::find(nominal.begin(), nominal.end(), stock.thickness) != nominal.end())
            notes.push_back({Level::warning, stock.name, Message::say("season.nominal", stock.thickness)});
    return notes;
}

}  // namespace kw
