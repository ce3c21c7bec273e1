#include "draw/lay_out_view.h"

#include <algorithm>

#include "length/text.h"

namespace kw::draw {
namespace {

Box box_of(const cutting::Rectangle& area) {
    return {area.x.mm(), area.y.mm(), area.end_x().mm(), area.end_y().mm()};
}

Point middle(const Box& box) {
    return {0.5 * (box.left_mm + box.right_mm), 0.5 * (box.bottom_mm + box.top_mm)};
}

// As wide as the widest part: what a board of no said width must be at least.
double drawn_width_mm(const StockSize& size, const LaidPiece& piece) {
    double width = size.width ? size.width->mm() : 0.0;
    if (!size.width)
        for (const LaidPart& part : piece.parts) width = std::max(width, part.area.width.mm());
    return width;
}

}  // namespace

Drawing lay_out_view(const Job& job, const LaidStock& laid, const LaidPiece& piece) {
    const Stock& stock = *job.stock_named(laid.stock);
    const StockSize& size = stock.sizes.at(piece.size);
    const double length = size.length.mm(), width = drawn_width_mm(size, piece);
    Drawing drawing{job.locale.words()("draw.laid_out", laid.stock), {}};
    auto& shapes = drawing.shapes;
    shapes.push_back(Fill{{rectangle({0, 0, length, width})}, Material::ground});
    for (const cutting::Rectangle& offcut : piece.offcuts)
        shapes.push_back(Fill{{rectangle(box_of(offcut))}, Material::ahead});
    for (const StockDefect& defect : size.defects)
        shapes.push_back(Fill{{rectangle({defect.x.mm(), defect.y.mm(), (defect.x + defect.length).mm(),
                                          (defect.y + defect.width).mm()})},
                              Material::overlap});
    for (const LaidPart& part : piece.parts)
        shapes.push_back(Fill{{rectangle(box_of(part.area))}, Material::long_grain, false, part.is_turned});
    int number = 0;
    for (const LaidPart& part : piece.parts)
        shapes.push_back(Label{middle(box_of(part.area)), std::to_string(++number)});
    shapes.push_back(Dimension{
        {0, 0}, {length, 0}, Side::below, 0, 0, without_mark(show_with_unit(size.length, job.locale))});
    if (size.width)
        shapes.push_back(Dimension{
            {0, 0}, {0, width}, Side::left, 0, 0, without_mark(show_with_unit(*size.width, job.locale))});
    return drawing;
}

}  // namespace kw::draw
