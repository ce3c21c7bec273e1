#include "session/say_bank.h"

#include <algorithm>

#include "job/banks.h"
#include "job/slide_notes.h"

namespace kw {
namespace {

std::string rule_of(const Words& words, const BankSpec& bank, const Locale& locale) {
    switch (bank.heights) {
        case FaceHeights::equal: return words("bank.rule.equal");
        case FaceHeights::graduated:
            return words("bank.rule.graduated", show_with_unit(bank.made.step, locale));
        case FaceHeights::in_proportion: return words("bank.rule.in_proportion");
        case FaceHeights::given: return words("bank.rule.given");
        case FaceHeights::by_opening: return words("bank.rule.by_opening");
    }
    return {};
}

// An inset face without rails ends at the next one: the gap is between both.
Margins over_of(const BankSpec& bank, std::size_t row) {
    const BankFace& face = bank.made.faces[row];
    Margins over{{}, {}, face.over_top, face.over_bottom};
    if (bank.style != FaceStyle::inset || bank.rail) return over;
    over.top = row == 0 ? face.top() - bank.made.height : -bank.made.between;
    over.bottom = row + 1 == bank.rows.size() ? -face.bottom : -bank.made.between;
    return over;
}

}  // namespace

Length tape_zero(const BankSpec& bank) { return -bank.edges.bottom.value_or(Length{}); }

SaidBank say_bank(const Work& work, const BankSpec& bank) {
    const Job& job = work.job;
    const Locale& locale = job.locale;
    const Words& words = locale.words();
    SaidBank said;
    said.head = words(bank.style == FaceStyle::overlay ? "bank.head.overlay" : "bank.head.inset", bank.name,
                      bank.rows.size(), show_with_unit(bank.made.face_width, locale),
                      show_with_unit(bank.made.height, locale), show_with_unit(bank.reveal, locale));
    said.style = bank.style;
    said.rule = rule_of(words, bank, locale);
    said.measured_from = words(bank.edges.bottom ? "bank.from_the_case" : "bank.from_the_opening");
    const Length zero = tape_zero(bank);
    const auto holes = holes_of(work.design.drawers, bank, job);
    for (std::size_t row = 0; row < bank.rows.size(); ++row) {
        const BankFace& face = bank.made.faces[row];
        const DrawerSpec& drawer = job.drawers[bank.rows[row].drawer];
        TapeRow& one = said.rows.emplace_back();
        one.drawer = row_name(job, bank, row);
        one.lower = face.bottom - zero;
        one.upper = face.top() - zero;
        one.opening_lower = face.opening_bottom - zero;
        one.opening_upper = one.opening_lower + face.opening_height;
        if (const auto place = slide_place_of(job, work.plan, drawer))
            one.slide = one.opening_lower + place->above_floor;
        const Margins over = over_of(bank, row);
        one.over_top = over.top;
        one.over_bottom = over.bottom;
        for (const RowHoles& drilled : holes)
            if (drilled.row == row) one.holes = one.lower + drilled.holes.from_bottom;
    }
    said.notes = notes_on(job, work.design.drawers, bank);
    const bool is_in_ticks = bank.made.left_over < least_face && bank.made.near_misses.empty();
    if (bank.made.left_over > Length{} && is_in_ticks)
        said.left_over = words("bank.did_not_divide", bank.made.left_over.ticks());
    return said;
}

}  // namespace kw
