#include "print/cards.h"

#include <algorithm>

#include "print/card_blocks.h"
#include "print/sheet.h"

namespace kw::print {
namespace {

constexpr double gap_mm = 4;
constexpr double least_half_picture_mm = 36, least_picture_mm = 62, most_picture_mm = 125;
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
    Block left = stacked(numbers, 1.6), beneath = changes_block(card, middle_mm);
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
    constexpr double number_size_mm = 17;
    const auto count = static_cast<double>(card.numbers.size());
    const double each_mm = std::min((width_mm - (count - 1) * gap_mm) / count, 0.5 * width_mm);
    Block row;
    for (std::size_t i = 0; i < card.numbers.size(); ++i)
        put(row, number_block(card.numbers[i], words, each_mm, number_size_mm),
            {static_cast<double>(i) * (each_mm + gap_mm), 0});
    row.width_mm = width_mm;
    return row;
}

// The pages of parts for which the card had no room.
void add_further_parts(std::vector<Block>& pages, const CardMatter& card, const Words& words,
                       std::size_t next, double width_mm, double height_mm) {
    while (next < card.parts.size()) {
        CardMatter again = card;
        again.step = words("print.continued", card.step);
        Block page = card_head(again, width_mm);
        const double top = page.height_mm + gap_mm;
        const PartsBlock parts = parts_block(card, words, next, width_mm, 3, height_mm - top);
        if (parts.next == next) break;  // not even one has room: it was measured for a page
        put(page, parts.block, {0, top});
        next = parts.next;
        pages.push_back(std::move(page));
    }
}

// A card on a page of its own, and further ones where there are many parts.
std::vector<Block> full_card(const CardMatter& card, const Work& work, double width_mm, double height_mm) {
    const Words& words = work.job.locale.words();
    const double column_mm = (width_mm - gap_mm) / 2;
    const Block head = card_head(card, width_mm), numbers = numbers_in_a_row(card, words, width_mm),
                cautions = cautions_block(card, width_mm), lie = lie_block(card, column_mm),
                changes = changes_block(card, column_mm),
                test = card.test ? test_block(*card.test, words, unit_words(work.job), width_mm) : Block{};
    const Block left = stacked({lie, changes}, 2.5);
    const double fixed = head.height_mm + numbers.height_mm + cautions.height_mm + test.height_mm +
                         (card.test ? 5 : 4) * gap_mm;
    const double most_parts = std::max(left.height_mm, height_mm - fixed - least_picture_mm);
    PartsBlock parts = parts_block(card, words, 0, column_mm, 1, most_parts);
    if (parts.next < card.parts.size()) parts = parts_block(card, words, 0, column_mm, 2, most_parts);
    const std::string more =
        words.counted("print.more_parts", static_cast<long long>(card.parts.size() - parts.next));
    if (parts.next < card.parts.size())
        put(parts.block, paragraph(more, small_text, column_mm), {0, parts.block.height_mm + 0.5});
    const double lower = std::max(left.height_mm, parts.block.height_mm);
    const double picture_mm = std::min(most_picture_mm, height_mm - fixed - lower);
    Block page = head;
    double y = head.height_mm + gap_mm;
    put(page, numbers, {0, y});
    y += numbers.height_mm + gap_mm;
    auto picture = picture_block(card, words, width_mm, picture_mm, true);
    if (!picture) picture = picture_block(card, words, width_mm, picture_mm, false);
    if (picture) put(page, *picture, {0, y});
    y += picture_mm + gap_mm;
    put(page, left, {0, y});
    put(page, parts.block, {column_mm + gap_mm, y});
    y += lower + gap_mm;
    if (card.test) put(page, test, {0, y});
    put(page, cautions, {0, height_mm - cautions.height_mm});
    std::vector<Block> pages{std::move(page)};
    add_further_parts(pages, card, words, parts.next, width_mm, height_mm);
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
            const double middle = body_.top_mm + body_.height_mm() / 2;
            page.items.emplace_back(
                Path{{{body_.left_mm, middle}, {body_.right_mm, middle}}, 0.2, false, true, grey});
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

std::vector<Page> setup_cards(const Work& work, Paper paper, const CardOptions& options) {
    CardPages pages(work, paper);
    for (std::size_t step = 0; step < work.plan.sequence.size(); ++step)
        pages.add(card_matter(work, step, options));
    const Words& words = work.job.locale.words();
    return finished_pages(std::move(pages).finished(), words, work.job.name, words("print.cards"));
}

}  // namespace kw::print
