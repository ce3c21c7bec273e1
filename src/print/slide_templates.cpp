#include "print/slide_templates.h"

#include <algorithm>

#include "draw/slide_template.h"
#include "job/slide_notes.h"
#include "print/handle_templates.h"
#include "print/place_picture.h"
#include "print/sheet.h"
#include "session/setup_said.h"

namespace kw::print {
namespace {

struct TemplateFor {
    SlidePlace place;
    std::vector<std::string> drawers;
    Message text;
};

std::vector<TemplateFor> templates_of(const Work& work) {
    std::vector<TemplateFor> all;
    for (const DrawerSpec& drawer : work.job.drawers) {
        const auto place = slide_place_of(work.job, work.plan, drawer);
        if (!place) continue;
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const TemplateFor& one) { return one.place == *place; });
        if (found != all.end()) found->drawers.push_back(drawer.name);
        else all.push_back({*place, {drawer.name}, say_slide_place(*place)});
    }
    return all;
}

Page template_page(const Job& job, const TemplateFor& one, Paper paper) {
    constexpr double px_mm = 0.25, room_for_words_mm = 22;
    constexpr TextStyle drawers_text{5, true, black};
    const Words& words = job.locale.words();
    const Area body = body_of(paper);
    Page page{paper, {}, {}};
    const Block head = stacked(
        {paragraph(words("print.slides_of", words.list(one.drawers)), drawers_text, body.width_mm(), 3),
         paragraph(capital(one.text.text(job.locale)), body_text, body.width_mm()),
         paragraph(words("print.template_how"), small_text, body.width_mm())},
        2);
    put(page.items, head, {body.left_mm, body.top_mm});
    const draw::Drawing drawing = draw::slide_template(one.place, job.locale);
    const draw::Box box = draw::bounds(drawing);
    const double top = body.top_mm + head.height_mm + room_for_words_mm;
    if (top + box.top_mm - box.bottom_mm + room_for_words_mm > body.bottom_mm) return page;
    page.items.emplace_back(
        picture_at_scale(drawing, {body.left_mm + room_for_words_mm, top + box.top_mm}, 1, px_mm));
    return page;
}

}  // namespace

std::vector<Page> slide_templates(const Work& work, Paper paper) {
    const Words& words = work.job.locale.words();
    std::vector<Page> pages;
    for (const TemplateFor& one : templates_of(work)) pages.push_back(template_page(work.job, one, paper));
    for (Page& page : handle_templates(work, paper)) pages.push_back(std::move(page));
    if (pages.empty()) {
        Page page{paper, {}, {}};
        const Area body = body_of(paper);
        put(page.items, paragraph(words("print.no_slides"), body_text, body.width_mm()),
            {body.left_mm, body.top_mm});
        pages.push_back(std::move(page));
    }
    return finished_pages(std::move(pages), words, work.job.name, words("print.templates"));
}

}  // namespace kw::print
