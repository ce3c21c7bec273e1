#include "draw/assembly_order_view.h"

#include <algorithm>

namespace kw::draw {
namespace {

// So thick that a joint can be seen, against the larger size of the box.
constexpr double thick_share = 0.06;

class OrderOfAssembly {
public:
    OrderOfAssembly(const DrawerDesign& drawer, const std::vector<AssemblyStep>& steps, const Locale& locale)
        : locale_(locale),
          steps_(steps),
          width_(drawer.box.width.mm()),
          depth_(drawer.box.depth.mm()),
          thick_(thick_share * std::max(width_, depth_)),
          in_front_(reach(drawer.front.joint)),
          in_back_(reach(drawer.back.joint)),
          apart_(4 * thick_) {
        drawing_.title = locale.words()("draw.in_order");
    }

    Drawing draw() {
        // Where fingers go through the sides, the board's face is at their ends.
        const double front_at = in_front_ < thick_ ? 0.5 * thick_ : 0,
                     back_at = in_back_ < thick_ ? 1.5 * thick_ : 0;
        const Box front{thick_ - in_front_, front_at, width_ - thick_ + in_front_, front_at + thick_},
            back{thick_ - in_back_, depth_ - back_at - thick_, width_ - thick_ + in_back_, depth_ - back_at},
            left{0, 0, thick_, depth_}, right{width_ - thick_ + apart_, 0, width_ + apart_, depth_},
            bottom{thick_, front.top_mm, width_ - thick_, back.bottom_mm};
        const double middle = (front.left_mm + front.right_mm) / 2, out = 0.4 * thick_;
        board(left, true);
        board(right, true);
        board(front, false);
        board(back, false);
        for (const AssemblyStep& step : steps_)
            for (const GlueSpot& spot : step.glue)
                glue(spot, spot.at_back ? back : front, spot.at_back ? in_back_ : in_front_);
        word(Role::side_left, {left.left_mm - out, depth_ / 2}, Anchor::right);
        word(Role::side_right, {right.right_mm + out, depth_ / 2}, Anchor::left);
        word(Role::front, {middle, front.bottom_mm - out}, Anchor::top);
        word(Role::back, {middle, back.top_mm + out}, Anchor::bottom);
        word(Role::bottom, {middle, (bottom.bottom_mm + bottom.top_mm) / 2}, Anchor::centre);
        drawing_.shapes.push_back(
            Line{{{right.left_mm - 0.15 * apart_, depth_ / 2}, {front.right_mm + 0.25 * apart_, depth_ / 2}},
                 Stroke::arrow});
        return std::move(drawing_);
    }

private:
    // Into the sides: half of them, and fingers all.
    double reach(const JointDesign& joint) const { return has_fingers(joint) ? thick_ : thick_ / 2; }

    void board(const Box& box, bool upright) {
        Fill fill{{rectangle(box)}, Material::long_grain};
        fill.upright = upright;
        drawing_.shapes.push_back(std::move(fill));
    }

    // Round the end of the board that stands in the slot, or is to.
    void glue(const GlueSpot& spot, const Box& board, double in) {
        const double end = spot.on_right_side ? board.right_mm : board.left_mm,
                     shoulder = spot.on_right_side ? end - in : end + in;
        drawing_.shapes.push_back(Line{{{shoulder, board.bottom_mm},
                                        {end, board.bottom_mm},
                                        {end, board.top_mm},
                                        {shoulder, board.top_mm}},
                                       Stroke::glue});
    }

    // "2 front"
    void word(Role role, Point at, Anchor anchor) {
        int number = 0;
        for (const AssemblyStep& step : steps_)
            for (const Role put : step.puts) {
                ++number;
                if (put != role) continue;
                drawing_.shapes.push_back(
                    Label{at,
                          std::to_string(number) + " " + locale_.words().name("role.", name_of(role)),
                          anchor,
                          Emphasis::plain,
                          {},
                          false,
                          true});
            }
    }

    const Locale& locale_;
    const std::vector<AssemblyStep>& steps_;
    double width_, depth_, thick_, in_front_, in_back_, apart_;
    Drawing drawing_;
};

}  // namespace

Drawing assembly_order_view(const DrawerDesign& drawer, const std::vector<AssemblyStep>& steps,
                            const Locale& locale) {
    return OrderOfAssembly(drawer, steps, locale).draw();
}

}  // namespace kw::draw
