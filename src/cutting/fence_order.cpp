#include "cutting/fence_order.h"

#include <algorithm>
#include <map>
#include <string>
#include <unordered_map>
#include <utility>

namespace kw::cutting {
namespace {

constexpr std::int64_t cuts_between_asks = 100'000;

struct Choice {
    std::size_t setting = 0;
    std::size_t bound = 0;  // of what is left after it
    std::size_t count = 0;  // of cuts made at it
};

class FenceSearch {
public:
    FenceSearch(const std::vector<CutToOrder>& cuts, const Effort& effort)
        : cuts_(cuts),
          watch_(effort.watch),
          looks_(effort.looks),
          next_ask_(effort.looks),
          done_(cuts.size(), '\0'),
          runs_(cuts.size(), 0) {
        std::map<std::pair<int, Length>, std::size_t> known;
        for (std::size_t c = 0; c < cuts.size(); ++c) {
            const auto [place, is_new] =
                known.try_emplace({static_cast<int>(cuts[c].direction), cuts[c].fence}, by_setting_.size());
            if (is_new) by_setting_.emplace_back();
            by_setting_[place->second].push_back(c);
            setting_.push_back(place->second);
            int before = cuts[c].after;
            while (before >= 0 && setting_[static_cast<std::size_t>(before)] != setting_[c])
                before = cuts[static_cast<std::size_t>(before)].after;
            same_before_.push_back(before);
        }
    }

    FenceOrder run() {
        FenceOrder order;
        const std::size_t least = bound();
        least_ = least;
        go_on();
        order.least = is_cut_short_ ? least : best_.size();
        order.proved = order.least == best_.size();
        std::fill(done_.begin(), done_.end(), '\0');
        for (const std::size_t setting : best_) {
            const CutToOrder& first = cuts_[by_setting_[setting].front()];
            order.settings.push_back({first.direction, first.fence, make(setting)});
        }
        return order;
    }

private:
    bool is_ready(std::size_t cut) const {
        const int after = cuts_[cut].after;
        return done_[cut] == '\0' && (after < 0 || done_[static_cast<std::size_t>(after)] != '\0');
    }

    // A cut stands behind the one that it waits for, so that once through the list is enough.
    std::vector<std::size_t> make(std::size_t setting) {
        std::vector<std::size_t> made;
        for (const std::size_t cut : by_setting_[setting]) {
            if (!is_ready(cut)) continue;
            done_[cut] = '\1';
            made.push_back(cut);
        }
        return made;
    }
    void take_back(const std::vector<std::size_t>& made) {
        for (const std::size_t cut : made) done_[cut] = '\0';
    }

    std::size_t bound() {
        looks_ -= static_cast<std::int64_t>(cuts_.size());
        most_runs_.assign(by_setting_.size(), 0);
        for (std::size_t c = 0; c < cuts_.size(); ++c) {
            if (done_[c] != '\0') continue;
            const int same = same_before_[c];
            const bool is_first = same < 0 || done_[static_cast<std::size_t>(same)] != '\0';
            const std::size_t before = is_first ? 0 : runs_[static_cast<std::size_t>(same)];
            runs_[c] = before + (is_first || same != cuts_[c].after ? 1 : 0);
            most_runs_[setting_[c]] = std::max(most_runs_[setting_[c]], runs_[c]);
        }
        std::size_t sum = 0;
        for (const std::size_t runs : most_runs_) sum += runs;
        return sum;
    }

    std::vector<Choice> choices() {
        std::vector<Choice> choices;
        for (std::size_t s = 0; s < by_setting_.size(); ++s) {
            const std::vector<std::size_t> made = make(s);
            if (!made.empty()) choices.push_back({s, bound(), made.size()});
            take_back(made);
        }
        std::stable_sort(choices.begin(), choices.end(), [](const Choice& a, const Choice& b) {
            return a.bound != b.bound ? a.bound < b.bound : a.count > b.count;
        });
        return choices;
    }

    bool is_enough() { return !best_.empty() && (best_.size() == least_ || looks_ <= 0 || is_to_end()); }

    bool is_to_end() {
        if (!watch_ || is_stopped_ || looks_ > next_ask_) return is_stopped_;
        next_ask_ = looks_ - cuts_between_asks;
        return is_stopped_ = watch_(static_cast<std::int64_t>(best_.size()),
                                    static_cast<std::int64_t>(least_)) == Searching::stop;
    }

    void go_on() {
        const std::vector<Choice> next = choices();
        if (next.empty()) {
            if (best_.empty() || now_.size() < best_.size()) best_ = now_;
            return;
        }
        const auto [seen, is_new] = seen_.try_emplace(done_, now_.size());
        if (!is_new && seen->second <= now_.size()) return;
        seen->second = now_.size();
        for (const Choice& choice : next) {
            if (!best_.empty() && now_.size() + 1 + choice.bound >= best_.size())
                return;  // and all behind it
            if (is_enough()) {
                is_cut_short_ = is_cut_short_ || best_.size() != least_;
                return;
            }
            const std::vector<std::size_t> made = make(choice.setting);
            now_.push_back(choice.setting);
            go_on();
            now_.pop_back();
            take_back(made);
        }
    }

    const std::vector<CutToOrder>& cuts_;
    const Watch& watch_;
    std::int64_t looks_;     // that are left
    std::int64_t next_ask_;  // asked when no more are left
    bool is_stopped_ = false;
    std::size_t least_ = 0;
    bool is_cut_short_ = false;
    std::string done_;               // by cut
    std::vector<std::size_t> runs_;  // by cut: how often its setting comes anew on the way to it
    std::vector<std::size_t> most_runs_;
    std::vector<std::size_t> setting_;  // by cut
    std::vector<int> same_before_;      // by cut: the last one of its setting on the way to it
    std::vector<std::vector<std::size_t>> by_setting_;   // its cuts
    std::vector<std::size_t> now_, best_;                // settings one after another
    std::unordered_map<std::string, std::size_t> seen_;  // how many settings it took so far to come there
};

}  // namespace

FenceOrder order_by_fence(const std::vector<CutToOrder>& cuts, const Effort& effort) {
    return FenceSearch(cuts, effort).run();
}

}  // namespace kw::cutting
