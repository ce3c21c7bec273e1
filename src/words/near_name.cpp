#include "words/near_name.h"

#include <algorithm>

namespace kw {
namespace {

std::string lowercase(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return text;
}

// No pair of letters is touched twice (the optimal string alignment distance, by its recurrence).
std::size_t slips_between(const std::string& a, const std::string& b) {
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i) d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j) d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = d[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, changed});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

constexpr std::size_t longest_name = 40;  // no name that is looked for is longer

}  // namespace

std::string near_name(const std::string& name, const std::vector<std::string>& known) {
    if (name.size() > longest_name) return {};
    std::string best;
    std::size_t least = std::max<std::size_t>(1, name.size() / 3) + 1;
    for (const std::string& one : known) {
        const std::size_t slips = slips_between(lowercase(name), lowercase(one));
        if (slips >= least || slips >= name.size()) continue;
        least = slips;
        best = one;
    }
    return best;
}

}  // namespace kw
