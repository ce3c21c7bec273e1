#include "draw/joint_view_parts.h"

#include "draw/turned.h"

namespace kw::draw {
namespace {

void append(Drawing& drawing, Drawing more) {
    drawing.shapes.insert(drawing.shapes.end(), more.shapes.begin(), more.shapes.end());
}

}  // namespace

Material wood_of(const Work& work, const std::string& stock_name, Grain grain) {
    const Stock* stock = work.job.stock_named(stock_name);
    return wood_material(stock ? stock->kind : StockKind::plywood, grain);
}

std::string times_text(const Words& words, int times) {
    return times == 1 ? words("draw.true_to_scale") : words("draw.times", times);
}

void add_caption(Drawing& drawing, const std::string& text, std::optional<double> below_mm) {
    const Box box = bounds(drawing);
    drawing.shapes.push_back(
        Label{{(box.left_mm + box.right_mm) / 2, below_mm ? box.bottom_mm - *below_mm : box.top_mm},
              text,
              below_mm ? Anchor::top : Anchor::bottom,
              Emphasis::plain,
              std::nullopt});
}

Drawing side_by_side(const Work& work, Drawing first, Drawing second, int times, bool stacked,
                     double clear_mm) {
    const Words& words = work.job.locale.words();
    const Box box = bounds(first);
    const double x = stacked ? 0 : 1.15 * (box.right_mm - box.left_mm);
    const double y = stacked ? -1.3 * (box.top_mm - box.bottom_mm) : 0;
    Drawing both;
    both.title = words("draw.before_and_after", first.title, second.title);
    append(both, std::move(first));
    append(both, moved(std::move(second), x, y));
    add_caption(both, times_text(words, times), clear_mm);
    return both;
}

}  // namespace kw::draw
