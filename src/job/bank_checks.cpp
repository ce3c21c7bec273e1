#include "job/bank_checks.h"

#include <algorithm>

#include "job/banks.h"
#include "job/seasons.h"

namespace kw {
namespace {

// What a rule shows, and what is left of a gap so that it still is one (common practice, no source).
constexpr Length shown_gap = Length::millimetres(1);

using Row = std::optional<std::size_t>;

// What is told is told rounded: one graduation further from what it must clear it does when typed.
Length a_graduation(const Job& job) { return graduation_step(job.locale.graduation); }

class GapLister {
public:
    GapLister(const Job& job, const BankSpec& bank) : job_(job), bank_(bank) {}

    std::vector<GapOverYear> all() {
        const bool inset = bank_.style == FaceStyle::inset;
        const std::size_t rows = bank_.rows.size();
        if (inset) add({}, 0, bank_.ends.top);
        for (std::size_t i = 0; i + 1 < rows; ++i) {
            if (!inset || !bank_.rail) {
                add(i, i + 1, bank_.reveal);
                continue;
            }
            add(i, {}, bank_.reveal);
            add({}, i + 1, bank_.reveal);
        }
        if (inset) add(rows - 1, {}, bank_.ends.bottom + bank_.made.left_over);
        return std::move(gaps_);
    }

private:
    void add(Row above, Row below, Length made) {
        GapOverYear gap{above, below, made, made, made};
        for (const Row& row : {above, below}) {
            if (!row) continue;
            const Season season = season_of_row(*row);
            gap.least -= season.swells.scaled(1, 2);
            gap.most += season.shrinks.scaled(1, 2);
        }
        gaps_.push_back(gap);
    }

    Season season_of_row(std::size_t row) const {
        const Stock* stock = job_.stock_named(job_.drawers[bank_.rows[row].drawer].face.stock);
        if (!stock) return {};
        return season_of(*stock, job_.climate, bank_.made.faces[row].height).value_or(Season{});
    }

    const Job& job_;
    const BankSpec& bank_;
    std::vector<GapOverYear> gaps_;
};

BoxBehind box_behind(const DrawerDesign& drawer, const BankSpec& bank, const BankFace& face) {
    const Cut& groove = drawer.bottom.joint.slot();
    const Length beside = (width_faced(bank) - drawer.box.width).scaled(1, 2);
    return {bank.style == FaceStyle::overlay ? beside + bank.ends.left : beside - bank.ends.left,
            face.opening_bottom - face.bottom + drawer.spec->slide.bottom,
            drawer.box,
            drawer.thickness.sides,
            groove.near,
            groove.width};
}

Message say_holes(const RowHoles& one, const BankFace& face) {
    const Length y = face.height - one.holes.from_bottom;
    switch (one.check.meets) {
        case HoleMeets::nothing_above: return Message::say("bank.hole_above_box", y, one.check.by);
        case HoleMeets::nothing_below: return Message::say("bank.hole_below_box", y, one.check.by);
        case HoleMeets::groove: return Message::say("bank.hole_in_groove", y);
        case HoleMeets::below_bottom: return Message::say("bank.hole_below_bottom", y);
        case HoleMeets::side: return Message::say("bank.hole_in_side", one.check.by);
        case HoleMeets::edge_of_face: return Message::say("bank.hole_off_face", one.check.by);
        case HoleMeets::front: break;
    }
    return {};
}

// The smallest change that would do.
Message hole_remedy(const Job& job, const RowHoles& one, const BankSpec& bank, const BankFace& face) {
    const Length inward = a_graduation(job);
    if (one.check.meets == HoleMeets::side)
        return Message::say("bank.centres_at_most",
                            max(Length{}, bank.handles->centres - 2 * one.check.by - inward));
    if (!one.check.clear_at) return Message::say("bank.no_height_for_hole");
    const Length clear = face.height - *one.check.clear_at, is_at = face.height - one.holes.from_bottom;
    return Message::say("bank.from_top_would_do", clear > is_at   ? clear + inward
                                                  : clear < is_at ? clear - inward
                                                                  : clear);
}

// Copies of one drawer are drilled alike; what one of them meets is told once.
void note_holes(const Job& job, const std::vector<DrawerDesign>& drawers, const BankSpec& bank,
                std::vector<Note>& notes) {
    std::vector<std::size_t> drilled;  // drawers
    std::vector<std::pair<std::size_t, HoleMeets>> told;
    for (const RowHoles& one : holes_of(drawers, bank, job)) {
        const std::size_t drawer = bank.rows[one.row].drawer;
        const auto& x = one.holes.from_left;
        if (std::find(drilled.begin(), drilled.end(), drawer) == drilled.end())
            notes.push_back({Level::note,
                             job.drawers[drawer].name,
                             x.size() == 1
                                 ? Message::say("bank.one_hole", x.front(), one.holes.from_bottom)
                                 : Message::say("bank.two_holes", x.front(), x.back(), one.holes.from_bottom),
                             {}});
        drilled.push_back(drawer);
        const std::pair meets{drawer, one.check.meets};
        if (one.check.meets == HoleMeets::front || std::find(told.begin(), told.end(), meets) != told.end())
            continue;
        told.push_back(meets);
        const BankFace& face = bank.made.faces[one.row];
        notes.push_back(
            {Level::warning,
             job.drawers[drawer].name,
             Message::say("bank.with_remedy", say_holes(one, face), hole_remedy(job, one, bank, face)),
             {}});
    }
}

// Which opening set the faces' width, or is covered the most.
template <typename Add>
void note_width(const BankSpec& bank, const Job& job, const Add& add) {
    if (!bank.narrowest) return;
    const std::string name = row_name(job, bank, *bank.narrowest);
    if (bank.style == FaceStyle::inset)
        add(Level::note,
            Message::say("bank.narrowest_sets", name, bank.least_width, bank.made.face_width, *bank.width));
    else
        add(Level::note, Message::say("bank.narrowest_covered", name, bank.least_width, bank.made.face_width,
                                      bank.made.face_width - bank.least_width));
}

template <typename Add>
void note_unread(const BankSpec& bank, const Add& add) {
    const auto unread = static_cast<int>(bank.made.unread);
    if (unread == 0) return;
    if (bank.made.unread_height > Length{})
        add(Level::note, Message::say("bank.unread_divide", unread, bank.made.unread_height));
    else add(Level::note, Message::say("bank.unread_follow", unread));
}

Message say_miss(const NearMiss& miss, const BankSpec& bank, const std::string& drawer) {
    switch (miss.what) {
        case Miss::near_rail:
            return Message::say("bank.flag_near_rail", drawer, bank.reveal - miss.by, bank.reveal);
        case Miss::above_floor: return Message::say("bank.flag_above_floor", drawer, miss.by);
        case Miss::below_top: return Message::say("bank.flag_below_top", drawer, miss.by);
        case Miss::past_face: return Message::say("bank.flag_past_face", drawer, miss.by);
        case Miss::openings:
            return Message::say(miss.by > Length{} ? "bank.flag_openings_short" : "bank.flag_openings_over",
                                abs(miss.by));
        case Miss::faces:
            return Message::say(miss.by > Length{} ? "bank.flag_faces_short" : "bank.flag_faces_over",
                                abs(miss.by));
    }
    return {};
}

// All gaps of the bank, also those at rails and at its ends.
template <typename Add>
void note_gaps(const Job& job, const BankSpec& bank, const Add& add) {
    const auto gaps = gaps_over_year(job, bank);
    if (gaps.empty()) return;
    Length least = gaps.front().least, most = gaps.front().most, moves;
    for (const GapOverYear& gap : gaps) {
        least = min(least, gap.least);
        most = max(most, gap.most);
        moves = max(moves, gap.most - gap.least);
    }
    if (least < shown_gap) add(Level::warning, Message::say("bank.gap_under_a_rule", least, most));
    else if (moves >= shown_gap) add(Level::note, Message::say("bank.gaps_over_year", least, most));
}

void check_jams(const Job& job, const BankSpec& bank, const std::string& at, std::vector<Problem>& problems) {
    std::vector<std::string> told;
    for (const GapOverYear& gap : gaps_over_year(job, bank)) {
        if (gap.least > Length{}) continue;
        const bool is_end =
            bank.style == FaceStyle::inset &&
            ((!gap.above && *gap.below == 0) || (!gap.below && *gap.above + 1 == bank.rows.size()));
        const std::string field = !is_end ? "/reveal" : gap.above ? "/bottom" : "/top";
        if (std::find(told.begin(), told.end(), field) != told.end()) continue;
        told.push_back(field);
        Length most;  // that any gap of this width loses
        for (const GapOverYear& other : gaps_over_year(job, bank))
            if (is_end ? other.above == gap.above && other.below == gap.below : other.made == gap.made)
                most = max(most, other.made - other.least);
        const Message needed = Message::say("bank.gap_at_least", most + shown_gap);
        if (gap.above && gap.below)
            problems.push_back({at + field,
                                Message::say("bank.faces_jam", row_name(job, bank, *gap.above),
                                             row_name(job, bank, *gap.below), gap.made - gap.least, gap.made),
                                needed});
        else
            problems.push_back(
                {at + field,
                 Message::say("bank.face_jams", row_name(job, bank, gap.above ? *gap.above : *gap.below),
                              gap.made - gap.least, gap.made),
                 needed});
    }
}

}  // namespace

std::vector<GapOverYear> gaps_over_year(const Job& job, const BankSpec& bank) {
    return GapLister(job, bank).all();
}

std::vector<RowHoles> holes_of(const std::vector<DrawerDesign>& drawers, const BankSpec& bank,
                               const Job& job) {
    std::vector<RowHoles> all;
    for (std::size_t row = 0; bank.handles && row < bank.rows.size(); ++row) {
        const auto drawer = std::find_if(drawers.begin(), drawers.end(), [&](const DrawerDesign& one) {
            return one.spec->name == job.drawers[bank.rows[row].drawer].name;
        });
        if (drawer == drawers.end()) continue;
        const BankFace& face = bank.made.faces[row];
        const HandleHoles holes = handle_holes(*bank.handles, bank.made.face_width, face.height);
        all.push_back({row, holes,
                       check_holes(holes, bank.handles->diameter, bank.made.face_width, face.height,
                                   box_behind(*drawer, bank, face))});
    }
    return all;
}

std::vector<Problem> check_bank(const Job& job, const std::vector<DrawerDesign>& drawers,
                                const BankSpec& bank, const std::string& at) {
    std::vector<Problem> problems;
    check_jams(job, bank, at, problems);
    for (const RowHoles& one : holes_of(drawers, bank, job)) {
        if (one.check.meets != HoleMeets::edge_of_face) continue;
        const BankFace& face = bank.made.faces[one.row];
        const bool across = one.holes.from_left.front() < bank.handles->diameter.scaled(1, 2);
        const std::string field = across                                           ? "centres"
                                  : bank.handles->height == HandleHeight::from_top ? "from_top"
                                                                                   : "height";
        problems.push_back(
            {at + "/handles/" + field,
             Message::say("bank.of_drawer", row_name(job, bank, one.row), say_holes(one, face)),
             across ? Message::say("bank.centres_at_most",
                                   bank.made.face_width - bank.handles->diameter - a_graduation(job))
                    : hole_remedy(job, one, bank, face)});
        break;
    }
    return problems;
}

std::vector<Note> notes_on(const Job& job, const std::vector<DrawerDesign>& drawers, const BankSpec& bank) {
    std::vector<Note> notes;
    const Message title = Message::say("job.about.bank", bank.name);
    for (const OutOfLine& out : out_of_line(bank)) {
        const char* key =
            out.at_top ? (out.above > Length{} ? "bank.top_above_doors" : "bank.top_below_doors")
                       : (out.above > Length{} ? "bank.bottom_above_doors" : "bank.bottom_below_doors");
        notes.push_back({Level::warning, bank.name, Message::say(key, abs(out.above), out.would_do), title});
    }
    const auto add = [&](Level level, Message text) {
        notes.push_back({level, bank.name, std::move(text), title});
    };
    note_width(bank, job, add);
    note_unread(bank, add);
    for (const NearMiss& miss : bank.made.near_misses)
        add(Level::warning, say_miss(miss, bank, row_name(job, bank, miss.row)));
    note_gaps(job, bank, add);
    note_holes(job, drawers, bank, notes);
    return notes;
}

}  // namespace kw
