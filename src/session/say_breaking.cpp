#include "session/say_breaking.h"

#include <algorithm>

#include "job/laid_cuts.h"
#include "session/words.h"

namespace kw {
namespace {

long long as_count(std::size_t count) { return static_cast<long long>(count); }

// "1.2, 2.1": by the numbers of the layout.
std::string numbers_of_cuts(const LaidSetting& setting) {
    std::string all;
    for (const CutPlace& place : setting.cuts)
        all +=
            (all.empty() ? "" : ", ") + std::to_string(place.piece + 1) + "." + std::to_string(place.cut + 1);
    return all;
}

std::string say_allowance(const Job& job) {
    const Words& words = job.locale.words();
    const Length length = job.cutting.over_length, width = job.cutting.over_width;
    const auto shown = [&job](Length over) { return show_with_unit(over, job.locale); };
    if (length > Length{} && width > Length{}) return words("breaking.rough", shown(length), shown(width));
    if (length > Length{}) return words("breaking.rough_length", shown(length));
    if (width > Length{}) return words("breaking.rough_width", shown(width));
    return {};
}

}  // namespace

std::string say_breaking(const Job& job, const BreakingCount& count) {
    const Words& words = job.locale.words();
    std::string cuts = words.counted("breaking.cuts", as_count(count.cuts));
    if (count.trims > 0) cuts = words.counted("breaking.trims", as_count(count.trims), cuts);
    const std::string settings = words.counted("breaking.settings", as_count(count.settings));
    return count.settings == count.least_settings
               ? words("breaking.all_proved", cuts, settings, minutes(count.seconds))
               : words("breaking.all_at_least", cuts, settings, minutes(count.seconds), count.least_settings);
}

std::string say_setting(const Job& job, const BreakingSetting& setting) {
    const Words& words = job.locale.words();
    const bool is_rip = setting.setting.direction == cutting::CutDirection::rip;
    return words(is_rip ? "breaking.rip" : "breaking.crosscut",
                 show_with_unit(setting.setting.fence, job.locale),
                 words.counted("breaking.cuts", as_count(setting.setting.cuts.size())),
                 numbers_of_cuts(setting.setting));
}

std::string say_setting(const Job& job, const BreakingSetting& setting,
                        const std::vector<std::string>& names) {
    const Words& words = job.locale.words();
    std::string said = say_setting(job, setting);
    if (!names.empty()) said = words("breaking.frees", said, words.list(names));
    if (setting.in_strips > 0) said = words.counted("breaking.strips", as_count(setting.in_strips), said);
    return said;
}

std::string say_too_short(const Job& job, const BreakingSetting& setting) {
    const auto safe = safe_length(job);
    if (!setting.too_short || !safe) return {};
    return job.locale.words()("layout.short_piece", show_with_unit(*setting.too_short, job.locale),
                              safe->machine, show_with_unit(safe->least, job.locale));
}

std::vector<std::string> say_sizes_cut(const Job& job, const Plan& plan, const BreakingDown& down,
                                       const std::vector<std::string>& setups) {
    if (down.stocks.empty() && down.at_size.empty()) return {};
    const Words& words = job.locale.words();
    std::vector<std::string> said;
    if (const std::string allowance = say_allowance(job); !allowance.empty()) said.push_back(allowance);
    if (down.at_size.empty()) return said;
    said.push_back(words.counted("breaking.at_size", as_count(down.at_size.size()), words.list(setups)));
    const bool any_length = std::any_of(
        down.at_size.begin(), down.at_size.end(),
        [&](const AtSizeAlready& one) { return plan.setup_with_id(one.setup)->stage == Stage::crosscut; });
    if (any_length) said.push_back(words("breaking.no_length_left"));
    return said;
}

}  // namespace kw
