#include "print/pages_of.h"

#include "print/cards.h"
#include "print/labels.h"
#include "print/layout_pages.h"
#include "print/part_list.h"
#include "print/slide_templates.h"

namespace kw::print {

Paper usual_paper(const Job& job) { return job.unit == Unit::inch ? Paper::letter : Paper::a4; }

bool needs_layout(PagesOf what) { return what == PagesOf::layout || what == PagesOf::cards; }

std::vector<Page> pages_of(PagesOf what, const Work& work, const LayOut& layout,
                           const Preferences& preferences, Paper paper) {
    switch (what) {
        case PagesOf::labels: return part_labels(work, paper);
        case PagesOf::parts: return part_list(work, paper);
        case PagesOf::layout: return layout_pages(work, layout, paper);
        case PagesOf::templates: return slide_templates(work, paper);
        case PagesOf::cards: break;
    }
    return setup_cards(work, paper, {preferences.fence_to, preferences.fence_stands == Hand::left}, layout);
}

}  // namespace kw::print
