#include "print/breaking_card.h"

#include <algorithm>

#include "job/breaking_down.h"
#include "print/flow.h"
#include "session/say_breaking.h"
#include "session/say_layout.h"
#include "session/setup_said.h"

namespace kw::print {
namespace {

constexpr TextStyle card_title{6, true, black}, card_stock{4.6, true, black};
constexpr double after_stock_mm = 2, after_setting_mm = 1.4, parts_at_mm = 5;
constexpr std::size_t most_lines_of_setting = 24, names_a_block = 24;

// What comes of a setting, in blocks of which each has room on a page.
void add_freed(Flow& flow, const Work& work, const std::vector<std::string>& parts) {
    for (std::size_t from = 0; from < parts.size(); from += names_a_block) {
        std::string names;
        for (std::size_t i = from; i < std::min(parts.size(), from + names_a_block); ++i)
            names +=
                (i == from ? "" : "  \u00b7  ") + part_words(work.job.locale.words(), work.plan, parts[i]);
        Block block{{}, flow.width_mm(), 0};
        put(block, paragraph(names, small_text, flow.width_mm() - parts_at_mm, most_lines_of_setting),
            {parts_at_mm, 0});
        flow.add(block);
    }
}

void add_setting(Flow& flow, const Work& work, const BreakingSetting& setting) {
    flow.add(
        line_to_tick(capital(say_setting(work.job, setting, {})), flow.width_mm(), most_lines_of_setting),
        setting.frees.empty() ? after_setting_mm : 0.4);
    add_freed(flow, work, setting.frees);
    if (const std::string caution = say_too_short(work.job, setting); !caution.empty())
        flow.add(paragraph(caution, strong_text, flow.width_mm(), most_lines_of_setting));
    if (!setting.frees.empty()) flow.add({{}, flow.width_mm(), 0}, after_setting_mm);
}

// The steps by their numbers, as the cards count them.
std::vector<std::string> steps_at_size(const Work& work, const BreakingDown& down) {
    std::vector<std::string> steps;
    for (const AtSizeAlready& one : down.at_size)
        steps.push_back(work.job.locale.words()("order.step", step_of(work.plan, one.setup) + 1));
    return steps;
}

// Stock that can't be laid out: why, and what would do.
std::vector<std::string> say_refused(const Job& job, const LayOut& layout) {
    std::vector<std::string> all;
    for (const LaidStock& laid : layout.stocks)
        if (laid.cannot)
            all.push_back(capital(laid.stock + ": " + laid.cannot->why.text(job.locale) + "; " +
                                  laid.cannot->remedy.text(job.locale)));
    return all;
}

}  // namespace

std::vector<Page> breaking_card(const Work& work, const LayOut& layout, Paper paper) {
    const Job& job = work.job;
    const Words& words = job.locale.words();
    const BreakingDown down = breaking_down(job, work.plan, layout);
    const std::vector<std::string> refused = say_refused(job, layout);
    if (down.all.cuts == 0 && refused.empty()) return {};
    Flow flow(paper);
    flow.add(paragraph(capital(words("breaking.title")), card_title, flow.width_mm(), 2), after_stock_mm);
    std::vector<std::string> said;
    if (down.all.cuts > 0) {
        said = say_sizes_cut(job, work.plan, down, steps_at_size(work, down));
        said.push_back(words("layout.settings_how"));
    }
    if (const std::string already = say_cut_already(job, layout); !already.empty()) said.push_back(already);
    for (const std::string& freed : say_freed(job, work.plan, layout, SetupNames::steps))
        said.push_back(freed);
    for (const std::string& stock : layout.without_size) said.push_back(words("layout.no_size_of", stock));
    for (const std::string& one : said)
        flow.add(paragraph(capital(one), small_text, flow.width_mm(), most_lines_of_setting), 1);
    for (const std::string& one : refused)
        flow.add(paragraph(one, strong_text, flow.width_mm(), most_lines_of_setting), 1);
    for (const BreakingStock& stock : down.stocks) {
        flow.add({{}, flow.width_mm(), 0}, after_stock_mm);
        flow.add(stacked({paragraph(capital(stock.stock), card_stock, flow.width_mm(), 2),
                          paragraph(capital(say_breaking(job, stock.count)), body_text, flow.width_mm())},
                         1),
                 after_stock_mm);
        for (const BreakingSetting& setting : stock.settings) add_setting(flow, work, setting);
    }
    return flow.take();
}

}  // namespace kw::print
