#include "cutting/sound.h"

#include <algorithm>
#include <array>
#include <map>

namespace kw::cutting {
namespace {

constexpr std::size_t most_ways =
    12;  // kept of each part: with several defects there are more than can be tried

struct Way {
    SoundWay way;
    double worth = 0;
};

// The wood of a part ends a kerf before the part does.
bool is_in(const Spot& defect, const Spot& part, Ticks kerf) {
    return defect.x < part.x + part.length - kerf && part.x < defect.x + defect.length &&
           defect.y < part.y + part.width - kerf && part.y < defect.y + defect.width;
}

// Puts `part` behind `whole`, and answers where its root is.
int append(SoundWay& whole, const SoundWay& part) {
    const int by = static_cast<int>(whole.nodes.size());
    const int regions = static_cast<int>(whole.regions.size());
    for (SoundNode node : part.nodes) {
        if (node.first >= 0) node.first += by;
        if (node.second >= 0) node.second += by;
        if (node.region >= 0) node.region += regions;
        whole.nodes.push_back(node);
    }
    whole.regions.insert(whole.regions.end(), part.regions.begin(), part.regions.end());
    return by;
}

class Ways {
public:
    explicit Ways(Ticks kerf) : kerf_(kerf) {}

    // Different cuts lead to the same part: it is looked at once.
    const std::vector<Way>& of(const Spot& part, const std::vector<Spot>& all) {
        const std::array<Ticks, 4> key{part.x, part.y, part.length, part.width};
        const auto known = known_.find(key);
        if (known != known_.end()) return known->second;
        std::vector<Way> ways = find(part, all);
        return known_[key] = std::move(ways);
    }

private:
    std::vector<Way> find(const Spot& part, const std::vector<Spot>& all) {
        std::vector<Spot> defects;
        for (const Spot& defect : all)
            if (is_in(defect, part, kerf_)) defects.push_back(defect);
        if (defects.empty()) return {sound(part)};
        std::vector<Way> ways;
        const Spot& defect = defects.front();
        for (const bool is_across : {true, false}) {
            const Ticks begin = is_across ? defect.x - part.x : defect.y - part.y;
            const Ticks end = begin + (is_across ? defect.length : defect.width);
            // Up to the defect, where there is wood before it, and from its end on.
            if (begin > 0) add_cut(part, defects, is_across, begin + kerf_, ways);
            add_cut(part, defects, is_across, end, ways);
        }
        if (ways.empty()) ways.push_back(waste(part));
        keep_best(ways);
        return ways;
    }

    static Way sound(const Spot& part) {
        Way way;
        SoundNode node;
        node.spot = part;
        node.region = 0;
        way.way.nodes.push_back(node);
        way.way.regions.push_back({part.length, part.width});
        const double area = static_cast<double>(part.length) * static_cast<double>(part.width);
        way.worth = area * area;
        return way;
    }

    static Way waste(const Spot& part) {
        Way way;
        SoundNode node;
        node.spot = part;
        way.way.nodes.push_back(node);
        return way;
    }

    void add_cut(const Spot& part, const std::vector<Spot>& defects, bool is_across, Ticks at,
                 std::vector<Way>& ways) {
        const Ticks size = is_across ? part.length : part.width;
        if (at <= 0 || at >= size) return;
        Spot first = part;
        Spot second = part;
        if (is_across) {
            first.length = at;
            second.x += at;
            second.length -= at;
        } else {
            first.width = at;
            second.y += at;
            second.width -= at;
        }
        const std::vector<Way> firsts = of_part(first, defects);
        const std::vector<Way> seconds = of_part(second, defects);
        for (const Way& a : firsts)
            for (const Way& b : seconds) {
                Way way;
                SoundNode root;
                root.spot = part;
                root.is_cut = true;
                root.is_across = is_across;
                root.at = at;
                way.way.nodes.push_back(root);
                const int left = append(way.way, a.way);
                const int right = append(way.way, b.way);
                way.way.nodes.front().first = left;
                way.way.nodes.front().second = right;
                way.worth = a.worth + b.worth;
                ways.push_back(std::move(way));
            }
    }

    // What is no more than the kerf is no wood at all.
    std::vector<Way> of_part(const Spot& part, const std::vector<Spot>& defects) {
        if (part.length <= kerf_ || part.width <= kerf_) return {waste(part)};
        return of(part, defects);
    }

    static void keep_best(std::vector<Way>& ways) {
        std::stable_sort(ways.begin(), ways.end(),
                         [](const Way& a, const Way& b) { return a.worth > b.worth; });
        if (ways.size() > most_ways) ways.resize(most_ways);
    }

    Ticks kerf_;
    std::map<std::array<Ticks, 4>, std::vector<Way>> known_;
};

}  // namespace

std::vector<SoundWay> sound_ways(Region sheet, const std::vector<Spot>& defects, Ticks kerf) {
    Ways all(kerf);
    std::vector<SoundWay> ways;
    for (const Way& way : all.of({0, 0, sheet.length, sheet.width}, defects)) ways.push_back(way.way);
    return ways;
}

}  // namespace kw::cutting
