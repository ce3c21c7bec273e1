#include "print/cards.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "print/breaking_card.h"
#include "print/card_blocks.h"
#include "print/sheet.h"

namespace kw::print {
namespace {

constexpr double gap_mm = 4;
constexpr double least_half_picture_mm = 36, least_picture_mm = 44, good_picture_mm = 66,
                 most_picture_mm = 125;
constexpr double between_halves_mm = 7;

// A card on half a page; nothing where it has no room there.
std::optional<Block> half_card(const CardMatter& card, const Work& work, double width_mm, double height_mm) {
    if (card.test) return std::nullopt;
    constexpr double number_size_mm = 12;
    const Words& words = work.job.locale.words();
    const double left_mm = 0.29 * width_mm, right_mm = 0.27 * width_mm,
                 middle_mm = width_mm - left_mm - right_mm - 2 * gap_mm;
    const Block head = card_head(card, width_mm), cautions = cautions_block(card, width_mm);
    const double room = height_mm - head.height_mm - cautions.height_mm - 2 * gap_mm;
    std::vector<Block> numbers;
    for (const SetupNumber& number : card.numbers)
        numbers.push_back(number_block(number, words, left_mm, number_size_mm));
    Block left = stacked(numbers, 1.6), beneath = changes_block(card, words, middle_mm);
    // How the board lies stands under the numbers where there is room, and otherwise under the picture.
    const Block lie = lie_block(card, left_mm);
    if (left.height_mm + 2.5 + lie.height_mm <= room) left = stacked({left, lie}, 2.5);
    else beneath = stacked({lie_block(card, middle_mm), beneath}, 2);
    const PartsBlock parts = parts_block(card, words, 0, right_mm, 1, room);
    const double picture_mm = room - beneath.height_mm - 2;
    if (left.height_mm > room || parts.next < card.parts.size() || picture_mm < least_half_picture_mm)
        return std::nullopt;
    const auto picture = picture_block(card, words, middle_mm, picture_mm, false);
    if (!picture) return std::nullopt;
    Block all = head;
    const double top = head.height_mm + gap_mm, middle = left_mm + gap_mm;
    put(all, left, {0, top});
    put(all, *picture, {middle, top});
    put(all, beneath, {middle, top + picture_mm + 2});
    put(all, parts.block, {width_mm - right_mm, top});
    put(all, cautions, {0, height_mm - cautions.height_mm});
    return all;
}

Block numbers_in_a_row(const CardMatter& card, const Words& words, double width_mm) {
    constexpr double number_size_mm = 16;
    const auto count = static_cast<double>(card.numbers.size());
    const double each_mm = std::min((width_mm - (count - 1) * gap_mm) / count, 0.5 * width_mm);
    Block row;
    for (std::size_t i = 0; i < card.numbers.size(); ++i)
        put(row, number_block(card.numbers[i], words, each_mm, number_size_mm),
            {static_cast<double>(i) * (each_mm + gap_mm), 0});
    row.width_mm = width_mm;
    return row;
}

// What a full card is made of, and how high it is.
struct FullCard {
    Block head, numbers, left, test, cautions;
    double column_mm = 0;

    double fixed_mm(bool with_test) const {
        return head.height_mm + numbers.height_mm + cautions.height_mm +
               (with_test && test.height_mm > 0 ? test.height_mm + gap_mm : 0) + 4 * gap_mm;
    }
};

FullCard full_card_of(const CardMatter& card, const Work& work, double width_mm) {
    const Words& words = work.job.locale.words();
    const double column_mm = (width_mm - gap_mm) / 2;
    return {card_head(card, width_mm),
            numbers_in_a_row(card, words, width_mm),
            stacked({lie_block(card, column_mm), changes_block(card, words, column_mm)}, 2.5),
            card.test ? test_block(*card.test, words, unit_words(work.job), width_mm) : Block{},
            cautions_block(card, width_mm),
            column_mm};
}

// The parts in one column or two, with how many are on the next page.
PartsBlock parts_beside(const CardMatter& card, const Words& words, double width_mm, double most_mm) {
    PartsBlock parts = parts_block(card, words, 0, width_mm, 1, most_mm);
    if (parts.next == card.parts.size()) return parts;
    const double more_mm = 5;
    parts = parts_block(card, words, 0, width_mm, 2, most_mm - more_mm);
    if (const std::size_t left = card.parts.size() - parts.next; left > 0)
        put(parts.block,
            paragraph(words.counted("print.more_parts", static_cast<long long>(left)), small_text, width_mm),
            {0, parts.block.height_mm + 0.5});
    return parts;
}

// The pages behind the first: the test cut where that had no room for it, and the parts that are left.
void add_further_pages(std::vector<Block>& pages, const CardMatter& card, const Words& words, Block test,
                       std::size_t next, double width_mm, double height_mm) {
    while (next < card.parts.size() || test.height_mm > 0) {
        CardMatter again = card;
        again.step = words("print.continued", card.step);
        Block page = card_head(again, width_mm);
        const bool has_test = test.height_mm > 0;
        if (has_test) put(page, std::exchange(test, Block{}), {0, page.height_mm + gap_mm});
        const double top = page.height_mm + gap_mm;
        const PartsBlock parts = parts_block(card, words, next, width_mm, 3, height_mm - top);
        assert(has_test || parts.next > next);  // names are kept short enough
        if (parts.next > next) put(page, parts.block, {0, top});
        next = parts.next;
        pages.push_back(std::move(page));
    }
}

// What stands on the first page, and how much room is left for picture and parts.
struct Chosen {
    FullCard its;
    bool with_test = true;
    double room_mm = 0;
    PartsBlock parts;
};

// The picture gives way to the parts, and then the test cut goes on the next page.
Chosen chosen_for(const CardMatter& card, const Work& work, double width_mm, double height_mm) {
    struct Try {
        bool with_test = true;
        double picture_mm = 0;
    };
    const Words& words = work.job.locale.words();
    CardMatter told = card;
    told.test_on_next_page = card.test.has_value();
    Chosen chosen;
    for (const Try tried : {Try{true, good_picture_mm}, Try{true, least_picture_mm},
                            Try{false, good_picture_mm}, Try{false, least_picture_mm}}) {
        chosen.its = full_card_of(tried.with_test ? card : told, work, width_mm);
        chosen.with_test = tried.with_test;
        chosen.room_mm = height_mm - chosen.its.fixed_mm(tried.with_test);
        const double left_mm = chosen.its.left.height_mm;
        chosen.parts = parts_beside(card, words, chosen.its.column_mm,
                                    std::max(left_mm, chosen.room_mm - tried.picture_mm));
        if (chosen.parts.next == card.parts.size() && chosen.room_mm - left_mm >= least_picture_mm) break;
    }
    return chosen;
}

// A card on a page of its own, and on further ones where there are many parts.
std::vector<Block> full_card(const CardMatter& card, const Work& work, double width_mm, double height_mm) {
    const Words& words = work.job.locale.words();
    const Chosen chosen = chosen_for(card, work, width_mm, height_mm);
    const FullCard& its = chosen.its;
    const double lower = std::max(its.left.height_mm, chosen.parts.block.height_mm);
    const double picture_mm = std::min(most_picture_mm, chosen.room_mm - lower);
    Block page = its.head;
    double y = page.height_mm + gap_mm;
    put(page, its.numbers, {0, y});
    y += its.numbers.height_mm + gap_mm;
    auto picture = picture_block(card, words, width_mm, picture_mm, true);
    if (!picture) picture = picture_block(card, words, width_mm, picture_mm, false);
    if (picture) put(page, *picture, {0, y});
    y += picture_mm + gap_mm;
    put(page, its.left, {0, y});
    put(page, chosen.parts.block, {its.column_mm + gap_mm, y});
    y += lower + gap_mm;
    if (chosen.with_test) put(page, its.test, {0, y});
    put(page, its.cautions, {0, height_mm - its.cautions.height_mm});
    std::vector<Block> pages{std::move(page)};
    add_further_pages(pages, card, words, chosen.with_test ? Block{} : its.test, chosen.parts.next, width_mm,
                      height_mm);
    return pages;
}

// Cards in the order of the work, put onto pages.
class CardPages {
public:
    CardPages(const Work& work, Paper paper) : work_(work), paper_(paper), body_(body_of(paper)) {}

    void add(const CardMatter& card) {
        const double half_mm = (body_.height_mm() - between_halves_mm) / 2;
        auto half = half_card(card, work_, body_.width_mm(), half_mm);
        if (half && waiting_) {
            Page& page = new_page();
            put(page.items, *waiting_half_, {body_.left_mm, body_.top_mm});
            Path divider = across(body_.width_mm(), 0.2, grey);
            divider.dashed = true;
            page.items.push_back(moved(divider, body_.left_mm, body_.top_mm + body_.height_mm() / 2));
            put(page.items, *half, {body_.left_mm, body_.bottom_mm - half_mm});
            waiting_.reset();
        } else if (half) {
            waiting_ = card;
            waiting_half_ = std::move(half);
        } else {
            add_waiting();
            add_full(card);
        }
    }

    std::vector<Page> finished() && {
        add_waiting();
        return std::move(pages_);
    }

private:
    Page& new_page() {
        pages_.push_back({paper_, {}, {}});
        return pages_.back();
    }

    // One that has no other to share its page has all of it.
    void add_waiting() {
        if (waiting_) add_full(*waiting_);
        waiting_.reset();
    }

    void add_full(const CardMatter& card) {
        for (const Block& block : full_card(card, work_, body_.width_mm(), body_.height_mm()))
            put(new_page().items, block, {body_.left_mm, body_.top_mm});
    }

    const Work& work_;
    Paper paper_;
    Area body_;
    std::vector<Page> pages_;
    std::optional<CardMatter> waiting_;
    std::optional<Block> waiting_half_;
};

}  // namespace

std::vector<Page> setup_cards(const Work& work, Paper paper, const CardOptions& options,
                              const LayOut& layout) {
    std::vector<Page> all = breaking_card(work, layout, paper);
    CardPages pages(work, paper);
    for (std::size_t step = 0; step < work.plan.sequence.size(); ++step)
        pages.add(card_matter(work, step, options));
    for (Page& page : std::move(pages).finished()) all.push_back(std::move(page));
    const Words& words = work.job.locale.words();
    return finished_pages(std::move(all), words, work.job.name, words("print.cards"));
}

}  // namespace kw::print
