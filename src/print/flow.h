#pragma once
// Blocks one under the other, over as many pages as they take. Private to this folder.

#include "print/block.h"
#include "print/sheet.h"

namespace kw::print {

// Fills pages from their top; what has no room goes on on the next.
class Flow {
public:
    explicit Flow(Paper paper) : paper_(paper), body_(body_of(paper)), y_(body_.bottom_mm) {}

    double width_mm() const { return body_.width_mm(); }
    double left_mm() const { return body_.bottom_mm - y_; }
    void new_page() {
        pages_.push_back({paper_, {}, {}});
        y_ = body_.top_mm;
    }
    void add(const Block& block, double after_mm = 0) {
        if (pages_.empty() || block.height_mm > left_mm()) new_page();
        put(pages_.back().items, block, {body_.left_mm, y_});
        y_ += block.height_mm + after_mm;
    }
    std::vector<Page> take() { return std::move(pages_); }

private:
    Paper paper_;
    Area body_;
    double y_;
    std::vector<Page> pages_;
};

// What stays with what it says, a line with a box to tick.
inline Block line_to_tick(const std::string& text, double width_mm, std::size_t most_lines = 2) {
    constexpr double box_mm = 3.2, text_mm = 5;
    Block line{{}, width_mm, 0};
    put(line, tick_box(box_mm), {0, 0.6});
    put(line, paragraph(text, body_text, width_mm - text_mm, most_lines), {text_mm, 0});
    return line;
}

}  // namespace kw::print
