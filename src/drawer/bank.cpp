#include "drawer/bank.h"

#include "drawer/face_heights.h"

namespace kw {
namespace {

class BankMaker {
public:
    explicit BankMaker(const BankAsk& ask) : ask_(ask), count_(static_cast<std::int64_t>(ask.rows.size())) {}

    tl::expected<Bank, std::vector<Refusal>> make() {
        check_reveal();
        check_ends();
        find_openings();
        if (!refusals_.empty()) return tl::unexpected(std::move(refusals_));
        bank_.face_width = ask_.width + sign() * (ask_.ends.left + ask_.ends.right);
        bank_.between = is_overlay() || !ask_.rail ? ask_.reveal : *ask_.rail + 2 * ask_.reveal;
        if (bank_.face_width < least_face)
            refuse("left", Message::say("bank.no_width", ask_.width, ask_.ends.left + ask_.ends.right),
                   Message::say("bank.less_there"));
        const Length for_faces =
            bank_.height + sign() * (ask_.ends.top + ask_.ends.bottom) - (count_ - 1) * bank_.between;
        const auto heights = face_heights(ask_, for_faces, openings_);
        if (!heights) refusals_.push_back(heights.error());
        if (!refusals_.empty()) return tl::unexpected(std::move(refusals_));
        bank_.step = heights->step;
        take_left_over(heights->left_over);
        if (!refusals_.empty()) return tl::unexpected(std::move(refusals_));
        place_faces(heights->all);
        place_openings();
        check_covering();
        if (!refusals_.empty()) return tl::unexpected(std::move(refusals_));
        return std::move(bank_);
    }

private:
    // More than ticks is left, or too much is taken, where the faces are given and the column follows from openings that were read.
    void take_left_over(Length left_over) {
        bank_.left_over = left_over;
        if (ask_.heights != FaceHeights::given || left_over == Length{}) return;
        const std::size_t last = ask_.rows.size() - 1;
        if (!is_overlay() && ask_.ends.bottom + left_over <= Length{})
            return refuse("face_heights", Message::say("bank.hits_floor", ask_.rows[last].drawer),
                          Message::say("bank.one_lower", abs(left_over)));
        bank_.near_misses.push_back({Miss::faces, last, left_over});
    }

    bool is_overlay() const { return ask_.style == FaceStyle::overlay; }
    int sign() const { return is_overlay() ? 1 : -1; }
    bool has_rails() const { return ask_.rail.has_value(); }

    void refuse(std::string field, Message why, Message remedy) {
        refusals_.push_back({std::move(field), std::move(why), std::move(remedy)});
    }

    void check_reveal() {
        if (ask_.reveal <= Length{} && count_ > 1)
            return refuse("reveal", Message::say("bank.no_reveal"),
                          Message::say("file.is_usual", Length::inches(1, 8)));
        if (has_rails() && is_overlay() && count_ > 1 && ask_.reveal > *ask_.rail)
            refuse("reveal", Message::say("bank.reveal_past_rail", ask_.reveal, *ask_.rail),
                   Message::say("bank.reveal_at_most", *ask_.rail));
    }

    void check_end(const char* field, Length end, const std::optional<Length>& edge) {
        if (!is_overlay() && end <= Length{})
            return refuse(field, Message::say("bank.no_gap"), Message::say("file.is_usual", ask_.reveal));
        if (is_overlay() && edge && end > *edge)
            refuse(field, Message::say("bank.past_the_case", end, *edge),
                   Message::say("bank.at_most", *edge));
    }

    void check_ends() {
        check_end("left", ask_.ends.left, ask_.edges.left);
        check_end("right", ask_.ends.right, ask_.edges.right);
        check_end("top", ask_.ends.top, ask_.edges.top);
        check_end("bottom", ask_.ends.bottom, ask_.edges.bottom);
    }

    // The openings of all rows where they are known, and the column's height.
    void find_openings() {
        if (!has_rails()) {
            if (ask_.height) bank_.height = *ask_.height;
            else if (count_ == 1 && ask_.rows.front().opening) bank_.height = *ask_.rows.front().opening;
            else refuse("opening", Message::say("bank.how_high"), Message::say("file.measure_and_write"));
            return;
        }
        Length known = (count_ - 1) * *ask_.rail;
        std::vector<std::size_t> open;
        for (std::size_t i = 0; i < ask_.rows.size(); ++i) {
            if (ask_.rows[i].opening) known += *ask_.rows[i].opening;
            else open.push_back(i);
        }
        const bool all_open = open.size() == ask_.rows.size();
        if (!ask_.height && !open.empty())
            return refuse("opening", Message::say("bank.how_high"), Message::say("file.measure_and_write"));
        bank_.height = ask_.height.value_or(known);
        if (all_open && count_ > 1) return;
        const Length rest = bank_.height - known;
        if (open.empty()) return take_all_openings(known, rest);
        const auto opened = static_cast<std::int64_t>(open.size());
        if (rest < opened * least_face)
            return refuse("opening/height", Message::say("bank.no_opening_left", known, bank_.height),
                          Message::say("bank.column_at_least", known + opened * least_face));
        if (opened > 1) bank_.unread = open.size();
        if (opened > 1 && ask_.heights != FaceHeights::by_opening) return;
        fill_openings(open, rest);
    }

    // Read one by one they hardly ever add up.
    void take_all_openings(Length known, Length rest) {
        if (abs(rest) > count_ * near_enough)
            return refuse("opening/height",
                          Message::say(rest > Length{} ? "bank.openings_short" : "bank.openings_over", known,
                                       bank_.height, abs(rest)),
                          Message::say("bank.height_as_openings", known));
        if (rest != Length{}) bank_.near_misses.push_back({Miss::openings, ask_.rows.size() - 1, rest});
        if (ask_.heights == FaceHeights::by_opening) bank_.height = known;
        fill_openings({}, {});
    }

    // The open ones alike, to the tick; the lowest has what does not divide out.
    void fill_openings(const std::vector<std::size_t>& open, Length rest) {
        for (const BankRow& row : ask_.rows) openings_.push_back(row.opening.value_or(Length{}));
        for (std::size_t i = 0; i < open.size(); ++i) {
            const auto left = static_cast<std::int64_t>(open.size() - i);
            openings_[open[i]] = Length::from_ticks(rest.ticks() / left);
            rest -= openings_[open[i]];
        }
        if (open.size() > 1) bank_.unread_height = openings_[open.front()];
    }

    void place_faces(const std::vector<Length>& heights) {
        Length top = bank_.height + sign() * ask_.ends.top;
        for (const Length height : heights) {
            BankFace face;
            face.height = height;
            face.bottom = top - height;
            bank_.faces.push_back(face);
            top = face.bottom - bank_.between;
        }
    }

    // The top of the rail under this face, where it stands behind the middle of the reveal.
    Length rail_top(const BankFace& face) const {
        return is_overlay() ? face.bottom + half_down(*ask_.rail - ask_.reveal) : face.bottom - ask_.reveal;
    }

    static Length half_down(Length length) { return Length::from_ticks(length.ticks() / 2); }

    // The floors of all openings between rails: as far as openings are known from the top or from the floor, by them; else the rail under
    // a face stands behind the middle of its reveal.
    std::vector<Length> floors_at_rails() const {
        const std::size_t rows = ask_.rows.size();
        const auto opening = [&](std::size_t i) {
            return openings_.empty() ? ask_.rows[i].opening : std::optional(openings_[i]);
        };
        std::vector<Length> floors(rows);
        std::size_t from_floor = rows - 1;  // the floors from here on are known from below
        for (; from_floor > 0 && !is_known_from_top(from_floor) && opening(from_floor); --from_floor)
            floors[from_floor - 1] = floors[from_floor] + *opening(from_floor) + *ask_.rail;
        Length top = bank_.height;
        for (std::size_t i = 0; i < from_floor; ++i) {
            floors[i] = opening(i) ? top - *opening(i) : rail_top(bank_.faces[i]);
            top = floors[i] - *ask_.rail;
        }
        return floors;
    }

    // All above it are known, and so is it.
    bool is_known_from_top(std::size_t row) const {
        if (!openings_.empty()) return true;
        for (std::size_t i = 0; i <= row; ++i)
            if (!ask_.rows[i].opening) return false;
        return true;
    }

    void place_openings() {
        Length top = bank_.height;
        const std::vector<Length> floors = has_rails() ? floors_at_rails() : std::vector<Length>();
        for (std::size_t i = 0; i < bank_.faces.size(); ++i) {
            BankFace& face = bank_.faces[i];
            if (!has_rails()) top = min(face.top(), bank_.height);
            face.opening_bottom = has_rails() ? floors[i] : max(face.bottom, Length{});
            face.opening_height = top - face.opening_bottom;
            if (has_rails() && ask_.rows[i].opening) face.opening_height = *ask_.rows[i].opening;
            if (has_rails() && face.opening_height < least_face)
                refuse("opening/height", Message::say("bank.no_opening_behind", ask_.rows[i].drawer),
                       Message::say("bank.measure_openings"));
            if (!has_rails()) take_own_opening(i);
            face.over_top = face.top() - face.opening_bottom - face.opening_height;
            face.over_bottom = face.opening_bottom - face.bottom;
            if (has_rails()) top = face.opening_bottom - *ask_.rail;
        }
    }

    // A box may have less than what lies behind its face.
    void take_own_opening(std::size_t i) {
        BankFace& face = bank_.faces[i];
        const std::optional<Length>& own = ask_.rows[i].opening;
        if (!own) return;
        if (*own > face.opening_height && *own - face.opening_height <= near_enough)
            bank_.near_misses.push_back({Miss::past_face, i, *own - face.opening_height});
        else if (*own > face.opening_height)
            refuse("openings/" + std::to_string(i),
                   Message::say("bank.opening_past_face", *own, face.opening_height),
                   Message::say("bank.opening_at_most", face.opening_height));
        else face.opening_height = *own;
    }

    bool knows_any_opening() const {
        for (const BankRow& row : ask_.rows)
            if (row.opening) return true;
        return false;
    }

    std::string heights_field(std::size_t i) const {
        return ask_.heights == FaceHeights::given ? "face_heights/" + std::to_string(i)
                                                  : std::string("heights");
    }

    // Between two rows, against the rail that is there: what is covered on both sides of it must be covered by the right face.
    void check_covering() {
        for (std::size_t i = 0; has_rails() && i + 1 < bank_.faces.size(); ++i) {
            const BankFace &above = bank_.faces[i], &below = bank_.faces[i + 1];
            const Length needed = is_overlay() ? Length{} : -ask_.reveal;
            const Length high = is_overlay() ? -above.over_bottom : above.over_bottom - needed;
            const Length low = is_overlay() ? -below.over_top : below.over_top - needed;
            if (is_overlay() && high > Length{}) say_uncovered(i, i, high, "bank.ends_above_floor");
            else if (is_overlay() && low > Length{}) say_uncovered(i, i + 1, low, "bank.ends_below_top");
            else if (!is_overlay() && high > Length{}) say_at_rail(i, i, high);
            else if (!is_overlay() && low > Length{}) say_at_rail(i, i + 1, low);
        }
    }

    // `i`: the upper of the two faces at a rail, whose lower edge is to be moved.
    Message move_edge(std::size_t i, Length by, bool down) const {
        const std::string& upper = ask_.rows[i].drawer;
        if (ask_.heights == FaceHeights::given)
            return Message::say(down ? "bank.make_higher" : "bank.make_lower", upper, ask_.rows[i + 1].drawer,
                                by);
        return Message::say(down ? "bank.edge_down" : "bank.edge_up", upper, by);
    }

    void say_uncovered(std::size_t i, std::size_t row, Length by, const char* why) {
        if (by <= near_enough && knows_any_opening()) {
            bank_.near_misses.push_back({row == i ? Miss::above_floor : Miss::below_top, row, by});
            return;
        }
        refuse(heights_field(i), Message::say(why, ask_.rows[row].drawer, by), move_edge(i, by, row == i));
    }

    void say_at_rail(std::size_t i, std::size_t row, Length by) {
        const Length gap = ask_.reveal - by;
        if (by <= near_enough && gap > Length{} && knows_any_opening()) {
            bank_.near_misses.push_back({Miss::near_rail, row, by});
            return;
        }
        refuse(heights_field(i),
               gap > Length{} ? Message::say("bank.near_rail", ask_.rows[row].drawer, gap, ask_.reveal)
                              : Message::say("bank.hits_rail", ask_.rows[row].drawer, -gap),
               move_edge(i, by, row != i));
    }

    const BankAsk& ask_;
    std::int64_t count_;
    std::vector<Length> openings_;  // empty: they follow from the faces
    Bank bank_;
    std::vector<Refusal> refusals_;
};

struct NamedRule {
    FaceHeights rule;
    std::string_view name;
};
constexpr NamedRule rule_names[] = {{FaceHeights::equal, "equal"},
                                    {FaceHeights::graduated, "graduated"},
                                    {FaceHeights::in_proportion, "in proportion"},
                                    {FaceHeights::given, "given"},
                                    {FaceHeights::by_opening, "by opening"}};

}  // namespace

std::string_view name_of(FaceHeights rule) {
    for (const NamedRule& one : rule_names)
        if (one.rule == rule) return one.name;
    return {};
}

std::optional<FaceHeights> face_heights_named(std::string_view name) {
    for (const NamedRule& one : rule_names)
        if (one.name == name) return one.rule;
    return std::nullopt;
}

const std::vector<FaceHeights>& face_heights_rules() {
    static const std::vector<FaceHeights> rules = {FaceHeights::equal, FaceHeights::graduated,
                                                   FaceHeights::in_proportion, FaceHeights::given,
                                                   FaceHeights::by_opening};
    return rules;
}

tl::expected<Bank, std::vector<Refusal>> make_bank(const BankAsk& ask) { return BankMaker(ask).make(); }

}  // namespace kw
