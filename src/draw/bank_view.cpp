#include "draw/bank_view.h"

#include <algorithm>

#include "job/banks.h"

namespace kw::draw {
namespace {

class BankViewer {
public:
    BankViewer(const Job& job, const BankSpec& bank, Length zero)
        : job_(job),
          bank_(bank),
          zero_(zero),
          overlay_(bank.style == FaceStyle::overlay),
          width_(width_faced(bank).mm()),
          height_(bank.made.height.mm()),
          left_((overlay_ ? -bank.ends.left : bank.ends.left).mm()),
          right_(left_ + bank.made.face_width.mm()) {}

    Drawing draw(const std::vector<RowHoles>& holes) {
        drawing_.title = job_.locale.words()("draw.bank", bank_.name);
        draw_case();
        for (std::size_t row = 0; row < bank_.rows.size(); ++row) draw_face(row);
        draw_openings();
        for (const RowHoles& one : holes) draw_holes(one);
        if (!holes.empty()) measure_holes(holes.front());
        measure_heights();
        say_reveal();
        say_ends();
        return std::move(drawing_);
    }

private:
    std::string text(Length length) const { return show_with_unit(length, job_.locale); }
    std::string plain(Length length) const { return without_mark(text(length)); }
    void add(Shape shape) { drawing_.shapes.push_back(std::move(shape)); }
    const BankFace& face(std::size_t row) const { return bank_.made.faces[row]; }

    // The edges that are told of, as far as they go.
    void draw_case() {
        const auto edge = [](const std::optional<Length>& one) { return one.value_or(Length{}).mm(); };
        outside_ = {-edge(bank_.edges.left), -edge(bank_.edges.bottom), width_ + edge(bank_.edges.right),
                    height_ + edge(bank_.edges.top)};
        add(Fill{{rectangle(outside_)}, Material::ground});
        if (!overlay_) add(Line{closed({0, 0, width_, height_}), Stroke::outline});
    }

    static std::vector<Point> closed(const Box& box) {
        Ring ring = rectangle(box);
        ring.push_back(ring.front());
        return ring;
    }

    void draw_face(std::size_t row) {
        const Box box{left_, face(row).bottom.mm(), right_, face(row).top().mm()};
        add(Fill{{rectangle(box)}, Material::long_grain});
        add(Label{{left_ + 0.03 * (right_ - left_),
                   box.bottom_mm + number_share(row) * (box.top_mm - box.bottom_mm)},
                  std::to_string(row + 1),
                  Anchor::left});
    }

    // Clear of the holes.
    double number_share(std::size_t row) const {
        if (!bank_.handles) return 0.5;
        const BankFace& one = face(row);
        const HandleHoles holes = handle_holes(*bank_.handles, bank_.made.face_width, one.height);
        return holes.from_bottom.mm() < 0.6 * one.height.mm() ? 0.79 : 0.25;
    }

    void draw_openings() {
        if (overlay_ && !bank_.rail) add(Line{closed({0, 0, width_, height_}), Stroke::hidden});
        for (const BankFace& one : bank_.made.faces)
            if (bank_.rail)
                add(Line{closed({0, one.opening_bottom.mm(), width_,
                                 (one.opening_bottom + one.opening_height).mm()}),
                         overlay_ ? Stroke::hidden : Stroke::outline});
    }

    void draw_holes(const RowHoles& one) {
        // Small on the sheet: drawn twice as large as drilled.
        const double radius = bank_.handles->diameter.mm(),
                     y = (face(one.row).bottom + one.holes.from_bottom).mm();
        for (const Length x : one.holes.from_left)
            add(Fill{{circle({left_ + x.mm(), y}, radius, 24)}, Material::cutter});
    }

    void measure_holes(const RowHoles& top) {
        const double y = (face(top.row).bottom + top.holes.from_bottom).mm(), above = highest();
        Point from{left_, face(top.row).top().mm()};
        Length before;
        for (const Length x : top.holes.from_left) {
            const Point to{left_ + x.mm(), y};
            add(Dimension{from, to, Side::above, above, 0, text(x - before)});
            from = to;
            before = x;
        }
    }

    double highest() const { return std::max(outside_.top_mm, face(0).top().mm()); }

    // Heights on the right; on the left, where each lower edge is on the tape.
    void measure_heights() {
        const double to_right = std::max(outside_.right_mm, right_),
                     to_left = std::min(outside_.left_mm, left_);
        for (const BankFace& one : bank_.made.faces) {
            const double bottom = one.bottom.mm(), top = one.top().mm();
            add(Dimension{{right_, bottom},
                          {right_, top},
                          Side::right,
                          to_right,
                          0,
                          text(one.height),
                          Emphasis::strong});
            add(Label{{to_left - 0.07 * width_, bottom},
                      show(one.bottom - zero_, job_.locale),
                      Anchor::right,
                      Emphasis::plain,
                      Point{left_, bottom}});
        }
    }

    void say_reveal() {
        if (bank_.rows.size() < 2) return;
        const double y = 0.5 * (face(0).bottom + face(1).top()).mm();
        const double to_left = std::min(outside_.left_mm, left_);
        add(Label{{to_left - 0.07 * width_, 0.5 * (face(0).bottom + face(0).top()).mm()},
                  job_.locale.words()("draw.bank_reveal", plain(bank_.reveal)),
                  Anchor::right,
                  Emphasis::plain,
                  Point{left_ + 0.02 * (right_ - left_), y},
                  true});
    }

    void say_ends() {
        const char* key = overlay_ ? "draw.bank_covers" : "draw.bank_gap";
        const double x = right_ - 0.04 * (right_ - left_);
        const auto say = [&](Length end, double y, double at_y, Anchor anchor) {
            add(Label{{0.5 * (left_ + right_), y},
                      job_.locale.words()(key, plain(end)),
                      anchor,
                      Emphasis::plain,
                      Point{x, at_y},
                      true});
        };
        const Length low =
            overlay_ ? bank_.ends.bottom - bank_.made.left_over : bank_.ends.bottom + bank_.made.left_over;
        say(low, std::min(outside_.bottom_mm, face(bank_.rows.size() - 1).bottom.mm()) - 0.04 * height_,
            (overlay_ ? -0.5 : 0.5) * low.mm(), Anchor::top);
    }

    const Job& job_;
    const BankSpec& bank_;
    Length zero_;
    bool overlay_;
    double width_, height_, left_, right_;
    Box outside_;
    Drawing drawing_;
};

}  // namespace

Drawing bank_view(const Job& job, const BankSpec& bank, Length zero, const std::vector<RowHoles>& holes) {
    return BankViewer(job, bank, zero).draw(holes);
}

}  // namespace kw::draw
