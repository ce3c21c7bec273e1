#pragma once
// Breaking boards and sheets down as the first part of the work: at which settings, what comes of it, and how long it takes. The order of the
// setups knows nothing of it, and its time is added to theirs.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "job/lay_out.h"

namespace kw {

// All that is cut with fence or stop set once.
struct BreakingSetting {
    LaidSetting setting;
    std::vector<std::string> frees;  // ids of parts that lie by themselves after it
    std::size_t in_strips = 0;       // parts of the strips that are cut off, and cut further
    std::optional<Length>
        too_short;  // the shortest thing held at it, where that is less than is safe by hand
};

// How often something is set and cut, and what that takes (see WorkTimes: a setting is one of the fence, a cut one that breaks stock down).
struct BreakingCount {
    std::size_t settings = 0, least_settings = 0;  // no order of these cuts has fewer
    std::size_t cuts = 0;
    std::size_t trims = 0;  // edges and ends that are trimmed first: cuts, for which no setting is counted
    std::int64_t seconds = 0, lower_bound_seconds = 0;  // of these cuts in any order

    bool operator==(const BreakingCount&) const = default;
};

struct BreakingStock {
    std::string stock;
    BreakingCount count;
    std::vector<BreakingSetting> settings;  // in order
};

// A setup whose parts come to it at its size already, since they are cut out no larger than they will be.
struct AtSizeAlready {
    std::string setup;
    std::vector<std::string> parts;
};

struct BreakingDown {
    std::vector<BreakingStock> stocks;  // of those that could be laid out
    BreakingCount all;
    std::vector<AtSizeAlready> at_size;  // in the order of the plan
};

// The layout is one of this job and this plan. Stocks follow one another, and each begins with a setting of its own. No blade is put on
// for it: that is counted with the first setup that needs it.
BreakingDown breaking_down(const Job& job, const Plan& plan, const LayOut& layout);

}  // namespace kw
