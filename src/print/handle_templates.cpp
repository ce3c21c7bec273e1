#include "print/handle_templates.h"

#include <algorithm>

#include "draw/handle_template.h"
#include "job/bank_checks.h"
#include "print/place_picture.h"
#include "print/sheet.h"

namespace kw::print {
namespace {

struct HandleTemplateFor {
    draw::HandleTemplate handle;
    std::vector<std::string> drawers;
};

std::vector<HandleTemplateFor> handles_of(const Work& work) {
    std::vector<HandleTemplateFor> all;
    for (const BankSpec& bank : work.job.banks)
        for (const RowHoles& row : holes_of(work.design.drawers, bank, work.job)) {
            const draw::HandleTemplate handle{bank.handles->holes,
                                              bank.handles->holes == 1 ? Length{} : bank.handles->centres,
                                              bank.made.faces[row.row].height - row.holes.from_bottom};
            const std::string& drawer = work.job.drawers[bank.rows[row.row].drawer].name;
            const auto found = std::find_if(
                all.begin(), all.end(), [&](const HandleTemplateFor& one) { return one.handle == handle; });
            if (found == all.end()) all.push_back({handle, {drawer}});
            else if (std::find(found->drawers.begin(), found->drawers.end(), drawer) == found->drawers.end())
                found->drawers.push_back(drawer);
        }
    return all;
}

Page handle_page(const Job& job, const HandleTemplateFor& one, Paper paper) {
    constexpr double px_mm = 0.25, room_for_words_mm = 22;
    constexpr TextStyle drawers_text{5, true, black};
    const Words& words = job.locale.words();
    const Area body = body_of(paper);
    Page page{paper, {}, {}};
    const std::string holes = one.handle.holes == 1
                                  ? words("print.one_hole", show_with_unit(one.handle.below_top, job.locale))
                                  : words("print.two_holes", show_with_unit(one.handle.centres, job.locale),
                                          show_with_unit(one.handle.below_top, job.locale));
    const Block head = stacked(
        {paragraph(words("print.handles_of", words.list(one.drawers)), drawers_text, body.width_mm(), 3),
         paragraph(holes, body_text, body.width_mm()),
         paragraph(words("print.handle_how"), small_text, body.width_mm())},
        2);
    put(page.items, head, {body.left_mm, body.top_mm});
    const draw::Drawing drawing = draw::handle_template(one.handle, job.locale);
    const draw::Box box = draw::bounds(drawing);
    const double top = body.top_mm + head.height_mm + room_for_words_mm;
    const bool fits = top + box.top_mm - box.bottom_mm + room_for_words_mm <= body.bottom_mm &&
                      box.right_mm - box.left_mm + 2 * room_for_words_mm <= body.width_mm();
    if (fits)
        page.items.emplace_back(picture_at_scale(
            drawing,
            {body.left_mm + 0.5 * body.width_mm() - 0.5 * (box.left_mm + box.right_mm), top + box.top_mm}, 1,
            px_mm));
    return page;
}

}  // namespace

std::vector<Page> handle_templates(const Work& work, Paper paper) {
    std::vector<Page> pages;
    for (const HandleTemplateFor& one : handles_of(work)) pages.push_back(handle_page(work.job, one, paper));
    return pages;
}

}  // namespace kw::print
