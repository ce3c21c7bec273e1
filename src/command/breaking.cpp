#include "command/breaking.h"

#include "command/table.h"
#include "job/breaking_down.h"
#include "session/say_breaking.h"
#include "session/say_layout.h"
#include "session/setup_said.h"
#include "session/words.h"

namespace kw {
namespace {

BreakingDown breaking_down_of(const Work& work, const LayOut& layout) {
    return breaking_down(work.job, work.plan, layout);
}

std::string said_of_refused(const Work& work, const Problem& problem) {
    return problem.why.text(work.job.locale) + "; " + problem.remedy.text(work.job.locale);
}

std::string stock_broken_text(const Job& job, const BreakingStock& stock) {
    std::string out = "\n  " + stock.stock + ": " + say_breaking(job, stock.count) + "\n";
    for (const BreakingSetting& setting : stock.settings) {
        out += "    [ ] " + say_setting(job, setting, setting.frees) + "\n";
        if (const std::string caution = say_too_short(job, setting); !caution.empty())
            out += "        " + caution + "\n";
    }
    return out;
}

std::vector<std::string> names_of_setups(const BreakingDown& down) {
    std::vector<std::string> names;
    for (const AtSizeAlready& one : down.at_size) names.push_back(one.setup);
    return names;
}

Json count_json(const BreakingCount& count) {
    return {{"times_set", count.settings}, {"least_times_set", count.least_settings},
            {"cuts", count.cuts},          {"trim_cuts", count.trims},
            {"seconds", count.seconds},    {"lower_bound_seconds", count.lower_bound_seconds}};
}

Json stock_broken_json(const BreakingStock& stock) {
    Json json = count_json(stock.count);
    json["stock"] = stock.stock;
    json["settings"] = Json::array();
    for (const BreakingSetting& setting : stock.settings)
        json["settings"].push_back(
            {{"direction", word_of(setting.setting.direction)},
             {"fence_mm", setting.setting.fence.mm()},
             {"cuts", cut_places_json(setting.setting)},
             {"frees", setting.frees},
             {"too_short_mm", setting.too_short ? Json(setting.too_short->mm()) : Json(nullptr)}});
    return json;
}

}  // namespace

const char* word_of(cutting::CutDirection direction) {
    return direction == cutting::CutDirection::rip ? "rip" : "crosscut";
}

Json cut_places_json(const LaidSetting& setting) {
    Json cuts = Json::array();
    for (const CutPlace& place : setting.cuts) cuts.push_back({{"piece", place.piece}, {"cut", place.cut}});
    return cuts;
}

Json freed_json(const std::vector<FreedOf>& freed) {
    Json all = Json::array();
    for (const FreedOf& one : freed)
        all.push_back({{"part", one.part},
                       {"stock", one.freed.stock},
                       {"length_mm", one.freed.length.mm()},
                       {"width_mm", one.freed.width.mm()}});
    return all;
}

std::string clock_text(std::int64_t seconds) {
    const std::string rest = std::to_string(seconds % 60);
    return std::to_string(seconds / 60) + ":" + (rest.size() < 2 ? "0" : "") + rest;
}

std::string breaking_text(const Work& work, const LayOut& layout) {
    const Job& job = work.job;
    const BreakingDown down = breaking_down_of(work, layout);
    if (layout.stocks.empty()) {
        std::string out = "\nBreaking down, before the setups\n  " + say_nothing_laid_out(job, layout) + "\n";
        for (const std::string& said : say_freed(job, work.plan, layout)) out += "  " + said + "\n";
        for (const std::string& said : say_sizes_cut(job, work.plan, down, names_of_setups(down)))
            out += "  " + said + "\n";
        return out;
    }
    std::string out =
        "\nBreaking down, before the setups (1.2 is the second cut of number 1; `layout` draws "
        "up each board and sheet)\n";
    if (down.stocks.size() > 1) out += "  " + say_breaking(job, down.all) + "\n";
    for (const std::string& said : say_sizes_cut(job, work.plan, down, names_of_setups(down)))
        out += "  " + said + "\n";
    if (const std::string already = say_cut_already(job, layout); !already.empty())
        out += "  " + already + "\n";
    for (const std::string& said : say_freed(job, work.plan, layout)) out += "  " + said + "\n";
    for (const std::string& stock : layout.without_size)
        out += "  " + job.locale.words()("layout.no_size_of", stock) + "\n";
    for (const LaidStock& laid : layout.stocks)
        if (laid.cannot) out += "  " + laid.stock + ": " + said_of_refused(work, *laid.cannot) + "\n";
    for (const BreakingStock& stock : down.stocks) out += stock_broken_text(job, stock);
    return out;
}

std::string breaking_total_text(const Work& work, const LayOut& layout) {
    const BreakingDown down = breaking_down_of(work, layout);
    if (down.all.cuts == 0) return {};
    return "With the breaking-down about " + minutes(work.plan.seconds + down.all.seconds) + ".\n";
}

std::string breaking_cost_text(const Work& work, const LayOut& layout) {
    const BreakingDown down = breaking_down_of(work, layout);
    if (down.all.cuts == 0) return {};
    const WorkTimes& times = work.job.times;
    Table table({Align::left, Align::right, Align::left});
    for (const BreakingStock& stock : down.stocks) {
        const std::size_t cuts = stock.count.cuts + stock.count.trims;
        table.row({stock.stock, clock_text(stock.count.seconds),
                   "fence and stop " + std::to_string(stock.count.settings) + " × " +
                       clock_text(times.fence_s) + " + cuts " + std::to_string(cuts) + " × " +
                       clock_text(times.rough_cut_s)});
    }
    return "Breaking down, before that\n" + table.text() + "\nIn all " + clock_text(down.all.seconds) +
           (down.all.seconds == down.all.lower_bound_seconds
                ? std::string("; no order of these cuts takes less.\n")
                : "; no order of these cuts takes less than " + clock_text(down.all.lower_bound_seconds) +
                      ".\n");
}

Json breaking_json(const Work& work, const LayOut& layout) {
    const BreakingDown down = breaking_down_of(work, layout);
    Json json = count_json(down.all);
    json["over_length_mm"] = work.job.cutting.over_length.mm();
    json["over_width_mm"] = work.job.cutting.over_width.mm();
    json["stock"] = Json::array();
    for (const BreakingStock& stock : down.stocks) json["stock"].push_back(stock_broken_json(stock));
    json["at_size"] = Json::array();
    for (const AtSizeAlready& one : down.at_size)
        json["at_size"].push_back({{"setup", one.setup}, {"parts", one.parts}});
    json["cut_already"] = layout.cut_already;
    json["freed"] = freed_json(layout.freed);
    json["freed_too_small"] = freed_json(layout.too_small);
    json["without_size"] = layout.without_size;
    json["refused"] = Json::array();
    for (const LaidStock& laid : layout.stocks)
        if (laid.cannot)
            json["refused"].push_back({{"stock", laid.stock}, {"text", said_of_refused(work, *laid.cannot)}});
    return json;
}

}  // namespace kw
